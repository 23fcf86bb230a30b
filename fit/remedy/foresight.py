"""The hold with foresight: before a word that the big screen shows, and nobody has read, would go.

A device cannot know which words the big screen will show at the next look, so this is the bound that holds can
reach. It holds as late as it may, which takes the fewest holds, and only where a word stands intact that was
not intact at any look or hold before.
"""

from __future__ import annotations

from bisect import bisect_left

from fit.loss.bits import SHOWN, Flags
from fit.loss.standing import Standing
from fit.loss.watch import Watch
from fit.loss.words import Word
from fit.screen.grid import Grid, Hooks
from fit.screen.pieces import SINGLE, Piece


class Foresight:
    """Holds for one watch, and notes when words of the turn were lost."""

    def __init__(self, watch: Watch, flags: Flags) -> None:
        self.watch = watch
        watch.saved = []
        self.deaths: list[tuple[int, int, int]] = []
        """``(first id, id after the last, offset)``: shown glyphs that nobody saw, and what ended them."""
        self._flags = flags
        self._index: list[tuple[int, int, Word, int]] | None = None
        self._longest = 0

    def begin(self) -> None:
        """A turn begins."""
        self.deaths = []
        self._index = None

    def hooks(self) -> Hooks:
        """What is to be told by the screen."""
        return Hooks(before_loss=self._before_loss)

    def _before_loss(self, screen: Grid, pieces: list[Piece]) -> None:
        going: dict[int, tuple[Word, int]] = {}
        for column, end, glyph, _, kind in pieces:
            count = 1 if kind & SINGLE else end - column
            if self._flags.count_without(glyph, glyph + count, SHOWN) != count:
                self.deaths.append((glyph, glyph + count, screen.at))
                going |= {id(word): (word, row) for word, row in self._unread(glyph, glyph + count)}
        if going:
            standing = Standing(screen.grid, screen.size.columns)
            if any(standing.rows_of(word, row) for word, row in going.values()):
                self.watch.hold(screen)

    def _unread(self, low: int, high: int) -> list[tuple[Word, int]]:
        """The words of the coming look with a glyph in ``low <= id < high`` that were not intact yet."""
        if self._index is None:
            self._build()
        index = self._index or []
        found = []
        for place in range(bisect_left(index, low - self._longest, key=_start), len(index)):
            start, end, word, row = index[place]
            if start >= high:
                break
            if end > low and self.watch.intact.count_without(start, end, self.watch.bit):
                found.append((word, row))
        return found

    def _build(self) -> None:
        self._index = [
            (glyph, glyph + count, word, row.row)
            for row in self.watch.pending
            for word in row.words
            for glyph, count, _ in word.stretches
        ]
        self._index.sort(key=_start)
        self._longest = max((end - start for start, end, _, _ in self._index), default=0)


def _start(entry: tuple[int, int, Word, int]) -> int:
    return entry[0]
