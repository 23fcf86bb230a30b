"""Which remedies change anything, and which is the best."""

from __future__ import annotations

from fit.loss.figures import Figures
from fit.loss.verdict import COMFORTABLE_SCORE, TIRING_SCORE, WORKABLE_HOLDS, said_rate, said_score
from fit.remedy.findings import Remedy, RemedyKind

_SMALLEST_GAIN = 5.0
"""Points of the score below which a remedy is not worth the trouble of it."""

ABOUT = {
    RemedyKind.HOLD: "wait for a key before a row that was not seen scrolls off; a device can do it by itself",
    RemedyKind.FORESIGHT: "wait before text that the big screen showed would go; the bound that waiting can reach",
    RemedyKind.WORD_WRAP: "wrap flowing text at words instead of at the last column",
    RemedyKind.WORD_WRAP_HOLD: "wrap flowing text at words, and wait before an unseen row scrolls off",
    RemedyKind.EACH_WRAP: "wait for a key whenever a line wraps; a comparison only",
    RemedyKind.SECOND_SESSION: "set the program for the small screen, as a second session shows",
}
"""What each remedy does."""

_UNCHANGED = {
    RemedyKind.HOLD: "waiting changes nothing: no row scrolls off before it can be read",
    RemedyKind.FORESIGHT: "waiting changes nothing: no word goes that stood intact and was not read",
    RemedyKind.WORD_WRAP: "wrapping at words changes nothing: no flowing word is broken at the last column",
    RemedyKind.WORD_WRAP_HOLD: "wrapping at words and waiting change nothing",
    RemedyKind.EACH_WRAP: "waiting at each wrap changes nothing",
    RemedyKind.SECOND_SESSION: "the second session reads no better",
}


def offer(kind: RemedyKind, as_is: Figures, tried: Figures, *, may_be_best: bool = True) -> Remedy:
    """A remedy that was tried; refused where it changes nothing."""
    refused = _UNCHANGED[kind] if _same(as_is, tried) else None
    return Remedy(kind, ABOUT[kind], tried, refused, may_be_best)


def choose_best(as_is: Figures, remedies: tuple[Remedy, ...]) -> tuple[RemedyKind | None, str]:
    """The best remedy and the reason; None where none helps."""
    score = as_is.score
    if score is None:
        return None, "nothing was shown, so nothing can be helped"
    able = [remedy for remedy in remedies if remedy.may_be_best and remedy.refused is None]
    helping = [remedy for remedy in able if (remedy.figures.score or 0.0) >= score + _SMALLEST_GAIN]
    if not helping:
        return None, f"no remedy raises the score of {said_score(score)} by {_SMALLEST_GAIN:.0f} points"
    best = min(helping, key=_rank)
    cost = best.figures.holds_per_turn or 0.0
    price = f" at {said_rate(cost)} extra key presses a turn" if cost else " without extra key presses"
    return (
        best.kind,
        f"{best.name} raises the score from {said_score(score)} to {said_score(best.figures.score or 0.0)}{price}",
    )


def _rank(remedy: Remedy) -> tuple[int, float, float]:
    """Verdict first, then the score in whole points, then the key presses."""
    score = remedy.figures.score or 0.0
    holds = remedy.figures.holds_per_turn or 0.0
    if score >= COMFORTABLE_SCORE and holds <= WORKABLE_HOLDS:
        standing = 0
    else:
        standing = 1 if score >= TIRING_SCORE else 2
    return standing, -round(score), holds


def _same(one: Figures, other: Figures) -> bool:
    return _essence(one) == _essence(other)


def _essence(figures: Figures) -> tuple[object, ...]:
    return (
        figures.needed_shown,
        figures.clean,
        figures.text_kept,
        figures.turns_read,
        figures.lines,
        figures.split_words,
    )
