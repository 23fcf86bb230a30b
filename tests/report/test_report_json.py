"""The JSON of a report follows the schema that is shipped with it."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import jsonschema
import pytest
from report_samples import REPORT

from fit.loss.figures import Cause, Figures
from fit.loss.verdict import Rating, Verdict
from fit.remedy.findings import BreakEnd, Report
from fit.report.check_json import report_json, schema

VALIDATOR = jsonschema.Draft202012Validator(schema())


def written(report: Report) -> dict[str, Any]:
    """The report as it would be read back, after the schema has been held against it."""
    document: dict[str, Any] = json.loads("".join(report_json(report)))
    VALIDATOR.validate(document)
    return document


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())


def test_the_top_holds_the_figures() -> None:
    document = written(REPORT)
    assert document["verdict"] == "workable with holds"
    assert (document["score"], document["needed_shown"], document["clean"]) == (53.6, 0.67, 0.8)
    assert (document["text_kept"], document["turns_read"], document["placed_share"]) == (0.61, 0.5, 0.1)
    assert document["lines"] == {"kept": 34, "damaged": 6, "lost": 20}
    hold = document["remedies"][0]
    assert (hold["name"], hold["score"], hold["holds_per_turn"]) == ("hold", 96.6, 1.3333)


def test_what_was_not_measured_is_null() -> None:
    document = written(
        replace(REPORT, figures=Figures(), placed_share=None, verdict=Verdict(Rating.NOT_MEASURED, "nothing"))
    )
    keys = ("score", "needed_shown", "clean", "text_kept", "turns_read", "placed_share")
    assert [document[key] for key in keys] == [None] * len(keys)


def test_it_is_7_bit_text_whatever_was_printed() -> None:
    report = replace(REPORT, best_reason="Grüße \udc80 \x1b[31m 漢")
    text = "".join(report_json(report))
    assert text.isascii()
    assert json.loads(text)["best_reason"] == report.best_reason


@pytest.mark.parametrize(
    ("key", "value"), [("verdict", "fine"), ("score", 101), ("clean", -0.1), ("version", 2), ("extra", 1)]
)
def test_the_schema_refuses_what_is_no_report(key: str, value: object) -> None:
    document = written(REPORT) | {key: value}
    assert not VALIDATOR.is_valid(document)


def test_the_schema_knows_every_rating_cause_and_end() -> None:
    whole = schema()
    assert whole["properties"]["verdict"]["enum"] == [rating.value for rating in Rating]
    assert whole["$defs"]["cause"]["enum"] == [cause.value for cause in Cause]
    assert whole["$defs"]["break_point"]["properties"]["end"]["enum"] == [end.value for end in BreakEnd]
