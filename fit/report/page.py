"""The report as one HTML file that needs nothing else: no script, no font, no picture from elsewhere."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from importlib import resources

from fit.loss.figures import Figures, LookView, TurnFigures
from fit.loss.verdict import Rating
from fit.remedy.findings import Remedy, Report
from fit.report.advice import MASTER_COPY
from fit.report.demands import demand_sentences
from fit.report.facts import fact_sentences, warnings
from fit.report.figures import CAUSE_NOTES, because, lines_sentence
from fit.report.html_screen import look_html, rows_html
from fit.report.numbers import count, percent, points, rate
from fit.report.pair import told_sentences
from fit.report.plain import printable
from fit.report.remedies import best_sentence
from fit.report.turns import worst

BREAKS_PICTURED = 6
TONES = {
    Rating.COMFORTABLE: "good",
    Rating.WORKABLE: "good",
    Rating.TIRING: "mid",
    Rating.NOT_MEASURED: "soft",
}


def page(report: Report, views: Mapping[int, LookView]) -> str:
    """The page. ``views`` holds both screens for the looks that are to be pictured."""
    style = (resources.files("fit.report") / "page.css").read_text("utf-8")
    title = f"{printable(report.session.name or 'the session')} on {report.small.size}"
    body = "\n".join(filter(None, (section(report, views) for section in SECTIONS)))
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>\n{style}</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )


def _head(report: Report, _: Mapping[int, LookView]) -> str:
    rating = report.verdict.rating
    name = escape(printable(report.session.name or "the session"))
    score = f"score {points(report.figures.score)} of 100" if report.figures.score is not None else ""
    reason = because(report) if report.figures.score is not None else report.verdict.reason
    return (
        f'<h1>{name}</h1>\n<p class="soft">written for {report.big.size}, read on {report.small.size}</p>\n'
        f'<p class="verdict"><strong class="{TONES.get(rating, "bad")}">{rating.value}</strong><span>{score}</span></p>\n'
        + "".join(f"<p>{escape(said)}</p>" for said in (reason, *warnings(report)))
    )


def _measures(report: Report, _: Mapping[int, LookView]) -> str:
    figures = report.figures
    if figures.score is None:
        return ""
    rows = [
        _measure("needed shown", figures.needed_shown, "of what is needed stands intact"),
        _measure("clean", figures.clean, "of what the small one shows is true"),
        _measure("text kept", figures.text_kept, "of all text can ever be read"),
        _measure("turns read", figures.turns_read, "of the turns lose 5% at most"),
        _measure("placed share", report.placed_share, "of all text has a fixed place"),
    ]
    return _section(
        "How much of it reaches the reader",
        f'<div class="measures">{"".join(rows)}</div><p>Lines: {lines_sentence(figures)}.</p>',
    )


def _causes(report: Report, _: Mapping[int, LookView]) -> str:
    figures = report.figures
    missing = figures.shown - figures.intact
    if not missing:
        return ""
    rows = [
        _measure(cause.value, number / missing, CAUSE_NOTES[cause])
        for cause, number in figures.causes.items()
    ]
    heading = f"Why: {missing:,} of {count(figures.shown, 'character')} could never be read"
    return _section(heading, f'<div class="measures bad">{"".join(rows)}</div>')


def _turns(report: Report, views: Mapping[int, LookView]) -> str:
    turns = worst(report)
    if not turns:
        return ""
    legend = (
        '<p class="soft">Underlined on the big screen: not intact on the small one. Underlined with a wave on the '
        "small screen: not true to the big one.</p>"
    )
    return _section("Where it hurts", legend + "".join(_turn(report, turn, views) for turn in turns))


def _turn(report: Report, turn: TurnFigures, views: Mapping[int, LookView]) -> str:
    words = escape(printable(" ".join(word.text for word in report.words_lost_in(turn.look))))
    picture = look_html(report, views[turn.look]) if turn.look in views else ""
    return (
        f"<h3>Look {turn.look}: {percent(turn.intact / turn.shown)} of {count(turn.shown, 'new character')} read, "
        f'clean {percent(turn.clean)}</h3>{picture}<p class="words-lost"><span class="soft">lost:</span> {words}</p>'
    )


def _demands(report: Report, _: Mapping[int, LookView]) -> str:
    return _section(
        "What the program asks of its terminal", _list(demand_sentences(report.demands, report.small.size))
    )


def _told(report: Report, _: Mapping[int, LookView]) -> str:
    if report.pair is None:
        return ""
    heading, *sentences = told_sentences(report, report.pair)
    return _section(heading, "".join(f"<p>{escape(sentence)}</p>" for sentence in sentences))


def _remedies(report: Report, _: Mapping[int, LookView]) -> str:
    if report.figures.score is None:
        return ""
    heads = ("", "score", "needed shown", "clean", "text kept", "extra keys a turn")
    head = "".join(f"<th>{text}</th>" for text in heads)
    rows = [_row("as it is", report.figures, best=False)]
    rows += [
        _row(_remedy_name(remedy), remedy.figures, best=remedy.kind is report.best)
        for remedy in report.remedies
        if remedy.refused is None
    ]
    refused = [
        f"{remedy.name}: does not apply; {remedy.refused}" for remedy in report.remedies if remedy.refused
    ]
    return _section(
        "What would help",
        f'<div class="scroll"><table><tr>{head}</tr>{"".join(rows)}</table></div>'
        f"<p><strong>{escape(best_sentence(report))}</strong></p>{_list(refused)}",
    )


def _breaks(report: Report, _: Mapping[int, LookView]) -> str:
    breaks = report.break_points
    if not breaks:
        return ""
    rows = "".join(
        f'<tr><td>{point.at}</td><td>{point.look}</td><td>{point.end.value}</td><td class="words">'
        f"{escape(printable(point.words))}</td></tr>"
        for point in breaks
    )
    pictures = "".join(rows_html(f"before byte {point.at}", point.rows) for point in breaks[:BREAKS_PICTURED])
    return _section(
        f"Where to hold: {count(len(breaks), 'break point')}",
        "<p>The fewest that lose nothing that waiting can save. The small screen at the first of them:</p>"
        f'<div class="screens">{pictures}</div><div class="scroll"><table><tr><th>byte</th><th>look</th><th>after</th>'
        f'<th class="words">last words</th></tr>{rows}</table></div>',
    )


def _facts(report: Report, _: Mapping[int, LookView]) -> str:
    return _section("How this was measured", _list(fact_sentences(report)))


def _keep(_: Report, __: Mapping[int, LookView]) -> str:
    return f'<p class="keep">{escape(MASTER_COPY)}</p>'


SECTIONS = (_head, _measures, _causes, _turns, _demands, _told, _remedies, _breaks, _facts, _keep)
"""In the order of the page."""


def _section(heading: str, inside: str) -> str:
    return f"<section>\n<h2>{escape(heading)}</h2>\n{inside}\n</section>"


def _list(sentences: list[str]) -> str:
    return (
        "<ul>" + "".join(f"<li>{escape(sentence)}</li>" for sentence in sentences) + "</ul>"
        if sentences
        else ""
    )


def _measure(label: str, share: float | None, note: str) -> str:
    filled = f"{100 * (share or 0):.1f}"
    return (
        f'<span>{escape(label)}</span><span class="bar"><i style="width:{filled}%"></i></span>'
        f'<span class="number">{escape(percent(share))}</span><span class="soft">{escape(note)}</span>'
    )


def _remedy_name(remedy: Remedy) -> str:
    return remedy.name if remedy.may_be_best else f"({remedy.name}, for comparison only)"


def _row(name: str, figures: Figures, *, best: bool) -> str:
    cells = [
        points(figures.score),
        *(percent(share) for share in (figures.needed_shown, figures.clean, figures.text_kept)),
        rate(figures.holds_per_turn),
    ]
    inside = "".join(f"<td>{escape(cell)}</td>" for cell in cells)
    mark = ' class="best"' if best else ""
    return f"<tr{mark}><td>{'* ' if best else ''}{escape(name)}</td>{inside}</tr>"
