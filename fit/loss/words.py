"""The words of one row of the big screen, with the glyphs that count.

A word is a maximal run of non-blank glyphs on a row; it is text if it holds two letters or digits. Echo and
decoration are left out of it; what remains must keep its distances on the small screen. A word is placed
if any of its glyphs is. Blank is what Unicode calls white space.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.loss.bits import DECORATION, ECHO, PLACED, SHOWN, Flags
from fit.loss.decoration import find_decoration
from fit.screen.pieces import SINGLE, Piece

_WORD = re.compile(r"\S+")

Stretch = tuple[int, int, int]
"""``(id, count, column)``: glyphs with ascending ids, one a cell; or one glyph that is wide or a cluster."""


class Word:
    """One word and its glyphs that count."""

    __slots__ = ("count", "new", "old_placed", "placed", "stretches", "text", "whole")

    def __init__(self, text: str, stretches: tuple[Stretch, ...]) -> None:
        self.text = text
        self.stretches = stretches
        self.count = 0
        """Glyphs that count."""
        self.new = 0
        """Of these, the ones newly shown at the look at which the row was read."""
        self.placed = False
        self.old_placed = 0
        """Placed glyphs that were shown at an earlier look."""
        self.whole = text
        """The word with echo and decoration."""

    @property
    def is_text(self) -> bool:
        """Whether the word holds two letters or digits."""
        return sum(map(str.isalnum, self.whole)) > 1

    @property
    def first(self) -> int:
        """The id of the first glyph that counts."""
        return self.stretches[0][0]

    @property
    def last(self) -> int:
        """The id of the last glyph that counts."""
        glyph, count, _ = self.stretches[-1]
        return glyph + count - 1


class RowWords:
    """One row of the big screen at a look."""

    __slots__ = (
        "book",
        "count",
        "decorated",
        "done",
        "fresh",
        "high",
        "is_line",
        "kept",
        "low",
        "new",
        "pieces",
        "placed",
        "row",
        "simple",
        "strays",
        "whole",
        "words",
    )

    def __init__(self, row: int, pieces: Sequence[Piece], words: list[Word]) -> None:
        self.row = row
        """From 0."""
        self.pieces = pieces
        self.words = words
        """Words with at least one glyph that counts, from the left."""
        self.count = sum(word.count for word in words)
        self.new = 0
        """Glyphs newly shown at the look at which the row was read."""
        self.placed = False
        """Whether any word is placed."""
        self.fresh = True
        """Whether the row was read at this look; afterwards ``new`` counts no more."""
        self.done = 0
        """A bit for each small screen on which every word was marked as intact for all its remedies."""
        self.low = min((word.stretches[0][0] for word in words), default=0)
        self.high = max((stretch[0] + stretch[1] for word in words for stretch in word.stretches), default=0)
        """All ids are in ``low <= id < high``."""
        self.simple = False
        """Whether the ids from ``low`` to ``high`` stand cell after cell, and all but blanks counts."""
        self.kept = 0
        """The keys of the watches that found all words intact at one look."""
        self.whole = 0
        """The same, of this reading alone: ``kept`` goes over to a repaint of the same text."""
        self.strays: Sequence[int] = ()
        """The ids of the glyphs newly shown that were drawn before the turn."""
        self.decorated: frozenset[int] = frozenset()
        """The ids of the glyphs that are decoration."""
        self.book = -1
        """The number of the line's record, -1 where it has none."""
        self.is_line = False
        """Whether a new appearance began with this reading; a repaint of the same text begins none."""

    def is_untouched(self, flags: Flags, mask: int) -> bool:
        """Whether the whole row is new, stands cell after cell, and has none of the flags in ``mask`` yet."""
        return (
            self.simple
            and self.fresh
            and self.new == self.count
            and flags.count_without(self.low, self.high, mask) == self.high - self.low
        )

    @property
    def text(self) -> str:
        """What counts as the line's text: its words, without echo and decoration."""
        return " ".join(word.text for word in self.words)


def read_row(row: int, pieces: Sequence[Piece], flags: Flags) -> RowWords:
    """The words of a row; decoration is marked in ``flags``, what counts as shown is not yet."""
    if len(pieces) == 1 and not pieces[0][4] & SINGLE:
        words = _plain_words(pieces[0], flags)
        if words is not None:
            found = RowWords(row, pieces, words)
            found.simple = bool(words)
            return found
    words, decorated = _words(pieces, flags)
    found = RowWords(row, pieces, words)
    found.decorated = decorated
    return found


def note_shown(row: RowWords, flags: Flags, turn_start: int) -> int:
    """Count what is newly shown on a row just read and mark it so; gives how many placed glyphs are newly shown."""
    data = flags.data
    flags.reach(row.high)
    if row.simple and flags.count_without(row.low, row.high, SHOWN | PLACED) == row.high - row.low:
        for word in row.words:
            word.new = word.count
        row.new = row.count
        row.strays = range(row.low, min(row.high, turn_start))
        flags.set(row.low, row.high, SHOWN)
        return 0
    new_placed = 0
    for word in row.words:
        for glyph, count, _ in word.stretches:
            part = data[glyph : glyph + count]
            if glyph < turn_start:
                drawn_before = enumerate(part[: turn_start - glyph], glyph)
                row.strays = [*row.strays, *(one for one, value in drawn_before if not value & SHOWN)]
            for value in set(part):
                number = part.count(value)
                if not value & SHOWN:
                    word.new += number
                if value & PLACED:
                    word.placed = True
                    if value & SHOWN:
                        word.old_placed += number
                    else:
                        new_placed += number
            flags.set(glyph, glyph + count, SHOWN)
        row.new += word.new
        row.placed = row.placed or word.placed
    return new_placed


def age(row: RowWords, flags: Flags) -> None:
    """The row stands unchanged at a later look: nothing on it is new."""
    if not row.fresh:
        return
    row.fresh = False
    row.new = 0
    for word in row.words:
        word.new = 0
        if word.placed:
            word.old_placed = sum(
                1
                for glyph, count, _ in word.stretches
                for value in flags.data[glyph : glyph + count]
                if value & PLACED
            )


def _plain_words(piece: Piece, flags: Flags) -> list[Word] | None:
    """The words of a row that is one run of glyphs without echo and decoration; None where it is not."""
    column, end, glyph, text, _ = piece
    if find_decoration(text) or flags.count_without(glyph, glyph + end - column, ECHO) != end - column:
        return None
    words = []
    for match in _WORD.finditer(text):
        low, high = match.span()
        word = Word(match.group(), ((glyph + low, high - low, column + low),))
        word.count = high - low
        words.append(word)
    return words


def _words(pieces: Sequence[Piece], flags: Flags) -> tuple[list[Word], frozenset[int]]:
    """The words of any row, and the ids of its decoration."""
    text, glyphs = spell(pieces)
    counts = [glyph[0] >= 0 and not flags.has(glyph[0], ECHO) for glyph in glyphs]
    decorated = set()
    for low, high in find_decoration(text):
        for index in range(low, high):
            counts[index] = False
            decorated.add(glyphs[index][0])
            flags.set(glyphs[index][0], glyphs[index][0] + 1, DECORATION)
    words = []
    for match in _WORD.finditer(text):
        low, high = match.span()
        stretches = _stretches([glyphs[index] for index in range(low, high) if counts[index]])
        if stretches:
            word = Word("".join(text[index] for index in range(low, high) if counts[index]), stretches)
            word.count = sum(stretch[1] for stretch in stretches)
            word.whole = match.group()
            words.append(word)
    return words, frozenset(decorated)


def spell(pieces: Sequence[Piece]) -> tuple[str, list[tuple[int, int, bool]]]:
    """A row with one character a glyph: its text, and for each ``(id, column, whether it stands alone)``.

    Cells where nothing stands are blanks with the id -1. Of a cluster the first character is given.
    """
    parts: list[str] = []
    glyphs: list[tuple[int, int, bool]] = []
    reached = 0
    for column, end, glyph, text, kind in pieces:
        for gap in range(reached, column):
            parts.append(" ")
            glyphs.append((-1, gap, True))
        if kind & SINGLE:
            parts.append(text[0])
            glyphs.append((glyph, column, True))
        else:
            parts.append(text)
            glyphs.extend((glyph + index, column + index, False) for index in range(end - column))
        reached = end
    return "".join(parts), glyphs


def _stretches(glyphs: list[tuple[int, int, bool]]) -> tuple[Stretch, ...]:
    """Join glyphs whose ids and columns both follow one another."""
    stretches: list[Stretch] = []
    open_end = (-1, -1)
    for glyph, column, alone in glyphs:
        if not alone and (glyph, column) == open_end:
            first, count, start = stretches[-1]
            stretches[-1] = (first, count + 1, start)
        else:
            stretches.append((glyph, 1, column))
        open_end = (-1, -1) if alone else (glyph + 1, column + 1)
    return tuple(stretches)
