"""Fractions as they are written by hand: a line with strokes, the numerators above them and the denominators below."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line

BESIDE = 8
"""Words and signs beside the strokes, at most."""
_STROKE = re.compile(r"(?<!\S)-{3,}(?!\S)")
_EQUALS = re.compile(r"(?:^|\s)=\s")
_CELL = re.compile(r"\S+(?: \S+)*")


def find_fractions(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such fractions; what one blank line parts is one run."""
    found: list[tuple[int, int]] = []
    for index in range(1, len(lines) - 1):
        if "---" not in lines[index].text or "=" not in lines[index].text:
            continue
        if any(taken[near] is not None for near in (index - 1, index, index + 1)):
            continue
        if not _fraction(lines, index):
            continue
        if found and found[-1][1] == index - 1 and lines[index - 1].gap == 1:
            found[-1] = (found[-1][0], index + 2)
        else:
            found.append((index - 1, index + 2))
    return found


def _fraction(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is an equation with strokes, and all that stands above and below it stands over and under these."""
    above, line, below = lines[index - 1 : index + 2]
    strokes = [match.span() for match in _STROKE.finditer(line.cells)]
    if not strokes or not _EQUALS.search(line.cells):
        return False
    if len(line.text.split()) - len(strokes) > BESIDE:
        return False
    return all(_on_strokes(one, strokes) for one in (above, below))


def _on_strokes(line: Line, strokes: Sequence[tuple[int, int]]) -> bool:
    """Whether each stroke has its own words in a line, and none stands elsewhere."""
    cells = [match.span() for match in _CELL.finditer(line.cells)]
    return len(cells) == len(strokes) and all(
        start - 1 <= first and last <= end + 1
        for (first, last), (start, end) in zip(cells, strokes, strict=True)
    )
