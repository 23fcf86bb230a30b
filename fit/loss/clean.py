"""Clean: how much of what the small screen shows is true.

A visible glyph, not decoration, is clean when it stands on the big screen at this look and its neighbours left
and right are its neighbours there: the same glyph, or blank for blank. The left and right edges of the small
screen agree with anything. At the big screen's first and last column a blank agrees, and so does the glyph
that comes next in reading order. What is decoration the big screen's row says at this look; for glyphs that do
not stand there, the small screen's own row, or whether they were decoration on the big screen at any look.

A reader's screen with more rows than the big one still shows what has scrolled off that: the rows above the first
one of which something stands on the big screen are true of an earlier moment, and are not judged.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fit.loss.bits import DECORATION, Flags
from fit.loss.decoration import find_decoration
from fit.loss.words import spell
from fit.screen.pieces import SINGLE, Piece, Row

BLANK = -1


class Page:
    """The pieces of a screen at a look, found by glyph id, with their neighbours."""

    __slots__ = ("_columns", "_found", "_starts", "decorated", "rows")

    def __init__(
        self, rows: Sequence[Sequence[Piece]], columns: int, decorated: frozenset[int] = frozenset()
    ) -> None:
        self.rows = rows
        self.decorated = decorated
        """The ids of the glyphs that are decoration at this look."""
        self._columns = columns
        found = [
            (piece[2], piece[2] + (1 if piece[4] & SINGLE else piece[1] - piece[0]), row, index)
            for row, pieces in enumerate(rows)
            for index, piece in enumerate(pieces)
        ]
        found.sort()
        self._found = found
        self._starts = [entry[0] for entry in found]

    def parts(self, low: int, high: int) -> list[tuple[int, int, int, int]]:
        """The stretches ``(low, high, row, index of the piece)`` of ``low <= id < high`` that stand here."""
        found = self._found
        parts = []
        for index in range(max(0, bisect_right(self._starts, low) - 1), len(found)):
            first, after, row, number = found[index]
            if first >= high:
                break
            if after > low:
                parts.append((max(first, low), min(after, high), row, number))
        return parts

    def left_of(self, row: int, index: int, glyph: int) -> int | None:
        """The id left of a glyph of a piece, `BLANK`; None in the first column."""
        pieces = self.rows[row]
        column, _, first, text, _ = pieces[index]
        if glyph > first:
            return BLANK if text[glyph - first - 1].isspace() else glyph - 1
        if column == 0:
            return None
        return _last_of(pieces[index - 1]) if index and pieces[index - 1][1] == column else BLANK

    def right_of(self, row: int, index: int, glyph: int) -> int | None:
        """The id right of a glyph of a piece, `BLANK`; None in the last column."""
        pieces = self.rows[row]
        column, end, first, text, kind = pieces[index]
        if not kind & SINGLE and glyph < first + end - column - 1:
            return BLANK if text[glyph - first + 1].isspace() else glyph + 1
        if end >= self._columns:
            return None
        return (
            _first_of(pieces[index + 1]) if index + 1 < len(pieces) and pieces[index + 1][0] == end else BLANK
        )

    def before_row(self, row: int) -> int:
        """The id in the last column of the row above, or `BLANK`."""
        pieces = self.rows[row - 1] if row else ()
        return _last_of(pieces[-1]) if pieces and pieces[-1][1] == self._columns else BLANK

    def after_row(self, row: int) -> int:
        """The id in the first column of the row below, or `BLANK`."""
        pieces = self.rows[row + 1] if row + 1 < len(self.rows) else ()
        return _first_of(pieces[0]) if pieces and pieces[0][0] == 0 else BLANK


def _last_of(piece: Piece) -> int:
    column, end, glyph, text, kind = piece
    if text[-1:].isspace():
        return BLANK
    return glyph if kind & SINGLE else glyph + end - column - 1


def _first_of(piece: Piece) -> int:
    return BLANK if piece[3][0].isspace() else piece[2]


class CleanMeter:
    """Measures one small screen against the big one, look after look."""

    def __init__(self, flags: Flags) -> None:
        self._flags = flags

    def measure(self, grid: Sequence[Row], columns: int, big: Page) -> tuple[int, int]:
        """The visible glyphs that are no decoration, and how many of them are clean."""
        small = Page([row.pieces for row in grid], columns)
        visible = clean = 0
        for row in range(_first_judged(small, big), len(grid)):
            line = grid[row]
            if not line.pieces:
                continue
            decorated = self._decoration(line.pieces)
            for index, piece in enumerate(line.pieces):
                if piece[3].isspace():
                    continue
                if decorated or self._was_decoration(piece):
                    judged = [true for _, true in self._judged(small, big, (row, index), decorated)]
                    seen, true = len(judged), sum(judged)
                else:
                    seen, true = _whole_piece(small, big, row, index, piece)
                visible += seen
                clean += true
        return visible, clean

    def unclean(self, grid: Sequence[Row], columns: int, big: Page) -> set[int]:
        """The ids of the visible glyphs that are no decoration and not clean."""
        small = Page([row.pieces for row in grid], columns)
        found: set[int] = set()
        for row in range(_first_judged(small, big), len(grid)):
            line = grid[row]
            decorated = self._decoration(line.pieces)
            for index in range(len(line.pieces)):
                for glyph, true in self._judged(small, big, (row, index), decorated):
                    if not true:
                        found.add(glyph)
        return found

    def _decoration(self, pieces: list[Piece]) -> frozenset[int]:
        """The ids of the glyphs that their row on the small screen makes decoration."""
        if len(pieces) == 1 and not pieces[0][4] & SINGLE:
            text, base = pieces[0][3], pieces[0][2]
            return frozenset(
                base + index for low, high in find_decoration(text) for index in range(low, high)
            )
        text, glyphs = spell(pieces)
        return frozenset(
            glyphs[index][0] for low, high in find_decoration(text) for index in range(low, high)
        )

    def _was_decoration(self, piece: Piece) -> bool:
        count = 1 if piece[4] & SINGLE else piece[1] - piece[0]
        return self._flags.count_without(piece[2], piece[2] + count, DECORATION) != count

    def _judged(
        self, small: Page, big: Page, here: tuple[int, int], decorated: frozenset[int]
    ) -> list[tuple[int, bool]]:
        """Each visible glyph of a piece that is no decoration, and whether it is clean."""
        column, end, first, text, kind = small.rows[here[0]][here[1]]
        judged = []
        for glyph in range(first, first + (1 if kind & SINGLE else end - column)):
            if text[glyph - first].isspace():
                continue
            stands = big.parts(glyph, glyph + 1)
            if stands:
                is_decoration = glyph in big.decorated
            else:
                is_decoration = glyph in decorated or self._flags.has(glyph, DECORATION)
            if is_decoration:
                continue
            judged.append((glyph, bool(stands) and _agrees(small, big, here, stands[0][2:], glyph)))
        return judged


def _first_judged(small: Page, big: Page) -> int:
    """The first row that is judged: below what scrolled off the big screen, where the reader's has more rows."""
    if len(small.rows) <= len(big.rows):
        return 0
    return next((row for row, pieces in enumerate(small.rows) if _stands(pieces, big)), 0)


def _stands(pieces: Sequence[Piece], big: Page) -> bool:
    """Whether something of a row, not blank, stands on the big screen."""
    return any(
        kind & SINGLE or not text[low - first : high - first].isspace()
        for column, end, first, text, kind in pieces
        if not text.isspace()
        for low, high, *_ in big.parts(first, first + (1 if kind & SINGLE else end - column))
    )


def _agrees(small: Page, big: Page, here: tuple[int, int], there: tuple[int, int], glyph: int) -> bool:
    return _agrees_left(small, big, here, there, glyph) and _agrees_right(small, big, here, there, glyph)


def _agrees_left(small: Page, big: Page, here: tuple[int, int], there: tuple[int, int], glyph: int) -> bool:
    mine = small.left_of(*here, glyph)
    if mine is None:
        return True
    its = big.left_of(*there, glyph)
    return mine == its or (its is None and mine in (BLANK, big.before_row(there[0])))


def _agrees_right(small: Page, big: Page, here: tuple[int, int], there: tuple[int, int], glyph: int) -> bool:
    mine = small.right_of(*here, glyph)
    if mine is None:
        return True
    its = big.right_of(*there, glyph)
    return mine == its or (its is None and mine in (BLANK, big.after_row(there[0])))


def _whole_piece(small: Page, big: Page, row: int, index: int, piece: Piece) -> tuple[int, int]:
    """The same for a piece without decoration: inside a stretch that stands on both screens all is clean."""
    column, end, first, text, kind = piece
    if kind & SINGLE:
        there = big.parts(first, first + 1)
        return 1, int(bool(there) and _agrees(small, big, (row, index), there[0][2:], first))
    visible = _inked(text)
    clean = 0
    for low, high, big_row, big_index in big.parts(first, first + end - column):
        part = text[low - first : high - first]
        clean += _inked(part)
        here, there_at = (row, index), (big_row, big_index)
        left_wrong = not part[0].isspace() and not _agrees_left(small, big, here, there_at, low)
        right_wrong = not part[-1].isspace() and not _agrees_right(small, big, here, there_at, high - 1)
        clean -= 1 if high - low == 1 and left_wrong and right_wrong else left_wrong + right_wrong
    return visible, clean


def _inked(text: str) -> int:
    """The characters that are not blank."""
    return len(text) - text.count(" ") if text.isascii() else sum(not char.isspace() for char in text)
