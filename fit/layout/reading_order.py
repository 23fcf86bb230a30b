"""Where the words of a text are read in another order than they stand in it: by columns, by cells of several lines.

That no word was lost says nothing about this, so a reader is told where to look.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from fit.document.blocks import Block, Document, Kind
from fit.layout.lines import Layout, LineFlag
from fit.units import Span

_LINE_END = re.compile(r"\r\n?|\n")
"""As an editor counts lines: a form feed ends none."""
_LINED = ("text", "wordproc")
"""Formats whose lines are what a reader sees; the order of markup's lines says little."""


class Moved(NamedTuple):
    """A block with words that stand before others in the document and come after them, or the other way round."""

    block: int
    lines: Span
    """Its lines in the document, from 0."""


def moved_blocks(document: Document, layout: Layout) -> list[Moved]:
    """The blocks whose words are not laid out in the order in which the document has them; furniture left out.

    A table that is laid out as a table has its rows as they were. None for markup.
    """
    if document.format not in _LINED:
        return []
    taken_apart = {line.block for line in layout.lines if line.flags & LineFlag.FLOWING}
    starts = [0, *(end.end() for end in _LINE_END.finditer(document.source))]
    moved: list[Moved] = []
    reached = -1
    for number, block in enumerate(document.blocks):
        places = [*_places(block)]
        if block.kind is Kind.FURNITURE or not places:
            continue
        inside = block.kind is not Kind.TABLE or number in taken_apart
        if places[0] < reached or (inside and any(after < before for before, after in pairwise(places))):
            first, last = (bisect_right(starts, place) - 1 for place in (min(places), max(places)))
            moved.append(Moved(number, Span(first, last + 1)))
        reached = max(reached, *places)
    return moved


def _places(block: Block) -> Iterator[int]:
    """The offsets of the block's visible characters in the document, in the order in which they are read."""
    cells = (cell for row in block.rows for cell in row)
    for text in cells if block.rows else (block.label, *block.lines, block.text):
        for char, source in zip(text.chars, text.sources, strict=True):
            if source >= 0 and not char.isspace():
                yield source
