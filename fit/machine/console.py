"""The console as the BDOS keeps it: keys that were typed ahead, the cursor's column, the printer's echo.

TAB stops count from a column that LF sets back, not CR: that is how the operating system does it.

Source: the operating system's manual, BDOS functions 1 to 11. The tests cite it.
"""

from __future__ import annotations

import re
from collections import deque
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from fit.machine.line_editor import BS, DEL, LF, TAB, LineEditor

CTRL_S: Final = 0x13
TAB_STOP: Final = 8

_MOVES_BACK_OR_FAR: Final = re.compile(rb"[\x08\x09]")
_NOT_GRAPHIC: Final = re.compile(rb"[\x00-\x1f\x7f]")


@dataclass(frozen=True, slots=True)
class ConsoleState:
    """A copy of a console."""

    output: bytes
    keys: tuple[int, ...]
    column: int
    is_printing: bool
    printer: bytes
    punched: bytes
    reads: int
    editor: LineEditor | None


class Console:
    """What was printed, and the keys that wait to be read."""

    def __init__(self) -> None:
        self.output = bytearray()
        self.keys: deque[int] = deque()
        self.column = 0
        self.is_printing = False
        self.printer = bytearray()
        self.punched = bytearray()
        self.reads = 0
        """How often the reader was asked, which holds nothing."""
        self.editor: LineEditor | None = None
        """The line that function 10 is reading just now."""

    def freeze(self) -> ConsoleState:
        """Copy everything, to come back to it."""
        editor = self.editor.copy() if self.editor else None
        return ConsoleState(
            bytes(self.output),
            tuple(self.keys),
            self.column,
            self.is_printing,
            bytes(self.printer),
            bytes(self.punched),
            self.reads,
            editor,
        )

    def thaw(self, state: ConsoleState) -> None:
        """Come back to a copy."""
        self.output[:] = state.output
        self.keys = deque(state.keys)
        self.column = state.column
        self.is_printing = state.is_printing
        self.printer[:] = state.printer
        self.punched[:] = state.punched
        self.reads = state.reads
        self.editor = state.editor.copy() if state.editor else None

    def put(self, byte: int) -> None:
        """Print a byte as the BDOS does: TAB becomes blanks, the column is kept, the printer may echo."""
        if byte >= 0x20 and byte != DEL:
            self.column = self.column + 1 & 0xFF
            self.output.append(byte)
            if self.is_printing:
                self.printer.append(byte)
        else:
            self.write(bytes((byte,)))

    def write(self, text: bytes) -> None:
        """Print bytes as the BDOS does."""
        shape = _shape(text)
        if shape is None:
            text = self.expand(text)
        else:
            starts_line, width = shape
            self.column = (width if starts_line else self.column + width) & 0xFF
        self.output += text
        if self.is_printing:
            self.printer += text

    def expand(self, text: bytes) -> bytes:
        """The bytes that the BDOS sends to the BIOS for ``text``; moves the column."""
        shape = _shape(text)
        if shape is None:
            return b"".join(self._one(byte) for byte in text)
        starts_line, width = shape
        self.column = (width if starts_line else self.column + width) & 0xFF
        return text

    def _one(self, byte: int) -> bytes:
        if byte == TAB:
            blanks = TAB_STOP - self.column % TAB_STOP
            self.column = self.column + blanks & 0xFF
            return b" " * blanks
        if byte == BS:
            self.column = max(0, self.column - 1)
        elif byte == LF:
            self.column = 0
        elif byte >= 0x20 and byte != DEL:
            self.column = self.column + 1 & 0xFF
        return bytes((byte,))


@lru_cache(maxsize=1024)
def _shape(text: bytes) -> tuple[bool, int] | None:
    """Whether a text holds a line end, and how far it moves the column after it; None with TAB or BS.

    Kept for the texts seen last: programs print the same ones again and again.
    """
    if _MOVES_BACK_OR_FAR.search(text):
        return None
    line_end = text.rfind(LF)
    return line_end >= 0, len(_NOT_GRAPHIC.sub(b"", text[line_end + 1 :]))
