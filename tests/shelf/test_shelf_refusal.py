"""Refusals on a shelf: a session that fits the small screen because it is no more than one."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest

from fit.session import Event, EventKind, Session
from fit.shelf.cache import Cache
from fit.shelf.entry import find_entries
from fit.shelf.finding import Finding, from_plain
from fit.shelf.notes import notes
from fit.shelf.refusal import session_facts, with_refusals
from fit.shelf.run import score_shelf
from fit.shelf.settings import ShelfSettings
from fit.units import Size

DRILL = Path(__file__).parents[2] / "corpus" / "drill"
SMALL = Size(8, 40)


def recorded(
    name: str, inputs: int, *, is_small: bool, command: str | None = "drill", **more: Any
) -> Finding:
    events = tuple(Event(0, EventKind.INPUT, b"q") for _ in range(inputs))
    size = SMALL if is_small else Size(25, 80)
    session = Session(b"", events=events, size=size, command=command, **{"keeps_inputs": True} | more)
    facts = session_facts(session, SMALL)
    return Finding(name, "session", verdict="comfortable", score=100.0, best_score=100.0, session=facts)


def verdicts(*findings: Finding) -> list[str]:
    return [finding.verdict for finding in with_refusals(findings)]


def test_the_refusal_of_the_drill_is_one(tmp_path: Path) -> None:
    entries = find_entries([DRILL]).entries
    settings = ShelfSettings()
    shelf = tmp_path / "alone"
    shelf.mkdir()
    shutil.copy(DRILL / "small.jsonl", shelf)
    kept = Cache(tmp_path / "kept", settings)
    for _ in range(2):  # what is kept of an entry does not know of the others
        found = {Path(one.name).name: one for one in score_shelf(entries, settings, kept, jobs=1)}
        assert (found["session.jsonl"].verdict, found["small.jsonl"].verdict) == ("broken", "refuses")
        assert (found["small.jsonl"].score, found["small.jsonl"].best_score) == (None, None)
        assert notes(found["small.jsonl"])[0] == (
            f"told 40x8, it ends before its second input, where it goes on in {DRILL / 'session.jsonl'}"
        )
        (alone,) = score_shelf(find_entries([shelf]).entries, settings, kept, jobs=1)
        assert alone.verdict == "comfortable"
        assert "recorded at 40x8 already" in notes(alone)


def test_only_where_the_same_command_goes_on_at_a_larger_size() -> None:
    big, small = recorded("big", 2, is_small=False), recorded("small", 1, is_small=True)
    assert verdicts(small, big) == ["refuses", "comfortable"]
    assert verdicts(small) == ["comfortable"]
    assert verdicts(small, recorded("big", 1, is_small=False)) == ["comfortable"] * 2
    assert verdicts(small, recorded("other", 9, is_small=False, command="tides")) == ["comfortable"] * 2
    assert verdicts(recorded("small", 2, is_small=True), big) == ["comfortable"] * 2
    assert verdicts(recorded("small", 0, is_small=True, keeps_inputs=False), big) == ["comfortable"] * 2
    assert verdicts(recorded("small", 1, is_small=True, ending="limit"), big) == ["comfortable"] * 2
    nameless = [recorded(name, 9 * (name == "b"), is_small=name == "s", command=None) for name in "sb"]
    assert verdicts(*nameless) == ["comfortable"] * 2


@pytest.mark.parametrize(
    ("size", "is_small"), [(SMALL, True), (Size(8, 41), False), (Size(9, 40), False), (None, False)]
)
def test_facts_of_a_session(size: Size | None, is_small: bool) -> None:
    session = Session(b"dusk", events=(Event(4, EventKind.INPUT, b"q"),), size=size, command="tides")
    facts = session_facts(session, SMALL)
    assert (facts.is_small, facts.ends_at_once, facts.goes_on) == (is_small, True, False)
    finding = Finding("tides", "session", session=facts)
    assert from_plain(finding.plain()) == finding
