"""What standard output is: how wide, and whether it takes colour. Plain and 80 columns where it is no terminal."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager

from fit.cli.streams import PLAIN_WIDTH, columns
from fit.report.ink import Paint
from fit.report.style import WIDEST, Style

LONG = 300_000
"""Bytes of output from which on progress is shown; the measuring takes some 8 seconds a megabyte."""


def text_style() -> Style:
    """The style for text that is read line by line."""
    return Style(min(_width(), WIDEST), _paint())


def picture_style() -> Style:
    """The style for pictures of screens, which may use all the width there is."""
    return Style(_width(), _paint())


def say(pieces: Iterable[str]) -> None:
    """Print pieces of text; a character that standard output cannot encode becomes an escape."""
    reconfigure = getattr(sys.stdout, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors="backslashreplace")
    for piece in pieces:
        sys.stdout.write(piece)
    sys.stdout.flush()


@contextmanager
def progress_line(length: int) -> Iterator[Callable[[float], None] | None]:
    """Give a function that shows a share of the work on standard error, where that is a terminal and the work is long.

    The line is cleared at the end, however it comes.
    """
    if length < LONG or not sys.stderr.isatty():
        yield None
        return
    shown = -1

    def show(share: float) -> None:
        nonlocal shown
        now = int(share * 100)
        if now != shown:
            shown = now
            print(f"\rmeasuring {now:>3}%", end="", file=sys.stderr, flush=True)

    try:
        yield show
    finally:
        print("\r\x1b[K", end="", file=sys.stderr, flush=True)


def _width() -> int:
    return columns() if sys.stdout.isatty() else PLAIN_WIDTH


def _paint() -> Paint:
    """Colour on a terminal that has it, unless the user asked for none with NO_COLOR."""
    wanted = not os.environ.get("NO_COLOR") and os.environ.get("TERM", "dumb") != "dumb"
    return Paint(enabled=wanted and sys.stdout.isatty())
