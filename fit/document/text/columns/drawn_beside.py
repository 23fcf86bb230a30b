"""A box at the left of a paragraph: it stays whole, and the text is read by itself.

The lines of both stand in the same rows. A gutter of blanks parts them all the way down. The box is read first.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import prose
from fit.document.text.signs.pictures import boxes

WRAPPED = 2
"""Lines of a text that found no room in one, at least."""
_CORNERS = ("+-", "+=")


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
            if column := _text_from(lines[index:end]):
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
    on = prose(texts[0])
    return column if on else 0
