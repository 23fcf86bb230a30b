"""Lines of many cells behind a label that say nothing alone: values under their numbers, or marks under what they mark."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import chain, pairwise

from fit.document.text.columns.gutters import CELLS
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

LINES = range(2, 4)
"""Lines of one; more are the rows of a table."""
VALUES = 5
"""Cells behind each label, at least."""
ROWS = 3
"""Rows of marks, at least."""
_SIGNS = frozenset((" *", " +", " x", " X"))
_MARKED = re.compile(r"[^\W\d_][\w-]*(?P<marks>(?: +(?P<sign>[*+xX]))(?: +(?P=sign))*)")
"""A word, and the same sign again and again."""
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


def find_marks(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that mark with one sign what stands over it, so close that no gutter parts the columns.

    With the lines above them up to a blank one or running text, which say what is marked.
    """
    found: list[tuple[int, int]] = []
    end = 0
    for index, line in enumerate(lines):
        if index < end or line.text[-2:] not in _SIGNS or taken[index] is not None:
            continue
        rows: list[list[int]] = []
        end = index
        while end < len(lines) and taken[end] is None and not (rows and lines[end].apart):
            marks = _marks(lines[end])
            if not marks:
                break
            rows.append(marks)
            end += 1
        if _close(rows):
            found.append((_top(lines, taken, index, found[-1][1] if found else 0), end))
        end = max(end, index + 1)
    return found


def _top(lines: Sequence[Line], taken: Sequence[object], start: int, floor: int) -> int:
    """The first line of the head that stands right over rows of marks."""
    while (
        start > floor
        and taken[start - 1] is None
        and not (lines[start].apart or prose(lines[start - 1].text))
    ):
        start -= 1
    return start


def _marks(line: Line) -> list[int]:
    """The columns of the marks of a row."""
    match = _MARKED.fullmatch(line.text)
    if match is None:
        return []
    start = line.indent + match.start("marks")
    return [start + place for place, sign in enumerate(match["marks"]) if sign != " "]


def _close(rows: Sequence[Sequence[int]]) -> bool:
    """Whether marks stand two cells apart in several rows, and all of them in columns so far apart."""
    steps = [[below - above for above, below in pairwise(row)] for row in rows]
    even = {place % 2 for place in chain.from_iterable(rows)}
    return (
        sum(2 in row for row in steps) >= ROWS
        and len(even) == 1
        and any(max(row, default=0) > 2 for row in steps)
    )


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
