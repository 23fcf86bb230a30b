"""The account of one watch, summed up as figures."""

from __future__ import annotations

from dataclasses import replace
from operator import truediv

from fit.loss.book import LossBook
from fit.loss.figures import Figures, LineCounts, TurnFigures
from fit.loss.track import Track, Turns
from fit.loss.watch import Watch
from fit.screen.fates import Fate

_READ_SHARE = 0.95
"""A turn counts as read from this share of its newly shown glyphs on."""


def sum_up(track: Track, watch: Watch, turns: Turns, shown: int, lines: LineCounts) -> Figures:
    """The figures of one watch; all None where nothing was shown."""
    count = len(turns)
    if not count:
        return Figures()
    needed_shown = sum(map(truediv, watch.needed_intact, turns.needed)) / count
    cleans = [clean for clean in track.cleans if clean >= 0]
    clean = sum(cleans) / len(cleans) if cleans else 1.0
    read = sum(
        intact >= _READ_SHARE * new for intact, new in zip(watch.intact_by_turn, turns.new, strict=True)
    )
    holds = sum(watch.holds_by_turn)
    return Figures(
        score=100 * needed_shown * clean,
        needed_shown=needed_shown,
        clean=clean,
        text_kept=watch.total / shown,
        turns_read=read / count,
        lines=lines,
        shown=shown,
        intact=watch.total,
        split_words=sum(watch.splits_by_turn),
        holds=holds,
        holds_per_turn=holds / count,
    )


def in_full(figures: Figures, track: Track, watch: Watch, turns: Turns, book: LossBook) -> Figures:
    """The figures of the screen as it is, with each turn, the fates of all glyphs, and the causes."""
    fates = track.screen.fates
    counts = {} if fates is None else fates.counts()
    named = {_NAMES[fate]: counts[fate] for fate in _NAMES if counts.get(fate)}
    each = tuple(_turn(track, watch, turns, index) for index in range(len(turns)))
    return replace(figures, fates=named, causes=book.causes(), turns=each)


_NAMES = {
    Fate.SEEN: "seen",
    Fate.SCROLLED: "scrolled off",
    Fate.OVERWRITTEN: "overwritten",
    Fate.ERASED: "erased",
    Fate.CLIPPED: "clipped",
    Fate.HIDDEN: "hidden",
    Fate.STANDING: "standing",
}


def _turn(track: Track, watch: Watch, turns: Turns, index: int) -> TurnFigures:
    clean = track.cleans[index]
    return TurnFigures(
        look=turns.looks[index],
        start=turns.starts[index],
        end=turns.ends[index],
        shown=turns.new[index],
        intact=watch.intact_by_turn[index],
        needed=turns.needed[index],
        needed_intact=watch.needed_intact[index],
        clean=None if clean < 0 else clean,
        split_words=watch.splits_by_turn[index],
        holds=watch.holds_by_turn[index],
    )
