"""Tables whose names and parted rule say where the columns are, though some cells are longer than those are wide."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import CELLS
from fit.document.text.columns.runs import grow
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.rules import segmented

COLUMNS = 3
"""Columns, at least: a long key of two has its text below it, as a list has."""
ROWS = 3
"""Rows that begin each of their cells where a column does, at least."""


def find_overflowing(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables and that gutters alone do not show whole.

    Their keys are single words at the margin, each the start of a row; no blank line stands between the rows.
    """
    found: list[tuple[int, int, list[Block]]] = []
    for rule in range(1, len(lines) - 1):
        head, line = lines[rule - 1], lines[rule]
        if not segmented(line.text) or line.gap or taken[rule - 1] is not None or taken[rule] is not None:
            continue
        starts = [match.start() for match in CELLS.finditer(line.cells)]
        if len(starts) < COLUMNS or [match.start() for match in CELLS.finditer(head.cells)] != starts:
            continue
        end = _end(lines, taken, rule + 1, starts)
        if _settled(lines[rule + 1 : end], starts) and grow(lines, taken, rule - 1, 1).end < end:
            titles = (place for place in range(rule + 2, end) if _title_of_page(lines, place, starts))
            end = next(titles, end)
            found.append((rule - 1, end, [_table(lines[rule - 1 : end], starts, hyphens)]))
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], first: int, starts: Sequence[int]) -> int:
    """The line before which the table that has its first row in ``first`` ends."""
    end = first
    while end < len(lines) and taken[end] is None and (not lines[end].gap or lines[end].crossing):
        line = lines[end]
        key = _key_end(line)
        alone = key == line.end or key >= starts[1] - 1 or line.cells[key : key + 2] == "  "
        if line.indent < starts[0] or (line.indent == starts[0] and not alone):
            break
        end += 1
    return end


def _title_of_page(lines: Sequence[Line], index: int, starts: Sequence[int]) -> bool:
    """Whether the first line of a page stands alone over a blank one, with no cell where a column after the keys starts."""
    if not lines[index].crossing:
        return False
    alone = index + 1 < len(lines) and lines[index + 1].gap > 0
    return alone and not any(match.start() in starts[1:] for match in CELLS.finditer(lines[index].cells))


def _key_end(line: Line) -> int:
    """Where the first word of a line ends."""
    blank = line.cells.find(" ", line.indent)
    return line.end if blank < 0 else blank


def _settled(body: Sequence[Line], starts: Sequence[int]) -> bool:
    """Whether some rows, and nearly all lines, begin where the columns do."""
    whole = sum([first for first, _ in _cells(line, starts) if first >= 0] == list(starts) for line in body)
    return whole >= ROWS


def _cells(line: Line, starts: Sequence[int]) -> list[tuple[int, int]]:
    """Where the text of each column stands in a line, half-open; ``(-1, -1)`` where it has none.

    A cell that begins where no column does stands right of a long one: it belongs to the next column.
    """
    cells = [(-1, -1)] * len(starts)
    place = line.indent
    column = -1
    if line.indent == starts[0]:
        place, column = _key_end(line), 0
        cells[0] = (line.indent, place)
    for match in CELLS.finditer(line.cells, place):
        first, last = match.span()
        while first < last:
            under = bisect_right(starts, first) - 1
            column = max(1, under if column < 0 or first in starts else min(under, column + 1))
            if column == len(starts) - 1:
                cells[column] = (first, line.end)
                return cells
            tight = (start for start in starts[column + 1 :] if first < start < last)
            end = next((start for start in tight if line.cells[start - 1] == " "), last)
            cells[column] = (first if cells[column][0] < 0 else cells[column][0], end)
            first = end
    return cells


def _table(lines: Sequence[Line], starts: Sequence[int], hyphens: Hyphens) -> Block:
    head, _, *body = lines
    rows: list[list[list[Text]]] = [[[head.piece(*match.span())] for match in CELLS.finditer(head.cells)]]
    for line in body:
        if line.indent == starts[0] or len(rows) == 1:
            rows.append([[] for _ in starts])
        for cell, span in zip(rows[-1], _cells(line, starts), strict=True):
            if span[0] >= 0:
                cell.append(line.piece(*span))
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple(tuple(flow(cell, hyphens) for cell in row) for row in rows),
        header_rows=1,
        note="table with long cells",
    )
