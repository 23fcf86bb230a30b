"""The command line: arguments in, exit code out. One file a command; the only door to typer.

Only the command that was asked for is imported, so that ``fit --help`` answers at once.
"""

from __future__ import annotations

import errno
import functools
import importlib
import os
import sys
from collections.abc import Callable
from typing import Any, Final

import typer

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
        app.command(name, help=about, short_help=about)(_guard(function))
    return app


def main() -> None:
    """The entry point of the ``fit`` command."""
    chosen = next((argument for argument in sys.argv[1:] if not argument.startswith("-")), None)
    try:
        app = build_app(chosen)
    except KeyboardInterrupt:  # the import of a command takes long enough to be interrupted
        _complain(INTERRUPTED)
        sys.exit(EXIT_INTERRUPTED)
    app()


def _not_imported() -> None:
    """Stand in for a command that was not asked for; only its name and help line are used."""


def _guard(function: Callable[..., Any]) -> Callable[..., Any]:
    """Turn errors of ours, a full disk, a closed pipe and Ctrl-C into a sentence and an exit code."""

    @functools.wraps(function)
    def guarded(*arguments: Any, **options: Any) -> Any:
        try:
            return function(*arguments, **options)
        except FitError as error:
            _complain(str(error))
            raise typer.Exit(EXIT_UNUSABLE) from None
        except BrokenPipeError:
            # The reader of our output has left; what is still buffered must not raise again at exit.
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            raise typer.Exit(EXIT_OK) from None
        except OSError as error:
            if error.errno not in (errno.ENOSPC, errno.EDQUOT, errno.EROFS, errno.EACCES, errno.EIO):
                raise
            where = f"{error.filename}: " if error.filename else ""
            _complain(f"{where}{error.strerror}; nothing was left half written")
            raise typer.Exit(EXIT_UNUSABLE) from None
        except KeyboardInterrupt:
            _complain(INTERRUPTED)
            raise typer.Exit(EXIT_INTERRUPTED) from None

    return guarded


def _complain(sentence: str) -> None:
    print(f"fit: {sentence}", file=sys.stderr)
