"""Listings whose lines are numbered for the text that speaks of them: `12     light(lamp);`, the numbers under each other."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, without_blanks
from fit.document.text.signs.program import program

LEAST = 3
"""Lines of program text, at least."""
LEAST_WITH_BLANKS = 6
"""Lines with a number alone among them, at least, that show a file of any kind."""
MOST_BLANK = 2
"""Blank lines between two numbers, at most."""
STEP = 3
"""From one number of a listing to the next, at most: some lines are left out."""
_NUMBER = re.compile(r"(\d{1,4})(?: +(?=\S)|$)")


def find_numbered_listings(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that count up, and have a program behind their numbers or a number with nothing behind it.

    A list has one column for its texts, where a program sets its lines in, and no number alone: that is a blank line of
    what is shown.
    """
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        number = _number(lines, taken, index) if lines[index].text[:1].isdigit() else ""
        if not number:
            index += 1
            continue
        end, alone = _end(lines, taken, index, number)
        if end - index >= LEAST_WITH_BLANKS and alone:
            found.append((index, end))
        elif end - index >= LEAST:
            column = lines[index].indent + len(number)
            behind = without_blanks(line.cut(column, line.end) for line in lines[index:end])
            if len({line.indent for line in behind}) > 1 and program(behind):
                found.append((index, end))
        index = end
    return found


def _number(lines: Sequence[Line], taken: Sequence[object], index: int) -> str:
    """The number that a line begins with, nothing but blanks behind it; or nothing."""
    line = lines[index]
    match = _NUMBER.match(line.text) if taken[index] is None else None
    return match[1] if match else ""


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, number: str) -> tuple[int, bool]:
    """Behind the last line whose number counts on from the line above, ending in its column; whether one stands alone."""
    column = lines[start].indent + len(number)
    alone = False
    end = start + 1
    while end < len(lines) and lines[end].gap <= MOST_BLANK:
        below = _number(lines, taken, end)
        if not below or lines[end].indent + len(below) != column or not 0 < int(below) - int(number) <= STEP:
            break
        alone |= lines[end].text == below and lines[end].gap == 0
        number = below
        end += 1
    return end, alone and 2 * sum(line.text.isdigit() for line in lines[start:end]) < end - start
