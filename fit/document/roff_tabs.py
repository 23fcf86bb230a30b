"""Tab stops that a page sets itself, after ``.ta`` in roff(7). Every stop is one at which text begins."""

from __future__ import annotations

import re
from typing import Final

from fit.document.roff_number import CHARACTER, evaluate

_STOP: Final = re.compile(r"([+]?)(.*?)[LRC]?")
_MOST: Final = 200
"""Columns up to which stops are repeated: more than any screen has."""


def tab_stops(arguments: str) -> tuple[int, ...]:
    """The columns of the stops: each number from the margin, with ``+`` from the stop before, behind ``T`` for ever."""
    first, _, again = arguments.partition("T")
    stops = _columns(first.split(), 0)
    if repeated := _columns(again.split(), 0):
        while (begin := stops[-1] if stops else 0) < _MOST:
            stops += [begin + column for column in repeated]
    return tuple(stops)


def _columns(numbers: list[str], column: int) -> list[int]:
    """The columns that lie further to the right than the one before; a number without a scale counts in ems."""
    columns: list[int] = []
    for number in numbers:
        found = _STOP.fullmatch(number)
        assert found is not None
        scaled = found[2] + "m" if found[2][-1:].isdecimal() else found[2]
        at = round(evaluate(scaled) / CHARACTER) + (column if found[1] else 0)
        if at > column:
            columns.append(at)
            column = at
    return columns
