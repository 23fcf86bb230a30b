"""Pieces: what stands on one row, as runs of glyphs that came from one stretch of output.

A piece is ``(column, end, id, text, kind)``: the cells ``column <= c < end``. Where ``kind & SINGLE``
is 0 it holds one glyph a cell, with the ids ``id, id + 1, ...`` and one character of ``text`` each. Else
it is one glyph: ``text`` is its cluster of characters and ``end - column`` its cells. The pieces of a
row ascend and do not overlap. A row holds no copy of text that was drawn: slices share it.
"""

from __future__ import annotations

from bisect import bisect_left
from typing import TypeAlias

from fit.screen.fates import Fates

WIDE = 1
"""The piece is one glyph of two cells."""
CLUSTER = 2
"""The piece is one glyph of several characters."""
SEEN = 4
"""The piece stood on the visible page at a look or a hold."""
PROTECTED = 8
"""Selective erases spare the piece (DECSCA)."""
SINGLE = WIDE | CLUSTER

BLANK_ID = -1
"""In a list of cell ids: nothing stands here."""
RIGHT_HALF = -2
"""In a list of cell ids: the right half of the wide glyph before it."""

Piece: TypeAlias = tuple[int, int, int, str, int]


class Row:
    """One row of a screen."""

    __slots__ = ("double", "pieces", "seen", "wrapped")

    def __init__(self) -> None:
        self.pieces: list[Piece] = []
        self.wrapped = False
        """Whether the row continues the row above it."""
        self.double = False
        """Whether its glyphs are twice as wide (DECDWL), so that half as many fit."""
        self.seen = False
        """Whether every piece is marked as seen."""

    def see(self, fates: Fates | None) -> None:
        """Mark every piece as seen."""
        self.seen = True
        pieces = self.pieces
        for index, (column, end, glyph, text, kind) in enumerate(pieces):
            if not kind & SEEN:
                pieces[index] = (column, end, glyph, text, kind | SEEN)
                if fates is not None:
                    fates.see(glyph, 1 if kind & SINGLE else end - column)


def split(pieces: list[Piece], start: int, end: int) -> tuple[list[Piece], list[Piece], list[Piece]]:
    """Part pieces into those left of ``start``, those in ``start <= c < end``, and those right of it.

    A wide glyph that a boundary cuts goes into the middle part whole: half a glyph cannot stand.
    """
    first, last = reached(pieces, start, end)
    if first == last:
        return pieces[:first], [], pieces[last:]
    return parted(pieces, first, last, start, end)


def reached(pieces: list[Piece], start: int, end: int) -> tuple[int, int]:
    """The half-open range of the pieces that reach into the cells ``start <= c < end``."""
    first = bisect_left(pieces, (start,))
    if first and pieces[first - 1][1] > start:
        first -= 1
    return first, bisect_left(pieces, (end,), first)


def parted(
    pieces: list[Piece], first: int, last: int, start: int, end: int
) -> tuple[list[Piece], list[Piece], list[Piece]]:
    """What `split` gives where the pieces ``first <= i < last`` are known to reach into the cells."""
    middle = pieces[first:last]
    left, right = pieces[:first], pieces[last:]
    column, stop, glyph, text, kind = middle[0]
    if column < start and not kind & SINGLE:
        left.append((column, start, glyph, text[: start - column], kind))
        middle[0] = (start, stop, glyph + start - column, text[start - column :], kind)
    column, stop, glyph, text, kind = middle[-1]
    if stop > end and not kind & SINGLE:
        right.insert(0, (end, stop, glyph + end - column, text[end - column :], kind))
        middle[-1] = (column, end, glyph, text[: end - column], kind)
    return left, middle, right


def shifted(pieces: list[Piece], by: int) -> list[Piece]:
    """The pieces moved ``by`` cells to the right (to the left where negative)."""
    return [(column + by, end + by, glyph, text, kind) for column, end, glyph, text, kind in pieces]


def glyph_count(piece: Piece) -> int:
    """How many glyphs a piece holds."""
    return 1 if piece[4] & SINGLE else piece[1] - piece[0]


def is_fresh(piece: Piece) -> bool:
    """Whether a piece was not seen yet and holds anything but blanks."""
    return not piece[4] & SEEN and not piece[3].isspace()


def cells_of(pieces: list[Piece], columns: int) -> tuple[list[int], list[str]]:
    """The glyph ids and the texts of ``columns`` cells.

    A cell where nothing stands has the id `BLANK_ID` and the text ``" "``; the right half of a wide glyph
    has `RIGHT_HALF` and the empty text. A blank that was printed has the id of its byte.
    """
    ids = [BLANK_ID] * columns
    texts = [" "] * columns
    for column, end, glyph, text, kind in pieces:
        if kind & SINGLE:
            ids[column] = glyph
            texts[column] = text
            if kind & WIDE:
                ids[column + 1] = RIGHT_HALF
                texts[column + 1] = ""
        else:
            ids[column:end] = range(glyph, glyph + end - column)
            texts[column:end] = text
    return ids, texts


def row_text(pieces: list[Piece], columns: int) -> str:
    """The row as text of exactly ``columns`` cells."""
    parts: list[str] = []
    reached = 0
    for column, end, _, text, _ in pieces:
        if column > reached:
            parts.append(" " * (column - reached))
        parts.append(text)
        reached = end
    parts.append(" " * (columns - reached))
    return "".join(parts)
