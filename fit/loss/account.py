"""The account of one watch, summed up as figures."""

from __future__ import annotations

from dataclasses import replace

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
    each = tuple(_turn(track, watch, turns, index) for index in range(count))
    needed_shown = sum(turn.needed_shown for turn in each) / count
    cleans = [turn.clean for turn in each if turn.clean is not None]
    clean = sum(cleans) / len(cleans) if cleans else 1.0
    holds = sum(turn.holds for turn in each)
    return Figures(
        score=100 * needed_shown * clean,
        needed_shown=needed_shown,
        clean=clean,
        text_kept=watch.total / shown,
        turns_read=sum(turn.intact >= _READ_SHARE * turn.shown for turn in each) / count,
        lines=lines,
        shown=shown,
        intact=watch.total,
        split_words=sum(turn.split_words for turn in each),
        holds=holds,
        holds_per_turn=holds / count,
        turns=each,
    )


def with_fates(figures: Figures, track: Track, book: LossBook | None) -> Figures:
    """The figures with the fates of all glyphs on the track's screen, and the causes where the book is its own."""
    fates = track.screen.fates
    counts = {} if fates is None else fates.counts()
    named = {_NAMES[fate]: counts[fate] for fate in _NAMES if counts.get(fate)}
    return replace(figures, fates=named, causes=book.causes() if book is not None else {})


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
