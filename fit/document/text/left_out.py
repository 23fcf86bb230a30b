"""What of the lines of a document stands in none of its blocks, so that nothing goes in silence.

Rules, frames, leaders and underlines are drawn anew or told in another way, and a hyphen of a line end goes with it. A
letter or digit that no block holds is lost, which nobody may have to find out on the small screen.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import chain, compress
from typing import Final

from fit.document.blocks import Block, LeftOut
from fit.document.text.line import FILLER, Line

_HYPHENS: Final = frozenset("-\u2010\u00ad")
_TURNED: Final = bytes([1, 0]) + bytes(254)


def left_out(lines: Sequence[Line], blocks: Iterable[Block]) -> LeftOut:
    """Compare the visible characters of ``lines`` with those of ``blocks``, furniture among them, by their places."""
    held = _held(lines, blocks)
    words: list[str] = []
    hyphens = 0
    signs: Counter[str] = Counter()
    for line in lines:
        missing = _missing(line, held)
        if not missing:
            continue
        if any(char.isalnum() for char in missing):
            words += missing.split()
        elif missing in _HYPHENS and line.cells.endswith(missing):
            hyphens += 1
        else:
            signs.update(missing.replace(" ", ""))
    return LeftOut(tuple(words), hyphens, signs)


def _held(lines: Sequence[Line], blocks: Iterable[Block]) -> bytearray:
    """For each place of the document 1 where a block has its character, else 0; one place more for what has none (-1)."""
    held = bytearray(max((_places(line).stop for line in lines), default=0) + 1)
    for block in blocks:
        for text in chain((block.text, block.label), block.lines, *block.rows):
            for place in text.sources:
                held[place] = 1
    return held


def _places(line: Line) -> range:
    """The places of the document that a line takes, from its first character to its last."""
    sources = line.resolved.sources if line.resolved else range(line.offset, line.offset + line.end)
    return range(min(sources, default=0), max(sources, default=-1) + 1)


def _missing(line: Line, held: bytearray) -> str:
    """The visible characters of a line that no block has, what stood apart parted by a blank."""
    if line.resolved is None:
        chars, places = line.cells, held[line.offset : line.offset + line.end]
    else:
        chars, places = line.resolved.chars, bytearray(held[place] for place in line.resolved.sources)
    if not "".join(compress(chars, places.translate(_TURNED))).strip():
        return ""
    found = "".join(
        " " if there or char == FILLER else char for char, there in zip(chars, places, strict=True)
    )
    return " ".join(found.split())
