"""A screen: takes terminal operations, knows what stands where, and what became of each glyph.

A screen answers to the events of `pyte.Screen`, so that a `pyte.Stream` can drive it too.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from fit.dialect.operation import OUR_EVENTS, Operation
from fit.screen.fates import Fate, Fates
from fit.screen.modes import ModalGrid
from fit.screen.pieces import cells_of, row_text
from fit.screen.rules import Rules
from fit.units import Position, Size


@dataclass(frozen=True, slots=True)
class Cursor:
    """Where the next glyph goes, counted from 0."""

    row: int
    column: int
    pending: bool
    """The last column was filled: the next glyph wraps first."""


class Screen(ModalGrid):
    """One screen of a size and rules.

    >>> screen = Screen(Size(rows=2, columns=8))
    >>> screen.draw("Oil: low")
    >>> screen.draw("!")
    >>> screen.display
    ['Oil: low', '!       ']
    """

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        super().__init__(size, rules, fates)
        self.title = ""
        self.status = ""
        """The text of a status line outside the grid."""
        self.not_understood: Counter[bytes] = Counter()
        """How often each sequence came that nobody understood, with at most 1,000 different ones."""
        self.bells = 0
        self._handlers: dict[str, Callable[..., None]] = {
            name: getattr(self, name) for name in (*PYTE_EVENTS, *OUR_EVENTS) if name not in _MOVES_NOTHING
        }

    def apply(self, operations: Iterable[Operation]) -> None:
        """Carry out operations in order. Unknown events are counted in ``not_understood``."""
        handlers = self._handlers
        for start, _, event, arguments, private in operations:
            handler = handlers.get(event)
            if handler is None:
                if event not in _MOVES_NOTHING:
                    self.at = start
                    self.debug(event, *arguments)
                continue
            self.at = start
            if private:
                handler(*arguments, private=True)
            else:
                handler(*arguments)

    # What stands

    @property
    def cursor(self) -> Cursor:
        """The cursor."""
        return Cursor(self.row, self.column, self.pending)

    @property
    def position(self) -> Position:
        """The cursor's cell."""
        return Position(self.row, self.column)

    @property
    def display(self) -> list[str]:
        """The rows as text, each exactly as many cells wide as the screen."""
        columns = self.size.columns
        return [row_text(row.pieces, columns) for row in self.grid]

    def cells(self, row: int) -> tuple[list[int], list[str]]:
        """The glyph ids and the texts of one row, a cell each; see `fit.screen.pieces.cells_of`."""
        return cells_of(self.grid[row].pieces, self.size.columns)

    def finish(self) -> None:
        """Give what still stands unseen its fate: standing, or hidden where its page is not shown."""
        for page, fate in ((self.grid, Fate.STANDING), (self._other, Fate.HIDDEN)):
            for row in page:
                self._lose(row.pieces, fate)

    # Events that move nothing

    def bell(self, *_: Any) -> None:
        self.bells += 1

    def select_graphic_rendition(self, *_: int, **__: Any) -> None:
        """SGR: how glyphs look does not change what can be read."""

    def set_title(self, title: str) -> None:
        self.title = title

    def set_icon_name(self, _: str) -> None:
        """The name of an icon stands on no screen."""

    def status_text(self, text: str) -> None:
        self.status = text

    def change_attributes_rectangle(self, *_: int) -> None:
        """DECCARA, DECRARA: how glyphs look does not change what can be read."""

    def report_device_attributes(self, *_: int, **__: Any) -> None:
        """A question to the terminal: a replay answers nothing."""

    def report_device_status(self, *_: int, **__: Any) -> None:
        """A question to the terminal: a replay answers nothing."""

    def debug(self, *arguments: Any, **_: Any) -> None:
        """A sequence that was not understood."""
        sequence = b" ".join(a if isinstance(a, bytes) else str(a).encode() for a in arguments)
        known = sequence in self.not_understood or len(self.not_understood) < _MOST_NOT_UNDERSTOOD
        self.not_understood[sequence if known else b""] += 1


_MOST_NOT_UNDERSTOOD = 1000
_MOVES_NOTHING = frozenset({"select_graphic_rendition", "report_device_status", "report_device_attributes"})
"""Events that are common and change nothing that stands, passed over at once."""

PYTE_EVENTS = (
    "alignment_display",
    "backspace",
    "bell",
    "carriage_return",
    "clear_tab_stop",
    "cursor_back",
    "cursor_down",
    "cursor_down1",
    "cursor_forward",
    "cursor_position",
    "cursor_to_column",
    "cursor_to_line",
    "cursor_up",
    "cursor_up1",
    "debug",
    "define_charset",
    "delete_characters",
    "delete_lines",
    "draw",
    "erase_characters",
    "erase_in_display",
    "erase_in_line",
    "index",
    "insert_characters",
    "insert_lines",
    "linefeed",
    "report_device_attributes",
    "report_device_status",
    "reset",
    "reset_mode",
    "restore_cursor",
    "reverse_index",
    "save_cursor",
    "select_graphic_rendition",
    "set_icon_name",
    "set_margins",
    "set_mode",
    "set_tab_stop",
    "set_title",
    "shift_in",
    "shift_out",
    "tab",
)
"""The events of pyte's streams that a screen answers to."""
