"""Lets any dialect of ours drive a `pyte.Screen`: drops the offsets, and leaves out what pyte does not know."""

from __future__ import annotations

from collections.abc import Iterable

import pyte

from fit.dialect.operation import Operation
from fit.screen.screen import PYTE_EVENTS

_KNOWN = frozenset(PYTE_EVENTS)
_TAKES_PRIVATE = frozenset({"set_mode", "reset_mode", "erase_in_line", "erase_in_display"})


def drive_pyte(screen: pyte.Screen, operations: Iterable[Operation]) -> int:
    """Carry out operations on a `pyte.Screen`; give how many it has no event for."""
    left_out = 0
    for _, _, event, arguments, private in operations:
        if event not in _KNOWN:
            left_out += 1
        elif event == "draw":
            screen.draw(arguments[0])
        elif private and event in _TAKES_PRIVATE:
            getattr(screen, event)(*arguments, private=True)
        else:
            getattr(screen, event)(*arguments)
    return left_out
