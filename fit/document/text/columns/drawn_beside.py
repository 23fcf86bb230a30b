"""A drawing at the right of a paragraph, or a box at the left of one: each stays whole, and the text is read by itself.

The lines of both stand in the same rows. A gutter of blanks parts them all the way down. What stands at the left is
read first.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import GUTTER
from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.pictures import boxes
from fit.document.text.signs.strokes import strength

ROWS = 5
"""Lines with a part of the drawing, at least."""
LETTERS = 2
"""Letters and figures in a line of the drawing, at most."""
SURE = 3
"""Lines that are surely drawn, at least."""
WRAPPED = 2
"""Lines of a text that found no room in one, at least."""
_CORNERS = ("+-", "+=")
TOLD = 0.6
"""The share of the lines beside the drawing that read as text, at least."""


def find_drawn_beside(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int, int]]:
    """The half-open runs of lines, blank lines around them, with such a drawing, and the column where it begins."""
    found: list[tuple[int, int, int]] = []
    index = 0
    while index < len(lines):
        if not _drawn_from(lines[index]):
            index += 1
            continue
        start = end = index
        while start and not lines[start].apart:
            start -= 1
        while end < len(lines) and (end == index or not lines[end].apart):
            end += 1
        part = lines[start:end]
        column = min(filter(None, map(_drawn_from, part)))
        free = all(taken[place] is None for place in range(start, end))
        if free and (not found or found[-1][1] <= start) and _beside(part, column):
            found.append((start, end, column))
        index = end
    return found


def find_boxes_beside(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int, int]]:
    """The half-open runs of lines, blank lines around them, with a box and wrapped text beside it, and the text's column.

    A few words that fit in one line stay where they are: they name the box.
    """
    found: list[tuple[int, int, int]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        if lines[index].text[:2] in _CORNERS and taken[index] is None and parted_above(lines, index):
            while end < len(lines) and not lines[end].apart and taken[end] is None:
                end += 1
            if parted_above(lines, end) and (column := _text_from(lines[index:end])):
                found.append((index, end, column))
        index = end
    return found


def _text_from(part: Sequence[Line]) -> int:
    """The column of the text that goes on from line to line behind boxes, one right below the other; 0 for none."""
    edge = part[0].indent + len(part[0].text.partition("  ")[0])
    beside = [line for line in part if line.end > edge]
    columns = {line.end - len(line.cells[edge:].lstrip(" ")) for line in beside}
    if len(beside) < WRAPPED or len(columns) > 1 or not boxes([line.cut(0, edge) for line in part]):
        return 0
    column = columns.pop()
    texts = [line.cells[column:] for line in beside]
    on = prose(texts[0]) and not closed(texts[0]) and starts_small(texts[1])
    return column if on and column - edge >= GUTTER else 0


def _drawn_from(line: Line) -> int:
    """The column behind a wide blank from which on a line has hardly a letter and begins with a sign; 0 for none."""
    column = 0
    place = line.end
    while (gap := line.cells.rfind("  ", line.indent, place)) > line.indent:
        rest = line.cells[gap + 2 :].lstrip(" ")
        if not rest or rest[0].isalnum() or sum(map(str.isalnum, rest)) > LETTERS:
            break
        column = line.end - len(rest)
        place = len(line.cells[:gap].rstrip(" "))
    return column


def _beside(part: Sequence[Line], column: int) -> bool:
    """Whether a gutter runs down before the column, text stands left of it and a drawing right of it."""
    if any(line.cells[column - GUTTER : column].strip(" ") for line in part):
        return False
    rows = [line for line in part if line.end > column]
    if len(rows) < ROWS or any(sum(map(str.isalnum, line.cells[column:])) > LETTERS for line in rows):
        return False
    sure = sum(strength(line.cells[column:].strip(" ")) == 2 for line in rows)
    told = sum(prose(line.cells[:column].strip(" ")) for line in rows)
    return sure >= SURE and told >= TOLD * len(rows)
