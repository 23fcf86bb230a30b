"""Write anew what ``fit check`` makes of the demo sessions: ``python corpus/rewrite_reports.py``.

For each program ``reports/check/NAME.txt`` as on a terminal of 80 columns, ``NAME.40.txt`` as on one of 40,
``NAME.json``, and a table of them all in ``reports/check/README.md``.
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
from fit.source import read_session

ROOT = Path(__file__).parent.parent
REPORTS = Path("reports/check")

HEAD = """\
# What `fit check` makes of the demo programs

Written by `python corpus/rewrite_reports.py`; a test fails when these files are stale. What should come out, and
where the programs come from, stands in [corpus/README.md](../../corpus/README.md).

| program | verdict on 40x8 | score | best remedy | then | extra key presses a turn |
|---|---|---:|---|---:|---:|
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
    REPORTS.mkdir(parents=True, exist_ok=True)
    for path, text in all_reports():
        write_file(path, text.encode())
        print(f"wrote {path}")


if __name__ == "__main__":
    main()
