"""What belongs to an item besides its own text: all that is deeper, up to the next heading.

A reader takes an item with its paragraphs, program texts and lists below it for one thing, and so does a page break.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fit.document.blocks import Block, Kind
from fit.layout.lines import Line, LineFlag
from fit.layout.lists import depth_of
from fit.units import Span

_LISTED = (Kind.ITEM, Kind.NOTE)


def find_nests(blocks: Sequence[Block]) -> list[Span]:
    """The blocks of each item that has more than its own text, outer ones before the inner."""
    nests: list[Span] = []
    open_items: list[tuple[int, int]] = []
    for number, block in enumerate((*blocks, None)):
        if block is not None and block.kind is Kind.FURNITURE:
            continue
        depth = -1 if block is None or block.kind is Kind.HEADING else depth_of(block) - block.apart
        while open_items and depth <= open_items[-1][0]:
            start = open_items.pop()[1]
            if number > start + 1:
                nests.append(Span(start, number))
        if block is not None and block.kind in _LISTED:
            open_items.append((depth, number))
    return sorted(nests, key=lambda nest: (nest.start, -nest.end))


def rows_of_nests(lines: Sequence[Line], nests: Sequence[Span]) -> dict[int, Span]:
    """By row, the rows of the innermost item that holds both this row's line and the last one before it.

    Rows are those of ``lines`` that are not blank; a row that no such item holds is left out. ``nests`` are blocks as
    `find_nests` gives them.
    """
    rows: dict[int, list[int]] = {}
    for row, line in enumerate(lines):
        if not line.flags & LineFlag.BLANK and line.block >= 0:
            rows.setdefault(line.block, []).append(row)
    found: dict[int, Span] = {}
    for nest in nests:  # the inner ones come later, and have the last word
        own = list(_rows_of(rows, nest))
        if own:
            found |= dict.fromkeys(own[1:], Span(own[0], own[-1] + 1))
    return found


def _rows_of(rows: dict[int, list[int]], nest: Span) -> Iterator[int]:
    for block in range(nest.start, nest.end):
        yield from rows.get(block, ())
