"""One pass over a session: the big screen once, the small screen as it is and with word wrap, all watches.

The big screen goes first through each turn, so that its words are known when the small screens hold.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import chain, pairwise, zip_longest
from typing import TypeAlias

from fit.dialect.operation import Operation
from fit.loss.account import in_full, sum_up
from fit.loss.big import BigReader, LookFacts
from fit.loss.bits import SEEN_WRAPPED, STRETCH, Flags
from fit.loss.book import LossBook
from fit.loss.demands import DemandCounter
from fit.loss.figures import Figures, LookView
from fit.loss.setup import Moment, Setup, Terminal
from fit.loss.stretch import Stretch
from fit.loss.track import Track, Turns
from fit.loss.view import view
from fit.loss.watch import Watch
from fit.remedy.findings import RemedyKind
from fit.remedy.foresight import Foresight
from fit.remedy.holds import at_each_wrap, before_scrolling
from fit.remedy.planner import BreakPoints, Planner
from fit.remedy.word_wrap import wrap_words
from fit.screen.fates import Fates, Repeats
from fit.screen.grid import Hooks
from fit.screen.screen import Screen
from fit.session import Event, EventKind
from fit.units import Size

PLANNED = "planned"
Progress: TypeAlias = Callable[[float], None]
"""Is told from time to time what share of the work is done, 0 to 1."""
WORD_WRAP_PLANNED = "word wrap planned"


@dataclass(slots=True)
class _Group:
    """One replayed small screen with everything that watches it."""

    track: Track
    planner: Planner
    foresight: Foresight


class Measuring:
    """The pass. Everything it finds is read from it afterwards."""

    def __init__(self, setup: Setup, progress: Progress | None = None) -> None:
        big, small = setup.big, setup.small
        self._progress = progress
        self._done = 0
        length = len(setup.session.output)
        self.setup = setup
        largest = Size(max(big.size.rows, small.size.rows), max(big.size.columns, small.size.columns))
        self._repeats = Repeats(length, largest)
        self._flags = Flags(length)
        self._first, self._second = Flags(length), Flags(length)
        self.demands = DemandCounter(big.size)
        self.small_demands = self.demands if setup.is_one_dialect else DemandCounter(small.size)
        self.turns = Turns()
        self.reader = BigReader(self._screen(big), self._flags, length)
        self._watches: dict[str, Watch] = {}
        self._groups = [self._plain_group(small)]
        self.book = LossBook(
            setup.session.output, self._flags, self._watches["as is"].intact_flag, self._watches["as is"].key
        )
        wrapped = wrap_words(small.rules)
        if wrapped is not None:
            self._groups.append(self._word_group(replace(small, rules=wrapped)))
        self._all_keys = 0
        for watch in self._watches.values():
            watch.kept = self.book.kept
            self._all_keys |= watch.key
        self._big_dialect = big.decoder()
        self._small_dialect = self._big_dialect if setup.is_one_dialect else small.decoder()

    # Before the pass

    def _screen(self, terminal: Terminal, *, with_fates: bool = True) -> Screen:
        fates = Fates(len(self.setup.session.output), self._repeats)
        return Screen(terminal.size, terminal.rules, fates if with_fates else None)

    def _watch(self, name: str, intact: tuple[Flags, int], seen: tuple[Flags, int]) -> Watch:
        key = 1 << len(self._watches)
        watch = Watch(intact, seen, key=key, length=len(self.setup.session.output))
        self._watches[name] = watch
        return watch

    def _plain_group(self, small: Terminal) -> _Group:
        one, two = self._first, self._second
        bare = self._watch("as is", (one, 1), (two, 0))
        held = self._watch(RemedyKind.HOLD, (one, 2), (two, 16))
        fore = self._watch(RemedyKind.FORESIGHT, (one, 4), (two, 32))
        each = self._watch(RemedyKind.EACH_WRAP, (one, 8), (two, 64))
        plan = self._watch(PLANNED, (one, 16), (two, 128))
        group = self._group(self._screen(small), small, [bare, held, fore, each, plan], bit=1)
        hooks = group.track.screen.hooks
        assert hooks is not None
        hooks.before_scroll_off = before_scrolling(held).before_scroll_off
        hooks.on_wrap = at_each_wrap(each).on_wrap
        return group

    def _word_group(self, small: Terminal) -> _Group:
        one, two = self._second, self._first
        bare = self._watch(RemedyKind.WORD_WRAP, (one, 1), (self._flags, SEEN_WRAPPED))
        held = self._watch(RemedyKind.WORD_WRAP_HOLD, (one, 2), (two, 32))
        fore = self._watch("word wrap with foresight", (one, 4), (two, 64))
        plan = self._watch(WORD_WRAP_PLANNED, (one, 8), (two, 128))
        screen = self._screen(small, with_fates=False)
        group = self._group(screen, small, [bare, held, fore, plan], bit=2)
        hooks = group.track.screen.hooks
        assert hooks is not None
        hooks.before_scroll_off = before_scrolling(held).before_scroll_off
        return group

    def _group(self, screen: Screen, small: Terminal, watches: list[Watch], bit: int) -> _Group:
        """A small screen whose watches are bare, with holds, with foresight, ..., as planned."""
        track = Track(screen, watches, self._flags, self.turns, bit=bit, origin=self._repeats.origin)
        foresight = Foresight(watches[2], self._flags)
        screen.hooks = Hooks(before_loss=foresight.hooks().before_loss)
        copy = self._screen(small, with_fates=False)
        planner = Planner(copy, watches[-1], watches[0], foresight, self._repeats.origin)
        return _Group(track, planner, foresight)

    # The pass

    def run(self) -> None:
        """Go through the session, look by look."""
        start = 0
        between = deque(self._between())
        for look in self.setup.moments:
            due = []
            while between and between[0].at <= look.at:
                due.append(between.popleft())
            self._turn(start, look, due)
            start = look.at
        self._finish()

    def _between(self) -> list[Event]:
        """What happens inside turns: resizes, and inputs at places that are no looks (their echo is echo too)."""
        looks = {look.at for look in self.setup.moments}
        return [
            event
            for event in self.setup.session.events
            if event.kind is EventKind.RESIZE or (event.kind is EventKind.INPUT and event.at not in looks)
        ]

    def _turn(self, start: int, look: Moment, events: list[Event]) -> None:
        stretches = self._turn_on_big(start, look, events)
        facts = self.reader.look(look.at)
        if facts.new:
            self.turns.add(facts)
        self._replay(facts, self._for_small(stretches, start, look.at))
        self.book.look(facts.number, facts.rows, self._all_keys)
        self.reader.typed(look.typed)

    def _turn_on_big(self, start: int, look: Moment, events: list[Event]) -> list[Stretch]:
        output = self.setup.session.output
        places = [start, *(event.at for event in events), look.at]
        stretches = [Stretch(self._big_dialect, output, low, high) for low, high in pairwise(places)]
        for stretch, event in zip_longest(stretches, events):
            self._show(stretch)
            if event is not None:
                self._meet(event)
        return stretches

    def _meet(self, event: Event) -> None:
        if event.size is not None:
            self.reader.screen.resize(*event.size)
        elif event.data:
            self.reader.typed(self.setup.typed(event.data))

    def _show(self, stretch: Stretch) -> None:
        for operations in stretch:
            self.demands.take(operations)
            self.reader.take(operations)
            self._tick(operations)

    def _for_small(self, stretches: list[Stretch], start: int, end: int) -> list[Stretch]:
        if self._small_dialect is self._big_dialect:
            return stretches
        stretch = Stretch(self._small_dialect, self.setup.session.output, start, end)
        for operations in stretch:
            self.small_demands.take(operations)
        return [stretch]

    def _replay(self, facts: LookFacts, stretches: list[Stretch]) -> None:
        for group in self._groups:
            group.track.begin(facts)
            group.foresight.begin()
        for stretch in stretches:
            for operations in stretch:
                for group in self._groups:
                    group.track.take(operations)
                self._tick(operations)
        for group in self._groups:
            group.track.look(facts)
            group.planner.run(facts, chain.from_iterable(stretches))
            group.track.close(facts)

    def _tick(self, operations: list[Operation]) -> None:
        """Say how far the pass is: the bytes go once over the big screen, and once over the small ones."""
        if self._progress is not None and operations:
            self._done += operations[-1][1] - operations[0][0]
            self._progress(self._done / (2 * max(1, len(self.setup.session.output))))

    def _finish(self) -> None:
        screens = [self.reader.screen, *(group.track.screen for group in self._groups)]
        for screen in screens:
            screen.finish()
        output = self.setup.session.output
        for low in range(0, len(output), STRETCH):
            blanks = output[low : low + STRETCH].translate(_INK)
            for screen in screens:
                if screen.fates is not None:
                    screen.fates.clear_blanks(blanks, low)
        own = self.plain.screen.fates
        assert own is not None
        self.book.finish(own, None if self.setup.is_one_dialect else self.big_fates)

    def view(self, number: int) -> LookView:
        """Both screens at one look, in place of the pass."""
        start = 0
        between = self._between()
        for look in self.setup.moments[:number]:
            due = [event for event in between if start <= event.at <= look.at]
            stretches = self._turn_on_big(start, look, due)
            facts = self.reader.look(look.at)
            for stretch in self._for_small(stretches, start, look.at):
                for operations in stretch:
                    self.plain.take(operations)
            self.plain.screen.look(look.at)
            self.reader.typed(look.typed)
            start = look.at
        return view(facts, self.reader.screen, self.plain.screen, self._flags)

    # After the pass

    @property
    def big_fates(self) -> Fates:
        """What became of all glyphs on the big screen."""
        fates = self.reader.screen.fates
        assert fates is not None
        return fates

    @property
    def plain(self) -> Track:
        """The small screen as it is."""
        return self._groups[0].track

    @staticmethod
    def _seen_by(track: Track, watch: Watch) -> list[tuple[Flags, int]]:
        """The flags of what a watch saw: at its holds, and at the looks where the screen keeps no fates."""
        watches = [watch] if track.screen.fates is not None else [watch, track.watches[0]]
        return [(one.seen, one.seen_bit) for one in watches if one.seen_bit]

    def breaks(self, *, word_wrap: bool) -> BreakPoints:
        """The planned holds on one of the small screens."""
        return self._groups[int(word_wrap)].planner.breaks

    def figures(self) -> dict[str, Figures]:
        """The figures of every watch, by its name: ``as is``, the kinds of remedies, and the planned ones."""
        names = {id(watch): name for name, watch in self._watches.items()}
        pairs = [(group.track, watch) for group in self._groups for watch in group.track.watches]
        counts = self.book.count_lines(
            [(watch.key, self._seen_by(track, watch), track is self.plain) for track, watch in pairs]
        )
        shown = self.reader.shown
        found = {
            names[id(watch)]: sum_up(track, watch, self.turns, shown, lines)
            for (track, watch), lines in zip(pairs, counts, strict=True)
        }
        if len(self.turns):
            bare = self._watches["as is"]
            found["as is"] = in_full(found["as is"], self.plain, bare, self.turns, self.book)
        return found


_INK = bytes(0 if byte == 0x20 else 0xFF for byte in range(256))
"""For `Fates.clear_blanks`: a blank is drawn by 20h in every encoding."""
