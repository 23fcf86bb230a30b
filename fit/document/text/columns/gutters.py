"""Gutters: the blanks that part the columns of a run of lines, and what stands in each column.

Masks are integers with one bit a cell, bit 0 the first column: the union of a run's masks shows its gutters.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from fit.document.text.line import Line

GUTTER = 2
"""Cells of blank that part two columns, at least."""
_WIDE_BLANK = re.compile(r"(?<=\S) {2,}(?=\S)")
CELLS = re.compile(r"\S+(?: \S+)*")


@dataclass(slots=True)
class Run:
    """Lines ``start <= i < end`` with common gutters."""

    start: int
    end: int
    columns: list[tuple[int, int]]
    """Half-open cells of each column; the last one is open to the right."""
    rules: set[int] = field(default_factory=set)
    """Indices of its lines that are rules."""
    rests: set[int] = field(default_factory=set)
    """Indices of its lines that go on with the last cell of the row above, at the margin."""
    heads: set[int] = field(default_factory=set)
    """Indices of its lines that are running heads or feet between pages of columns."""


def has_gutter(line: Line) -> bool:
    """Whether the line has a blank wide enough inside."""
    return "  " in line.text and _WIDE_BLANK.search(line.text) is not None


def columns_of(union: int) -> list[tuple[int, int]]:
    """The columns that the gutters of a union part, as half-open cells."""
    columns: list[tuple[int, int]] = []
    start = end = -1
    bits = bin(union)[:1:-1]
    for column, bit in enumerate(bits):
        if bit == "1":
            if start < 0:
                start = column
            elif column - end >= GUTTER:
                columns.append((start, end))
                start = column
            end = column + 1
    if start >= 0:
        columns.append((start, end))
    return columns


def near(lines: Sequence[Line], taken: Sequence[object], index: int) -> bool:
    """Whether a line that is free stands right below the one above it, which is free too."""
    return taken[index] is None and taken[index - 1] is None and not lines[index].apart


def cell(line: Line, columns: Sequence[tuple[int, int]], index: int) -> str:
    """The text of one cell."""
    start = columns[index][0]
    end = columns[index + 1][0] if index + 1 < len(columns) else line.end
    return line.cells[start:end].strip(" ")


def filled(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """How many columns of the line hold text."""
    return sum(bool(cell(line, columns, index)) for index in range(len(columns)))
