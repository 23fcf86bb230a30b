"""Two or three lines of many cells, each behind a label: a value stands under its number, so that no line says anything alone."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import CELLS
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

LINES = range(2, 4)
"""Lines of one; more are the rows of a table."""
VALUES = 5
"""Cells behind each label, at least."""
Span = tuple[int, int]


def find_matrices(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such, to be kept as they are drawn."""
    found: list[tuple[int, int]] = []
    index = 0
    while index + 1 < len(lines):
        end = index + 1
        if taken[index] is None and ":  " in lines[index].text and (cells := _values(lines[index])):
            while end < len(lines) and taken[end] is None and _under(lines[end], cells):
                cells = _cells(lines[end])
                end += 1
            if end - index in LINES:
                found.append((index, end))
        index = end
    return found


def _values(line: Line) -> list[Span]:
    """The cells of a line none of which is drawn with signs alone."""
    cells = _cells(line)
    return cells if all(any(map(str.isalnum, line.cells[first:last])) for first, last in cells) else []


def _cells(line: Line) -> list[Span]:
    """Where the values behind a label stand; nothing where a line has no label, few of them, or bars between them."""
    label, *values = [match.span() for match in CELLS.finditer(line.cells)]
    labelled = line.cells[label[1] - 1] == ":" and "|" not in line.text and not prose(line.text)
    return values if labelled and len(values) >= VALUES else []


def _under(line: Line, above: Sequence[Span]) -> bool:
    """Whether a line has a label too, and one value under each of those above."""
    if line.apart or ":  " not in line.text:
        return False
    cells = _cells(line)
    return len(cells) == len(above) and all(
        first[0] < second[1] and second[0] < first[1] for first, second in zip(cells, above, strict=True)
    )
