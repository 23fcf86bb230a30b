"""Plans the holds of each turn, and makes them on a screen of its own that runs one turn behind."""

from __future__ import annotations

from array import array
from bisect import bisect_left
from collections.abc import Callable, Iterable, Sequence
from typing import overload
from zlib import compress, decompress

from fit.dialect.operation import Operation
from fit.loss.big import LookFacts
from fit.loss.stretch import cut_at
from fit.loss.watch import Watch
from fit.loss.words import RowWords, Word
from fit.remedy.ends import find_ends
from fit.remedy.findings import BreakEnd, BreakPoint
from fit.remedy.foresight import Foresight
from fit.remedy.plan import Life, plan_holds
from fit.screen.screen import Screen

_WORDS_BEFORE = 5
_BATCH = 64
"""Break points whose screens are packed together."""
_ENDS = tuple(BreakEnd)


class Planner:
    """Plans for one small screen.

    ``screen`` is a second copy of it, ``watch`` reads that copy with the planned holds, ``bare`` and
    ``foresight`` tell which words waiting can save.
    """

    def __init__(
        self, screen: Screen, watch: Watch, bare: Watch, foresight: Foresight, origin: Callable[[int], int]
    ) -> None:
        self.watch = watch
        self.breaks = BreakPoints()
        self._screen = screen
        self._bare = bare
        self._foresight = foresight
        self._origin = origin
        self._ends: dict[int, BreakEnd] = {}
        self._rows: list[RowWords] = []

    def run(self, facts: LookFacts, stretch: Iterable[list[Operation]]) -> None:
        """Plan the turn and replay it, after the watches of the screen itself have had their look."""
        saved = self._saved() if facts.new else []
        if not saved:
            for operations in stretch:
                self._screen.apply(operations)
        else:
            self._rows = sorted(facts.rows, key=lambda row: -row.high)
            lives = self._lives(saved)
            self._ends = {life.birth: BreakEnd.WORD for life in lives} | find_ends(facts.rows, self._origin)
            self._replay(facts, stretch, plan_holds(lives, self._ends))
            self._mend(facts, saved)
        self._screen.look(facts.at)

    def _saved(self) -> list[tuple[RowWords, list[Word], int]]:
        """The words that holds with foresight saved and the looks alone did not."""
        found = []
        for row, words, at in self._foresight.watch.saved or ():
            if row.whole & self._bare.key:
                continue
            if row.simple and self._bare.has_none(row.low, row.high):
                lost = words
            else:
                lost = [word for word in words if not _has_all(self._bare, word)]
            if lost:
                found.append((row, lost, at))
        return found

    def _lives(self, saved: list[tuple[RowWords, list[Word], int]]) -> list[Life]:
        """The lives of words; of the words of a row that go together only the last one's, which is the shortest."""
        deaths = sorted(self._foresight.deaths)
        lives: list[Life] = []
        for row, words, at in saved:
            if row.simple and not row.placed:
                lives += self._lives_in_order(words, deaths, at)
            else:
                lives += [self._life(word, deaths, at) for word in words]
        return lives

    def _life(self, word: Word, deaths: list[tuple[int, int, int]], at: int) -> Life:
        """Foresight held at ``at``: the word stood intact there, so its life reaches at least that far."""
        if word.placed and not word.is_text:
            return Life(at, at)  # intact only at its own place, so only there and then
        return Life(min(self._birth(word), at), max(min(_deaths(deaths, word), default=at), at))

    def _lives_in_order(self, words: list[Word], deaths: list[tuple[int, int, int]], at: int) -> list[Life]:
        """The same for words of one stretch that ascend: what goes first goes from the left."""
        lives: list[Life] = []
        done = 0
        low, high = words[0].first, words[-1].last + 1
        for index in range(max(0, bisect_left(deaths, (low,)) - 1), len(deaths)):
            start, end, death = deaths[index]
            if start >= high:
                break
            reached = bisect_left(words, end, key=_first)
            if end > low and reached > done:
                if lives and death < lives[-1].death:
                    return [self._life(word, deaths, at) for word in words]
                lives.append(Life(min(words[reached - 1].last + 1, at), max(death, at)))
                done = reached
        if done < len(words):
            lives.append(Life(min(words[-1].last + 1, at), at))
        return lives

    def _birth(self, word: Word) -> int:
        """The byte after the last glyph of a word to be drawn."""
        if len(word.stretches) == 1:
            return self._origin(word.last) + 1
        return max(self._origin(glyph + count - 1) + 1 for glyph, count, _ in word.stretches)

    def _replay(self, facts: LookFacts, stretch: Iterable[list[Operation]], places: Sequence[int]) -> None:
        waiting = list(places)
        for operations in stretch:
            last = operations[-1][1] if operations else 0
            due = [place for place in waiting if place < last]
            waiting = waiting[len(due) :]
            for part, place in cut_at(operations, due):
                self._screen.apply(part)
                if place is not None:
                    self._hold(facts, place)
        for place in waiting:
            self._hold(facts, place)

    def _hold(self, facts: LookFacts, place: int) -> None:
        self._screen.at = place
        total = self.watch.total
        self.watch.hold(self._screen)
        if self.watch.total == total:
            self.watch.hold_places.pop()  # it saved nothing: the words were not yet, or no more, intact
            return
        rows = [row.rstrip() for row in self._screen.display]
        self._note(facts, place, rows)

    def _note(self, facts: LookFacts, place: int, rows: list[str]) -> None:
        end = self._ends.get(place, BreakEnd.NOTHING)
        words = self._words_before(place)
        self.breaks.add(place, facts.number, end, words, rows)

    def _words_before(self, place: int) -> str:
        """The last words before a place, in the order in which they were printed."""
        found: list[tuple[int, str]] = []
        for row in self._rows:
            if len(found) == _WORDS_BEFORE and row.high <= found[0][0]:
                break
            if self._origin(row.low) < place:
                ends = [(self._origin(word.last), word.text) for word in row.words]
                found = sorted([entry for entry in ends if entry[0] < place] + found)[-_WORDS_BEFORE:]
        return " ".join(text for _, text in found)

    def _mend(self, facts: LookFacts, saved: list[tuple[RowWords, list[Word], int]]) -> None:
        """A word that did not stand intact through its whole life gets the hold at which foresight saved it."""
        for row, words, at in saved:
            if row.whole & self.watch.key:
                continue
            for word in words:
                if self.watch.mark(word, is_split=False) and at not in self.watch.hold_places:
                    self.watch.hold_places.append(at)
                    self._note(facts, at, [])


def _has_all(watch: Watch, word: Word) -> bool:
    intact = watch.intact
    return not any(
        intact.count_without(glyph, glyph + count, watch.bit) for glyph, count, _ in word.stretches
    )


def _deaths(deaths: list[tuple[int, int, int]], word: Word) -> list[int]:
    """The places at which glyphs of a word went; ``deaths`` ascend and do not overlap."""
    found = []
    for glyph, count, _ in word.stretches:
        for index in range(max(0, bisect_left(deaths, (glyph,)) - 1), len(deaths)):
            start, end, at = deaths[index]
            if start >= glyph + count:
                break
            if end > glyph:
                found.append(at)
    return found


def _first(word: Word) -> int:
    return word.first


class BreakPoints(Sequence[BreakPoint]):
    """Break points, ascending, packed: a long session has tens of thousands."""

    def __init__(self) -> None:
        self._ats: array[int] = array("Q")
        self._looks: array[int] = array("I")
        self._kinds: array[int] = array("B")
        self._packed: list[bytes] = []
        self._open: list[str] = []
        self._unpacked: tuple[int, list[str]] = (-1, [])

    def add(self, at: int, look: int, end: BreakEnd, words: str, rows: Sequence[str]) -> None:
        """Keep one more."""
        self._ats.append(at)
        self._looks.append(look)
        self._kinds.append(_ENDS.index(end))
        self._open.append("\n".join((words, *rows)))
        if len(self._open) == _BATCH:
            self._packed.append(compress("\f".join(self._open).encode("utf-8", "surrogatepass")))
            self._open = []

    def __len__(self) -> int:
        return len(self._ats)

    @overload
    def __getitem__(self, index: int) -> BreakPoint: ...

    @overload
    def __getitem__(self, index: slice) -> list[BreakPoint]: ...

    def __getitem__(self, index: int | slice) -> BreakPoint | list[BreakPoint]:
        if isinstance(index, slice):
            return [self[number] for number in range(*index.indices(len(self)))]
        index = range(len(self))[index]
        words, *rows = self._batch(index // _BATCH)[index % _BATCH].split("\n")
        return BreakPoint(self._ats[index], self._looks[index], _ENDS[self._kinds[index]], words, tuple(rows))

    def _batch(self, number: int) -> list[str]:
        if number == len(self._packed):
            return self._open
        if self._unpacked[0] != number:
            text = decompress(self._packed[number]).decode("utf-8", "surrogatepass")
            self._unpacked = (number, text.split("\f"))
        return self._unpacked[1]
