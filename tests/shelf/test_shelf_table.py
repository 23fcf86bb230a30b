"""The shelf as people and programs read it: order, widths, JSON, CSV."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest
from shelf_samples import make_shelf, scored

from fit.errors import UsageError
from fit.report.style import Style
from fit.shelf.data import CSV_COLUMNS, schema, shelf_csv, shelf_json
from fit.shelf.entry import find_entries
from fit.shelf.finding import Finding
from fit.shelf.order import COLUMNS, sorted_findings
from fit.shelf.score import score_entry
from fit.shelf.settings import ShelfSettings
from fit.shelf.table import seconds, shelf_table, short_names
from fit.width import text_cells


@pytest.fixture(scope="module")
def findings(tmp_path_factory: pytest.TempPathFactory) -> list[Finding]:
    root = make_shelf(tmp_path_factory.mktemp("shelf"))
    return [score_entry(entry, ShelfSettings()) for entry in find_entries([root]).entries]


def test_the_best_score_comes_first_and_what_will_not_run_last() -> None:
    shelf = [
        scored("b", 50),
        scored("none", None, "not measured"),
        scored("z80", 99, "will not run"),
        scored("a", 50),
        scored("best", 90),
        Finding("bad", "program", failed=True),
    ]
    assert [finding.name for finding in sorted_findings(shelf)] == ["best", "a", "b", "z80", "none", "bad"]


@pytest.mark.parametrize("column", COLUMNS)
def test_each_column_sorts_and_unknown_values_come_last(findings: list[Finding], column: str) -> None:
    ordered = [
        COLUMNS[column].value(finding, 9600)
        for finding in sorted_findings(findings, column)
        if not finding.failed
    ]
    known = [value for value in ordered if value is not None]
    assert ordered[len(known) :] == [None] * (len(ordered) - len(known))
    if column != "score":
        assert known == sorted(known, reverse=COLUMNS[column].descends)


def test_a_column_that_is_none_is_refused() -> None:
    with pytest.raises(UsageError) as error:
        sorted_findings([], "beauty")
    assert str(error.value).startswith("no column is named 'beauty'; known are score, best, ")


@pytest.mark.parametrize("width", [40, 60, 80, 100])
def test_no_line_is_wider_than_the_page(findings: list[Finding], width: int) -> None:
    text = shelf_table(sorted_findings(findings), Style(width), line_speed=9600, passed_over=1)
    assert [line for line in text.splitlines() if text_cells(line) > width] == []


@pytest.mark.parametrize("width", [40, 80])
def test_everything_is_told(findings: list[Finding], width: int) -> None:
    text = " ".join(shelf_table(findings, Style(width), line_speed=9600).split())
    for part in (
        "READ.COM",
        "tiring",
        "will not run",
        "It needs a Z80",
        "this is text, not a program",
        "9,600 bits",
    ):
        assert part in text


def test_json_follows_its_schema(findings: list[Finding]) -> None:
    values = json.loads(shelf_json(findings, ShelfSettings(), line_speed=9600, passed_over=["x"]))
    jsonschema.validate(values, schema())
    assert len(values["entries"]) == len(findings)


def test_an_empty_shelf_is_still_json() -> None:
    jsonschema.validate(json.loads(shelf_json([], ShelfSettings(), line_speed=9600)), schema())


def test_csv_has_a_line_for_each_entry(findings: list[Finding]) -> None:
    rows = list(csv.DictReader(io.StringIO(shelf_csv(findings, line_speed=9600))))
    assert len(rows) == len(findings)
    assert tuple(rows[0]) == CSV_COLUMNS
    lens = next(row for row in rows if row["name"].endswith("LENS.COM"))
    assert (lens["verdict"], lens["processor"], lens["memory_top"]) == ("will not run", "Z80", str(0x406))


def test_packed_files_are_named_and_the_others_counted() -> None:
    text = " ".join(
        shelf_table([], Style(80), line_speed=9600, passed_over=3, packed=["a/l.zip", "b/l.zip"]).split()
    )
    assert "1 file was passed over: no program, session or document." in text
    assert "2 packed files were passed over: a/l.zip, b/l.zip; unpack what you want to be scored." in text


@pytest.mark.parametrize("width", [40, 80])
def test_rows_of_names_that_start_alike_can_be_told_apart(width: int) -> None:
    names = [
        f"the-log-of-the-keepers-and-of-the-{watch}-watch-of-the-whole-long-year.jsonl"
        for watch in ("dog", "mid")
    ]
    names += [f"the-drill-of-the-lamp-and-of-the-great-fog-horn-{number}.jsonl" for number in (1, 2)]
    lines = shelf_table([scored(name, 50) for name in names], Style(width), line_speed=9600).split("Score:")[
        0
    ]
    drills = [line for line in lines.splitlines() if "the-drill" in line]
    assert len(set(drills)) == 2
    assert names[0] in "".join(line.strip() for line in lines.splitlines())
    assert [line for line in lines.splitlines() if text_cells(line) > width] == []


def test_names_are_as_short_as_they_can_be() -> None:
    names = ["a/one/LAMP.COM", "a/two/LAMP.COM", "b/TIDES.TXT"]
    assert list(short_names(names).values()) == ["one/LAMP.COM", "two/LAMP.COM", "TIDES.TXT"]


@pytest.mark.parametrize(
    ("value", "said"), [(None, "-"), (0.04, "0.0"), (9.96, "10.0"), (10.4, "10"), (4096, "4,096")]
)
def test_seconds(value: float | None, said: str) -> None:
    assert seconds(value) == said


def test_names_of_files_cannot_reach_the_terminal(tmp_path: Path) -> None:
    evil = scored(str(tmp_path / "\x1b[2Jlamp"), 50)
    assert "\x1b" not in shelf_table([evil], Style(80), line_speed=9600)
