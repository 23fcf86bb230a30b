"""The table of remedies, each replayed and measured, and the places to hold at."""

from __future__ import annotations

from fit.loss.figures import Figures
from fit.remedy.findings import BreakPoint, Remedy, Report
from fit.report.ink import Ink
from fit.report.numbers import count, percent, points, rate, sentence
from fit.report.plain import clip_start, in_cells, printable
from fit.report.style import INDENT, Style
from fit.report.tables import table
from fit.width import text_cells

BREAKS_SHOWN = 6
WORDS_NARROW, WORDS_WIDE = 18, 48
"""The cells left for the last words beside the numbers, on a narrow and on a wide page."""
MARK_BEST = "* "
MARK_NONE = "  "


def remedies(report: Report, style: Style) -> list[str]:
    """What was tried: score, figures and key presses a turn, beside the screen as it is."""
    if report.figures.score is None:
        return []
    heads = (
        ["", "score", "keys"] if style.narrow else ["", "score", "needed shown", "clean", "text kept", "keys"]
    )
    tried = [remedy for remedy in report.remedies if remedy.refused is None]
    rows = [_row(MARK_NONE + "as it is", report.figures, style)]
    rows += [_row(_name(remedy, report), remedy.figures, style) for remedy in tried]
    lines = style.heading("What would help (keys: extra presses a turn)")
    lines += table(heads, rows, style.width)
    for remedy in report.remedies:
        if remedy.refused is not None and remedy.may_be_best:
            lines += style.text(f"{remedy.name}: does not apply; {remedy.refused}", MARK_NONE, "    ")
    if not all(remedy.may_be_best for remedy in tried):
        lines += style.text("(in brackets: for comparison only)", MARK_NONE)
    return [*lines, *_best(report, style)]


def best_sentence(report: Report) -> str:
    """Which remedy is best and why, or that none helps."""
    head = MARK_BEST if report.best is not None else ""
    return head + sentence(report.best_reason)


def break_points(report: Report, style: Style) -> list[str]:
    """Where the holds of the best remedy belong."""
    breaks = report.break_points
    if not breaks:
        return []
    heading = (
        f"Where to hold: {count(len(breaks), 'break point')}, the fewest that lose nothing waiting can save"
    )
    lines = style.heading(heading)
    heads = ["byte", "after", "last words"] if style.narrow else ["byte", "look", "after", "last words"]
    rows = [_break_row(point, style) for point in breaks[:BREAKS_SHOWN]]
    lines += [INDENT + line for line in table(heads, rows, style.width - len(INDENT), bends=len(heads) - 1)]
    if len(breaks) > BREAKS_SHOWN:
        lines += style.text(f"and {len(breaks) - BREAKS_SHOWN:,} more; --json lists them all")
    planned = report.planned
    if planned.score is not None:
        lines += style.text(
            f"With exactly these holds: score {points(planned.score)}, "
            f"{rate(planned.holds_per_turn)} extra key presses a turn."
        )
    return [*lines, *_first_screen(breaks[0], style)]


def _first_screen(point: BreakPoint, style: Style) -> list[str]:
    """The small screen at the first break point, framed at its left where there is room."""
    longest = max((text_cells(in_cells(row)) for row in point.rows), default=0)
    edge = "  | " if longest + 4 <= style.width else ""
    if longest > style.width:
        return []
    shown = [(edge + in_cells(row)).rstrip() for row in point.rows]
    return [*style.text("The small screen at the first of them:"), *shown]


def _name(remedy: Remedy, report: Report) -> str:
    mark = MARK_BEST if remedy.kind is report.best else MARK_NONE
    return mark + (remedy.name if remedy.may_be_best else f"({remedy.name})")


def _row(name: str, figures: Figures, style: Style) -> list[str]:
    presses = rate(figures.holds_per_turn)
    if style.narrow:
        return [name, points(figures.score), presses]
    shares = [percent(share) for share in (figures.needed_shown, figures.clean, figures.text_kept)]
    return [name, points(figures.score), *shares, presses]


def _best(report: Report, style: Style) -> list[str]:
    first, *others = style.text(best_sentence(report), "", "  ")
    return [style.paint(first, Ink.BOLD), *others]


def _break_row(point: BreakPoint, style: Style) -> list[str]:
    words = clip_start(printable(point.words), WORDS_NARROW if style.narrow else WORDS_WIDE)
    if style.narrow:
        return [str(point.at), point.end.value, words]
    return [str(point.at), str(point.look), point.end.value, words]
