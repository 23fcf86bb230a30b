"""One seeded curses program under many terminals: what each was sent, decoded, gives the screen curses drew.

Outside: ncurses and its terminal database. The rows are those curses itself holds, which are also those of a
VT100's screen. The usual run takes every fourth terminal; ``--slow`` takes all.
"""

from __future__ import annotations

import base64
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fit.dialect.registry import find_description, find_dialect
from fit.dialect.terminfo_database import entry_names, find_entry
from fit.dialect.traits import traits_of
from fit.screen.fates import Fates
from fit.screen.rules import Rules, WrapRule
from fit.screen.screen import Screen
from fit.units import Size

PROGRAM = Path(__file__).with_name("curses_sessions.py")
EXCEPTIONS = {
    "sb1 sb2 sbi": "their insert line prints a row of blanks, with fill characters in the midst of it",
    "cbunix pty vremote": "clear and erase to the end have the same bytes",
    "datamedia2500 dmchat": "BS, LF and others insert or delete between the bytes that begin and end such a mode",
    "dm3025": "BS within its delete mode deletes; the same mode inserts lines",
    "adds200 dm3045": "one code both begins and ends insert mode; curses sends it first of all, to be sure it is off",
    "vt132": "its entry has the codes of insert mode the wrong way round",
    "viewdata viewdata-o viewdata-rv": "their addresses reach no column beyond the fortieth",
    "dtc382": "its erase to the end of the screen is an erase of a line and two deletions",
    "apollo": "its entry lacks the parameter of the address of a row",
    "coco3": "where a row's byte is $, curses sends the notation of the delay after it, which becomes text",
    "wy-99fgt wy-99fgta": "cursor down and reverse line feed have the same bytes",
}
"""Terminals whose screens differ, by why; found by going through them one by one."""
_PLAIN = str.maketrans({**dict.fromkeys("┘┐┌└┼├┤┴┬", "+"), "─": "-", "│": "|"})


def with_addressing() -> list[str]:
    """One name of each file of the database that has cursor addressing, sorted."""
    files: dict[Path, str] = {}
    for name in entry_names():
        path = find_entry(name)
        if path is not None:
            files.setdefault(path.resolve(), name)
    return sorted(name for name in files.values() if "cup" in find_description(name).expressions)


def sessions(
    names: list[str], *, seed: int = 7, attributes: bool = False
) -> Iterator[tuple[str, bytes, list[str]]]:
    """``(name, output, rows)`` of the program under each terminal that curses can use."""
    kind = "attributes" if attributes else "plain"
    drawn = subprocess.run(
        [sys.executable, PROGRAM, str(seed), kind, *names], check=True, capture_output=True
    )
    for line in drawn.stdout.splitlines():
        session: dict[str, Any] = json.loads(line)
        if session["rows"] is not None:
            yield session["name"], base64.b64decode(session["output"]), session["rows"]


def rows_of(name: str, output: bytes) -> list[str]:
    """The rows of a screen of 80x24 with the terminal's own wrap rule; line drawing as plain characters."""
    dialect = find_dialect(
        name, "cp437" if find_description(name).fixed.get("smacs") == b"\x1b[11m" else "latin-1"
    )
    operations = dialect.feed(output, 0) + dialect.finish()
    traits = traits_of(find_description(name))
    rules = Rules(wrap=WrapRule(traits.wrap), back_wrap=traits.backs_over_edge)
    screen = Screen(Size(24, 80), rules, fates=Fates(len(output)))
    screen.apply(operations)
    return [row.translate(_PLAIN) for row in screen.display]


def different(names: list[str], **options: Any) -> list[str]:
    """Those whose screen is another than the one curses drew, the known exceptions left out."""
    known = {name for group in EXCEPTIONS for name in group.split()}
    return [
        name
        for name, output, rows in sessions([name for name in names if name not in known], **options)
        if rows_of(name, output) != rows
    ]


@pytest.mark.outside
def test_at_least_300_terminals_show_what_curses_drew() -> None:
    names = with_addressing()[::4]
    if len(names) < 300:
        pytest.skip("this system's terminal database is a small one")
    assert different(names) == []


@pytest.mark.outside
def test_terminals_with_free_attributes_show_what_curses_drew_with_them() -> None:
    names = [
        "vt100",
        "vt220",
        "vt52",
        "h19",
        "adm31",
        "hz1500",
        "viewpoint",
        "wy50",
        "xterm",
        "linux",
        "ansi",
    ]
    assert different([name for name in names if find_entry(name) is not None], attributes=True) == []


@pytest.mark.slow
@pytest.mark.outside
@pytest.mark.parametrize("seed", [7, 1881])
def test_all_terminals_show_what_curses_drew(seed: int) -> None:
    names = with_addressing()
    if len(names) < 300:
        pytest.skip("this system's terminal database is a small one")
    assert different(names, seed=seed) == []


def test_the_exceptions_are_few() -> None:
    assert sum(len(group.split()) for group in EXCEPTIONS) <= 21
