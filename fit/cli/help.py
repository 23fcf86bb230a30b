"""Help that fits the terminal, and one sentence on options that cannot be read.

The library's help takes 50 columns at least, half of them for the names of options; of an error it prints several lines.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from functools import partial
from typing import Any, Final

from typer import BadParameter
from typer.core import TyperCommand, TyperGroup

from fit.cli.streams import PLAIN_WIDTH, columns, complain

NARROW: Final = 60
"""Below so many columns the names of options stand above what they do, where they are long."""
NARROWEST_HELP: Final = 40
_NAMES: Final = 9
"""Columns of short names on such a terminal."""
_MARGIN: Final = 2
_Context: Any = TyperCommand.context_class
_Formatter: Any = _Context.formatter_class
_LibraryError: Any = BadParameter.__mro__[1]
"""Its error of usage."""
_NOTHING_ASKED: Final = "NoArgsIsHelpError"
"""No error but the help, for who asks for nothing."""

_SAID: Final = {
    "Input should be a valid integer, unable to parse string as an integer": "a whole number is needed",
    "Input should be a valid number, unable to parse string as a number": "a number is needed",
}
"""What the library says of a value, and what we do."""


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
    """All commands, with such help; what is wrong with an option is said as everything else is."""

    context_class = _HelpContext

    def main(
        self,
        args: Sequence[str] | None = None,
        prog_name: str | None = None,
        complete_var: str | None = None,
        standalone_mode: bool = True,
        windows_expand_args: bool = True,
        **more: Any,
    ) -> Any:
        """Run the command that was asked for, and leave with its exit code."""
        run = partial(super().main, args, prog_name, complete_var, False, windows_expand_args, **more)
        if not standalone_mode:
            return run()
        try:
            code = run()
        except _LibraryError as error:
            _tell(error, sys.argv[1:] if args is None else args)
            code = error.exit_code
        sys.exit(code if isinstance(code, int) else 0)


def _tell(error: Any, arguments: Sequence[str]) -> None:
    if type(error).__name__ == _NOTHING_ASKED:
        error.show()
        return
    if error.ctx is not None:
        path = error.ctx.command_path
    else:  # where an option lacks its value, the library does not say of which command
        path = " ".join(["fit", *(argument for argument in arguments[:1] if not argument.startswith("-"))])
    said = error.format_message().rstrip(".")
    for of_library, ours in _SAID.items():
        said = said.replace(of_library, ours)
    complain(f"{said}; {path} --help says what can be given")
