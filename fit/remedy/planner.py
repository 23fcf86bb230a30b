"""Plans the holds of each turn, and makes them on a screen of its own that runs one turn behind."""

from __future__ import annotations

from array import array
from bisect import bisect_left
from collections.abc import Callable, Iterable, Sequence
from heapq import nlargest
from typing import overload

from fit.dialect.operation import Operation
from fit.loss.big import LookFacts
from fit.loss.stretch import cut_at
from fit.loss.watch import Watch
from fit.loss.words import Word
from fit.remedy.ends import find_ends
from fit.remedy.findings import BreakEnd, BreakPoint
from fit.remedy.foresight import Foresight
from fit.remedy.plan import Life, plan_holds
from fit.screen.screen import Screen

_WORDS_BEFORE = 5
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

    def run(self, facts: LookFacts, stretch: Iterable[list[Operation]]) -> None:
        """Plan the turn and replay it, after the watches of the screen itself have had their look."""
        lives = self._lives() if facts.new else {}
        ends = find_ends(facts.rows, self._origin) if lives else {}
        places = plan_holds(list(lives.values()), ends) if lives else []
        if not places:
            for operations in stretch:
                self._screen.apply(operations)
        else:
            self._replay(facts, stretch, places, ends)
            self._mend(facts, lives, ends)
        self._screen.look(facts.at)

    def _lives(self) -> dict[Word, Life]:
        """The words that holds with foresight saved and the looks alone did not."""
        deaths = sorted(self._foresight.deaths)
        lives = {}
        for word, at in self._foresight.watch.saved or ():
            if self._has_all(self._bare, word):
                continue
            birth = max(self._origin(glyph + count - 1) + 1 for glyph, count, _ in word.stretches)
            gone = [
                death for glyph, count, _ in word.stretches for death in _deaths(deaths, glyph, glyph + count)
            ]
            # Held by foresight at `at`: the word stood intact there, so its life reaches at least that far.
            lives[word] = Life(min(birth, at), max(min(gone, default=at), at))
        return lives

    def _replay(
        self,
        facts: LookFacts,
        stretch: Iterable[list[Operation]],
        places: Sequence[int],
        ends: dict[int, BreakEnd],
    ) -> None:
        waiting = list(places)
        for operations in stretch:
            last = operations[-1][1] if operations else 0
            due = [place for place in waiting if place < last]
            waiting = waiting[len(due) :]
            for part, place in cut_at(operations, due):
                self._screen.apply(part)
                if place is not None:
                    self._hold(facts, place, ends)
        for place in waiting:
            self._hold(facts, place, ends)

    def _hold(self, facts: LookFacts, place: int, ends: dict[int, BreakEnd]) -> None:
        self._screen.at = place
        self.watch.hold(self._screen)
        end = ends.get(place, BreakEnd.NOTHING)
        rows = [row.rstrip() for row in self._screen.display]
        self.breaks.add(place, facts.number, end, self._words_before(facts, place), rows)

    def _mend(self, facts: LookFacts, lives: dict[Word, Life], ends: dict[int, BreakEnd]) -> None:
        """A word that did not stand intact through its whole life gets the hold at which foresight saved it."""
        for word, at in self._foresight.watch.saved or ():
            if word not in lives or self._has_all(self.watch, word):
                continue
            self.watch.mark(word, is_split=False)
            if at not in self.watch.hold_places:
                self.watch.hold_places.append(at)
                end = ends.get(at, BreakEnd.NOTHING)
                self.breaks.add(at, facts.number, end, self._words_before(facts, at), [])

    def _words_before(self, facts: LookFacts, place: int) -> str:
        before = (
            (self._origin(word.last), word.text)
            for row in facts.rows
            for word in row.words
            if self._origin(word.last) < place
        )
        return " ".join(text for _, text in reversed(nlargest(_WORDS_BEFORE, before)))

    @staticmethod
    def _has_all(watch: Watch, word: Word) -> bool:
        intact = watch.intact
        return not any(
            intact.count_without(glyph, glyph + count, watch.bit) for glyph, count, _ in word.stretches
        )


def _deaths(deaths: list[tuple[int, int, int]], low: int, high: int) -> list[int]:
    """The places at which glyphs with ``low <= id < high`` went."""
    index = max(0, bisect_left(deaths, (low,)) - 1)
    found = []
    for start, end, at in deaths[index:]:
        if start >= high:
            break
        if end > low:
            found.append(at)
    return found


class BreakPoints(Sequence[BreakPoint]):
    """Break points, ascending, packed: a long session has tens of thousands."""

    def __init__(self) -> None:
        self._ats: array[int] = array("Q")
        self._looks: array[int] = array("I")
        self._kinds: array[int] = array("B")
        self._texts: list[bytes] = []

    def add(self, at: int, look: int, end: BreakEnd, words: str, rows: Sequence[str]) -> None:
        """Keep one more."""
        self._ats.append(at)
        self._looks.append(look)
        self._kinds.append(_ENDS.index(end))
        self._texts.append("\n".join((words, *rows)).encode("utf-8", "surrogatepass"))

    def __len__(self) -> int:
        return len(self._ats)

    @overload
    def __getitem__(self, index: int) -> BreakPoint: ...

    @overload
    def __getitem__(self, index: slice) -> list[BreakPoint]: ...

    def __getitem__(self, index: int | slice) -> BreakPoint | list[BreakPoint]:
        if isinstance(index, slice):
            return [self[number] for number in range(*index.indices(len(self)))]
        words, *rows = self._texts[index].decode("utf-8", "surrogatepass").split("\n")
        return BreakPoint(self._ats[index], self._looks[index], _ENDS[self._kinds[index]], words, tuple(rows))
