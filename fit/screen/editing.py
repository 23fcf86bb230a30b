"""Erasing, inserting, deleting, scrolling, repeating, rectangles.

Sources: ECMA-48, 5th edition (1991), section 8.3 (ED, EL, ECH, ICH, DCH, IL, DL, SU, SD, REP); VT220 Programmer
Reference Manual, chapter 4 (DECSCA, DECSED, DECSEL); VT420 Programmer Reference Manual, chapter 5 (rectangles,
DECIC, DECDC, DECBI, DECFI).

Where they leave it open: editing cancels a pending wrap (an erase to the end of the line may keep it, see
`PendingRule`); IL and DL work only inside the scrolling region.
"""

from __future__ import annotations

from fit.screen.drawing import DrawingGrid
from fit.screen.fates import Fate, Fates
from fit.screen.pieces import CLUSTER, PROTECTED, WIDE, cells_of, split
from fit.screen.rules import DecalnRule, PendingRule, Rules, SelectiveRule
from fit.units import Size


class EditingGrid(DrawingGrid):
    """A grid whose contents are edited. Counts from 1; 0 or None stands for 1."""

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        super().__init__(size, rules, fates)
        self.not_repeated = 0
        """Operations that would have filled or repeated more glyphs than there are names for."""
        self.guarded_area = False
        """Whether protection came from SPA, which ED, EL and ECH honour, rather than from DECSCA."""

    # Erasing

    def erase_in_line(self, how: int = 0, private: bool = False) -> None:
        """EL, and DECSEL where ``private``."""
        if private:
            self.selective_erase_in_line(how)
        else:
            self._erase_line(how, selective=self.guarded_area)

    def selective_erase_in_line(self, how: int = 0) -> None:
        if self.rules.selective_erase is not SelectiveRule.IGNORED:
            self._erase_line(how, selective=self._spares())

    def _spares(self) -> bool:
        """Whether selective erases spare protected glyphs: those of DECSCA, not those of SPA."""
        return self.rules.selective_erase is SelectiveRule.HONOURED and not self.guarded_area

    def _erase_line(self, how: int, *, selective: bool) -> None:
        columns = self.size.columns
        if how == 0 and self.pending and self.rules.pending is PendingRule.KEEP:
            return
        ranges = {0: (self.column, columns), 1: (0, self.column + 1), 2: (0, columns)}
        if how not in ranges:
            return
        start, end = ranges[how]
        self.pending = False
        self._warn_area(self.row, self.row, start, end - 1, selective=selective)
        self._erase(self.row, start, end, selective=selective)
        if how != 1 and self.row + 1 < self.size.rows:
            self.grid[self.row + 1].wrapped = False

    def erase_in_display(self, how: int = 0, *_: int, private: bool = False) -> None:
        """ED, and DECSED where ``private``. Clearing what scrolled off (3) changes nothing here."""
        if private:
            self.selective_erase_in_display(how)
        else:
            self._erase_display(how, selective=self.guarded_area)

    def selective_erase_in_display(self, how: int = 0) -> None:
        if self.rules.selective_erase is not SelectiveRule.IGNORED:
            self._erase_display(how, selective=self._spares())

    def _erase_display(self, how: int, *, selective: bool) -> None:
        rows, columns = self.size
        if how == 0:
            areas = [(self.row, self.row, self.column, columns - 1), (self.row + 1, rows - 1, 0, columns - 1)]
        elif how == 1:
            areas = [(0, self.row - 1, 0, columns - 1), (self.row, self.row, 0, self.column)]
        elif how == 2:
            areas = [(0, rows - 1, 0, columns - 1)]
        else:
            return
        self.pending = False
        for top, bottom, left, right in areas:
            self._warn_area(top, bottom, left, right, selective=selective)
        for top, bottom, left, right in areas:
            for index in range(top, bottom + 1):
                self._erase(index, left, right + 1, selective=selective)
                if left == 0 and right == columns - 1:
                    self.grid[index].wrapped = self.grid[index].double = False

    def erase_characters(self, count: int | None = None) -> None:
        end = min(self.size.columns, self.column + (count or 1))
        self.pending = False
        self._warn_area(self.row, self.row, self.column, end - 1, selective=self.guarded_area)
        self._erase(self.row, self.column, end, selective=self.guarded_area)

    def set_protection(self, how: int = 0) -> None:
        """DECSCA: what is drawn from now on is spared by selective erases (1), or not (0, 2)."""
        self.protection = PROTECTED if how == 1 else 0
        if how == 1:
            self.guarded_area = False

    def set_guard(self, how: int = 0) -> None:
        """SPA and EPA: what is drawn from now on is spared by the plain erases (1), or not (0)."""
        self.protection = PROTECTED if how else 0
        self.guarded_area = self.guarded_area or bool(how)

    # Inserting and deleting

    def insert_characters(self, count: int | None = None) -> None:
        self.pending = False
        if self.left <= self.column <= self.right:
            self._insert_blanks(self.row, self.column, count or 1)

    def delete_characters(self, count: int | None = None) -> None:
        self.pending = False
        if self.left <= self.column <= self.right:
            self._delete_cells(self.row, self.column, count or 1)

    def insert_lines(self, count: int | None = None) -> None:
        if self._in_region():
            self._scroll_down(self.row, count or 1)
            self._after_lines()

    def delete_lines(self, count: int | None = None) -> None:
        if self._in_region():
            self._scroll_up(self.row, count or 1, Fate.ERASED)
            self._after_lines()

    def _after_lines(self) -> None:
        self.pending = False
        if self.rules.insert_lines_home:
            self.column = self.left

    def insert_columns(self, count: int | None = None) -> None:
        """DECIC: blanks at the cursor's column in every row of the scrolling region."""
        if self._in_region():
            for index in range(self.top, self.bottom + 1):
                self._insert_blanks(index, self.column, count or 1)

    def delete_columns(self, count: int | None = None) -> None:
        """DECDC: the cursor's column goes from every row of the scrolling region."""
        if self._in_region():
            for index in range(self.top, self.bottom + 1):
                self._delete_cells(index, self.column, count or 1)

    def forward_index(self) -> None:
        """DECFI: move right; at the right margin the region moves left."""
        self.pending = False
        if self.column == self.right and self.top <= self.row <= self.bottom:
            for index in range(self.top, self.bottom + 1):
                self._delete_cells(index, self.left, 1)
        elif self.column < self.size.columns - 1:
            self.column += 1

    def back_index(self) -> None:
        """DECBI: move left; at the left margin the region moves right."""
        self.pending = False
        if self.column == self.left and self.top <= self.row <= self.bottom:
            for index in range(self.top, self.bottom + 1):
                self._insert_blanks(index, self.left, 1)
        elif self.column > 0:
            self.column -= 1

    # Scrolling

    def scroll_up(self, count: int | None = None) -> None:
        self._scroll_up(self.top, count or 1)

    def scroll_down(self, count: int | None = None) -> None:
        self._scroll_down(self.top, count or 1)

    # Repeating and filling

    def repeat(self, count: int | None = None) -> None:
        """REP: draw the last character again, at most as often as the largest screen has cells.

        What a hostile count asks for beyond the names that there are for repeated glyphs is not understood.
        """
        char = self.last_character
        if not char:
            return
        largest = self.size if self.fates is None else self.fates.repeats.size
        number = min(count or 1, max(largest.cells, self.size.cells))
        if self.fates is None:
            base: int | None = self.drawn
            self.drawn += number
        else:
            base = self.fates.repeats.block(self.at, number)
        if base is None:
            self.not_repeated += 1
        elif self._is_narrow(char):
            self._draw_run(char * number, base)
        else:
            self._draw_characters(char * number, base)

    def alignment_display(self) -> None:
        """DECALN: fill the screen with ``E``; the margins go, and the cursor goes home or stays (`DecalnRule`)."""
        self._reset_margins()
        self._fill("E", 0, self.size.rows - 1, 0, self.size.columns - 1)
        self.pending = False
        if self.rules.decaln is DecalnRule.HOME:
            self._address(1, 1)

    def fill_rectangle(
        self, code: int = 32, top: int = 1, left: int = 1, bottom: int = 0, right: int = 0
    ) -> None:
        """DECFRA: fill a rectangle with one character."""
        area = self._rectangle(top, left, bottom, right)
        if area and (32 <= code <= 126 or 160 <= code <= 255):
            self._fill(chr(code), *area)

    def erase_rectangle(self, top: int = 1, left: int = 1, bottom: int = 0, right: int = 0) -> None:
        """DECERA."""
        self._erase_area(self._rectangle(top, left, bottom, right), selective=False)

    def selective_erase_rectangle(self, top: int = 1, left: int = 1, bottom: int = 0, right: int = 0) -> None:
        """DECSERA."""
        if self.rules.selective_erase is not SelectiveRule.IGNORED:
            self._erase_area(self._rectangle(top, left, bottom, right), selective=self._spares())

    def _erase_area(self, area: tuple[int, int, int, int] | None, *, selective: bool) -> None:
        if area is None:
            return
        first, last, start, end = area
        self._warn_area(first, last, start, end, selective=selective)
        for index in range(first, last + 1):
            self._erase(index, start, end + 1, selective=selective)

    def copy_rectangle(
        self,
        top: int = 1,
        left: int = 1,
        bottom: int = 0,
        right: int = 0,
        _page: int = 1,
        to_top: int = 1,
        to_left: int = 1,
        _to_page: int = 1,
    ) -> None:
        """DECCRA: the copies are new glyphs, repeats of this operation."""
        area = self._rectangle(top, left, bottom, right)
        if area is None:
            return
        first, last, start, end = area
        shift_rows, shift_columns = self._rectangle_origin()
        down = (to_top or 1) - 1 + shift_rows
        along = (to_left or 1) - 1 + shift_columns
        rows, columns = self.size
        if down >= rows or along >= columns:
            return
        last = min(last, first + rows - 1 - down)
        end = min(end, start + columns - 1 - along)
        copies = [cells_of(self.grid[index].pieces, columns) for index in range(first, last + 1)]
        names = self._cell_ids()
        if names is None:
            return
        base, step = names
        for offset, (_, texts) in enumerate(copies):
            target = down + offset
            self._warn_area(target, target, along, along + end - start)
            self._erase(target, along, along + end - start + 1)
            for column in range(start, end + 1):
                text = texts[column]
                to = along + column - start
                if not text or text == " ":
                    continue
                width = 2 if column < end and not texts[column + 1] else 1
                kind = (WIDE if width == 2 else 0) | (CLUSTER if len(text) > 1 else 0)
                self._put(self.grid[target], to, to + width, base + target * step + to, text, kind)

    # Areas

    def _rectangle_origin(self) -> tuple[int, int]:
        return (self.top, self.left) if self.origin_mode else (0, 0)

    def _rectangle(self, top: int, left: int, bottom: int, right: int) -> tuple[int, int, int, int] | None:
        """The rows and columns, ends included, of a rectangle as programs give it; None where it is empty."""
        down, along = self._rectangle_origin()
        last_row = self.bottom if self.origin_mode else self.size.rows - 1
        last_column = self.right if self.origin_mode else self.size.columns - 1
        first = (top or 1) - 1 + down
        start = (left or 1) - 1 + along
        last = min(last_row, bottom - 1 + down if bottom else last_row)
        end = min(last_column, right - 1 + along if right else last_column)
        return (first, last, start, end) if first <= last and start <= end else None

    def _fill(self, char: str, first: int, last: int, start: int, end: int) -> None:
        names = self._cell_ids()
        if names is None:
            return
        base, step = names
        self._warn_area(first, last, start, end)
        for index in range(first, last + 1):
            row = self.grid[index]
            left, middle, right = split(row.pieces, start, end + 1)
            self._lose(middle, Fate.OVERWRITTEN)
            filling = (start, end + 1, base + index * step + start, char * (end + 1 - start), 0)
            row.pieces = [*left, filling, *right]
            row.seen = False
            row.wrapped = False

    # Names of repeated glyphs

    def _cell_ids(self) -> tuple[int, int] | None:
        """The id of cell 0, 0 for an operation that fills cells, and how far on the next row is.

        Cells are counted as on the largest screen that shares the names; None where no names are left.
        """
        if self.fates is None:
            self.drawn += self.size.cells
            return self.drawn - self.size.cells, self.size.columns
        largest = self.fates.repeats.size
        rows, columns = max(largest.rows, self.size.rows), max(largest.columns, self.size.columns)
        base = self.fates.repeats.block(self.at, rows * columns)
        if base is None:
            self.not_repeated += 1
            return None
        return base, columns
