"""Single sequences on our screens and on tmux's: a list written down beforehand, and the places where they differ.

tmux (Debian package) is a terminal nobody here wrote. It has no last-column flag as the VT100 has: its cursor
stands past the last column until the next glyph, and what counts or erases from there is different. Each
difference is named below with the rule that ours follows, and fails here when it is none any more. Left out,
because tmux does them differently from version to version: half a wide glyph that is replaced, emoji joined to one.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from tmux_pane import TmuxPane

from fit.dialect.ecma48 import Ecma48
from fit.screen.rules import PendingRule, Rules
from fit.screen.screen import Screen
from fit.units import Size

pytestmark = [
    pytest.mark.outside,
    pytest.mark.skipif(shutil.which("tmux") is None, reason="tmux is not installed"),
]

SIZE = Size(8, 40)
FULL = "x" * 40  # a row, with the wrap pending
RESET = b"\x1b[?1049l\x1bc"

AGREED = {
    "screen alignment display homes": "\x1b[3;3H\x1b#8",
    "carriage return at pending wrap": f"{FULL}\rz",
    "cursor up at pending wrap": f"\r\n{FULL}\x1b[Az",
    "glyph at pending wrap": f"{FULL}z",
    "insert lines": "a\r\nb\r\nc\x1b[2;2H\x1b[Lz",
    "delete lines": "a\r\nb\r\nc\x1b[2;2H\x1b[Mz",
    "a region scrolls alone": "top\x1b[2;4r\x1b[4;1Ha\nb\nc\nd",
    "a line feed below the region": "\x1b[2;4r\x1b[8;1Ha\nb\nc",
    "cursor up and down stop at the margins": "\x1b[3;5r\x1b[1;1H\x1b[9Bz\x1b[9Aq",
    "origin mode": "\x1b[2;4r\x1b[?6h\x1b[9;9Hq\x1b[1;1Hz",
    "reverse index at the top": "a\r\nb\x1b[H\x1bMz",
    "repeat": "ab\x1b[5b",
    "insert mode": "abc\r\x1b[4hz\x1b[4l",
    "no autowrap": f"\x1b[?7l{FULL}yz\x1b[?7h",
    "a wide glyph does not fit the last column": f"{FULL[1:]}漢z",
    "a combining mark": "e\u0301z",
    "tabs": "\ta\tb\x1b[3g\x1b[5G\x1bH\r\tz",
    "tabs backwards": "\t\tz\x1b[Zq",
    "scroll up and down": "a\r\nb\r\nc\x1b[Sz\x1b[2Ty",
    "alternate screen, 1049": "main\x1b[?1049halt\x1b[?1049lz",
    "alternate screen, 47": "main\x1b[?47halt\x1b[?47lz",
    "next line and index": "ab\x1bEz\x1bDy",
    "column and row alone": "ab\x1b[7`z\x1b[3dq",
    "address 0 is 1": "\x1b[0;0Hz",
    "an address beyond the screen": "\x1b[99;99Hzq",
    "soft reset": "\x1b[2;4r\x1b[4h\x1b[!p\r\nz",
    "reset": "abc\x1bcz",
    "erase above": "abc\r\ndef\x1b[1;2H\x1b[1J",
    "erase all, the cursor stays": "abc\r\ndef\x1b[2Jz",
    "erase saved lines": "abc\x1b[3Jz",
    "vertical tab and form feed": "a\x0bb\x0cc",
    "bell, null and delete": "a\x07b\0c\x7fd",
    "device control string": "a\x1bPxyz\x1b\\b",
    "operating system command": "a\x1b]0;t\x07b",
    "application program command": "a\x1b_x\x1b\\b",
    "a sequence that is cancelled": "a\x1b[3\x18b",
    "a control inside a sequence": "abc\x1b[\r2Cz",
    "save and restore, private": "ab\x1b[s\x1b[5;5H\x1b[uz",
    "next and previous line": "ab\x1b[2Ez\x1b[Fq",
    "insert characters": "abcdef\x1b[3G\x1b[2@",
    "delete characters": "abcdef\x1b[3G\x1b[2P",
    "erase characters": "abcdef\x1b[3G\x1b[2X",
    "80-column rows": "status".ljust(80) + "next\r\n" + "row".ljust(79) + "\r\nz",
    "ten rows": "\r\n".join("abcdefghij"),
}
"""ECMA-48 and the VT100 and VT220 manuals, and xterm's practice for the private ones."""

DIFFERENT = {
    "backspace at pending wrap": f"{FULL}\b\bz",  # VT100: from the last column
    "cursor back at pending wrap": f"{FULL}\x1b[Dz",  # VT100: likewise
    "tab at pending wrap": f"{FULL}\tz",  # VT100: stays in the last column
    "line feed at pending wrap": f"{FULL}\nz",  # VT100: the flag goes, the column stays
    "save and restore at pending wrap": f"{FULL}\x1b7\x1b[3;3H\x1b8z",  # VT220: DECSC saves the flag
    "erase below at pending wrap": f"{FULL}\x1b[J",  # VT100: the last column goes
    "line drawing": "\x1b(0lqk\x1b(B",  # capture-pane writes the letters behind the lines
    "NEL as U+0085 in UTF-8": "a\u0085b",  # xterm: a control all the same; tmux drops it
    "selective erase": '\x1b[1"qab\x1b[0"qcd\x1b[?2K',  # VT220: protected glyphs stay; tmux knows none
}

ERASED_AT_PENDING_WRAP = f"{FULL}\x1b[K"
"""Where terminals differ, and ours has a rule for both: `PendingRule`."""


@dataclass(frozen=True)
class Shown:
    """What a terminal shows: rows without blanks at their ends, and the cursor, past the last column when pending."""

    rows: list[str]
    cursor: tuple[int, int]


@pytest.fixture(scope="module")
def pane() -> Iterator[TmuxPane]:
    with TmuxPane(SIZE.columns, SIZE.rows) as opened:
        yield opened


def theirs(pane: TmuxPane, text: str) -> Shown:
    pane.feed(RESET)
    pane.feed(text.encode())
    return Shown(pane.rows(), pane.cursor())


def ours(text: str, rules: Rules | None = None) -> Shown:
    dialect, screen = Ecma48(), Screen(SIZE, rules)
    screen.apply(dialect.feed(text.encode(), 0))
    screen.apply(dialect.finish())
    cursor = screen.cursor
    return Shown([row.rstrip() for row in screen.display], (cursor.row, cursor.column + cursor.pending))


@pytest.mark.parametrize("name", AGREED)
def test_agreed(pane: TmuxPane, name: str) -> None:
    assert ours(AGREED[name]) == theirs(pane, AGREED[name])


@pytest.mark.parametrize("name", DIFFERENT)
def test_different_as_named(pane: TmuxPane, name: str) -> None:
    assert ours(DIFFERENT[name]) != theirs(pane, DIFFERENT[name])


def test_an_erase_to_the_end_of_the_line_at_pending_wrap_follows_the_rule(pane: TmuxPane) -> None:
    kept = theirs(pane, ERASED_AT_PENDING_WRAP)
    assert ours(ERASED_AT_PENDING_WRAP, Rules(pending=PendingRule.KEEP)).rows == kept.rows
    assert ours(ERASED_AT_PENDING_WRAP, Rules(pending=PendingRule.ERASE)).rows != kept.rows
