"""The shelf as JSON, described by ``score.schema.json`` beside this file, and as CSV."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Sequence
from dataclasses import asdict
from importlib import resources
from typing import Any, Final

from fit.report.advice import MASTER_COPY
from fit.shelf.finding import Finding
from fit.shelf.notes import notes
from fit.shelf.order import processor_of, seconds_of
from fit.shelf.settings import ShelfSettings

FORM: Final = "fit-score"
VERSION: Final = 1
_DIGITS: Final = 6

CSV_COLUMNS: Final = (
    "name", "kind", "verdict", "score", "best_remedy", "best_score", "keys_per_turn", "processor", "memory_top",
    "terminal", "files_missing", "size", "blocks", "seconds", "pages", "too_wide", "decides",
)  # fmt: skip


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) that every shelf follows."""
    loaded: dict[str, Any] = json.loads(
        (resources.files("fit.shelf") / "score.schema.json").read_text("utf-8")
    )
    return loaded


def shelf_json(
    findings: Sequence[Finding],
    settings: ShelfSettings,
    *,
    line_speed: int,
    passed_over: Sequence[str] = (),
    packed: Sequence[str] = (),
) -> str:
    """The whole shelf, 7-bit, one entry a line. ``packed`` are those of the files passed over that hold others."""
    head = {
        "form": FORM,
        "version": VERSION,
        "settings": asdict(settings) | {"line_speed": line_speed},
        "passed_over": list(passed_over),
        "packed": list(packed),
        "advice": MASTER_COPY,
    }
    entries = ",\n".join(json.dumps(_entry(finding, line_speed)) for finding in findings)
    return json.dumps(head)[:-1] + ', "entries": [\n' + entries + "\n]}\n"


def _entry(finding: Finding, line_speed: int) -> dict[str, Any]:
    values = finding.plain()
    for key in ("score", "best_score", "keys_per_turn"):
        values[key] = _rounded(values[key])
    return values | {"seconds": _rounded(seconds_of(finding, line_speed)), "decides": notes(finding)}


def shelf_csv(findings: Sequence[Finding], *, line_speed: int) -> str:
    """A line of column names, then one for each entry; what is not known is empty."""
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(CSV_COLUMNS)
    for finding in findings:
        program, document = finding.program, finding.document
        writer.writerow([
            finding.name,
            finding.kind,
            finding.verdict,
            _rounded(finding.score),
            finding.best,
            _rounded(finding.best_score),
            _rounded(finding.keys_per_turn),
            processor_of(finding),
            program.memory_top if program else None,
            finding.terminal,
            " ".join(program.missed) if program else None,
            finding.size,
            finding.blocks,
            _rounded(seconds_of(finding, line_speed)),
            document.pages if document else None,
            document.too_wide if document else None,
            "; ".join(notes(finding)),
        ])  # fmt: skip
    return stream.getvalue()


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, _DIGITS)
