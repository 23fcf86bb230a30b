"""The columns of the shelf and how each sorts: the best first."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any, Final

from fit.errors import UsageError
from fit.loss.verdict import Rating
from fit.machine import ProcessorClass, seconds_to_send
from fit.shelf.facts import NOT_KNOWN
from fit.shelf.finding import WILL_NOT_RUN, Finding

_VERDICTS: Final = (
    Rating.COMFORTABLE,
    "fits as it is",
    Rating.WORKABLE,
    "fits reflowed",
    Rating.TIRING,
    "damaged by reflow",
    Rating.BROKEN,
    Rating.REFUSES,
    WILL_NOT_RUN,
    Rating.NOT_MEASURED,
)
_PROCESSORS: Final = {
    ProcessorClass.SAFE_8080: "8080",
    ProcessorClass.NEEDS_Z80: "Z80",
    ProcessorClass.UNDECIDED: "8080?",
    NOT_KNOWN: "?",
}


@dataclass(frozen=True, slots=True)
class Column:
    """A column that can be sorted by. ``value`` is None where nothing is known; those come last."""

    about: str
    value: Callable[[Finding, int], Any]
    """Of a finding and the line speed in bits a second."""
    descends: bool = False


def processor_of(finding: Finding) -> str | None:
    """``8080``, ``Z80``, ``8080?`` where it is undecided, ``?``; None for what is no program."""
    return None if finding.program is None else _PROCESSORS[finding.program.processor]


def seconds_of(finding: Finding, line_speed: int) -> float | None:
    """How long its files take over the line."""
    return None if finding.size is None else seconds_to_send(finding.size, line_speed)


COLUMNS: Final = {
    "score": Column(
        "as it is; what will not run comes last", lambda finding, _: finding.score, descends=True
    ),
    "best": Column("with the best remedy", lambda finding, _: finding.best_score, descends=True),
    "keys": Column("extra key presses a turn of that remedy", lambda finding, _: finding.keys_per_turn),
    "name": Column("", lambda finding, _: finding.name),
    "verdict": Column("", lambda finding, _: _VERDICTS.index(finding.verdict)),
    "kind": Column("", lambda finding, _: finding.kind),
    "processor": Column("", lambda finding, _: processor_of(finding)),
    "memory": Column(
        "the lowest top of memory", lambda finding, _: finding.program.memory_top if finding.program else None
    ),
    "blocks": Column("of 2,048 bytes", lambda finding, _: finding.blocks),
    "seconds": Column("to send", seconds_of),
    "pages": Column("of a document", lambda finding, _: finding.document.pages if finding.document else None),
}


def sorted_findings(
    findings: Iterable[Finding], column: str = "score", line_speed: int = 9600
) -> list[Finding]:
    """The findings by a column, then by name. Raises UsageError where there is no such column."""
    chosen = COLUMNS.get(column)
    if chosen is None:
        raise UsageError(f"no column is named '{column[:40]}'", hint=f"known are {', '.join(COLUMNS)}")

    def key(finding: Finding) -> tuple[Any, ...]:
        value = chosen.value(finding, line_speed)
        last = (
            finding.failed,
            value is None,
            column == "score" and finding.verdict == WILL_NOT_RUN,
        )
        if value is None:
            return (*last, 0, finding.name)
        return (*last, -value if chosen.descends else value, finding.name)

    return sorted(findings, key=key)
