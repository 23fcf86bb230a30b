"""Tab stops that a page sets itself, after ``.ta`` in roff(7)."""

from __future__ import annotations

import re
from typing import Final

from fit.document.man.roff_number import CHARACTER, evaluate
from fit.document.preformatted import Stop

_STOP: Final = re.compile(r"([+]?)(.*?)([LRC]?)")
_MOST: Final = 200
"""Columns up to which stops are repeated: more than any screen has."""


def tab_stops(arguments: str) -> tuple[Stop, ...]:
    """The stops: each number from the margin, with ``+`` from the stop before, behind ``T`` for ever."""
    first, _, again = arguments.partition("T")
    stops = _stops(first.split(), 0)
    if repeated := _stops(again.split(), 0):
        while (begin := stops[-1].column if stops else 0) < _MOST:
            stops += [Stop(begin + column, side) for column, side in repeated]
    return tuple(stops)


def _stops(numbers: list[str], column: int) -> list[Stop]:
    """The stops that lie further to the right than the one before; a number without a scale counts in ems."""
    stops: list[Stop] = []
    for number in numbers:
        found = _STOP.fullmatch(number)
        assert found is not None
        scaled = found[2] + "m" if found[2][-1:].isdecimal() else found[2]
        at = round(evaluate(scaled) / CHARACTER) + (column if found[1] else 0)
        if at > column:
            stops.append(Stop(at, found[3] or "L"))
            column = at
    return stops
