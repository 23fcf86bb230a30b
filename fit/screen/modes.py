"""Modes, pages, saving and resetting, resizing.

Sources: VT220 Programmer Reference Manual, chapter 4 (DECSC, DECRC, DECSTR, RIS); for the alternate page common
practice, no source (private modes 47, 1047, 1048, 1049).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from fit.screen.editing import EditingGrid
from fit.screen.fates import Fate, Fates
from fit.screen.pieces import SEEN, Row, is_fresh, split
from fit.screen.rules import Rules
from fit.units import Size

_ON_AT_FIRST = frozenset({7, 25})
"""Private modes that are set when a terminal is switched on: DECAWM and DECTCEM."""


@dataclass(slots=True)
class SavePoint:
    """What DECSC saves, and what DECRC gives where nothing was saved."""

    row: int = 0
    column: int = 0
    pending: bool = False
    origin_mode: bool = False
    protection: int = 0
    charsets: list[str] = field(default_factory=lambda: ["B", "B", "B", "B"])
    locked: int = 0


class ModalGrid(EditingGrid):
    """A grid with modes and two pages."""

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        super().__init__(size, rules, fates)
        self.on_alternate = False
        """Whether the alternate page is shown."""
        self._other = [Row() for _ in range(size.rows)]
        self._saved: dict[bool, SavePoint] = {}
        """One save point a page."""
        self._private_modes: dict[int, bool] = {}
        self._modes_saved: dict[int, bool] = {}

    # Modes

    def set_mode(self, *modes: int, private: bool = False, **_: Any) -> None:
        for mode in modes:
            self._switch(mode, private=private, on=True)

    def reset_mode(self, *modes: int, private: bool = False, **_: Any) -> None:
        for mode in modes:
            self._switch(mode, private=private, on=False)

    def save_modes(self, *modes: int) -> None:
        """Remember private modes (common practice, no source)."""
        for mode in modes:
            self._modes_saved[mode] = self._private_modes.get(mode, mode in _ON_AT_FIRST)

    def restore_modes(self, *modes: int) -> None:
        """Set private modes as they were remembered (common practice, no source)."""
        for mode in modes:
            if mode in self._modes_saved:
                self._switch(mode, private=True, on=self._modes_saved[mode])

    def _switch(self, mode: int, *, private: bool, on: bool) -> None:
        if not private:
            if mode == 4:  # IRM
                self.insert_mode = on
            elif mode == 20:  # LNM
                self.newline_mode = on
            return
        self._private_modes[mode] = on
        if mode == 3:  # DECCOLM: the width stays; the screen is cleared
            self._reset_margins()
            self._warn_area(0, self.size.rows - 1, 0, self.size.columns - 1)
            self._erase_rows(0, self.size.rows - 1)
            self._address(1, 1)
        elif mode == 6:  # DECOM
            self.origin_mode = on
            self._address(1, 1)
        elif mode == 7:  # DECAWM
            self.autowrap = on
            self.pending = self.pending and on
        elif mode == 45:  # reverse wrap
            self.reverse_wrap = on
        elif mode == 69:  # DECLRMM
            self.horizontal_margins = on
            self._set_sides(0, self.size.columns - 1)
        elif mode in (47, 1047):
            if not on and mode == 1047 and self.on_alternate:
                self._clear_page()
            self._show_page(alternate=on)
        elif mode == 1048:
            self.save_cursor() if on else self.restore_cursor()
        elif mode == 1049:
            self._switch_saving(on=on)

    def _switch_saving(self, *, on: bool) -> None:
        if on and not self.on_alternate:
            self.save_cursor()
            self._show_page(alternate=True)
            self._clear_page()
        elif not on and self.on_alternate:
            self._show_page(alternate=False)
            self.restore_cursor()

    # Pages

    def _show_page(self, *, alternate: bool) -> None:
        if alternate == self.on_alternate:
            return
        self._warn_area(0, self.size.rows - 1, 0, self.size.columns - 1)
        for row in self.grid:
            self._lose(row.pieces, Fate.HIDDEN)
        self.grid, self._other = self._other, self.grid
        self.on_alternate = alternate

    def _clear_page(self) -> None:
        self._warn_area(0, self.size.rows - 1, 0, self.size.columns - 1)
        self._erase_rows(0, self.size.rows - 1)

    # Saving

    def save_cursor(self) -> None:
        """DECSC: one save point a page."""
        self._saved[self.on_alternate] = SavePoint(
            self.row,
            self.column,
            self.pending,
            self.origin_mode,
            self.protection,
            list(self.charsets),
            self.locked,
        )

    def restore_cursor(self) -> None:
        """DECRC: without a save point the cursor goes home with the settings of a reset."""
        saved = self._saved.get(self.on_alternate, SavePoint())
        self._place()
        self.row = min(saved.row, self.size.rows - 1)
        self.column = min(saved.column, self.size.columns - 1)
        self.pending = saved.pending
        self.origin_mode = saved.origin_mode
        self.protection = saved.protection
        self.charsets = list(saved.charsets)
        self.locked = saved.locked

    def save_cursor_position(self) -> None:
        """SCOSC; where DECLRMM is set the same sequence resets the horizontal margins."""
        if self.horizontal_margins:
            self.set_horizontal_margins()
        else:
            self.save_cursor()

    def restore_cursor_position(self) -> None:
        """SCORC."""
        self.restore_cursor()

    # Resetting

    def reset(self) -> None:
        """RIS: everything as when switched on; save points and the other page are gone too."""
        self._warn_area(0, self.size.rows - 1, 0, self.size.columns - 1)
        self._erase_rows(0, self.size.rows - 1)
        self.grid, self._other = (self._other, self.grid) if self.on_alternate else (self.grid, self._other)
        self.on_alternate = False
        self._erase_rows(0, self.size.rows - 1)
        self.soft_reset()
        self._saved.clear()
        self._private_modes.clear()
        self.guarded_area = False
        self.autowrap = True
        self.newline_mode = self.reverse_wrap = self.horizontal_margins = False
        self.tab_stops = set(range(8, self.size.columns, 8))
        self._address(1, 1)

    def soft_reset(self) -> None:
        """DECSTR: modes, margins and character sets; what stands on the screen and the cursor stay."""
        self.insert_mode = self.origin_mode = False
        self.autowrap = True
        self._reset_margins()
        self.protection = 0
        self.charsets = ["B", "B", "B", "B"]
        self.locked = 0
        self.shifted_once = None
        self.locked_right = None
        self.reverse_wrap = False
        self._saved.pop(self.on_alternate, None)

    # Resizing

    def resize(self, lines: int | None = None, columns: int | None = None) -> None:
        """Take another size, in cells. Text is not wrapped anew.

        Rows go first below the cursor, where they are blank, then from the top; new rows come below.
        What stands right of a narrower screen is clipped.
        """
        old = self.size
        self.size = new = Size(lines or old.rows, columns or old.columns)
        if new == old:
            return
        surplus = old.rows - new.rows
        while surplus > 0 and self.row < len(self.grid) - 1 and not self.grid[-1].pieces:
            self.grid.pop()
            surplus -= 1
        if surplus > 0:
            self._drop_rows_above(surplus)
        for page in (self.grid, self._other):
            for row in page[new.rows :]:
                self._lose(row.pieces, Fate.CLIPPED)
            del page[new.rows :]
            page += [Row() for _ in range(new.rows - len(page))]
        if new.columns < old.columns:
            self._clip_columns(new.columns)
        elif self.pending and self.column < new.columns - 1:
            self.column += 1
        self.row = min(self.row, new.rows - 1)
        self.column = min(self.column, new.columns - 1)
        self.pending = False
        self._reset_margins()
        self.tab_stops |= set(range((old.columns + 7) // 8 * 8, new.columns, 8))

    def _drop_rows_above(self, count: int) -> None:
        """Scroll rows off the top for good; the cursor stays in its row where it can."""
        if self.hooks is not None:
            self._warn_rows_leaving(0, count)
        for row in self.grid[:count]:
            self._lose(row.pieces, Fate.SCROLLED)
        del self.grid[:count]
        self.row = max(0, self.row - count)

    def _clip_columns(self, columns: int) -> None:
        for page in (self.grid, self._other):
            for row in page:
                left, middle, right = split(row.pieces, columns, max(columns + 1, self._width(row)))
                if middle or right:
                    if self.hooks is not None and page is self.grid and any(map(is_fresh, middle)):
                        self._warn(middle)
                        left, middle, right = split(row.pieces, columns, max(columns + 1, self._width(row)))
                    self._lose(middle + right, Fate.CLIPPED)
                    row.pieces = left
                    row.seen = all(piece[4] & SEEN for piece in left)

    @staticmethod
    def _width(row: Row) -> int:
        return row.pieces[-1][1] if row.pieces else 0
