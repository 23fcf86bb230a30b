"""The line that function 10 reads, with the editing keys of the operating system.

    ^H      takes the last character back, and wipes it on the screen
    DEL     takes the last character back, and prints it once more
    ^X      wipes the line on the screen and starts again
    ^U      leaves the line, marks it with #, and starts again on the next
    ^R      prints the line again on the next
    ^E      goes on at the start of the next screen line; nothing is stored
    ^P      turns the printer's echo on or off
    ^C      at the start of the line: warm start
    CR, LF  end the line

Source: the operating system's manual, BDOS function 10, Read Console Buffer. The tests cite it.
"""

from __future__ import annotations

from enum import Enum, auto
from typing import Final

CTRL_C: Final = 0x03
_CTRL_E: Final = 0x05
BS: Final = 0x08
TAB: Final = 0x09
LF: Final = 0x0A
CR: Final = 0x0D
_CTRL_P: Final = 0x10
_CTRL_R: Final = 0x12
_CTRL_U: Final = 0x15
_CTRL_X: Final = 0x18
DEL: Final = 0x7F

_WIPE: Final = b"\b \b"
_SEVEN_BITS: Final = 0x7F


class Outcome(Enum):
    """What a key did to the line as a whole."""

    GOES_ON = auto()
    DONE = auto()
    WARM_START = auto()
    PRINTER = auto()


class LineEditor:
    """A line being typed. ``feed`` takes a key and returns what to print, TABs expanded."""

    def __init__(self, limit: int, column: int) -> None:
        self.limit = limit
        self.start = column
        """Column at which the line started on the screen."""
        self.text = bytearray()

    def copy(self) -> LineEditor:
        """The same line, to come back to it."""
        twin = LineEditor(self.limit, self.start)
        twin.text[:] = self.text
        return twin

    def feed(self, key: int) -> tuple[bytes, Outcome]:
        """Take one key; returns the echo and what became of the line."""
        key &= _SEVEN_BITS
        if key in (CR, LF):
            return b"\r", Outcome.DONE
        if key == _CTRL_P:
            return b"", Outcome.PRINTER
        edit = _EDITS.get(key)
        return (edit(self), Outcome.GOES_ON) if edit else self._store(key)

    def _store(self, key: int) -> tuple[bytes, Outcome]:
        column = self._column()
        self.text.append(key)
        echo = _drawn(key, column)
        if key == CTRL_C and len(self.text) == 1:
            return echo, Outcome.WARM_START
        if len(self.text) >= self.limit:
            return echo + b"\r", Outcome.DONE
        return echo, Outcome.GOES_ON

    def _column(self) -> int:
        return self.start + len(self._redrawn())

    def _redrawn(self) -> bytes:
        out = bytearray()
        for key in self.text:
            out += _drawn(key, self.start + len(out))
        return bytes(out)

    def _back(self) -> bytes:
        if not self.text:
            return b""
        before = self._column()
        self.text.pop()
        return _WIPE * (before - self._column())

    def _rub_out(self) -> bytes:
        if not self.text:
            return b""
        key = self.text.pop()
        return _drawn(key, self._column())

    def _wipe(self) -> bytes:
        width = len(self._redrawn())
        self.text.clear()
        return _WIPE * width

    def _leave(self) -> bytes:
        self.text.clear()
        return self._next_line()

    def _retype(self) -> bytes:
        return self._next_line() + self._redrawn()

    def _next_line(self) -> bytes:
        return b"#\r\n" + b" " * self.start

    def _break_line(self) -> bytes:
        self.start = 0
        return b"\r\n"


_EDITS: Final = {
    BS: LineEditor._back,  # noqa: SLF001  the class's own table of keys
    DEL: LineEditor._rub_out,  # noqa: SLF001  the class's own table of keys
    _CTRL_E: LineEditor._break_line,  # noqa: SLF001  the class's own table of keys
    _CTRL_R: LineEditor._retype,  # noqa: SLF001  the class's own table of keys
    _CTRL_U: LineEditor._leave,  # noqa: SLF001  the class's own table of keys
    _CTRL_X: LineEditor._wipe,  # noqa: SLF001  the class's own table of keys
}


def _drawn(key: int, column: int) -> bytes:
    """How a key looks on the screen: itself, blanks to the next tab stop, or ``^`` and a letter."""
    if key == TAB:
        return b" " * (8 - column % 8)
    if key < 0x20:
        return bytes((ord("^"), key | 0x40))
    return b"" if key == DEL else bytes((key,))
