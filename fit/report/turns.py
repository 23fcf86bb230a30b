"""The turns that lose most, with the words that were lost."""

from __future__ import annotations

from collections.abc import Iterator
from heapq import nsmallest

from fit.loss.figures import TurnFigures
from fit.remedy.findings import Report
from fit.report.bars import bar, strip
from fit.report.ink import Ink
from fit.report.numbers import count, percent
from fit.report.plain import pad, printable, wrap
from fit.report.style import INDENT, LABEL, Style

WORST = 3
"""So many turns are shown."""
WORD_LINES = 3
"""So many lines of lost words for each."""


def worst(report: Report) -> list[TurnFigures]:
    """The turns with most characters lost, worst first."""
    return nsmallest(WORST, _losing(report), key=lambda turn: (turn.intact - turn.shown, turn.look))


def worst_turns(report: Report, style: Style) -> list[str]:
    """The section on the worst turns."""
    losing = sum(1 for _ in _losing(report))
    if not losing:
        return []
    turns = count(len(report.figures.turns), "turn")
    lines = style.heading(f"Where it hurts: {losing:,} of {turns} {'loses' if losing == 1 else 'lose'} text")
    lines += _turn_by_turn(report, style)
    for turn in worst(report):
        lines += _turn(report, turn, style)
    if losing > WORST:
        lines += style.text(f"and {count(losing - WORST, 'more turn')}; --lines lists every line")
    return lines


def _turn_by_turn(report: Report, style: Style) -> list[str]:
    """All turns in one row of signs, so that one sees where in the session it hurts."""
    head = f"{INDENT}{pad('turn by turn', LABEL)} "
    drawn = strip([turn.intact / turn.shown for turn in report.figures.turns], style.width - len(head))
    return [
        head + drawn,
        *style.text(
            "# read, + most of it, - some, . nothing", INDENT * 2 if style.narrow else " " * len(head)
        ),
    ]


def _losing(report: Report) -> Iterator[TurnFigures]:
    return (turn for turn in report.figures.turns if turn.intact < turn.shown)


def _turn(report: Report, turn: TurnFigures, style: Style) -> list[str]:
    read = turn.intact / turn.shown
    drawn = bar(read, style.bar_cells // 2)
    head = f"{INDENT}look {turn.look:<4} {drawn} {percent(read)} of {turn.shown:,} read"
    for more in (f"; clean {percent(turn.clean)}", f"; --look {turn.look} shows it"):
        head += more if len(head) + len(more) <= style.width else ""
    head = head.replace(drawn, style.paint(drawn, Ink.RED), 1)
    words = [printable(word.text) for word in report.words_lost_in(turn.look)]
    return [head, *_words(words, style)]


def _words(words: list[str], style: Style) -> list[str]:
    """The lost words in order, as many as a few lines hold, and how many more there are."""
    margin = INDENT * 2
    lines = wrap("lost: " + " ".join(words), style.width, first=margin, later=margin)
    if len(lines) <= WORD_LINES:
        return lines
    used = len(" ".join(line.strip() for line in lines[: WORD_LINES - 1]).split()) - 1
    last = wrap(f".. and {count(len(words) - used, 'more word')}", style.width, first=margin, later=margin)
    return lines[: WORD_LINES - 1] + last
