"""What a page break costs before each line, and which fault it would be.

First and last lines of a paragraph alone are the `orphans` and `widows` of CSS Fragmentation Level 3, at their
initial value of 2. The weights between the faults are our own.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from fit.document.blocks import Kind
from fit.document.text.joins import crosses
from fit.document.text.line import Line as TextLine
from fit.layout.lines import Line, LineFlag
from fit.units import Span

HEADING_LAST = 500
HEADING_SPLIT = 600
HEADER_LAST = 400
LINE_ALONE = 300
ROW_SPLIT = 300
UNIT_SPLIT = 240
"""An item, a note, a picture, a kept line that takes several."""
INTRODUCTION = 30
"""After a line that ends in a colon, before what it announces."""
HYPHEN = 15
"""In a word."""
INSIDE = {Kind.PARAGRAPH: 8, Kind.PREFORMATTED: 12, Kind.TABLE: 6, Kind.ITEM: 8, Kind.NOTE: 8}
"""Inside what belongs together, where no rule is broken."""
KEPT_TOGETHER = 60
"""Inside a table or kept lines that would fit on one page."""
ROW_ALONE = 40
"""The first or last row of a table, or of kept lines, alone: a reader sees no table in it."""
BETWEEN_ITEMS = 3
UNCLEAR = 80
"""Where a reader of the pages cannot tell whether the paragraph goes on: a sentence ends with a full line at the end
of the paragraph, or with a short one inside it. As our own reader of plain text judges it."""


EMPTY_INSIDE = 10
"""A page that is not full looks as if what stands on it ended there."""


class Break(NamedTuple):
    """A page break before a line."""

    cost: int
    fault: str = ""
    forced: bool = False
    """Whether the fault cannot be avoided, since what is split is higher than a page."""
    emptiness: int = 1
    """What the page before it costs for its rows that are left empty: times `emptiness`."""


def emptiness(unused: int, rows: int) -> int:
    """How bad it is that ``unused`` of the ``rows`` of a page are empty: squared, 100 for all of them."""
    return 100 * unused * unused // (rows * rows)


class Spot(NamedTuple):
    """A line that is not blank, in its unit."""

    line: Line
    row: int
    """Its place among all lines, blank ones too."""
    before: int
    """Lines of its unit before it."""
    size: int
    """Lines of its unit."""
    body: Span
    """The places of the lines of its block, a table's header left out."""


def find_spots(lines: Sequence[Line]) -> list[Spot]:
    """The lines that are not blank, each with its place in its unit."""
    filled = [(row, line) for row, line in enumerate(lines) if not line.flags & LineFlag.BLANK]
    starts: dict[int, int] = {}
    ends: dict[int, int] = {}
    for row, line in filled:
        if line.flags & LineFlag.HEADER:
            starts[line.block] = row + 1
        starts.setdefault(line.block, row)
        ends[line.block] = row + 1
    spots: list[Spot] = []
    unit: list[tuple[int, Line]] = []
    for row, line in filled:
        unit.append((row, line))
        if line.flags & (LineFlag.LAST | LineFlag.WITH_NEXT) == LineFlag.LAST or row == filled[-1][0]:
            body = Span(starts[line.block], ends[line.block])
            spots += [Spot(each, at, number, len(unit), body) for number, (at, each) in enumerate(unit)]
            unit = []
    return spots


def price(before: Spot, after: Spot, rows: int) -> Break:
    """A break between two lines that follow each other, on pages of ``rows`` lines."""
    if after.before:
        return _inside(before, after, rows)
    line, kind = before.line, before.line.kind
    if kind is Kind.HEADING:
        needed = before.size + after.row - before.row - 1 + min(after.size, 2)
        return Break(HEADING_LAST, "heading last", needed > rows)
    if line.block == after.line.block and not _is_listed(line):
        if line.flags & LineFlag.HEADER:
            needed = before.size + after.row - before.row - 1 + after.size
            return Break(HEADER_LAST, "table header last", needed > rows)
        return Break(_between_lines(before, after, rows))
    if line.text.endswith(":") and after.line.kind not in (Kind.HEADING, Kind.PARAGRAPH):
        return Break(INTRODUCTION)
    if after.row == before.row + 1:
        return Break(BETWEEN_ITEMS)
    unclear = kind is after.line.kind is Kind.PARAGRAPH and _seems_to_go_on(line, after.line)
    return Break(UNCLEAR if unclear else 0)


def _between_lines(before: Spot, after: Spot, rows: int) -> int:
    """The cost between two rows of a table or two kept lines."""
    body = after.body
    cost = KEPT_TOGETHER if body.end - body.start <= rows else 0
    if before.row - before.before <= body.start or after.row + after.size >= body.end:
        cost += ROW_ALONE
    inside = INSIDE.get(after.line.kind or Kind.PARAGRAPH, 0)
    return cost + (inside if after.row == before.row + 1 else 1)


def _is_listed(line: Line) -> bool:
    """Whether it is of a table set as hanging text or records: for a page break as good as a list."""
    return (
        line.kind is Kind.TABLE and bool(line.flags & LineFlag.FLOWING) and not line.flags & LineFlag.HEADER
    )


def _seems_to_go_on(line: Line, later: Line) -> bool:
    """Whether a paragraph seems to run from the last line of a page to the first of the next."""
    above, below = TextLine(line.text, 0), TextLine(later.text, 0)
    return crosses(above, below, above.end + line.slack, {above.indent})


def _inside(before: Spot, after: Spot, rows: int) -> Break:
    """A break in a unit."""
    kind = after.line.kind
    too_high = after.size > rows
    more = HYPHEN if before.line.flags & (LineFlag.HYPHEN | LineFlag.JOINED | LineFlag.MARKED) else 0
    if kind is Kind.HEADING:
        return Break(HEADING_SPLIT, "heading split", too_high, EMPTY_INSIDE)
    what = "row split" if kind is Kind.TABLE else "item split"
    if _is_listed(before.line):
        kind = Kind.ITEM
    if kind is Kind.TABLE:
        return Break(ROW_SPLIT + more, "row split", too_high, EMPTY_INSIDE)
    alone = (
        "first line alone"
        if after.before == 1
        else "last line alone"
        if after.before == after.size - 1
        else ""
    )
    if kind is Kind.PARAGRAPH or (too_high and kind in (Kind.ITEM, Kind.NOTE)):
        if alone:
            forced = too_high and rows < 4  # with 4 rows, 2 and 2 always go
            return Break(LINE_ALONE + more, alone, forced, EMPTY_INSIDE)
        if kind is Kind.PARAGRAPH and not _seems_to_go_on(before.line, after.line):
            more += UNCLEAR
        split = "" if kind is Kind.PARAGRAPH else what
        return Break(INSIDE[Kind.PARAGRAPH] + more, split, bool(split), EMPTY_INSIDE)
    if kind in (Kind.ITEM, Kind.NOTE):
        return Break(UNIT_SPLIT + more + (UNIT_SPLIT // 4 if alone else 0), what, emptiness=EMPTY_INSIDE)
    if kind is Kind.PICTURE:
        return Break(UNIT_SPLIT, "picture split", too_high, EMPTY_INSIDE)
    return Break(UNIT_SPLIT + more, emptiness=EMPTY_INSIDE)
