"""Lines right above or below a drawing that belong to it: a label for each of its parts, and what its last arrow points at."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import prose

APART = 4
"""Blank columns between two parts of a drawing, at least."""
SHIFT = 4
"""Cells by which a label begins left or right of its part, at most."""
POINTED = 3
"""Words that an arrow points at, or that name what a drawing ends in, at most."""
CLEAR = 2
"""Cells between such a name and the ends of the stroke above it, at least."""
_LABEL = re.compile(r"\S+(?: {1,3}\S+)*")
_HEADS = frozenset("vV|")
"""Ends of an arrow that points down."""


def with_captions(
    lines: Sequence[Line], taken: Sequence[object], found: Sequence[tuple[int, int]]
) -> list[tuple[int, int]]:
    """The half-open runs of lines that are drawings, each with the labels right above and below it."""
    result: list[tuple[int, int]] = []
    for number, (start, end) in enumerate(found):
        first, last = start, end
        floor = result[-1][1] if result else 0
        limit = found[number + 1][0] if number + 1 < len(found) else len(lines)
        parts = _parts(lines[start:end])
        if start > floor and taken[start - 1] is None and lines[start].gap <= 1:
            first -= not lines[start].crossing and _labels(lines[start - 1], parts)
        if end < limit and taken[end] is None and not lines[end].crossing:
            below = lines[end].gap <= 1 and _labels(lines[end], parts)
            last += below or (not lines[end].gap and (_pointed_at(lines, end) or _under(lines, end)))
        result.append((first, last))
    return result


def _parts(drawing: Sequence[Line]) -> list[tuple[int, int]]:
    """The half-open runs of columns of the parts of a drawing that stand side by side."""
    inked = sorted({column for line in drawing for column, cell in enumerate(line.cells) if cell != " "})
    parts: list[tuple[int, int]] = []
    for column in inked:
        if parts and column < parts[-1][1] + APART:
            parts[-1] = (parts[-1][0], column + 1)
        else:
            parts.append((column, column + 1))
    return parts


def _labels(line: Line, parts: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has one label for each of several parts of a drawing, and each begins where its part does."""
    if len(parts) < 2 or "    " not in line.text:
        return False
    labels = list(_LABEL.finditer(line.cells))
    return len(labels) == len(parts) and all(
        abs(label.start() - first) <= SHIFT and label.end() <= last + SHIFT
        for label, (first, last) in zip(labels, parts, strict=True)
    )


def _pointed_at(lines: Sequence[Line], index: int) -> bool:
    """Whether a few words stand right below the end of an arrow, which is all of its line."""
    above, line = lines[index - 1], lines[index]
    alone = index + 1 == len(lines) or lines[index + 1].gap > 0
    few = len(line.text.split()) <= POINTED and not prose(line.text)
    return alone and few and above.text in _HEADS and line.indent <= above.indent + 1 <= line.end + 1


def _under(lines: Sequence[Line], index: int) -> bool:
    """Whether a few words in small letters stand alone right below the lowest stroke, clear of both of its ends."""
    above, line = lines[index - 1], lines[index]
    inside = above.indent + CLEAR <= line.indent and line.end <= above.end - CLEAR
    if not inside or not line.text[0].islower() or len(line.text.split()) > POINTED:
        return False
    return parted_above(lines, index + 1) and line.text[-1].isalnum()
