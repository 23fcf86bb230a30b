"""What the program does itself when it is told the small size."""

from __future__ import annotations

from fit.remedy.findings import Pair, Report
from fit.report.numbers import percent, points
from fit.report.plain import printable
from fit.report.style import Style


def told(report: Report, style: Style) -> list[str]:
    """The section on the session recorded at the small size; none without one."""
    if report.pair is None:
        return []
    heading, *sentences = told_sentences(report, report.pair)
    lines = style.heading(heading)
    for sentence in sentences:
        lines += style.text(sentence)
    return lines


def told_sentences(report: Report, pair: Pair) -> list[str]:
    """A heading, what it does, and the figures of both sessions."""
    said = [f"Told {pair.size}, the program {_does(pair)}", printable(pair.sentence)]
    figures = pair.figures
    if figures.score is not None:
        said.append(
            f"Read on {report.small.size} then: score {points(figures.score)}, needed shown "
            f"{percent(figures.needed_shown)}, clean {percent(figures.clean)}, text kept {percent(figures.text_kept)}; "
            f"as recorded for {report.big.size}: score "
            f"{points(report.figures.score)}. Judged against a screen of {pair.judged_on}{_why(report, pair)}."
        )
    return said


def _why(report: Report, pair: Pair) -> str:
    """Why the screen is as high as it is."""
    if pair.judged_on == report.small.size:
        return ", the one that it was told"
    return ", as wide as the small one and as high as the big one, so that what scrolls off counts"


def _does(pair: Pair) -> str:
    named = {"unchanged": "does the same"}
    said = [named.get(behaviour, behaviour) for behaviour in pair.behaviour]
    if not said:
        return "does nothing that can be told"
    return f"{', '.join(said[:-1])} and {said[-1]}" if said[1:] else said[0]
