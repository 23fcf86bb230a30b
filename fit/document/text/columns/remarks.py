"""Output with remarks beside it, an arrow before each: `oil: 14 gallons    <- what is in the tank`.

A remark may go on below itself, far in. Neither the output nor the remarks can be filled without losing which is which.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise, starmap

from fit.document.text.columns.gutters import near
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

_REMARK = re.compile(r"(?<=\S) {2,}<-+ ?(?=[^\W_])(?!.* {3})")
_STROKES = "^|"
"""What a remark below the output starts with, where a stroke leads from it up to what it is about."""
SEVERAL = 2
"""Remarks in one run of lines, at least; or one that goes on below itself."""
BESIDE = 2
"""Cells by which the rest of a remark may stand off the column of its first word."""


def find_remarked(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines, with no blank line between, that have such remarks."""
    found: list[tuple[int, int]] = []
    index = floor = 0
    while index < len(lines):
        if "<-" not in lines[index].cells or not _remark(lines[index]) or taken[index] is not None:
            index += 1
            continue
        column = _remark(lines[index])
        start, end = index, index + 1
        while start > floor and near(lines, taken, start) and _beside(lines[start - 1], column):
            start -= 1
        while end < len(lines) and near(lines, taken, end) and _beside(lines[end], column):
            end += 1
        remarks = sum(_remark(line) > 0 for line in lines[start:end])
        if remarks >= SEVERAL or any(starmap(_goes_on, pairwise(lines[start:end]))):
            found.append((start, end))
            floor = end
        index = end
    return found


def _remark(line: Line) -> int:
    """The column of the remark beside what the line says, or 0."""
    match = _REMARK.search(line.cells)
    return 0 if match is None else match.end()


def _beside(line: Line, column: int) -> bool:
    """Whether a line stands with them: it has a remark, or is part of one, or has strokes, or is no running text."""
    part = _remark(line) > 0
    said = line.cells[:column].strip(" ")
    return part or line.text[0] in _STROKES or "   " in said or not prose(said)


def _goes_on(line: Line, below: Line) -> bool:
    """Whether the line below has nothing but the rest of a remark."""
    column = _remark(line)
    return column > 0 and abs(below.indent - column) <= BESIDE
