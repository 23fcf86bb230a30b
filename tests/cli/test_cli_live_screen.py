"""What a person sees of a program for another terminal: the rows that the measuring sees, too."""

from __future__ import annotations

import os
import re

import pytest

from fit.cli.live_screen import LiveScreen
from fit.dialect.encoding import LATIN_1
from fit.dialect.registry import find_dialect
from fit.pipeline import DEFAULT_BIG, replay
from fit.screen.named import find_screen
from fit.session import Session
from fit.terminal_choice import rules_of

pty = pytest.importorskip("pty")
WIDE = b"Tide " * 18 + b"9"


@pytest.mark.parametrize("terminal", ["vt52", "adm3a", "vt100", "wy50"])
def test_a_row_that_is_too_wide_ends_as_in_the_measuring(terminal: str) -> None:
    keyboard, display = pty.openpty()
    try:
        screen = LiveScreen(
            find_dialect(terminal, LATIN_1),
            terminal,
            display,
            display,
            rules_of(terminal, find_screen(DEFAULT_BIG)),
        )
        screen.show(WIDE)
        painted = os.read(keyboard, 1 << 16).decode()
    finally:
        os.close(keyboard)
        os.close(display)
    rows = dict(re.findall(r"\x1b\[([12]);1H([^\x1b]*)", painted))
    measured = replay(Session(WIDE, dialect=terminal, encoding="latin-1")).display
    # The terminal that shows it here has 80 columns as well, or tells none.
    assert [rows["1"], rows["2"]] == [row.rstrip() for row in measured[:2]]


def test_the_vt52_cuts_and_the_adm3a_goes_on() -> None:
    assert replay(Session(WIDE, dialect="vt52", encoding="latin-1")).display[1].strip() == ""
    assert replay(Session(WIDE, dialect="adm3a", encoding="latin-1")).display[1].strip() != ""
