"""The shelf as text: a line of figures for each entry, and below it what decides."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import PurePath
from typing import Final

from fit.report.advice import MASTER_COPY
from fit.report.ink import Ink
from fit.report.numbers import NOT_MEASURED, count, points, sentence
from fit.report.plain import pad, printable
from fit.report.style import Style
from fit.shelf.clipped_names import clipped_names
from fit.shelf.entry import EntryKind
from fit.shelf.finding import WILL_NOT_RUN, Finding
from fit.shelf.notes import named, notes
from fit.shelf.order import processor_of, seconds_of
from fit.width import text_cells

_GAP: Final = "  "
_LEAST_NAME: Final = 12
_INK: Final = {
    "comfortable": Ink.GREEN,
    "fits as it is": Ink.GREEN,
    "fits reflowed": Ink.GREEN,
    "broken": Ink.RED,
    WILL_NOT_RUN: Ink.RED,
    "refuses": Ink.RED,
    "damaged by reflow": Ink.RED,
}
_HEADS: Final = ("SCORE", "BEST", "NAME", "VERDICT", "CPU", "MEMORY", "BLOCKS", "SECONDS")
_DOCUMENT_HEADS: Final = ("PAGES", "NAME", "VERDICT", "TOO WIDE", "WORDS", "BLOCKS", "SECONDS")
_LEFT: Final = ("NAME", "VERDICT", "CPU")

_LEGEND: Final = (
    "Score: 100 means that the small screen shows all a reader needs, and nothing false; best: with the remedy named. "
    "Memory: the lowest address at which memory for programs may end. "
    "Programs were played with found keys, which see only a part of them; '-' and '?' mean not known."
)
_DOCUMENT_LEGEND: Final = (
    "Pages: after reflowing for the small screen, its last row left to the prompt. Too wide: lines of the document "
    "that the small screen would break."
)


def shelf_table(
    findings: Sequence[Finding],
    style: Style,
    *,
    line_speed: int,
    passed_over: int = 0,
    packed: Sequence[str] = (),
) -> str:
    """The whole text, ended by a new line; the findings keep their order within each table.

    ``packed`` are names of files that were passed over and hold others.
    """
    documents = [finding for finding in findings if finding.kind == EntryKind.DOCUMENT and not finding.failed]
    others = [finding for finding in findings if finding.kind != EntryKind.DOCUMENT and not finding.failed]
    broken = [finding for finding in findings if finding.failed]
    names = {
        name: printable(short) for name, short in short_names([finding.name for finding in findings]).items()
    }
    blocks: list[list[str]] = []
    if others:
        rows = [_figures(finding, names, line_speed) for finding in others]
        blocks += [_table(_HEADS, rows, others, style), style.text(_LEGEND, "")]
    if documents:
        rows = [_document_figures(finding, names, line_speed) for finding in documents]
        blocks += [_table(_DOCUMENT_HEADS, rows, documents, style), style.text(_DOCUMENT_LEGEND, "")]
    if broken:
        blocks.append(_failures(broken, names, style))
    closing = (
        [f"{count(len(findings) - len(broken), 'entry', 'entries')} scored, {len(broken)} could not be."]
        if broken
        else []
    )
    if others_passed := passed_over - len(packed):
        closing.append(
            f"{count(others_passed, 'file was', 'files were')} passed over: no program, session or document."
        )
    if packed:
        closing.append(
            f"{count(len(packed), 'packed file was', 'packed files were')} passed over: "
            f"{printable(named(list(short_names(packed).values())))}; unpack what you want to be scored."
        )
    blocks.append(
        style.text(" ".join([*closing, f"Times are for {line_speed:,} bits a second.", MASTER_COPY]), "")
    )
    return "\n\n".join("\n".join(block) for block in blocks) + "\n"


def _figures(finding: Finding, names: dict[str, str], line_speed: int) -> list[str]:
    top = finding.program.memory_top if finding.program else None
    return [
        points(finding.score),
        points(finding.best_score),
        names[finding.name],
        finding.verdict,
        processor_of(finding) or NOT_MEASURED,
        NOT_MEASURED if top is None else f"{top:04X}h",
        _number(finding.blocks),
        seconds(seconds_of(finding, line_speed)),
    ]


def _document_figures(finding: Finding, names: dict[str, str], line_speed: int) -> list[str]:
    facts = finding.document
    assert facts is not None
    return [
        f"{facts.pages:,}",
        names[finding.name],
        finding.verdict,
        _number(facts.too_wide),
        f"{facts.words:,}",
        _number(finding.blocks),
        seconds(seconds_of(finding, line_speed)),
    ]


def short_names(names: Sequence[str]) -> dict[str, str]:
    """The shortest end of each path that belongs to it alone."""
    ends = Counter(end for name in set(names) for end in _ends(name))
    return {name: next((end for end in _ends(name) if ends[end] == 1), name) for name in names}


def _ends(name: str) -> list[str]:
    parts = PurePath(name).parts
    return [str(PurePath(*parts[-count:])) for count in range(1, len(parts) + 1)]


def seconds(value: float | None) -> str:
    """Seconds as ``0.8``, from ten on whole ones."""
    if value is None:
        return NOT_MEASURED
    return f"{value:.1f}" if value < 10 else f"{value:,.0f}"


def _number(value: int | None) -> str:
    return NOT_MEASURED if value is None else f"{value:,}"


def _table(
    heads: Sequence[str], rows: list[list[str]], findings: Sequence[Finding], style: Style
) -> list[str]:
    """In columns where they fit, else a few lines for each entry."""
    widths = [max(map(text_cells, column)) for column in zip(heads, *rows, strict=True)]
    name = heads.index("NAME")
    room = style.width - sum(widths) + widths[name] - len(_GAP) * (len(widths) - 1)
    if room < min(_LEAST_NAME, widths[name]):
        return _narrow(heads, rows, findings, style)
    widths[name] = min(widths[name], room)
    return _wide(heads, rows, findings, style, widths)


def _wide(
    heads: Sequence[str],
    rows: list[list[str]],
    findings: Sequence[Finding],
    style: Style,
    widths: list[int],
) -> list[str]:
    name = heads.index("NAME")
    indent = " " * (sum(widths[:name]) + len(_GAP) * name)
    lines = [style.paint(_line(heads, heads, widths), Ink.BOLD)]
    short = clipped_names((row[name] for row in rows), widths[name])
    for row, finding in zip(rows, findings, strict=True):
        row[name] = short[row[name]]
        if text_cells(row[name]) > widths[name]:
            lines += style.text(row[name], indent)
            row[name] = ""
        line = _line(row, heads, widths)
        lines.append(line.replace(finding.verdict, style.paint(finding.verdict, _ink(finding)), 1))
        lines += style.text(sentence(_decides(finding)), indent)
    return lines


def _line(cells: Sequence[str], heads: Sequence[str], widths: list[int]) -> str:
    parts = [
        pad(cell, width, right=head not in _LEFT)
        for cell, head, width in zip(cells, heads, widths, strict=True)
    ]
    return _GAP.join(parts).rstrip()


def _narrow(
    heads: Sequence[str], rows: list[list[str]], findings: Sequence[Finding], style: Style
) -> list[str]:
    """A few lines for each entry: number and name, verdict, the other figures in words, what decides."""
    indent = " " * 7
    lines: list[str] = []
    short = clipped_names((row[heads.index("NAME")] for row in rows), style.width - len(indent))
    for row, finding in zip(rows, findings, strict=True):
        told = dict(zip(heads, row, strict=True))
        lines += style.text(short[told["NAME"]], f"{pad(row[0], 5, right=True)}{_GAP}", indent)
        lines.append(indent + style.paint(finding.verdict, _ink(finding)))
        lines += style.text(_in_words(told), indent)
        lines += style.text(sentence(_decides(finding)), indent)
    return [style.paint(f"{pad(heads[0], 5, right=True)}{_GAP}NAME", Ink.BOLD), *lines]


def _in_words(told: dict[str, str]) -> str:
    """The figures that have no column of their own on a narrow page."""
    said = []
    for head, (before, after) in _WORDS_FOR.items():
        value = told.get(head, NOT_MEASURED)
        if value != NOT_MEASURED:
            said.append(f"{before}{value}{after.removesuffix('s') if value == '1' else after}")
    return ", ".join(said)


_WORDS_FOR: Final = {
    "CPU": ("", ""),
    "MEMORY": ("memory to ", ""),
    "TOO WIDE": ("too wide: ", " lines"),
    "WORDS": ("", " words"),
    "BLOCKS": ("", " blocks"),
    "SECONDS": ("", " s"),
}


def _decides(finding: Finding) -> str:
    return printable("; ".join(notes(finding)))


def _ink(finding: Finding) -> Ink:
    return _INK.get(finding.verdict, Ink.YELLOW)


def _failures(findings: Sequence[Finding], names: dict[str, str], style: Style) -> list[str]:
    lines = style.heading("Not scored")
    for finding in findings:
        lines += style.item(f"{names[finding.name]}: {printable(finding.reason)}")
    return lines
