"""Placed glyphs: drawn after a cursor-addressing operation since the last look.

Cursor-addressing are absolute or relative moves to a row or column, and restoring the cursor (also as the
private modes 1048 and 1049 are left). Not CR, LF, BS, tabs, index and next line, and not a move to the home
position: home, clear and print is a page of flowing text.
"""

from __future__ import annotations

from collections.abc import Iterable

from fit.dialect.operation import Operation
from fit.loss.bits import PLACED, Flags

_ADDRESSING = frozenset(
    {
        "cursor_to_column",
        "cursor_to_line",
        "cursor_up",
        "cursor_up1",
        "cursor_down",
        "cursor_down1",
        "cursor_forward",
        "cursor_back",
        "horizontal_position",
        "horizontal_relative",
        "vertical_relative",
        "restore_cursor",
        "restore_cursor_position",
    }
)
_RESTORING_MODES = frozenset({1048, 1049})


def is_placing(event: str, arguments: tuple[object, ...], *, private: bool) -> bool:
    """Whether an operation makes what follows it placed."""
    if event == "cursor_position":
        return any(value not in (None, 0, 1) for value in arguments)
    if event == "reset_mode":
        return private and not _RESTORING_MODES.isdisjoint(arguments)
    return event in _ADDRESSING


class PlacedMarker:
    """Marks the placed glyphs of one turn after the other."""

    def __init__(self, flags: Flags) -> None:
        self._flags = flags
        self._since: int | None = None

    def take(self, operations: Iterable[Operation]) -> None:
        """Look for the first cursor-addressing operation of the turn."""
        if self._since is not None:
            return
        for start, _, event, arguments, private in operations:
            if event != "draw" and is_placing(event, arguments, private=private):
                self._since = start
                return

    def look(self, at: int) -> None:
        """The turn ends before the byte ``at``."""
        if self._since is not None:
            self._flags.set(self._since, at, PLACED)
        self._since = None
