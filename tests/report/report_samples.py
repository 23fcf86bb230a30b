"""A report made by hand, with something in every field, for the tests of what is made of it."""

from __future__ import annotations

from collections.abc import Iterator

from fit.loss.bits import Flags
from fit.loss.book import LossBook
from fit.loss.figures import (
    Cause,
    Demands,
    Figures,
    LineCounts,
    LineLoss,
    LineState,
    LostWord,
    TurnFigures,
    Unknown,
)
from fit.loss.verdict import Rating, Verdict
from fit.pipeline import prepare
from fit.remedy.findings import BreakEnd, BreakPoint, Pair, Remedy, RemedyKind, Report, ScreenFacts
from fit.session import Session
from fit.units import Size

LOST = (
    "The lamp above you sounds wrong tonight; it draws its breath too quickly, like something near the bottom of "
    "its cup. Nine cans on the shelf, each painted with a number, each with its ring of dust. Number seven is gone "
    "and the dust of its ring is still clean. The door to the landing stands open by the width of a hand."
)


class Losses(LossBook):
    """The words and lines of the sample."""

    def __init__(self) -> None:
        super().__init__(b"", Flags(0), (Flags(0), 1), 1)

    def lines(self) -> Iterator[LineLoss]:
        yield LineLoss(
            "The lamp above you sounds wrong tonight;", 10, 1, 3, LineState.DAMAGED, Cause.DISPLACED, None
        )
        yield LineLoss("Nine cans on the shelf", 60, 1, 4, LineState.LOST, Cause.SCROLLED, 333)

    def words_in(self, look: int) -> list[LostWord]:
        words = {1: LOST.split()[:20], 4: LOST.split()[20:]}.get(look, [])
        return [LostWord(word, 10 + number, Cause.SCROLLED, 333) for number, word in enumerate(words)]


AS_IS = Figures(
    score=53.6,
    needed_shown=0.67,
    clean=0.8,
    text_kept=0.61,
    turns_read=0.5,
    lines=LineCounts(34, 6, 20),
    shown=1204,
    intact=793,
    split_words=12,
    holds=0,
    holds_per_turn=0.0,
    turns=(
        TurnFigures(1, 0, 500, 400, 150, 400, 150, 0.7, 3, 0),
        TurnFigures(2, 500, 900, 404, 404, 404, 404, 1.0, 0, 0),
        TurnFigures(4, 1000, 1500, 400, 239, 420, 239, 0.71, 1, 0),
    ),
    causes={Cause.SCROLLED: 333, Cause.DISPLACED: 78},
    fates={"seen": 900, "scrolled off": 400},
)

HELD = Figures(
    score=96.6,
    needed_shown=0.99,
    clean=0.975,
    text_kept=1.0,
    turns_read=1.0,
    lines=LineCounts(60, 0, 0),
    shown=1204,
    intact=1204,
    split_words=12,
    holds=4,
    holds_per_turn=1.3333,
    turns=AS_IS.turns[1:2],
)

REPORT = Report(
    setup=prepare(Session(b"", name="lamp.jsonl", remarks=("the last line of the recording was cut",))),
    big=ScreenFacts("desk", Size(25, 80), "ecma48", "the default"),
    small=ScreenFacts("pocket", Size(8, 40), "ecma48", "the same as the big screen's"),
    encoding="utf-8",
    encoding_evidence="only 7-bit bytes were printed",
    looks=4,
    looks_rule="before each recorded input and at the end",
    looks_assumed=False,
    verdict=Verdict(Rating.WORKABLE, "score 54 as it is, 97 with 1.3 extra key presses a turn"),
    figures=AS_IS,
    placed_share=0.1,
    printed=1300,
    lost_anyway=96,
    demands=Demands(
        highest_row=24,
        highest_column=79,
        moves=140,
        moves_outside=112,
        rows_outside=tuple(range(9, 25)),
        columns_outside=(41, 42, 43, 60, 79),
        scroll_regions=((1, 25),),
        reverse_video=True,
        alternate_screen=True,
        status_rows=(1,),
        padded_rows=12,
    ),
    remedies=(
        Remedy(RemedyKind.HOLD, "wait before a row that was not seen scrolls off", HELD),
        Remedy(RemedyKind.FORESIGHT, "wait before unseen text goes", HELD, may_be_best=False),
        Remedy(RemedyKind.WORD_WRAP, "break lines at words", AS_IS),
        Remedy(RemedyKind.SECOND_SESSION, "set the program for 40x8", refused="no second session was given"),
    ),
    best=RemedyKind.HOLD,
    best_reason="It lifts the score from 54 to 97 at 1.3 extra key presses a turn.",
    break_points=(
        BreakPoint(120, 1, BreakEnd.PARAGRAPH, "bottom of its cup.", ("The lamp above you", "", "its cup.")),
        BreakPoint(1190, 4, BreakEnd.SENTENCE, "still clean.", ("Nine cans",)),
    ),
    planned=HELD,
    losses=Losses(),
    unknown=(Unknown(b"\x1b[?7z", 2, 120), Unknown(b"\x1b[=1\xff", 1, 150)),
    pair=Pair(
        Session(b"", name="small.jsonl"),
        Size(8, 40),
        HELD,
        Demands(),
        ("adapts", "pages"),
        "Its longest line is 39 columns instead of 79, and it waits 14 times instead of 4.",
        Size(25, 80),
    ),
    remarks=("the last line of the recording was cut", "bare LF was taken for a new line"),
)
