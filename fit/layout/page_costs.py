"""What a page break costs before each line, and which fault it would be.

First and last lines of a paragraph alone are the `orphans` and `widows` of CSS Fragmentation Level 3, at their
initial value of 2. The weights between the faults are our own.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from fit.document.blocks import Kind
from fit.layout.lines import Line, LineFlag
from fit.width import text_cells

HEADING_LAST = 400
HEADING_SPLIT = 500
HEADER_LAST = 300
LINE_ALONE = 200
ROW_SPLIT = 200
UNIT_SPLIT = 120
"""An item, a note, a picture, a kept line that takes several."""
INTRODUCTION = 30
"""After a line that ends in a colon, before what it announces."""
HYPHEN = 15
"""In a word."""
INSIDE = {Kind.PARAGRAPH: 8, Kind.PREFORMATTED: 12, Kind.TABLE: 6, Kind.ITEM: 8, Kind.NOTE: 8}
"""Inside what belongs together, where no rule is broken."""
BETWEEN_ITEMS = 3
UNCLEAR = 25
"""Where the eye cannot tell whether the paragraph goes on: a sentence ends with a full line at the end of the
paragraph, or with a short one inside it."""


class Break(NamedTuple):
    """A page break before a line."""

    cost: int
    fault: str = ""
    forced: bool = False
    """Whether the fault cannot be avoided, since what is split is higher than a page."""


class Spot(NamedTuple):
    """A line that is not blank, in its unit."""

    line: Line
    row: int
    """Its place among all lines, blank ones too."""
    before: int
    """Lines of its unit before it."""
    size: int
    """Lines of its unit."""


def find_spots(lines: Sequence[Line]) -> list[Spot]:
    """The lines that are not blank, each with its place in its unit."""
    spots: list[Spot] = []
    unit: list[tuple[int, Line]] = []
    for row, line in enumerate(lines):
        if line.flags & LineFlag.BLANK:
            continue
        unit.append((row, line))
        if line.flags & LineFlag.LAST:
            spots += [Spot(each, at, number, len(unit)) for number, (at, each) in enumerate(unit)]
            unit = []
    return spots + [Spot(each, at, number, len(unit)) for number, (at, each) in enumerate(unit)]


def price(before: Spot, after: Spot, rows: int) -> Break:
    """A break between two lines that follow each other, on pages of ``rows`` lines."""
    if after.before:
        return _inside(before, after, rows)
    line, kind = before.line, before.line.kind
    if kind is Kind.HEADING:
        needed = before.size + after.row - before.row - 1 + min(after.size, 2)
        return Break(HEADING_LAST, "heading last", needed > rows)
    if line.block == after.line.block:
        if line.flags & LineFlag.HEADER:
            needed = before.size + after.row - before.row - 1 + after.size
            return Break(HEADER_LAST, "table header last", needed > rows)
        return Break(INSIDE.get(after.line.kind or Kind.PARAGRAPH, 0) if after.row == before.row + 1 else 1)
    if line.text.endswith(":") and after.line.kind not in (Kind.HEADING, Kind.PARAGRAPH):
        return Break(INTRODUCTION)
    if after.row == before.row + 1:
        return Break(BETWEEN_ITEMS)
    return Break(
        UNCLEAR if line.flags & LineFlag.FLOWING and _closes(line) and not _has_room(line, after.line) else 0
    )


def _closes(line: Line) -> bool:
    return line.text.rstrip("\"')]").endswith((".", "!", "?"))


def _has_room(line: Line, later: Line) -> bool:
    """Whether the line could have taken the first word of the next, two blanks after a full stop as typists set them."""
    words = later.text.split(maxsplit=1)
    return bool(words) and text_cells(words[0]) + 2 <= line.slack


def _inside(before: Spot, after: Spot, rows: int) -> Break:
    """A break in a unit."""
    kind = after.line.kind
    too_high = after.size > rows
    more = HYPHEN if before.line.flags & (LineFlag.HYPHEN | LineFlag.JOINED | LineFlag.MARKED) else 0
    if kind is Kind.HEADING:
        return Break(HEADING_SPLIT, "heading split", too_high)
    if kind is Kind.TABLE:
        return Break(ROW_SPLIT + more, "row split", too_high)
    alone = (
        "first line alone"
        if after.before == 1
        else "last line alone"
        if after.before == after.size - 1
        else ""
    )
    if kind is Kind.PARAGRAPH or (too_high and kind in (Kind.ITEM, Kind.NOTE)):
        if alone:
            return Break(LINE_ALONE + more, alone, too_high and rows < 4)  # with 4 rows, 2 and 2 always go
        if _closes(before.line) and _has_room(before.line, after.line):
            more += UNCLEAR
        split = "" if kind is Kind.PARAGRAPH else "item split"
        return Break(INSIDE[Kind.PARAGRAPH] + more, split, bool(split))
    if kind in (Kind.ITEM, Kind.NOTE):
        return Break(UNIT_SPLIT + more + (UNIT_SPLIT // 4 if alone else 0), "item split")
    if kind is Kind.PICTURE:
        return Break(UNIT_SPLIT, "picture split", too_high)
    return Break(UNIT_SPLIT + more)
