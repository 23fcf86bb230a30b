"""Help that fits the terminal: the library's takes 50 columns at least, and half of them for the names of options."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from typer.core import TyperCommand, TyperGroup

from fit.cli.streams import PLAIN_WIDTH, columns

NARROW: Final = 60
"""Below so many columns the names of options stand above what they do, where they are long."""
NARROWEST_HELP: Final = 40
_NAMES: Final = 9
"""Columns of short names on such a terminal."""
_MARGIN: Final = 2
_Context: Any = TyperCommand.context_class
_Formatter: Any = _Context.formatter_class


class _Help(_Formatter):  # type: ignore[misc]  # the library keeps its classes to itself
    """Writes help as wide as the terminal."""

    def __init__(self, *_: Any, **__: Any) -> None:
        super().__init__(width=max(NARROWEST_HELP, min(PLAIN_WIDTH, columns())) - _MARGIN)

    def write_dl(self, rows: Sequence[tuple[str, str]], *arguments: Any, **options: Any) -> None:
        """A list of names and what they mean."""
        if self.width + _MARGIN < NARROW:
            super().write_dl(rows, col_max=_NAMES)
        else:
            super().write_dl(rows, *arguments, **options)


class _HelpContext(_Context):  # type: ignore[misc]  # as above
    formatter_class = _Help


class Command(TyperCommand):
    """A command with such help."""

    context_class = _HelpContext


class Group(TyperGroup):
    """All commands, with such help."""

    context_class = _HelpContext
