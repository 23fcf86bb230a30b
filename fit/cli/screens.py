"""``fit screens``: the screens that have a name."""

from __future__ import annotations

from fit.cli.display import say
from fit.cli.streams import columns
from fit.report.plain import wrap
from fit.report.style import NARROW
from fit.screen.named import find_screen, screen_names


def command() -> None:
    """List the named screens."""
    width = columns()
    for name in screen_names():
        screen = find_screen(name)
        first = f"{name:<8} {screen.size!s:>7}  "
        later = " " * (4 if width < NARROW else len(first))
        say(f"{line}\n" for line in wrap(screen.about, width, first=first, later=later))
