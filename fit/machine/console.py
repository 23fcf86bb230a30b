"""The console as the BDOS keeps it: keys that were typed ahead, the cursor's column, the printer's echo.

TAB stops count from a column that LF sets back, not CR: that is how the operating system does it.

Source: Digital Research, CP/M Operating System Manual, BDOS functions 1 to 11.
"""

from __future__ import annotations

import re
from collections import deque
from dataclasses import dataclass
from typing import Final

from fit.machine.line_editor import BS, DEL, LF, LineEditor

CTRL_S: Final = 0x13
TAB_STOP: Final = 8

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
        out = self.expand(text)
        self.output += out
        if self.is_printing:
            self.printer += out

    def expand(self, text: bytes) -> bytes:
        """The bytes that the BDOS sends to the BIOS for ``text``; moves the column."""
        if _NOT_GRAPHIC.search(text) is None:
            self.column = self.column + len(text) & 0xFF
            return text
        first, *rest = text.split(b"\t")
        out = bytearray(first)
        self._advance(first)
        for part in rest:
            out += self._blanks()
            out += part
            self._advance(part)
        return bytes(out)

    def _blanks(self) -> bytes:
        """What a TAB prints."""
        blanks = TAB_STOP - self.column % TAB_STOP
        self.column = self.column + blanks & 0xFF
        return b" " * blanks

    def _advance(self, text: bytes) -> None:
        """Move the column over bytes without TABs."""
        line_end = text.rfind(LF)
        if line_end >= 0:
            self.column, text = 0, text[line_end + 1 :]
        if BS not in text:
            self.column = self.column + len(_NOT_GRAPHIC.sub(b"", text)) & 0xFF
            return
        for byte in text:
            if byte >= 0x20:
                self.column = self.column + (byte != DEL) & 0xFF
            elif byte == BS and self.column:
                self.column -= 1
