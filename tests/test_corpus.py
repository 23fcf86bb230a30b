"""The demo programs, their sessions, and the reports on them: all there, none stale, and as a person expects."""

from __future__ import annotations

import os
import runpy
from pathlib import Path
from typing import Any

import pytest

from fit.pipeline import measure
from fit.source import read_session
from fit.source.session_file import session_bytes

ROOT = Path(__file__).parent.parent
CORPUS = ROOT / "corpus"
PROGRAMS = sorted(keys.parent.name for keys in CORPUS.glob("*/keys"))
EXPECTED = {
    "chart": "broken",
    "drill": "refuses",
    "ledger": "tiring",
    "logbook": "tiring",
    "signals": "comfortable",
    "story": "workable with holds",
    "watch": "workable with holds",
}


def script(name: str) -> dict[str, Any]:
    """What a script of the corpus defines."""
    return runpy.run_path(str(CORPUS / name))


def test_the_corpus_is_not_empty() -> None:
    assert sorted(EXPECTED) == PROGRAMS


@pytest.mark.parametrize("name", PROGRAMS)
def test_a_program_has_its_session_and_its_note(name: str) -> None:
    assert (CORPUS / name / f"{name}.py").is_file()
    assert read_session(CORPUS / name / "session.jsonl").output
    assert f"| `{name}` |" in (CORPUS / "README.md").read_text("utf-8")


@pytest.mark.parametrize("name", PROGRAMS)
def test_the_verdict_is_what_a_person_expects(name: str) -> None:
    small = CORPUS / name / "small.jsonl"
    report = measure(
        read_session(CORPUS / name / "session.jsonl"),
        small_session=read_session(small) if small.exists() else None,
    )
    assert str(report.verdict) == EXPECTED[name]


def test_the_reports_are_not_stale(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    rewriting = script("rewrite_reports.py")
    stale = []
    fresh = dict(rewriting["all_reports"]())
    for path, text in fresh.items():
        if not path.is_file() or path.read_text("utf-8") != text:
            stale.append(str(path))
    folders = (Path(rewriting["REPORTS"]), Path(rewriting["SHELF_REPORTS"]))
    left_over = [str(path) for folder in folders for path in folder.iterdir() if path not in fresh]
    assert (stale, left_over) == ([], []), "run: python corpus/rewrite_reports.py"


@pytest.mark.skipif(os.name != "posix", reason="this system has no pseudo-terminals")
@pytest.mark.parametrize("name", PROGRAMS)
def test_recording_again_gives_the_same_session(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    recording = script("record.py")
    files = {"session.jsonl": recording["BIG"]}
    files |= {"small.jsonl": recording["SMALL"]} if name in recording["LOOK_AT_SIZE"] else {}
    for file, size in files.items():
        assert session_bytes(recording["record"](name, size)) == (CORPUS / name / file).read_bytes()
