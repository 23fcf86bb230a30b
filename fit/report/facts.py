"""How the figures came about: the screens, the looks, the encoding, what was not understood."""

from __future__ import annotations

from fit.loss.figures import Unknown
from fit.remedy.findings import Report, ScreenFacts
from fit.report.numbers import count, percent, sentence
from fit.report.style import Style

UNKNOWN_SHOWN = 5
MANY = 200
"""From one sequence not understood in so many bytes on, the wrong terminal is likely."""


def facts(report: Report, style: Style) -> list[str]:
    """The section on the measuring itself."""
    lines = style.heading("How this was measured")
    for fact in fact_sentences(report):
        lines += style.item(fact)
    return lines


def warnings(report: Report) -> list[str]:
    """What makes the verdict one about something else than the program."""
    said = [sentence(report.other_terminal)] if report.other_terminal else []
    total = sum(kind.times for kind in report.unknown)
    if total * MANY >= len(report.session.output) and total:
        said.append(
            f"Careful: {count(total, 'sequence was', 'sequences were')} not understood. Is the program really set for "
            f"the terminal {report.big.terminal}?"
        )
    return said


def fact_sentences(report: Report) -> list[str]:
    """One sentence a fact."""
    return [sentence(fact) for fact in _facts(report)]


def _facts(report: Report) -> list[str]:
    assumed = "looks assumed, " if report.looks_assumed else ""
    read_as = report.session.read_as
    said = [f"read as {read_as}"] if read_as else []
    said += [
        f"{count(report.looks, 'look')}: {assumed}{report.looks_rule}",
        _screen("big", report.big),
        _screen("small", report.small),
        smaller(report),
        f"encoding {report.encoding}. {sentence(report.encoding_evidence)}",
    ]
    if report.lost_anyway:
        share = percent(report.lost_anyway / report.printed)
        said.append(
            f"lost anyway: {report.lost_anyway:,} of {count(report.printed, 'printed character')} ({share}) "
            f"stood at no look even on the big screen; they count in no figure"
        )
    said += _unknown("not understood", report.unknown)
    said += _unknown("not understood by the small screen's terminal", report.unknown_small)
    return [
        *said,
        *report.session.remarks,
        *(remark for remark in report.remarks if remark not in report.session.remarks),
    ]


def smaller(report: Report) -> str:
    """How much smaller the small screen really is."""
    big, small = report.big.size, report.small.size
    return (
        f"{small} has {percent(small.columns / big.columns)} of the columns, {percent(small.rows / big.rows)} of "
        f"the rows and {percent(small.cells / big.cells)} of the cells of {big}"
    )


def sequence(data: bytes) -> str:
    """The bytes of a sequence so that they can be read: ``ESC [ ? 7 z``."""
    named = {0x1B: "ESC", 0x20: "SP", 0x7F: "DEL"}
    return " ".join(named.get(byte) or (chr(byte) if 0x20 < byte < 0x7F else f"{byte:02X}h") for byte in data)


def _screen(which: str, screen: ScreenFacts) -> str:
    name = "" if screen.name == str(screen.size) else f"{screen.name} "
    terminal = (
        screen.chosen if screen.chosen.startswith(screen.terminal) else f"{screen.terminal}: {screen.chosen}"
    )
    return f"{which} screen {name}{screen.size}, terminal {terminal}"


def _unknown(what: str, unknown: tuple[Unknown, ...]) -> list[str]:
    if not unknown:
        return []
    total = sum(kind.times for kind in unknown)
    shown = [
        f"{sequence(kind.data)} ({kind.times:,} x, first at byte {kind.first})"
        for kind in unknown[:UNKNOWN_SHOWN]
    ]
    more = f" and {count(len(unknown) - UNKNOWN_SHOWN, 'more kind')}" if len(unknown) > UNKNOWN_SHOWN else ""
    return [f"{what}: {count(total, 'sequence')}: {'; '.join(shown)}{more}"]
