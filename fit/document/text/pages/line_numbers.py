"""Numbers of every fifth line in the margin, as drafts of laws and editions have them: they count lines, and are no text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, prose, starts_small

STEP = 5
"""Lines from one number to the next."""
_NUMBER = re.compile(r"(\d{0,3}[05]) {2,}(?=\S)")


def find_line_numbers(lines: Sequence[Line]) -> dict[int, int]:
    """For each line that such a number stands before the column behind that number.

    No other line begins as far left; at least one number stands in the middle of a sentence, where no item begins.
    """
    numbers = {
        index: match
        for index, line in enumerate(lines)
        if line.text[:1].isdigit() and (match := _NUMBER.match(line.text))
    }
    found: dict[int, int] = {}
    run: list[int] = []
    for index, above in pairwise([*numbers, -1][::-1]):
        run = [above, *run] if index in numbers and _counts(lines, numbers, above, index) else [above]
        if len(run) > 1 and any(_in_sentence(lines, place, numbers[place]) for place in run):
            found |= {place: lines[place].indent + numbers[place].end(1) for place in run}
    return found


def _counts(lines: Sequence[Line], numbers: dict[int, re.Match[str]], above: int, below: int) -> bool:
    """Whether one number is five more than another as many lines above, and the lines between begin behind them."""
    if int(numbers[below][1]) != int(numbers[above][1]) + STEP:
        return False
    between = [line for line in lines[above + 1 : below] if line.cells]
    edge = max(lines[place].indent + numbers[place].end(1) for place in (above, below))
    return len(between) == STEP - 1 and all(line.indent > edge for line in between)


def _in_sentence(lines: Sequence[Line], index: int, number: re.Match[str]) -> bool:
    """Whether the line with a number goes on with the sentence of the line right above it."""
    above = lines[index - 1].text if index else ""
    on = lines[index].text[number.end() :]
    return prose(above) and not closed(above) and (starts_small(on) or above[-1] in ",-")


def without_number(line: Line, column: int) -> tuple[Line, Line]:
    """The line with blanks for what stands before ``column``, and that, which stands aside."""
    number = line.cut(0, column)
    bare = Line(" " * column + line.cells[column:], line.offset, line.resolved)
    bare.page, bare.ending, number.aside = line.page, line.ending, True
    return bare, number
