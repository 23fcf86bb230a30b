"""The command line: arguments in, exit code out. One file a command; the only door to typer.

Only the command that was asked for is imported, so that ``fit --help`` answers at once.
"""

from __future__ import annotations

import functools
import importlib
import sys
from collections.abc import Callable
from typing import Any, Final, get_type_hints

import typer

from fit.cli.help import Command, Group
from fit.cli.streams import abandon, as_sentence, complain, open_closed
from fit.cli.version import before_commands
from fit.errors import FitError

EXIT_OK: Final = 0
EXIT_BELOW_BAR: Final = 1
EXIT_UNUSABLE: Final = 2
EXIT_INTERRUPTED: Final = 130
INTERRUPTED: Final = "interrupted; nothing was left half written"

COMMANDS: Final = {
    "check": "Measure what the small screen loses of a program's output, why, and what would help.",
    "capture": "Run a program of this computer in a terminal of a given size and record the session.",
    "screens": "List the screens that have a name.",
    "terminals": "List the terminals that can be decoded, or find the one a session was written for.",
    "reflow": "Turn a document into pages that fit the small screen.",
    "run": "Run an 8-bit program in a sandbox and record the session.",
    "score": "Rank a shelf of programs, sessions and documents before loading them.",
}
"""Each command with its line in the list; the module of a command has its name and a function ``command``."""

ABOUT: Final = (
    "See what a small screen loses of a program or a manual before you load it. "
    "Keep a master copy of everything on the big computer: the small one forgets."
)


def build_app(chosen: str | None) -> typer.Typer:
    """The whole command line, with only the command ``chosen`` imported."""
    app = typer.Typer(
        cls=Group,
        help=ABOUT,
        no_args_is_help=True,
        add_completion=False,
        pretty_exceptions_enable=False,
        rich_markup_mode=None,
        context_settings={"help_option_names": ["-h", "--help"]},
    )
    app.callback(help=ABOUT)(before_commands)
    for name, about in COMMANDS.items():
        function = importlib.import_module(f"fit.cli.{name}").command if name == chosen else _not_imported
        _read_by_us(function)
        app.command(name, cls=Command, help=about, short_help=about)(_guard(function))
    return app


def main() -> None:
    """The entry point of the ``fit`` command."""
    open_closed()
    chosen = next((argument for argument in sys.argv[1:] if not argument.startswith("-")), None)
    try:
        try:
            build_app(chosen)()
        finally:
            sys.stdout.flush()  # help, too, may find no room, and the import of a command may be interrupted
    except (KeyboardInterrupt, OSError) as error:
        sys.exit(_exit_code(error))


def _not_imported() -> None:
    """Stand in for a command that was not asked for; only its name and help line are used."""


def _read_by_us(function: Callable[..., Any]) -> None:
    """Let the library not ask whether files can be read: an output need not be, and of an input we say what to do."""
    hints = get_type_hints(function, include_extras=True)
    for hint in hints.values():
        for parameter in getattr(hint, "__metadata__", ()):
            parameter.readable = False
    function.__annotations__ = hints  # else they are made anew, as they were, whenever they are asked for


def _guard(function: Callable[..., Any]) -> Callable[..., Any]:
    """Turn errors of ours and of the system, a closed pipe and Ctrl-C into a sentence and an exit code."""

    @functools.wraps(function)
    def guarded(*arguments: Any, **options: Any) -> Any:
        try:
            return function(*arguments, **options)
        except (FitError, OSError, KeyboardInterrupt) as error:
            raise typer.Exit(_exit_code(error)) from None

    return guarded


def _exit_code(error: BaseException) -> int:
    """The exit code of an error, once it is told; raises the error itself where it is a fault of the program."""
    if isinstance(error, KeyboardInterrupt):
        complain(INTERRUPTED)
        return EXIT_INTERRUPTED
    if isinstance(error, BrokenPipeError):  # the reader of our output has left
        abandon("stdout")
        return EXIT_OK
    said = as_sentence(error) if isinstance(error, OSError) else error
    if said is None:
        raise error
    complain(str(said))
    return EXIT_UNUSABLE
