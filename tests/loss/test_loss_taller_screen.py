"""A reader's screen with more rows than the big one: what scrolled off that is still true of a moment ago."""

from __future__ import annotations

from fit.pipeline import measure
from fit.session import Session
from fit.units import Size

LOG = "".join(f"Hour {hour:02}: the lamp burns clear.\r\n" for hour in range(60)).encode()


def test_lines_that_scrolled_off_the_big_screen_are_no_falsehood() -> None:
    for small in (Size(50, 80), Size(25, 80), Size(100, 132)):
        figures = measure(Session(LOG), Size(25, 80), small).figures
        assert (figures.needed_shown, figures.clean) == (1.0, 1.0)


def test_what_an_erase_took_from_the_big_screen_alone_is_one() -> None:
    """The row addressed does not exist there alike: row 30 is the last one of 25 rows."""
    output = LOG + b"\x1b[H\x1b[2JTide table\x1b[30;1HHigh water\r\x1b[25;1HLow water  "
    clean = measure(Session(output), Size(25, 80), Size(50, 80)).figures.clean
    assert clean is not None
    assert clean < 1.0
