"""Lists side by side, each with a name over it: underlined, some beside the middle of others."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import Run, cell
from fit.document.text.line import Line
from fit.document.text.signs.rules import ruled_off

LISTS = 2
"""Names inside the columns, at least, that begin lists of their own."""


def headed(lines: Sequence[Line], columns: Sequence[tuple[int, int]], number: int, index: int) -> bool:
    """Whether a cell is the name of a list: a rule stands under it, in its column and as long as it at least."""
    if index + 1 >= len(lines) or lines[index + 1].gap:
        return False
    name, rule = cell(lines[index], columns, number), cell(lines[index + 1], columns, number)
    return name[:1].isalpha() and ruled_off(rule) and len(rule) >= len(name)


def headed_lists(lines: Sequence[Line], run: Run) -> bool:
    """Whether each column of a run begins with the name of a list, and other lists begin below, beside what goes on.

    A row of such columns says nothing: they are read one after the other.
    """
    numbers = range(len(run.columns))
    if run.start + 1 not in run.rules or not all(
        headed(lines, run.columns, number, run.start) for number in numbers
    ):
        return False
    inner = 0
    for index in range(run.start + 2, run.end - 1):
        rule = lines[index + 1].text
        if ruled_off(rule) or (rule[-1] not in "-=_~" and rule[0] not in "-=_~"):
            continue  # a rule across all columns ends a table, or parts its rows
        if lines[index].text == lines[run.start].text:
            continue  # the head of a table, printed again on the next page
        for number in numbers:
            fresh = not cell(lines[index - 1], run.columns, number)
            beside = any(cell(lines[index + 1], run.columns, other) for other in numbers if other != number)
            inner += bool(fresh) and beside and headed(lines, run.columns, number, index)
    return inner >= LISTS
