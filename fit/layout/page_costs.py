"""What a page break costs before each line, and which fault it would be.

A fault is a heading last on a page, or a label before what explains it, a row of a table or an item that fits on a page
but is split, and the first or last line of a paragraph alone: the `orphans` and `widows` of CSS Fragmentation Level 3, at their initial value of 2. What
is higher than a page cannot stay whole. It breaks like a paragraph, best where one ends inside it, and that is no
fault. One fault outweighs everything else that a break may cost; the other weights are our own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from fit.document.blocks import Kind
from fit.document.text.line import Line as TextLine
from fit.document.text.signs.joins import crosses
from fit.document.text.signs.measure import closed
from fit.layout.lines import Line, LineFlag
from fit.layout.nests import rows_of_nests
from fit.units import Span

FAULT = 100_000
"""As much as ninety pages that are nearly empty: for want of nothing else is a page ended badly."""
HEADING_LAST = FAULT + 500
TITLE_LAST = FAULT
"""After a heading over one of the same or a higher rank: a by-line, a subtitle. It heads nothing, and where a page has
to end badly, it is best ended there.
"""
HEADING_SPLIT = 2 * FAULT + 600
"""Its first lines are last on a page, and the rest says nothing by itself."""
HEADER_LAST = FAULT + 200
LABEL_LAST = FAULT + 400
"""After the label of an item that has no text of its own, and before what explains it or the next label that it does."""
LINE_ALONE = FAULT + 300
ROW_SPLIT = FAULT + 300
ITEM_SPLIT = FAULT + 240
"""An item, a note, a picture."""
NEST_SPLIT = FAULT
"""An item parted from what is deeper below it."""
CONTINUED = 240
"""Inside a kept line that takes several, and inside a drawing that is higher than a page."""
LEAD_ALONE = 150
"""After the one line that an item has before what is deeper below it, or its label before a list: it is like a heading."""
CAPTION_LAST = 240
"""After the caption of a table or picture, which nobody should have to turn back to."""
TITLE_LIKE = 150
"""After a line alone that ends no sentence, before a text of several lines: it reads as the title of that, whatever it is."""
INTRODUCTION = 90
"""After a line that ends in a colon, before what it announces: as bad as six of seven rows that stay empty. In manuals half
as many pages ended so as at 30, for three in a thousand more."""
HYPHEN = 15
"""In a word."""
INSIDE = {Kind.PARAGRAPH: 8, Kind.PREFORMATTED: 12, Kind.TABLE: 6, Kind.ITEM: 8, Kind.NOTE: 8}
"""Inside what belongs together, where no rule is broken."""
KEPT_TOGETHER = 60
"""Inside a table or kept lines that would fit on one page."""
ROW_ALONE = 40
"""The first or last row of a table, or of kept lines, alone: a reader sees no table in it."""
BETWEEN_ITEMS = 3
BETWEEN_PARTS = 4
"""Where a paragraph or a field ends in an item or record that is higher than a page."""
UNCLEAR = 80
"""Where a reader of the pages cannot tell whether the paragraph goes on: a sentence ends with a full line at the end
of the paragraph, or with a short one inside it. As our own reader of plain text judges it."""


EMPTY_INSIDE = 10
"""A page that is not full looks as if what stands on it ended there."""

_ITEMS = (Kind.ITEM, Kind.NOTE)
_CAPTIONED = (Kind.TABLE, Kind.PICTURE, Kind.PREFORMATTED)
_CAPTION = re.compile(
    r"(?:table|fig(?:ure|\.)|plate|chart|map|listing|example)\s+\d{1,3}(?:[-.]\d{1,2})*(?=[.:)\s]|$)",
    re.IGNORECASE,
)


class Break(NamedTuple):
    """A page break before a line."""

    cost: int
    fault: str = ""
    emptiness: int = 1
    """What the page before it costs for its rows that are left empty: times `emptiness`."""


def emptiness(unused: int, rows: int) -> int:
    """How bad it is that ``unused`` of the ``rows`` of a page are empty: squared, 100 for all of them."""
    return 100 * unused * unused // (rows * rows)


NO_NEST = Span(0, 0)


class Spot(NamedTuple):
    """A line that is not blank, in its unit."""

    line: Line
    row: int
    """Its place among all lines, blank ones too."""
    unit: Span
    """The rows of its unit: a paragraph, an item, a row of a table, a record."""
    part: Span
    """The rows of its paragraph or field in the unit; mostly those of the unit."""
    body: Span
    """The rows of its block, a table's header left out."""
    nest: Span = NO_NEST
    """The rows of the innermost item that holds it and the line before it together."""
    shared: bool = False
    """Whether its unit begins with a label that has no text of its own."""


def find_spots(lines: Sequence[Line], nests: Sequence[Span] = ()) -> list[Spot]:
    """The lines that are not blank, each with its place in its unit.

    ``nests`` are the blocks of each item that has more than its own text (`fit.layout.nests.find_nests`).
    """
    filled = [(row, line) for row, line in enumerate(lines) if not line.flags & LineFlag.BLANK]
    starts: dict[int, int] = {}
    ends: dict[int, int] = {}
    for row, line in filled:
        if line.flags & LineFlag.HEADER:
            starts[line.block] = row + 1
        starts.setdefault(line.block, row)
        ends[line.block] = row + 1
    around = rows_of_nests(lines, nests) if nests else {}
    spots: list[Spot] = []
    parts: list[Span] = []
    unit = part = filled[0][0] if filled else 0
    waiting: list[tuple[int, Line, int]] = []
    for row, line in filled:
        if not waiting:
            unit = row
            parts = []
        if not waiting or waiting[-1][1].flags & LineFlag.LAST:
            part = row
            parts.append(Span(row, row))
        waiting.append((row, line, len(parts) - 1))
        parts[-1] = Span(part, row + 1)
        if line.flags & (LineFlag.LAST | LineFlag.WITH_NEXT) == LineFlag.LAST or row == filled[-1][0]:
            whole = Span(unit, row + 1)
            shared = bool(waiting[0][1].flags & LineFlag.LABEL)
            spots += [
                Spot(
                    each,
                    at,
                    whole,
                    parts[number],
                    Span(starts[each.block], ends[each.block]),
                    around.get(at, NO_NEST),
                    shared,
                )
                for at, each, number in waiting
            ]
            waiting = []
    return spots


def price(before: Spot, after: Spot, rows: int) -> Break:
    """A break between two lines that follow each other, on pages of ``rows`` lines."""
    found = _inside(before, after, rows) if after.row > after.unit.start else _between(before, after, rows)
    if found.fault or after.nest is NO_NEST:
        return found
    if after.nest.end - after.nest.start <= rows:
        return Break(NEST_SPLIT + found.cost, "item split", EMPTY_INSIDE)
    if after.nest.start != before.unit.start:
        return found
    is_label = bool(before.line.flags & LineFlag.LABEL)
    if is_label and after.line.kind not in _ITEMS:  # a list may begin on a page of its own
        return Break(LABEL_LAST, "label last")
    alone = is_label or before.unit.end - before.unit.start == 1
    return found._replace(cost=max(found.cost, LEAD_ALONE)) if alone else found


def count_tall(spots: Sequence[Spot], rows: int) -> int:
    """How many items, with what belongs to them, records and drawings are higher than a page."""
    whole = (*_ITEMS, Kind.TABLE, Kind.PICTURE)
    units = (spot.unit for spot in spots if spot.line.kind in whole)
    nests = (spot.nest for spot in spots)
    return len({each.start for group in (units, nests) for each in group if each.end - each.start > rows})


def is_bound(lines: Sequence[int], place: int, is_fault: Callable[[int], bool], rows: int) -> bool:
    """Whether a fault could not be avoided: the breaks next to it that are none are further apart than a page.

    ``lines`` has the row of each spot, of blank lines those alone that cannot be left out; ``is_fault`` tells it of
    the break before each.
    """
    start, end = place - 1, place + 1
    while start and is_fault(start) and lines[place] - lines[start] < rows:
        start -= 1
    while end < len(lines) and is_fault(end) and lines[end - 1] - lines[start] < rows:
        end += 1
    return lines[end - 1] - lines[start] >= rows


def _between(before: Spot, after: Spot, rows: int) -> Break:
    """A break between two units."""
    line, kind = before.line, before.line.kind
    if kind is Kind.HEADING:
        heads = after.line.kind is not Kind.HEADING or after.line.heading_level > line.heading_level
        return Break(HEADING_LAST if heads else TITLE_LAST, "heading last")
    if line.block == after.line.block and not _is_listed(line):
        if line.flags & LineFlag.HEADER:
            return Break(HEADER_LAST, "table header last")
        return Break(_between_lines(before, after, rows))
    if after.line.kind in _CAPTIONED and _is_caption(before):
        return Break(CAPTION_LAST)
    if kind is Kind.PARAGRAPH and _reads_as_title(before, after):
        return Break(TITLE_LIKE)
    if line.text.endswith(":") and (
        after.line.kind not in (Kind.HEADING, Kind.PARAGRAPH) or _set_in(line, after.line)
    ):
        return Break(INTRODUCTION)
    if after.row == before.row + 1:
        return Break(BETWEEN_ITEMS)
    unclear = kind is after.line.kind is Kind.PARAGRAPH and _seems_to_go_on(line, after.line)
    return Break(UNCLEAR if unclear else 0)


def _set_in(line: Line, later: Line) -> bool:
    """Whether a text below stands deeper: it belongs to what is above it."""
    above, below = (len(each.text) - len(each.text.lstrip()) for each in (line, later))
    return later.kind is Kind.PARAGRAPH and below > above


def _is_caption(spot: Spot) -> bool:
    """Whether a line is the caption of what stands below it: alone, with the number of a table or figure."""
    alone = spot.unit.end - spot.unit.start == 1 == spot.body.end - spot.body.start
    return alone and _CAPTION.match(spot.line.text.lstrip()) is not None


def _reads_as_title(before: Spot, after: Spot) -> bool:
    """Whether a paragraph of one line that ends no sentence stands over a text of several lines."""
    alone = before.unit.end - before.unit.start == 1 == before.body.end - before.body.start
    more = after.unit.end - after.unit.start > 1 or after.line.kind in (*_ITEMS, *_CAPTIONED)
    return alone and more and after.line.kind is not Kind.HEADING and not closed(before.line.text)


def _between_lines(before: Spot, after: Spot, rows: int) -> int:
    """The cost between two rows of a table or two kept lines."""
    body = after.body
    cost = KEPT_TOGETHER if body.end - body.start <= rows else 0
    if before.unit.start <= body.start or after.unit.end >= body.end:
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
    cut = LineFlag.HYPHEN | LineFlag.JOINED | LineFlag.MARKED
    more = HYPHEN if before.line.flags & cut else 0
    fits = after.unit.end - after.unit.start <= rows
    if kind is Kind.HEADING:
        return Break(HEADING_SPLIT, "heading split", EMPTY_INSIDE)
    if kind is Kind.PREFORMATTED or (kind is Kind.PICTURE and not fits):
        return Break(CONTINUED + more, emptiness=EMPTY_INSIDE)
    if kind is Kind.PICTURE:
        return Break(ITEM_SPLIT, "picture split", EMPTY_INSIDE)
    in_field = after.row > after.part.start and after.part.end - after.part.start <= rows
    if kind is Kind.TABLE and (fits or in_field):
        return Break(ROW_SPLIT + more, "row split", EMPTY_INSIDE)
    if kind in _ITEMS and _fit_together(before, after, rows):
        return Break(ITEM_SPLIT + more, "item split", EMPTY_INSIDE)
    if before.line.flags & LineFlag.LABEL and after.row == after.part.start:
        return Break(LABEL_LAST, "label last", EMPTY_INSIDE)
    if after.row == after.part.start and not _is_label(before, after):
        return Break(BETWEEN_PARTS)
    return _in_paragraph(before, after, more)


def _fit_together(before: Spot, after: Spot, rows: int) -> bool:
    """Whether two lines are of one thing that fits on a page: the unit, or an item in a record that does not."""
    own = before.line.block == after.line.block and not after.shared
    whole = before.body if own else after.unit
    return min(whole.end - whole.start, after.unit.end - after.unit.start) <= rows


def _is_label(before: Spot, after: Spot) -> bool:
    """Whether a line ends the label of the text below it."""
    return before.line.block == after.line.block and after.line.kind in _ITEMS


def _in_paragraph(before: Spot, after: Spot, more: int) -> Break:
    """A break in a paragraph, or in what breaks like one."""
    listed = after.line.kind in _ITEMS
    whole = after.body if listed else after.part  # an item's label is of its lines
    alone = (
        "first line alone"
        if after.row == whole.start + 1
        else "last line alone"
        if after.row == whole.end - 1
        else ""
    )
    if alone:
        return Break(LINE_ALONE + more, alone, EMPTY_INSIDE)
    if after.line.kind is Kind.PARAGRAPH and not _seems_to_go_on(before.line, after.line):
        more += UNCLEAR
    return Break(INSIDE[Kind.PARAGRAPH] + more, emptiness=EMPTY_INSIDE)
