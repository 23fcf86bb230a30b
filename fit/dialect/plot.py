"""Where an attribute that takes a cell would fall: a rough plot of a session, kept only to weigh evidence.

It follows the cursor and what is blank; insertions, scroll regions and wrap rules are left out. What a screen
shows in truth is the screen's business (`fit.screen`), which a dialect does not know.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from fit.dialect.operation import Operation
from fit.units import Size


class Plot:
    """A grid of filled and blank cells, and the cursor."""

    def __init__(self, size: Size) -> None:
        self._size = size
        self._rows = [bytearray(size.columns) for _ in range(size.rows)]
        self._row = self._column = 0
        self.cookies = 0
        """Attributes that took a cell."""
        self.collisions = 0
        """Those of them that fell on text."""

    def run(self, operations: Iterable[Operation], output: bytes) -> None:
        """Plot the operations that ``output`` was decoded to."""
        for first, _, event, arguments, _ in operations:
            if event == "draw":
                self._draw(arguments[0], is_cookie=output[first] < 0x20)
            else:
                self._move(event, arguments)

    def _draw(self, text: str, *, is_cookie: bool) -> None:
        for char in text:
            if is_cookie:
                self.cookies += 1
                self.collisions += self._rows[self._row][self._column]
            self._rows[self._row][self._column] = char != " "
            if self._column < self._size.columns - 1:
                self._column += 1

    def _move(self, event: str, arguments: tuple[Any, ...]) -> None:
        count = arguments[0] if arguments and isinstance(arguments[0], int) else 1
        if event == "cursor_position" and len(arguments) == 2:
            self._go(max(1, arguments[0]) - 1, max(1, arguments[1]) - 1)
        elif event == "carriage_return":
            self._column = 0
        elif event in ("linefeed", "index", "next_line"):
            self._feed()
            self._column = 0 if event == "next_line" else self._column
        elif event in _STEPS:
            rows, columns = _STEPS[event]
            self._go(self._row + rows * count, self._column + columns * count)
        elif event == "cursor_to_column":
            self._go(self._row, count - 1)
        elif event == "cursor_to_line":
            self._go(count - 1, self._column)
        elif event in ("erase_in_line", "erase_in_display"):
            self._erase(event, arguments[0] if arguments else 0)
        elif event in ("insert_lines", "delete_lines"):
            self._shift(insert=event == "insert_lines")

    def _go(self, row: int, column: int) -> None:
        self._row = min(max(0, row), self._size.rows - 1)
        self._column = min(max(0, column), self._size.columns - 1)

    def _feed(self) -> None:
        if self._row < self._size.rows - 1:
            self._row += 1
        else:
            self._rows = [*self._rows[1:], bytearray(self._size.columns)]

    def _erase(self, event: str, how: int) -> None:
        line = self._rows[self._row]
        first, last = (0 if how else self._column), (self._column + 1 if how == 1 else self._size.columns)
        line[first:last] = bytes(last - first)
        if event == "erase_in_display":
            for row in range(self._row + 1 if how == 0 else 0, self._row if how == 1 else self._size.rows):
                self._rows[row] = bytearray(self._size.columns)

    def _shift(self, *, insert: bool) -> None:
        rows = self._rows
        blank = bytearray(self._size.columns)
        if insert:
            self._rows = [*rows[: self._row], blank, *rows[self._row : -1]]
        else:
            self._rows = [*rows[: self._row], *rows[self._row + 1 :], blank]


_STEPS = {
    "cursor_up": (-1, 0),
    "reverse_index": (-1, 0),
    "cursor_down": (1, 0),
    "cursor_forward": (0, 1),
    "cursor_back": (0, -1),
    "backspace": (0, -1),
}
