"""Words of marked-up text that a reader ran together: between their letters something stands that parts words."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Final

from fit.document.blocks import Block, Text

_MARKUP: Final = re.compile(
    r"<!--(?:-?>|.*?-->)|=\s*\"[^\"]*\"|=\s*'[^']*'|(</?(?:t[dhr]|li|d[dt]|p|div|h[1-6]|br|hr)\b)",
    re.IGNORECASE | re.DOTALL,
)
"""Comments, values of attributes, and in its group tags of cells, items, paragraphs and lines."""
_WORD: Final = re.compile(r"\S+")


def run_together(source: str, blocks: Iterable[Block]) -> list[str]:
    """The words, as the blocks have them, of which two letters stand on both sides of a tag that parts words."""
    found: list[str] = []
    for block in blocks:
        for text in (block.label, block.text, *block.lines, *(cell for row in block.rows for cell in row)):
            if text.chars:
                found += (word for word, begin, end in _gaps(text) if parts_words(source, begin, end))
    return found


def parts_words(source: str, begin: int, end: int) -> bool:
    """Whether a tag between two places of the source parts the words before and after it."""
    return any(match[1] for match in _MARKUP.finditer(source, begin, end))


def _gaps(text: Text) -> Iterator[tuple[str, int, int]]:
    """Each word, from where to where in the source something stands between two of its letters."""
    for match in _WORD.finditer(text.chars):
        begin, end = match.span()
        places = text.sources[begin:end]
        if places[-1] - places[0] == end - begin - 1:
            continue  # as it stands
        yield from ((match[0], at + 1, to) for at, to in pairwise(places) if 0 <= at < to - 1)
