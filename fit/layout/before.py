"""The document as it stands on the small screen without any help, measured like a layout."""

from __future__ import annotations

import re
from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Container, Iterator, Sequence
from dataclasses import replace
from itertools import chain, pairwise

from fit.document.blocks import Document, Kind, Text
from fit.layout.cells import columns_of
from fit.layout.figures import figures_of
from fit.layout.lines import Fault, Figures, Line, LineFlag
from fit.layout.lists import is_bare
from fit.layout.nests import find_nests, find_terms
from fit.layout.page_costs import Spot, count_tall, find_spots, is_bound, price
from fit.layout.pages import naive_pages
from fit.layout.settings import LayoutSettings
from fit.width import text_cells

_LINE = re.compile(r"([^\n\r\f]+)(?:\r\n|[\n\r\f]|$)|(?:\r\n|[\n\r\f])")
_FLOWING = (Kind.PARAGRAPH, Kind.ITEM, Kind.NOTE)
_READ_AS_LINES = ("text", "wordproc", "markdown")
"""The formats whose source is itself something to read; the lines of the others are a matter of markup."""


def before_layout(document: Document, settings: LayoutSettings) -> Figures | None:
    """Measure the source: lines cut where the screen wraps, pages cut after every so many."""
    if document.format not in _READ_AS_LINES:
        return None
    rows = rows_as_written(document, settings.width)
    spots = find_spots(rows, find_nests(document.blocks))
    height = settings.page_rows
    faults = _bad_ends(spots, height)
    figures = figures_of(rows, naive_pages(rows, height), faults, settings.width, count_tall(spots, height))
    over = sum(text_cells(line) > settings.width for _, line in _written(document))
    return replace(figures, lines_over_width=over)


def _bad_ends(spots: Sequence[Spot], height: int) -> list[Fault]:
    """The faults of pages that are cut after every ``height`` rows."""

    def what(place: int) -> str:
        return price(spots[place - 1], spots[place], height).fault

    rows = [spot.row for spot in spots]
    ends = (
        place
        for place, (before, after) in enumerate(pairwise(spots), start=1)
        if before.row // height != after.row // height and what(place)
    )
    return [
        Fault(
            spots[place].row // height - 1,
            what(place),
            -1,
            is_bound(rows, place, lambda near: bool(what(near)), height),
        )
        for place in ends
    ]


def rows_as_written(document: Document, width: int) -> list[Line]:
    """The rows of a screen that wraps, with the blocks they are of, in their units; sources are those of the text."""
    source = _Source(document)
    rows = [row for start, line in _written(document) for row in _screen_rows(source, start, line, width)]
    return _with_units(rows, find_terms(document.blocks))


def _written(document: Document) -> Iterator[tuple[int, str]]:
    """The lines of the source, each with its place, without the blanks at its end."""
    for match in _LINE.finditer(document.source):
        yield match.start(), (match[1] or "").rstrip()


class _Source:
    """Which block a place of the source belongs to, and whether a hyphen there is part of a word."""

    def __init__(self, document: Document) -> None:
        self.blocks = document.blocks
        firsts = (
            _first(block.label, block.text, *block.lines, *chain.from_iterable(block.rows))
            for block in document.blocks
        )
        self._starts = sorted((first, number) for number, first in enumerate(firsts) if first >= 0)

    def block_at(self, offset: int) -> int:
        """The number of the block, -1 before the first."""
        at = bisect_right(self._starts, (offset, len(self.blocks))) - 1
        return self._starts[at][1] if at >= 0 else -1

    def keeps(self, block: int, offset: int) -> bool:
        """Whether the flowing text of a block has the character at the offset."""
        sources = self.blocks[block].text.sources
        at = bisect_left(sources, offset)
        return at < len(sources) and sources[at] == offset


def _first(*texts: Text) -> int:
    """The first offset of the texts, -1 without any."""
    return min((source for text in texts for source in text.sources[:1] if source >= 0), default=-1)


def _screen_rows(source: _Source, start: int, line: str, width: int) -> Iterator[Line]:
    """The rows that the screen shows of one line, each one a unit for now."""
    if not line:
        yield Line("", array("q"), -1, None, LineFlag.BLANK)
        return
    block = source.block_at(start + len(line) - len(line.lstrip()))
    kind = source.blocks[block].kind if block >= 0 else None
    columns = columns_of(line)
    begin = 0
    while begin < len(line):
        end = max(begin + 1, bisect_right(columns, columns[begin] + width) - 1)
        flags = LineFlag.FLOWING if kind in _FLOWING else LineFlag.NONE
        if kind is Kind.ITEM and is_bare(source.blocks[block]):
            flags |= LineFlag.LABEL
        if flags and end == len(line) and line.endswith("-") and not source.keeps(block, start + end - 1):
            flags |= LineFlag.HYPHEN
        cells = columns[end] - columns[begin]
        yield Line(
            line[begin:end], array("q", range(start + begin, start + end)), block, kind, flags, width - cells
        )
        begin = end


def _with_units(rows: list[Line], terms: Container[int]) -> list[Line]:
    """The rows with the first and the last of each unit marked: a block, or a row of what stays lines.

    The blocks that are ``terms`` belong to the next one.
    """
    heads = [
        True,
        *(left.block != right.block or right.kind not in _WHOLE for left, right in pairwise(rows)),
        True,
    ]
    last = [LineFlag.LAST | LineFlag.WITH_NEXT * (row.block in terms) for row in rows]
    return [
        row._replace(flags=row.flags | LineFlag.FIRST * heads[index] | last[index] * heads[index + 1])
        for index, row in enumerate(rows)
    ]


_WHOLE = (*_FLOWING, Kind.HEADING, Kind.PICTURE)
