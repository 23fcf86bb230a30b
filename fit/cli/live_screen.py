"""A person at a terminal before a program for another: its codes are decoded, its screen is drawn anew in ECMA-48.

Attributes such as reverse video are not drawn.
"""

from __future__ import annotations

import contextlib
import os
import select
import signal
from collections.abc import Iterator
from types import FrameType
from typing import Final

from fit.dialect.operation import Dialect
from fit.pipeline import DEFAULT_BIG
from fit.report.plain import printable
from fit.screen.named import find_screen
from fit.screen.rules import Rules
from fit.screen.screen import Screen
from fit.source.keys import APPLICATION, NORMAL, key_names
from fit.source.pseudo_terminal import raw_mode

LEAVE: Final = 0x1C
"""Ctrl-\\, which no program of the time is known to need."""
_BELL: Final = b"\a"
_ENDING: Final = [getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name)]
_TICK: Final = 0.2
"""Seconds between two looks for a signal."""


class LiveScreen:
    """Shows a program on the terminal behind two file descriptors, and reads what is typed there."""

    def __init__(
        self, dialect: Dialect, terminal: str | None, keyboard: int, display: int, rules: Rules | None = None
    ) -> None:
        """``rules`` are those of the program's terminal, where they differ from the usual ones."""
        named = find_screen(DEFAULT_BIG)
        self._dialect = dialect
        self._screen = Screen(named.size, rules or named.rules)
        self._keyboard = keyboard
        self._display = display
        self._painted: list[str] = []
        self._shown = 0
        self._is_ended = False
        sent = key_names(terminal, b"")
        self._keys = {form: sent[name] for names in (APPLICATION, NORMAL) for name, form in names.items()}

    def clipped(self) -> str:
        """A sentence on what the window of the person is too small for; empty where it is not."""
        window, needed = _size_of(self._display), self._screen.size
        if window.columns >= needed.columns and window.lines >= needed.rows:
            return ""
        return (
            f"This window of {window.columns}x{window.lines} is smaller than {needed}: "
            "what stands right of it is not shown, nor are rows far from the cursor."
        )

    @contextlib.contextmanager
    def opened(self) -> Iterator[None]:
        """The terminal in raw mode, with a page of its own that goes when the program does."""
        before = {number: signal.signal(number, self._end) for number in _ENDING}
        try:
            with raw_mode(self._keyboard):
                self._write("\x1b[?1049h\x1b[m\x1b[2J\x1b[H")
                try:
                    yield
                finally:
                    self._write("\x1b[?1049l")
        finally:
            for number, handler in before.items():
                signal.signal(number, handler)

    def _end(self, _number: int, _frame: FrameType | None) -> None:
        """Note a signal: the session ends as if its person left, so that it is still recorded."""
        self._is_ended = True

    def show(self, output: bytes) -> None:
        """Take what was printed, and draw the rows that changed."""
        self._screen.apply(self._dialect.feed(output, self._shown))
        self._shown += len(output)
        size = _size_of(self._display)
        cursor = self._screen.cursor
        # On a terminal with fewer rows the cursor's row is always in view.
        first = max(0, cursor.row - size.lines + 1)
        rows = [printable(row)[: size.columns] for row in self._screen.display[first : first + size.lines]]
        drawn = [
            f"\x1b[{number};1H{row.rstrip()}\x1b[K"
            for number, row in enumerate(rows, 1)
            if number > len(self._painted) or self._painted[number - 1] != row
        ]
        self._painted = rows
        at = f"\x1b[{cursor.row - first + 1};{min(cursor.column, size.columns - 1) + 1}H"
        self._write("".join(drawn) + at + ("\a" if _BELL in output else ""))

    def read(self, seconds: float | None) -> bytes | None:
        """Keys as the program's terminal sends them; None where the person leaves or their terminal is gone."""
        while not select.select([self._keyboard], [], [], _TICK if seconds is None else seconds)[0]:
            if self._is_ended:
                return None
            if seconds is not None:
                return b""
        if self._is_ended:
            return None
        try:
            keys = os.read(self._keyboard, 1024)
        except OSError:
            return None
        if not keys or LEAVE in keys:
            return None
        # The key that takes back sends DEL today, and BS then.
        return self._keys.get(keys, keys.replace(b"\x7f", b"\b"))

    def _write(self, text: str) -> None:
        data = text.encode("utf-8", "replace")
        while data:
            data = data[os.write(self._display, data) :]


def _size_of(display: int) -> os.terminal_size:
    """The size of the terminal; 80x24 where it does not tell one."""
    columns, lines = os.get_terminal_size(display)
    return os.terminal_size((columns or 80, lines or 24))
