"""A track: one small screen, replayed beside the big one, with the watches that read it."""

from __future__ import annotations

from array import array
from bisect import bisect_right
from collections.abc import Callable, Sequence

from fit.dialect.operation import Operation
from fit.loss.big import LookFacts
from fit.loss.bits import Flags
from fit.loss.clean import CleanMeter
from fit.loss.standing import Standing
from fit.loss.watch import Watch
from fit.loss.words import RowWords, Word
from fit.screen.screen import Screen


class Turns:
    """What all watches share of each turn: where it lies and what was new. One instance a session."""

    def __init__(self) -> None:
        self.looks: array[int] = array("I")
        self.starts: array[int] = array("Q")
        self.ends: array[int] = array("Q")
        self.new: array[int] = array("I")
        self.needed: array[int] = array("I")
        self._strays: dict[int, int] = {}

    def __len__(self) -> int:
        return len(self.looks)

    def add(self, facts: LookFacts) -> None:
        """Note a look that shows something new."""
        for row in facts.rows:
            for glyph in row.strays if row.fresh else ():
                self._strays[glyph] = len(self.looks)
        self.looks.append(facts.number)
        self.starts.append(facts.start)
        self.ends.append(facts.at)
        self.new.append(facts.new)
        self.needed.append(facts.new + facts.old_placed)

    def turn_of(self, glyph: int, origin: int) -> int:
        """The index of the turn in which a glyph was newly shown."""
        return self._strays.get(glyph, min(bisect_right(self.ends, origin), len(self.ends) - 1))


class Track:
    """One small screen. ``bit`` is its own in `RowWords.done`, ``origin`` gives the byte behind a glyph id.

    Of a screen that keeps no fates the first watch notes what was seen.
    """

    def __init__(
        self,
        screen: Screen,
        watches: Sequence[Watch],
        flags: Flags,
        turns: Turns,
        *,
        bit: int,
        origin: Callable[[int], int],
    ) -> None:
        self.screen = screen
        self.watches = list(watches)
        self.bit = bit
        self.cleans: array[float] = array("d")
        """The clean share at each turn's look; -1 where both screens are empty."""
        self._turns = turns
        self._origin = origin
        self._meter = CleanMeter(flags)
        self._mask = 0
        self._keys = 0
        self._intact = watches[0].intact
        self._old_intact = 0
        self._clean = -1.0
        for watch in watches:
            self._mask |= watch.bit
            self._keys |= watch.key
            watch.late = self._late

    def begin(self, facts: LookFacts) -> None:
        """A turn begins; ``facts`` are those of the look that will end it."""
        for watch in self.watches:
            watch.begin(facts.rows, self.bit)

    def take(self, operations: Sequence[Operation]) -> None:
        """Carry out a stretch of the turn."""
        self.screen.apply(operations)

    def look(self, facts: LookFacts) -> None:
        """A person reads."""
        screen = self.screen
        if screen.fates is None:
            self.watches[0].see(screen)
        screen.look(facts.at)
        standing = Standing(screen.grid, screen.size.columns)
        self._old_intact = 0
        for row in facts.rows:
            is_done = bool(row.done & self.bit)
            if is_done and not row.placed:
                continue
            words, split = standing.intact_on(row)
            if words and not is_done:
                self._mark(row, words, split)
            if words and row.placed:
                self._old_intact += sum(word.old_placed for word in words)
        if facts.new:
            self._measure_clean(facts)

    def close(self, facts: LookFacts) -> None:
        """End the turn, once every watch has had its holds. Stretches that show nothing new are no turns."""
        if not facts.new:
            return
        self.cleans.append(self._clean)
        for watch in self.watches:
            watch.close(self._old_intact)

    def _mark(self, row: RowWords, words: list[Word], split: list[Word]) -> None:
        is_whole = len(words) == len(row.words)
        if is_whole and row.is_untouched(self._intact, self._mask):
            self._intact.set(row.low, row.high, self._mask)
            for watch in self.watches:
                watch.mark_whole(row, len(split))
        else:
            for watch in self.watches:
                if row.whole & watch.key:
                    continue  # a hold of this turn has found the whole row intact
                for word in words:
                    watch.mark(word, is_split=word in split)
        if is_whole:
            row.done |= self.bit
            self.watches[0].kept(row, self._keys)

    def _measure_clean(self, facts: LookFacts) -> None:
        visible, clean = self._meter.measure(self.screen.grid, self.screen.size.columns, facts.page)
        if visible:
            self._clean = clean / visible
        else:
            self._clean = -1.0 if facts.is_empty else 0.0

    def _late(self, watch: Watch, word: Word) -> None:
        """Words of an earlier turn are intact only now: that turn gets them."""
        for glyph, count, _ in word.stretches:
            for one in range(glyph, glyph + count):
                if watch.intact.has(one, watch.bit):
                    continue
                turn = self._turns.turn_of(one, self._origin(one))
                if 0 <= turn < len(watch.intact_by_turn):
                    watch.intact_by_turn[turn] += 1
