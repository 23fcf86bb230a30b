"""Cursor movement, margins and tab stops: ECMA-48, 5th edition (1991), section 8.3, with the VT220's margins.

Where ECMA-48 leaves it open: every movement cancels a pending wrap; relative movement stops at a margin that
the cursor starts inside of (VT220 Programmer Reference Manual, chapter 4); addresses beyond the screen are
taken as the last row or column.
"""

from __future__ import annotations

from fit.screen.fates import Fate, Fates
from fit.screen.grid import Grid
from fit.screen.pieces import split
from fit.screen.rules import Rules
from fit.units import Size

_TAB = 8


class CursorGrid(Grid):
    """A grid whose cursor moves. Arguments count from 1, and 0 or None stands for 1."""

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        super().__init__(size, rules, fates)
        self.tab_stops = set(range(_TAB, size.columns, _TAB))
        self.origin_mode = False
        self.newline_mode = False
        self.reverse_wrap = False
        self.horizontal_margins = False
        """Whether DECSLRM may set the horizontal margins (DECLRMM)."""

    # Lines

    def carriage_return(self) -> None:
        self.column = self.left if self.left and (self.column >= self.left or self.origin_mode) else 0
        self.pending = False

    def linefeed(self) -> None:
        self.index()
        if self.newline_mode:
            self.carriage_return()

    def index(self) -> None:
        """Move down; at the bottom margin scroll up."""
        self.pending = False
        row = self.row
        if row == self.bottom:
            if self._wide_open or self.left <= self.column <= self.right:
                self._scroll_one()
        elif row < self.size.rows - 1:
            self.row = row + 1

    def reverse_index(self) -> None:
        """Move up; at the top margin scroll down."""
        self.pending = False
        if self.row == self.top:
            if self.left <= self.column <= self.right:
                self._scroll_down(self.top, 1)
        elif self.row > 0:
            self.row -= 1

    def next_line(self) -> None:
        self.index()
        self.carriage_return()

    # Relative movement

    def cursor_up(self, count: int | None = None) -> None:
        self._place()
        limit = self.top if self.row >= self.top else 0
        self.row = max(limit, self.row - (count or 1))

    def cursor_down(self, count: int | None = None) -> None:
        self._place()
        limit = self.bottom if self.row <= self.bottom else self.size.rows - 1
        self.row = min(limit, self.row + (count or 1))

    def cursor_up1(self, count: int | None = None) -> None:
        self.cursor_up(count)
        self.carriage_return()

    def cursor_down1(self, count: int | None = None) -> None:
        self.cursor_down(count)
        self.carriage_return()

    def cursor_forward(self, count: int | None = None) -> None:
        self._place()
        limit = self.right if self.column <= self.right else self.size.columns - 1
        self.column = min(limit, self._last_column(), self.column + (count or 1))

    def cursor_back(self, count: int | None = None) -> None:
        """CUB; only a step of one can be what a terminal's description calls one to the left."""
        self._place()
        self._move_left(count or 1, over_edge=self.rules.back_wrap and (count or 1) == 1)

    def horizontal_relative(self, count: int = 1) -> None:
        """HPR, and HPB where negative: margins do not stop it."""
        self._place()
        self.column = max(0, min(self.size.columns - 1, self.column + count))

    def vertical_relative(self, count: int = 1) -> None:
        """VPR, and VPB where negative: margins do not stop it."""
        self._place()
        self.row = max(0, min(self.size.rows - 1, self.row + count))

    def horizontal_position(self, column: int | None = None) -> None:
        """HPA: unlike CHA it counts from the screen's edge whatever the origin mode (common practice, no source)."""
        self._place()
        self.column = min(self.size.columns, column or 1) - 1

    def backspace(self) -> None:
        self._move_left(1, over_edge=self.rules.back_wrap)

    def _move_left(self, count: int, *, over_edge: bool) -> None:
        switched = self.reverse_wrap and self.autowrap
        wraps = switched or over_edge
        if switched and self.pending:
            count -= 1  # the cursor counts as past the last column (xterm, private mode 45)
        self.pending = False
        limit = self.left if self.column >= self.left else 0
        while wraps and count > self.column - limit and self.row > 0:
            count -= self.column - limit + 1
            self.row = self.bottom if self.row == self.top else self.row - 1
            self.column = self.right
            limit = self.left
        self.column = max(limit, self.column - count)

    # Absolute movement

    def cursor_position(self, line: int | None = None, column: int | None = None) -> None:
        line, column = line or 1, column or 1
        if self.origin_mode:
            self._address(line, column)
            return
        self.pending = False
        if line != 1 or column != 1:  # home, clear and print is a page of flowing text
            self.placing = True
        rows, columns = self.size
        self.row = line - 1 if line <= rows else rows - 1
        self.column = column - 1 if column <= columns else columns - 1
        if self.grid[self.row].double:
            self.column = min(self.column, self._last_column())

    def cursor_to_column(self, column: int | None = None) -> None:
        self._place()
        first, last = self._column_range()
        self.column = min(last, first + (column or 1) - 1)

    def cursor_to_line(self, line: int | None = None) -> None:
        self._place()
        first, last = (self.top, self.bottom) if self.origin_mode else (0, self.size.rows - 1)
        self.row = min(last, first + (line or 1) - 1)

    def _address(self, line: int, column: int) -> None:
        """Go to a line and column, each from 1, within the margins under DECOM."""
        if not self.origin_mode:
            self.cursor_position(line, column)
            return
        self.pending = False
        if line != 1 or column != 1:
            self.placing = True
        self.row = min(self.bottom, self.top + line - 1)
        self.column = min(self.right, self._last_column(), self.left + column - 1)

    def _last_column(self) -> int:
        """The last column of the cursor's row: half as many where its glyphs are twice as wide."""
        columns = self.size.columns
        return max(1, columns // 2) - 1 if self.grid[self.row].double else columns - 1

    def line_width(self, width: int) -> None:
        """DECSWL (1), DECDWL and DECDHL (2): what stands right of the middle of a row of double width is lost."""
        row = self.grid[self.row]
        row.double = width == 2
        if row.double:
            first = self._last_column() + 1
            self._warn_area(self.row, self.row, first, self.size.columns - 1)
            left, gone, _ = split(row.pieces, first, max(first + 1, self.size.columns))
            self._lose(gone, Fate.CLIPPED)
            row.pieces = left
            self.column = min(self.column, self._last_column())
            self.pending = False

    def _column_range(self) -> tuple[int, int]:
        return (self.left, self.right) if self.origin_mode else (0, self.size.columns - 1)

    def _place(self) -> None:
        self.placing = True
        self.pending = False

    # Margins

    def set_margins(self, top: int | None = None, bottom: int | None = None) -> None:
        """DECSTBM. Nothing happens unless the bottom is below the top."""
        first, last = max(1, top or 1), min(self.size.rows, bottom or self.size.rows)
        if first < last or (first == last == self.size.rows == 1):
            self.top, self.bottom = first - 1, last - 1
            self._address(1, 1)

    def set_horizontal_margins(self, left: int | None = None, right: int | None = None) -> None:
        """DECSLRM, where DECLRMM allows it."""
        first, last = max(1, left or 1), min(self.size.columns, right or self.size.columns)
        if self.horizontal_margins and first < last:
            self._set_sides(first - 1, last - 1)
            self._address(1, 1)

    def _set_sides(self, left: int, right: int) -> None:
        self.left, self.right = left, right
        self._wide_open = left == 0 and right == self.size.columns - 1

    def _reset_margins(self) -> None:
        self.top, self.bottom = 0, self.size.rows - 1
        self._set_sides(0, self.size.columns - 1)

    # Tab stops

    def tab(self) -> None:
        self.forward_tab(1)

    def forward_tab(self, count: int | None = None) -> None:
        self.pending = False
        last = self.right if self.column <= self.right else self.size.columns - 1
        for _ in range(min(count or 1, self.size.columns)):
            stops = [stop for stop in self.tab_stops if self.column < stop <= last]
            self.column = min(stops, default=last)

    def backward_tab(self, count: int | None = None) -> None:
        self._place()
        first = self.left if self.origin_mode else 0
        for _ in range(min(count or 1, self.size.columns)):
            stops = [stop for stop in self.tab_stops if first <= stop < self.column]
            self.column = max(stops, default=first)

    def set_tab_stop(self) -> None:
        self.tab_stops.add(self.column)

    def clear_tab_stop(self, how: int = 0) -> None:
        """TBC: the stop at the cursor (0), or all of them (3)."""
        if how == 0:
            self.tab_stops.discard(self.column)
        elif how == 3:
            self.tab_stops.clear()
