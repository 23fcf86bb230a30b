"""Sessions recorded at the small size that end at once, where the same program goes on when it is told a larger one.

Such a session fits the small screen, of course, but it is no more than the sentence with which the program refuses.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.loss.verdict import Rating
from fit.remedy.second_session import ends_at_once, goes_on
from fit.session import Session
from fit.shelf.finding import Finding, SessionFacts
from fit.units import Size


def session_facts(session: Session, small: Size) -> SessionFacts:
    """What tells a refusal: the command, the size it was told, whether it ends at once."""
    told = session.size
    return SessionFacts(
        command=session.command,
        told=None if told is None else str(told),
        is_small=told is not None and told.rows <= small.rows and told.columns <= small.columns,
        ends_at_once=ends_at_once(session),
        goes_on=goes_on(session),
    )


def with_refusals(findings: Sequence[Finding]) -> list[Finding]:
    """The findings, where what only refuses has the verdict of a refusal, and no score."""
    others: dict[str, Finding] = {}
    for finding in findings:
        facts = finding.session
        if facts is not None and facts.command and not facts.is_small and facts.goes_on:
            others.setdefault(facts.command, finding)
    return [_judged(finding, others) for finding in findings]


def _judged(finding: Finding, others: dict[str, Finding]) -> Finding:
    facts = finding.session
    if facts is None or not facts.is_small or not facts.ends_at_once or finding.score is None:
        return finding
    other = others.get(facts.command or "")
    if other is None:
        return finding
    return replace(
        finding,
        verdict=str(Rating.REFUSES),
        reason=f"told {facts.told}, it ends before its second input, where it goes on in {other.name}",
        score=None,
        best=None,
        best_score=None,
        keys_per_turn=None,
    )
