"""A watch: one way of reading one small screen, at the looks alone or with extra holds.

Holds change nothing on a screen; they only give the reader time. So one replayed screen serves any number of
watches, and each keeps its own account of what was seen and what was intact.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable, Sequence

from fit.loss.bits import Flags
from fit.loss.standing import Standing
from fit.loss.words import RowWords, Word
from fit.screen.grid import Grid
from fit.screen.pieces import SEEN, SINGLE, Piece


class Watch:
    """The account of one way of reading.

    ``bit`` marks in ``intact`` the glyphs that were ever intact, ``seen_bit`` in ``seen`` the glyphs seen at
    holds. ``key`` stands for the watch in `RowWords.kept`. ``length`` is the first id that is no byte offset.
    """

    def __init__(self, intact: tuple[Flags, int], seen: tuple[Flags, int], *, key: int, length: int) -> None:
        self.intact, self.bit = intact
        self.seen, self.seen_bit = seen
        self.key = key
        self._length = length
        self.pending: list[RowWords] = []
        """Rows of the coming look with words not known to be intact."""
        self.late: Callable[[Watch, Word], None] = _ignore
        """Told of words shown in an earlier turn that are intact only now."""
        self.kept: Callable[[RowWords, int], None] = _ignore_row
        """Told of rows all of whose words are intact."""
        self.total = 0
        """Shown glyphs ever intact."""
        self.gained = 0
        """Of the glyphs newly shown at the coming look, the ones intact so far."""
        self.splits = 0
        """Words of this turn that were intact but split."""
        self.hold_places: list[int] = []
        """The byte offsets of this turn's holds."""
        self.saved: list[tuple[RowWords, list[Word], int]] | None = None
        """For a watch that asks: words of this turn first intact at a hold, row by row, and the hold's offset."""
        self.intact_by_turn: array[int] = array("I")
        self.needed_intact: array[int] = array("I")
        self.splits_by_turn: array[int] = array("H")
        self.holds_by_turn: array[int] = array("I")

    @property
    def intact_flag(self) -> tuple[Flags, int]:
        """The flags that mark what was ever intact, and the bit."""
        return self.intact, self.bit

    def has_none(self, low: int, high: int) -> bool:
        """Whether none of the glyphs ``low <= id < high`` was ever intact."""
        return self.intact.count_without(low, high, self.bit) == high - low

    def begin(self, rows: Sequence[RowWords], track_bit: int) -> None:
        """A turn begins; ``rows`` are the ones its look will show."""
        self.pending = [row for row in rows if not row.done & track_bit]
        self.gained = 0
        self.splits = 0
        self.hold_places = []
        if self.saved is not None:
            self.saved = []

    def close(self, old_intact: int) -> None:
        """The turn ends; ``old_intact`` placed glyphs shown earlier are intact."""
        self.intact_by_turn.append(self.gained)
        self.needed_intact.append(self.gained + old_intact)
        self.splits_by_turn.append(min(self.splits, 65535))
        self.holds_by_turn.append(len(self.hold_places))

    def unseen(self, pieces: Sequence[Piece]) -> bool:
        """Whether pieces hold a glyph, not blank, that was not seen."""
        for column, end, glyph, text, kind in pieces:
            if kind & SEEN or text.isspace():
                continue
            count = 1 if kind & SINGLE else end - column
            if self.seen.count_without(glyph, glyph + count, self.seen_bit):
                return True
        return False

    def hold(self, screen: Grid) -> None:
        """The reader gets time, before the byte ``screen.at``."""
        self.hold_places.append(screen.at)
        self.see(screen)
        standing = Standing(screen.grid, screen.size.columns)
        unread = []
        at, length = screen.at, self._length
        for row in self.pending:
            if at <= row.low < length:  # not drawn yet
                unread.append(row)
                continue
            words, split = standing.intact_on(row)
            if words:
                self._note(row, words, split, at)
            if len(words) < len(row.words):
                unread.append(row)
        self.pending = unread

    def see(self, screen: Grid) -> None:
        """What stands is seen."""
        seen, bit = self.seen, self.seen_bit
        for row in screen.grid:
            for column, end, glyph, _, kind in row.pieces:
                last = glyph if kind & SINGLE else glyph + end - column - 1
                # What stands in one piece was drawn in order: with its last glyph seen, all of it was.
                if not kind & SEEN and not (seen.has(last, bit) and seen.has(glyph, bit)):
                    seen.set(glyph, last + 1, bit)

    def _note(self, row: RowWords, words: list[Word], split: list[Word], at: int) -> None:
        is_whole = len(words) == len(row.words)
        if is_whole and row.is_untouched(self.intact, self.bit):
            self.intact.set(row.low, row.high, self.bit)
            self.mark_whole(row, len(split))
            news = words
        else:
            news = [word for word in words if self.mark(word, is_split=word in split)]
        if news and self.saved is not None:
            self.saved.append((row, news, at))
        if is_whole:
            self.kept(row, self.key)

    def mark(self, word: Word, *, is_split: bool) -> bool:
        """A word is intact; tells whether that is news."""
        intact, bit = self.intact, self.bit
        missing = 0
        for glyph, count, _ in word.stretches:
            missing += intact.count_without(glyph, glyph + count, bit)
        if not missing:
            return False
        if missing > word.new:
            self.late(self, word)
        for glyph, count, _ in word.stretches:
            intact.set(glyph, glyph + count, bit)
        self.total += missing
        self.gained += min(missing, word.new)
        self.splits += is_split
        return True

    def mark_whole(self, row: RowWords, splits: int) -> None:
        """All words of a row just shown are intact, and none was before; the flags are set elsewhere."""
        self.total += row.count
        self.gained += row.count
        self.splits += splits


def _ignore(_: Watch, __: Word) -> None:
    pass


def _ignore_row(_: RowWords, __: int) -> None:
    pass
