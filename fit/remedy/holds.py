"""Holds that a device can do by itself, without knowing what is to come."""

from __future__ import annotations

from fit.loss.watch import Watch
from fit.screen.grid import Grid, Hooks
from fit.screen.pieces import Row


def before_scrolling(watch: Watch) -> Hooks:
    """Hold before a row that was not seen scrolls off."""

    def before_scroll_off(screen: Grid, row: Row) -> None:
        if watch.unseen(row.pieces):
            watch.hold(screen)

    return Hooks(before_scroll_off=before_scroll_off)


def at_each_wrap(watch: Watch) -> Hooks:
    """Hold whenever a line wraps, as some consoles do (common practice, no source): a comparison only."""
    return Hooks(on_wrap=watch.hold)
