"""``fit screens``: the screens that have a name."""

from __future__ import annotations

from fit.screen.named import find_screen, screen_names


def command() -> None:
    """List the named screens."""
    for name in screen_names():
        screen = find_screen(name)
        print(f"{name:<8} {screen.size!s:>7}  {screen.about}")
