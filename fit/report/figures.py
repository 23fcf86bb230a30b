"""The section of the main figures, and the one of the causes."""

from __future__ import annotations

from fit.loss.figures import Cause, Figures
from fit.loss.verdict import Rating
from fit.remedy.findings import Report
from fit.report.facts import warnings
from fit.report.ink import Ink
from fit.report.numbers import count, percent, points, sentence
from fit.report.plain import pad
from fit.report.style import INDENT, LABEL, Style

RATING_INK = {
    Rating.COMFORTABLE: Ink.GREEN,
    Rating.WORKABLE: Ink.GREEN,
    Rating.TIRING: Ink.YELLOW,
    Rating.BROKEN: Ink.RED,
    Rating.REFUSES: Ink.RED,
    Rating.NOT_MEASURED: Ink.PLAIN,
}

CAUSE_NOTES = {
    Cause.SCROLLED: "gone at the top before it was read",
    Cause.OVERWRITTEN: "other text was drawn over it",
    Cause.ERASED: "cleared before it was read",
    Cause.CLIPPED: "off the edge of the small screen",
    Cause.HIDDEN: "stood on the page that is not shown",
    Cause.DISPLACED: "seen, but apart or out of place",
    Cause.CODES: "a code came out as text in its way",
    Cause.UNDRAWN: "taken for a code by that terminal",
}


def verdict(report: Report, style: Style) -> list[str]:
    """The verdict, the score and the numbers that led to them."""
    rating = report.verdict.rating
    said = style.paint(rating.value.upper(), Ink.BOLD, RATING_INK[rating])
    if report.figures.score is None:
        return [f"{INDENT}{said}", *style.text(sentence(report.verdict.reason))]
    score = f"score {points(report.figures.score)} of 100"
    room = style.width - len(INDENT) * 2 - len(rating.value) - len(score)
    lines = [f"{INDENT}{said}{INDENT}{score}"] if room >= 0 else [f"{INDENT}{said}", f"{INDENT}{score}"]
    for said in (because(report), *warnings(report)):
        lines += style.text(said)
    return lines


def measures(report: Report, style: Style) -> list[str]:
    """The figures with small bars."""
    figures = report.figures
    if figures.score is None:
        return []
    return [
        *style.heading("How much of it reaches the reader"),
        *style.measure("needed shown", figures.needed_shown, "of what is needed stands intact"),
        *style.measure("clean", figures.clean, "of what the small one shows is true"),
        *style.measure("text kept", figures.text_kept, "of all text can ever be read"),
        *style.measure("turns read", figures.turns_read, "of the turns lose 5% at most"),
        *style.measure("placed share", report.placed_share, "of all text has a fixed place"),
        *_lines(figures, style),
    ]


def causes(report: Report, style: Style) -> list[str]:
    """What the text died of."""
    figures = report.figures
    missing = figures.shown - figures.intact
    if not missing:
        return []
    heading = f"Why: {missing:,} of {count(figures.shown, 'character')} could never be read"
    lines = style.heading(heading)
    for cause, number in figures.causes.items():
        ink = Ink.YELLOW if cause is Cause.DISPLACED else Ink.RED
        lines += style.measure(cause.value, number / missing, CAUSE_NOTES[cause], ink)
    return lines


def because(report: Report) -> str:
    """The numbers that led to the verdict, in sentences."""
    figures = report.figures
    return (
        f"{sentence(report.verdict.reason)} "
        f"The score is needed shown ({percent(figures.needed_shown)}) times clean ({percent(figures.clean)})."
        f"{_set_small(report)}"
    )


def _set_small(report: Report) -> str:
    """That the program reads otherwise when it is told the small size, where a second session shows it."""
    pair, size = report.pair, report.small.size
    if pair is None or not {"adapts", "pages"} & set(pair.behaviour) or pair.figures.score is None:
        return ""
    return f" This is about the session for {report.big.size}; told {size}, the program scores {points(pair.figures.score)}."


def lines_sentence(figures: Figures) -> str:
    """The counts of lines."""
    return f"{figures.lines.kept:,} kept, {figures.lines.damaged:,} damaged, {figures.lines.lost:,} lost"


def _lines(figures: Figures, style: Style) -> list[str]:
    head = f"{INDENT}{pad('lines', LABEL)} "
    return style.text(lines_sentence(figures), head, " " * len(head))
