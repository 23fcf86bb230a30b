"""The text summary of a report: the verdict first, then why, what would help, and how it was measured."""

from __future__ import annotations

from fit.remedy.findings import Report
from fit.report.advice import MASTER_COPY
from fit.report.demands import demands
from fit.report.facts import facts
from fit.report.figures import causes, measures, verdict
from fit.report.pair import told
from fit.report.plain import printable
from fit.report.remedies import break_points, remedies
from fit.report.style import Style
from fit.report.turns import worst_turns

SECTIONS = (verdict, measures, causes, worst_turns, demands, told, remedies, break_points, facts)
"""In the order of the page."""


def summary(report: Report, style: Style) -> str:
    """The whole page, ended by a new line."""
    name = printable(report.session.name or "the session")
    title = f"{name}, written for {report.big.size}, read on {report.small.size}"
    blocks = [style.heading(title)]
    blocks += [lines for section in SECTIONS if (lines := section(report, style))]
    blocks.append(style.text(MASTER_COPY, ""))
    return "\n\n".join("\n".join(block) for block in blocks) + "\n"
