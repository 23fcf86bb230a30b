"""Change bars: a bar in the margin beside each line that was altered since the last issue. It is no part of the text."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

LEAST = 3
"""Lines with such a bar, at least."""
AWAY = 2
"""Blanks between a bar and the text beside it, at least."""
_BARS: Final = frozenset("|\u2502\u2503\u2551")


def find_change_bars(lines: Sequence[Line]) -> dict[int, int]:
    """The column of its bar for each altered line; all of them stand under one another in a margin that has nothing else."""
    right = max((line.end for line in lines), default=0) - 1
    barred = [index for index, line in enumerate(lines) if line.end > right]
    if len(barred) >= LEAST and all(lines[index].cells[-1:] in _BARS for index in barred):
        beside = [lines[index].cells[:right] for index in barred]
        clear = all(text[-AWAY:].isspace() for text in beside)
        return dict.fromkeys(barred, right) if clear and _altered(lines, barred, beside) else {}
    left = min((line.indent for line in lines if line.cells), default=0)
    barred = [index for index, line in enumerate(lines) if line.cells and line.indent <= left + AWAY]
    if len(barred) >= LEAST and all(lines[index].text[0] in _BARS for index in barred):
        beside = [" " * (left + 1) + lines[index].text[1:] for index in barred]
        marked = set(barred)
        under = {line.indent for index, line in enumerate(lines) if line.cells and index not in marked}
        least = min((len(text) - len(text.lstrip()) for text in beside if text.strip()), default=-1)
        clear = least in under and all(lines[index].indent == left for index in barred)
        return dict.fromkeys(barred, left) if clear and _altered(lines, barred, beside) else {}
    return {}


def _altered(lines: Sequence[Line], barred: Sequence[int], beside: Sequence[str]) -> bool:
    """Whether bars stand beside running text, fewer lines than not, and one of their runs begins or ends in mid-block."""
    if 2 * len(barred) > sum(line.cells != "" for line in lines):
        return False
    told = [text for text in beside if text.strip()]
    if 2 * sum(prose(text.strip()) for text in told) < len(told) or not _BARS.isdisjoint("".join(told)):
        return False
    near = {index + step for index in barred for step in (-1, 1)} - set(barred)
    return any(lines[index].cells for index in near if 0 <= index < len(lines))
