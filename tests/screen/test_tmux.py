"""At every look of every demo session our screens show what tmux shows, big and small, cursor included.

tmux (Debian package) is a terminal nobody here wrote. The places where terminals differ, and which the demo
sessions do not touch, are named in `test_tmux_cases`. Blanks at the ends of rows are not compared:
`capture-pane` leaves them out.
"""

from __future__ import annotations

import shutil
from itertools import pairwise
from pathlib import Path

import pytest
from tmux_pane import TmuxPane

from fit.dialect.registry import find_dialect
from fit.looks import find_looks
from fit.screen.screen import Screen
from fit.source import read_session
from fit.units import Size

pytestmark = [
    pytest.mark.outside,
    pytest.mark.skipif(shutil.which("tmux") is None, reason="tmux is not installed"),
]

CORPUS = Path(__file__).parents[2] / "corpus"
SESSIONS = sorted(path.relative_to(CORPUS) for path in CORPUS.glob("*/*.jsonl"))
SIZES = [Size(25, 80), Size(8, 40)]


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("name", SESSIONS, ids=str)
def test_grids_at_every_look_equal_those_of_tmux(name: Path, size: Size) -> None:
    session = read_session(CORPUS / name)
    dialect = find_dialect(session.dialect or "ecma48")
    screen = Screen(size)
    places = [0, *(look.at for look in find_looks(session).looks)]
    with TmuxPane(size.columns, size.rows) as pane:
        for number, (start, end) in enumerate(pairwise(places), 1):
            data = session.output[start:end]
            screen.apply(dialect.feed(data, start))
            pane.feed(data)
            assert [row.rstrip() for row in screen.display] == pane.rows(), f"look {number}"
            cursor = screen.cursor
            # tmux counts a pending wrap as the column past the last one.
            assert (cursor.row, cursor.column + cursor.pending) == pane.cursor(), f"look {number}"


def test_there_are_sessions_to_compare() -> None:
    assert len(SESSIONS) >= 9
