"""Comments of program text, several lines each, that stand by themselves: their stars and semicolons are no bullets."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code

OPENINGS = frozenset(("/*", "/**"))
CLOSINGS = frozenset(("*/", "**/"))
"""What alone on its line opens or closes a comment, whatever stands between."""
LONGEST = 60
"""Lines of a comment, at most, of which not each begins with a star."""


def find_comments(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are one comment each.

    So are lines that all begin with a semicolon where one has nothing else: that sign marks an empty line too.
    """
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        text = lines[index].text
        if text[:1] in {";", "/"} and taken[index] is None:
            end = _remarks(lines, taken, index) or _starred(lines, index) or _enclosed(lines, taken, index)
            end = end or _hanging(lines, taken, index)
        if end > index + 1:
            found.append((index, end))
        index = max(end, index + 1)
    return found


def _remarks(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of lines that begin with a semicolon, three at least and one with nothing else; or 0."""
    end = start
    while end < len(lines) and lines[end].text[:1] == ";" and taken[end] is None:
        end += 1
    return end if end - start > 2 and any(line.text == ";" for line in lines[start:end]) else 0


def _starred(lines: Sequence[Line], start: int) -> int:
    """The end of a comment that opens with a line and has a star before each other; or 0."""
    if not lines[start].text.startswith("/*") or "*/" in lines[start].text:
        return 0
    end = start + 1
    while end < len(lines) and lines[end].text.startswith("*") and "*/" not in lines[end].text:
        end += 1
    return end + 1 if end < len(lines) and "*/" in lines[end].text else 0


def _enclosed(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of a comment between two lines that have nothing but its marks, a blank line below it; or 0."""
    if lines[start].text not in OPENINGS:
        return 0
    for index in range(start + 1, min(start + LONGEST, len(lines))):
        text = lines[index].text
        if taken[index] is not None or "/*" in text:
            return 0
        if "*/" in text:
            return index + 1 if text in CLOSINGS and parted_above(lines, index + 1) else 0
    return 0


def _hanging(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of a comment that opens before words and hangs below them up to the mark that closes it, right over program text; or 0."""
    if not lines[start].text.startswith("/* ") or "*/" in lines[start].text:
        return 0
    for index in range(start + 1, min(start + LONGEST, len(lines))):
        line = lines[index]
        if taken[index] is not None or line.apart or line.indent <= lines[start].indent or "/*" in line.text:
            return 0
        if "*/" in line.text:
            over = not parted_above(lines, index + 1) and code(lines[index + 1].text)
            return index + 1 if over and line.text.endswith("*/") else 0
    return 0
