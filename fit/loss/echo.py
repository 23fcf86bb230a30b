"""Echo: the printed glyphs right after an input that equal the typed printable characters one for one,
up to the first that differs. Operations that print nothing may stand between.
"""

from __future__ import annotations

from collections.abc import Iterable

from fit.dialect.operation import Operation
from fit.loss.bits import ECHO, Flags


class EchoMarker:
    """Marks the echo of one input after the other."""

    def __init__(self, flags: Flags) -> None:
        self._flags = flags
        self._typed = ""

    def typed(self, text: str) -> None:
        """Something was typed; inputs at the same place count as one."""
        self._typed = "".join(char for char in text if char.isprintable())

    def take(self, operations: Iterable[Operation]) -> None:
        """Compare what is printed with what was typed."""
        if not self._typed:
            return
        for _, _, event, arguments, _ in operations:
            if event != "draw":
                continue
            text, offsets = arguments
            self._compare(text, offsets)
            if not self._typed:
                return

    def _compare(self, text: str, offsets: int | list[int]) -> None:
        typed = self._typed
        for index, char in enumerate(text):
            if not typed or char != typed[0]:
                self._typed = ""
                return
            glyph = offsets + index if isinstance(offsets, int) else offsets[index]
            self._flags.set(glyph, glyph + 1, ECHO)
            typed = typed[1:]
        self._typed = typed
