"""The verdict: the first rule that fits, with the numbers that led to it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from fit.loss.figures import Figures

COMFORTABLE_SCORE = 80.0
TIRING_SCORE = 60.0
WORKABLE_HOLDS = 1.5
"""Extra key presses a turn that a reader bears for long."""


class Rating(StrEnum):
    """How usable the program is on the small screen, from worst known to best known."""

    NOT_MEASURED = "not measured"
    REFUSES = "refuses"
    COMFORTABLE = "comfortable"
    WORKABLE = "workable with holds"
    TIRING = "tiring"
    BROKEN = "broken"


@dataclass(frozen=True, slots=True)
class Verdict:
    """A rating and why."""

    rating: Rating
    reason: str
    """One sentence with the numbers that led to it."""

    def __str__(self) -> str:
        return self.rating.value


def judge(as_is: Figures, with_holds: Figures | None, *, refuses: bool = False) -> Verdict:
    """Apply the rules in their order. ``with_holds`` is the hold without foresight, None where it was refused."""
    score = as_is.score
    if score is None:
        return Verdict(
            Rating.NOT_MEASURED,
            "nothing to be read was shown on the big screen; echo and rows of one sign do not count",
        )
    if refuses:
        return Verdict(
            Rating.REFUSES,
            "the session at the small size ends before its second input, where the big one goes on",
        )
    if score >= COMFORTABLE_SCORE:
        return Verdict(
            Rating.COMFORTABLE, f"score {said_score(score)} as it is; {COMFORTABLE_SCORE:.0f} is enough"
        )
    held = with_holds.score if with_holds is not None else None
    rate = with_holds.holds_per_turn if with_holds is not None else None
    said = f"score {said_score(score)} as it is"
    if held is not None and rate is not None:
        said += f", {said_score(held)} with {said_rate(rate)} extra key presses a turn"
        if held >= COMFORTABLE_SCORE and rate <= WORKABLE_HOLDS:
            return Verdict(Rating.WORKABLE, said)
    if max(score, held or 0.0) >= TIRING_SCORE:
        return Verdict(Rating.TIRING, said)
    return Verdict(Rating.BROKEN, f"{said}, below {TIRING_SCORE:.0f}")


def said_score(score: float) -> str:
    """A score as ``54``; as ``79.6`` where rounding would lift it over a bar of the verdicts."""
    rounded = round(score)
    if score < rounded and rounded in (COMFORTABLE_SCORE, TIRING_SCORE, 100):
        return f"{min(score, rounded - 0.1):.1f}"
    return str(rounded)


def said_rate(rate: float) -> str:
    """Key presses a turn as ``1.2``; as ``1.54`` where rounding would bring them down to the bar."""
    if rate > WORKABLE_HOLDS and f"{rate:.1f}" == f"{WORKABLE_HOLDS:.1f}":
        return f"{max(rate, WORKABLE_HOLDS + 0.01):.2f}"
    return f"{rate:.1f}"
