"""The grid of a screen: rows, cursor, margins; putting, erasing, shifting and scrolling glyphs.

Every change that ends a glyph goes through `Grid._lose`, so that no glyph vanishes without a fate.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from fit.screen.fates import Fate, Fates
from fit.screen.pieces import PROTECTED, SEEN, SINGLE, Piece, Row, is_fresh, parted, reached, shifted, split
from fit.screen.rules import Rules
from fit.units import Size


@dataclass(slots=True)
class Hooks:
    """Functions that are called before a change, while the screen still stands as it is.

    ``before_scroll_off(screen, row)``: a row that holds an unseen glyph is about to leave the screen.
    ``before_loss(screen, pieces)``: unseen pieces are about to be scrolled off, overwritten or erased.
    ``on_wrap(screen)``: a line is about to go on in the next row.

    In them ``screen.at`` is the byte offset of the glyph or sequence at work, and ``screen.hold()`` marks
    what stands as seen. Blanks do not count as unseen.
    """

    before_scroll_off: Callable[[Grid, Row], None] | None = None
    before_loss: Callable[[Grid, list[Piece]], None] | None = None
    on_wrap: Callable[[Grid], None] | None = None


class Grid:
    """Rows of glyphs, a cursor and margins. Rows and columns count from 0."""

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        self.size = size
        self.rules = Rules() if rules is None else rules
        self.fates = fates
        self.hooks: Hooks | None = None
        self.at = 0
        """The byte offset of the operation at work."""
        self.grid = [Row() for _ in range(size.rows)]
        """The rows of the page that is shown, from the top."""
        self.row = 0
        self.column = 0
        self.pending = False
        """Whether the last column was filled and the next glyph will wrap."""
        self.top = 0
        self.bottom = size.rows - 1
        """The scrolling region: both rows included."""
        self.left = 0
        self.right = size.columns - 1
        """The horizontal margins: both columns included."""
        self.protection = 0
        """The kind bit of newly drawn glyphs: `PROTECTED` or 0 (DECSCA)."""
        self.placing = False
        """Whether the cursor was addressed since the last look, other than to the home position."""
        self.autowrap = True
        self._wide_open = True
        """Whether the horizontal margins are the screen's edges."""

    # Looks

    def look(self, at: int) -> None:
        """A person reads now, before the byte at offset ``at``: what stands on the visible page is seen."""
        self.at = at
        self.hold()
        self.placing = False

    def hold(self) -> None:
        """A look of this screen alone, in the middle of a turn."""
        for row in self.grid:
            if not row.seen:
                row.see(self.fates)

    # Losing

    def _lose(self, pieces: Iterable[Piece], fate: Fate) -> None:
        """Give unseen glyphs their fate. Warnings have been given before."""
        if self.fates is None:
            return
        lose, at = self.fates.lose, self.at
        for column, end, glyph, _, kind in pieces:
            if not kind & SEEN:
                lose(glyph, 1 if kind & SINGLE else end - column, fate, at)

    def _warn(self, pieces: list[Piece]) -> None:
        """Tell the hook that pieces are about to be lost."""
        if self.hooks is not None and self.hooks.before_loss is not None:
            fresh = [piece for piece in pieces if is_fresh(piece)]
            if fresh:
                self.hooks.before_loss(self, fresh)

    def _warn_area(self, top: int, bottom: int, left: int, right: int, *, selective: bool = False) -> None:
        """Tell the hook that an area, ends included, is about to be lost."""
        if self.hooks is None or self.hooks.before_loss is None:
            return
        pieces: list[Piece] = []
        for row in self.grid[top : bottom + 1]:
            if not row.seen:
                pieces += split(row.pieces, left, right + 1)[1]
        self._warn([piece for piece in pieces if not (selective and piece[4] & PROTECTED)])

    def _warn_rows_leaving(self, top: int, count: int) -> None:
        """Tell the hooks that ``count`` rows from ``top`` on are about to leave the screen."""
        hooks = self.hooks
        if hooks is None:
            return
        for row in self.grid[top : top + count]:
            if row.seen:
                continue
            if hooks.before_loss is not None:
                self._warn(row.pieces)
            if hooks.before_scroll_off is not None and any(map(is_fresh, row.pieces)):
                hooks.before_scroll_off(self, row)

    # Putting

    def _put(self, row: Row, column: int, end: int, glyph: int, text: str, kind: int) -> None:
        """Put a piece on a row, over whatever stands there."""
        pieces = row.pieces
        row.seen = False
        if not pieces or pieces[-1][1] <= column:
            pieces.append((column, end, glyph, text, kind))
            return
        first, last = reached(pieces, column, end)
        if first == last:
            pieces.insert(first, (column, end, glyph, text, kind))
            return
        if self.hooks is not None:
            self._warn(split(pieces, column, end)[1])
            row.seen = False
        left, middle, right = parted(row.pieces, first, last, column, end)
        self._lose(middle, Fate.OVERWRITTEN)
        left.append((column, end, glyph, text, kind))
        left += right
        row.pieces = left

    # Erasing

    def _erase(self, index: int, start: int, end: int, *, selective: bool = False) -> None:
        """Erase the cells ``start <= c < end`` of a row, sparing protected glyphs if ``selective``."""
        row = self.grid[index]
        if not row.pieces:
            return
        left, middle, right = split(row.pieces, start, end)
        if not middle:
            return
        if selective:
            spared = [piece for piece in middle if piece[4] & PROTECTED]
            self._lose([piece for piece in middle if not piece[4] & PROTECTED], Fate.ERASED)
            row.pieces = left + spared + right
        else:
            self._lose(middle, Fate.ERASED)
            row.pieces = left + right

    def _erase_rows(self, top: int, bottom: int, *, selective: bool = False) -> None:
        """Erase whole rows, ends included."""
        for index in range(top, bottom + 1):
            self._erase(index, 0, self.size.columns, selective=selective)
            self.grid[index].wrapped = self.grid[index].double = False

    # Shifting within a row

    def _insert_blanks(self, index: int, column: int, count: int) -> None:
        """Move the glyphs from ``column`` on to the right; what passes the right margin is clipped."""
        row = self.grid[index]
        limit = self.right + 1
        if column >= limit or not row.pieces:
            return
        count = min(count, limit - column)
        self._warn_area(index, index, limit - count, self.right)
        left, middle, right = split(row.pieces, column, limit)
        moved, gone, _ = split(middle, limit - count, limit)
        whole, cut, rest = split(moved, column, limit - count)
        self._lose(gone, Fate.CLIPPED)
        row.pieces = left + shifted(whole + cut + rest, count) + right

    def _delete_cells(self, index: int, column: int, count: int) -> None:
        """Take cells out of a row at ``column``; what stands right of them moves left."""
        row = self.grid[index]
        limit = self.right + 1
        if column >= limit or not row.pieces:
            return
        count = min(count, limit - column)
        self._warn_area(index, index, column, column + count - 1)
        left, middle, right = split(row.pieces, column, limit)
        _, gone, moved = split(middle, column, column + count)
        self._lose(gone, Fate.ERASED)
        row.pieces = left + shifted(moved, -count) + right

    # Scrolling

    def _scroll_one(self) -> None:
        """Move the scrolling region up by one row: what nearly every line feed does, so it is quick."""
        if not self._wide_open:
            self._scroll_up(self.top, 1)
            return
        row = self.grid[self.top]
        if not row.seen and row.pieces:
            if self.hooks is not None:
                self._warn_rows_leaving(self.top, 1)
            if self.fates is not None:
                lose, at = self.fates.lose, self.at
                for column, end, glyph, _, kind in row.pieces:  # what `_lose` does, without the call
                    if not kind & SEEN:
                        lose(glyph, 1 if kind & SINGLE else end - column, Fate.SCROLLED, at)
        del self.grid[self.top]
        self.grid.insert(self.bottom, Row())

    def _scroll_up(self, top: int, count: int, fate: Fate = Fate.SCROLLED) -> None:
        """Move the rows from ``top`` to the bottom margin up; ``count`` rows at the top go."""
        bottom = self.bottom
        count = min(count, bottom - top + 1)
        if not self._wide_open:
            self._scroll_block(top, count, fate)
            return
        if self.hooks is not None:
            self._warn_rows_leaving(top, count)
        grid = self.grid
        for row in grid[top : top + count]:
            if not row.seen and row.pieces:
                self._lose(row.pieces, fate)
        del grid[top : top + count]
        grid[bottom + 1 - count : bottom + 1 - count] = [Row() for _ in range(count)]

    def _scroll_down(self, top: int, count: int) -> None:
        """Move the rows from ``top`` to the bottom margin down; ``count`` rows at the bottom go."""
        bottom = self.bottom
        count = min(count, bottom - top + 1)
        if not self._wide_open:
            self._scroll_block(top, -count, Fate.SCROLLED)
            return
        if self.hooks is not None:
            self._warn_rows_leaving(bottom - count + 1, count)
        grid = self.grid
        for row in grid[bottom + 1 - count : bottom + 1]:
            if not row.seen and row.pieces:
                self._lose(row.pieces, Fate.SCROLLED)
        del grid[bottom + 1 - count : bottom + 1]
        grid[top:top] = [Row() for _ in range(count)]

    def _scroll_block(self, top: int, count: int, fate: Fate) -> None:
        """Scroll the part of the rows between the horizontal margins, up by ``count`` (down if negative)."""
        left, limit, bottom = self.left, self.right + 1, self.bottom
        if count > 0:
            self._warn_area(top, top + count - 1, left, self.right)
        else:
            self._warn_area(bottom + count + 1, bottom, left, self.right)
        parts = [split(self.grid[index].pieces, left, limit) for index in range(top, bottom + 1)]
        for offset, (before, _, after) in enumerate(parts):
            source = offset + count
            moved = parts[source][1] if 0 <= source < len(parts) else []
            row = self.grid[top + offset]
            row.pieces = before + moved + after
            row.seen = False
            row.wrapped = False
        gone = parts[:count] if count > 0 else parts[count:]
        for _, middle, _ in gone:
            self._lose(middle, fate)

    # Small things shared by the operations

    def _in_region(self) -> bool:
        """Whether the cursor is inside the margins."""
        return self.top <= self.row <= self.bottom and self.left <= self.column <= self.right
