"""The report as data: what was measured, what would help, where to hold. Rendered by `fit.report`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from fit.loss.book import LossBook
from fit.loss.figures import Demands, Figures, LineLoss, LookView, LostWord, Unknown
from fit.loss.setup import Setup
from fit.loss.verdict import Verdict
from fit.session import Session
from fit.units import Size

__all__ = [
    "BreakEnd",
    "BreakPoint",
    "LookView",
    "Pair",
    "Remedy",
    "RemedyKind",
    "Report",
    "ScreenFacts",
]


class RemedyKind(StrEnum):
    """What can be tried."""

    HOLD = "hold"
    FORESIGHT = "hold with foresight"
    WORD_WRAP = "word wrap"
    WORD_WRAP_HOLD = "word wrap with holds"
    EACH_WRAP = "hold at each line wrap"
    SECOND_SESSION = "set for the small screen"


@dataclass(frozen=True, slots=True)
class Remedy:
    """One remedy, replayed and measured; or refused, with the reason."""

    kind: RemedyKind
    about: str
    """What is done, in one sentence."""
    figures: Figures = field(default_factory=Figures)
    refused: str | None = None
    """Why it does not apply; None where it was measured."""
    may_be_best: bool = True
    """False where it is a bound or a comparison only."""

    @property
    def name(self) -> str:
        """The name for people and for JSON."""
        return self.kind.value


class BreakEnd(StrEnum):
    """What ends at a break point, best first."""

    PARAGRAPH = "paragraph"
    SENTENCE = "sentence"
    LINE = "line"
    WORD = "word"
    NOTHING = "nothing"


class BreakPoint(NamedTuple):
    """A place in the output at which to hold, before the byte ``at``."""

    at: int
    look: int
    """The look, from 1, that ends the turn it stands in."""
    end: BreakEnd
    words: str
    """The last words before it."""
    rows: tuple[str, ...]
    """The small screen then, without blanks at the ends of rows."""


class ScreenFacts(NamedTuple):
    """A screen as it was measured."""

    name: str
    size: Size
    terminal: str
    """The dialect it was decoded with."""
    chosen: str
    """How the dialect was chosen, one sentence."""


@dataclass(frozen=True, slots=True)
class Pair:
    """What the program does itself when told the small size."""

    session: Session
    size: Size
    figures: Figures
    demands: Demands
    behaviour: tuple[str, ...]
    """Of ``adapts``, ``pages``, ``refuses``, ``unchanged``; none where nothing can be told."""
    sentence: str
    """What it does, with the numbers that show it."""
    judged_on: Size
    """The size of the screen whose text the small screen was held against."""


@dataclass(frozen=True, slots=True)
class Report:
    """All findings about one session on one small screen."""

    setup: Setup
    """What was measured on; lets the session be shown and replayed again."""
    big: ScreenFacts
    small: ScreenFacts
    encoding: str
    encoding_evidence: str
    looks: int
    """The number of looks."""
    looks_rule: str
    """How the looks were found, one sentence."""
    looks_assumed: bool
    verdict: Verdict
    figures: Figures
    """As it is."""
    placed_share: float | None
    """A, the share of shown glyphs that were placed."""
    printed: int
    """Glyphs printed, blanks left out."""
    lost_anyway: int
    """Of these, the ones that stood at no look even on the big screen."""
    demands: Demands
    remedies: tuple[Remedy, ...]
    best: RemedyKind | None
    """The best remedy; None where none helps."""
    best_reason: str
    break_points: Sequence[BreakPoint]
    """For the best remedy, or for the screen as it is: the fewest holds that lose nothing waiting can save."""
    planned: Figures
    """The figures with exactly these holds."""
    losses: LossBook
    """Every word that was never intact, and every damaged or lost line, as it is."""
    unknown: tuple[Unknown, ...] = ()
    """Sequences that were not understood, the most frequent first."""
    unknown_small: tuple[Unknown, ...] = ()
    """The same for the small screen's terminal where it is another."""
    pair: Pair | None = None
    other_terminal: str | None = None
    """One sentence where the program is set for another terminal than the small screen's."""
    remarks: tuple[str, ...] = ()

    @property
    def session(self) -> Session:
        """The session that was measured."""
        return self.setup.session

    @property
    def lines(self) -> Iterator[LineLoss]:
        """Every damaged or lost line as it is, in the order of the looks."""
        return self.losses.lines()

    def words_lost_in(self, look: int) -> list[LostWord]:
        """The words first shown at a look that were never intact as it is, in reading order."""
        return self.losses.words_in(look)
