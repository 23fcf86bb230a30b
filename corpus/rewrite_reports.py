"""Write anew what ``fit check`` and ``fit score`` make of the corpus: ``python corpus/rewrite_reports.py``.

For each program ``reports/check/NAME.txt`` as on a terminal of 80 columns, ``NAME.40.txt`` as on one of 40,
``NAME.json``, and a table of them all in ``reports/check/README.md``. In ``reports/score/`` the shelf of the 8-bit programs and
the sessions, likewise, and as CSV.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from fit.output import write_file
from fit.pipeline import measure
from fit.remedy.findings import Report
from fit.report.check_json import report_json
from fit.report.numbers import points, rate
from fit.report.style import Style
from fit.report.summary import summary
from fit.shelf.data import shelf_csv
from fit.shelf.entry import find_entries
from fit.shelf.order import sorted_findings
from fit.shelf.score import score_entry
from fit.shelf.settings import ShelfSettings
from fit.shelf.table import shelf_table
from fit.source import read_session

ROOT = Path(__file__).parent.parent
REPORTS = Path("reports/check")
SHELF_REPORTS = Path("reports/score")
LINE_SPEED = 9600

HEAD = """\
# What `fit check` makes of the demo programs

Written by `python corpus/rewrite_reports.py`; a test fails when these files are stale. What should come out, and
where the programs come from, stands in [corpus/README.md](../../corpus/README.md).

| program | verdict on 40x8 | score | best remedy | then | extra key presses a turn |
|---|---|---:|---|---:|---:|
"""

SHELF_HEAD = """\
# What `fit score` makes of the 8-bit demo programs and the demo sessions

Written by `python corpus/rewrite_reports.py`; a test fails when these files are stale. What should come out, and
where the programs come from, stands in [corpus/programs/README.md](../../corpus/programs/README.md).

* [shelf.txt](shelf.txt), as on a terminal of 80 columns; [shelf.40.txt](shelf.40.txt), on one of 40
* [shelf.csv](shelf.csv)
"""


def all_reports() -> Iterator[tuple[Path, str]]:
    """Every file below the root, with its text. To be called in the root of the project."""
    rows = []
    for session in sorted(Path("corpus").glob("*/session.jsonl")):
        name = session.parent.name
        small = session.with_name("small.jsonl")
        report = measure(read_session(session), small_session=read_session(small) if small.exists() else None)
        yield REPORTS / f"{name}.txt", summary(report, Style(80))
        yield REPORTS / f"{name}.40.txt", summary(report, Style(40))
        yield REPORTS / f"{name}.json", "".join(report_json(report))
        rows.append(_row(name, report))
    yield REPORTS / "README.md", HEAD + "".join(rows)
    yield from shelf_reports()


def shelf_reports() -> Iterator[tuple[Path, str]]:
    """The same for the shelf."""
    shelf = find_entries([Path("corpus/programs/disk"), *sorted(Path("corpus").glob("*/session.jsonl"))])
    findings = sorted_findings(score_entry(entry, ShelfSettings()) for entry in shelf.entries)
    yield SHELF_REPORTS / "shelf.txt", shelf_table(findings, Style(80), line_speed=LINE_SPEED)
    yield SHELF_REPORTS / "shelf.40.txt", shelf_table(findings, Style(40), line_speed=LINE_SPEED)
    yield SHELF_REPORTS / "shelf.csv", shelf_csv(findings, line_speed=LINE_SPEED)
    yield SHELF_REPORTS / "README.md", SHELF_HEAD


def _row(name: str, report: Report) -> str:
    best = next((remedy for remedy in report.remedies if remedy.kind is report.best), None)
    cells = [f"[{name}]({name}.txt)", str(report.verdict), points(report.figures.score)]
    if best is None:
        cells += ["none helps", "", ""]
    else:
        cells += [best.name, points(best.figures.score), rate(best.figures.holds_per_turn)]
    return f"| {' | '.join(cells)} |\n"


def main() -> None:
    """Write all of them."""
    os.chdir(ROOT)
    for path, text in all_reports():
        path.parent.mkdir(parents=True, exist_ok=True)
        write_file(path, text.encode())
        print(f"wrote {path}")


if __name__ == "__main__":
    main()
