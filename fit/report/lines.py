"""Every line that was damaged or lost, with its cause and the byte behind it."""

from __future__ import annotations

from collections.abc import Iterator

from fit.loss.figures import LineLoss, LineState
from fit.remedy.findings import Report
from fit.report.ink import Ink
from fit.report.numbers import count
from fit.report.plain import printable
from fit.report.style import Style

STATE_INK = {LineState.DAMAGED: Ink.YELLOW, LineState.LOST: Ink.RED, LineState.KEPT: Ink.PLAIN}


def line_list(report: Report, style: Style) -> Iterator[str]:
    """One entry a lost or damaged line, in the order in which they were shown; each ended by a new line."""
    kept, damaged, lost = report.figures.lines
    said = f"{count(kept + damaged + lost, 'line')}: {kept:,} kept, {damaged:,} damaged, {lost:,} lost"
    yield "\n".join(style.heading(said)) + "\n"
    for entry in report.lines:
        yield "\n".join(_entry(entry, style)) + "\n"


def _entry(entry: LineLoss, style: Style) -> list[str]:
    ended = f" by byte {entry.by}" if entry.by is not None else ""
    said = f"byte {entry.at}, look {entry.look}, row {entry.row}: {entry.state.value.upper()}, {entry.cause.value}{ended}"
    head = [style.paint(line, STATE_INK[entry.state]) for line in style.text(said, "", "  ")]
    return [*head, *style.text(printable(entry.text), "    | ")]
