"""The figures of a report in a finding, and what of a program outweighs them."""

from __future__ import annotations

from dataclasses import replace

from fit.machine import HIGHEST_TOP
from fit.remedy.findings import Report
from fit.shelf.facts import ProgramFacts, fits_memory, runs_on
from fit.shelf.finding import WILL_NOT_RUN, Finding
from fit.shelf.settings import ShelfSettings


def from_report(finding: Finding, report: Report) -> Finding:
    """The finding with the verdict, the score and the best remedy of a report."""
    best = next((remedy for remedy in report.remedies if remedy.kind is report.best), None)
    return replace(
        finding,
        verdict=str(report.verdict),
        reason=report.verdict.reason,
        score=report.figures.score,
        best=best.name if best else None,
        best_score=best.figures.score if best else report.figures.score,
        keys_per_turn=best.figures.holds_per_turn if best else None,
    )


def with_obstacles(finding: Finding, facts: ProgramFacts, settings: ShelfSettings) -> Finding:
    """The finding, whose verdict is another where the device cannot run the program at all."""
    obstacles = []
    if runs_on(facts, settings.processor) is False:
        obstacles.append(f"it needs a Z80: {facts.processor_reason}")
    top = settings.memory_top
    if fits_memory(facts, top) is False:
        assert top is not None
        assert facts.memory_top is not None
        obstacles.append(
            f"its memory must end at {facts.memory_top:04X}h or above, the device's ends at {min(top, HIGHEST_TOP):04X}h"
        )
    if not obstacles:
        return finding
    return replace(finding, verdict=WILL_NOT_RUN, obstacles=tuple(obstacles))
