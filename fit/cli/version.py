"""``fit --version``: which program this is."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version
from typing import Annotated

import typer

PACKAGE = "screenfit"


def told() -> str:
    """The name of the program and its version, where it is installed."""
    try:
        return f"fit, of {PACKAGE} {version(PACKAGE)}"
    except PackageNotFoundError:
        return f"fit, of {PACKAGE}, run without being installed"


def _tell(wanted: bool) -> None:
    if wanted:
        typer.echo(told())
        raise typer.Exit


def before_commands(
    _version: Annotated[
        bool, typer.Option("--version", is_eager=True, callback=_tell, help="Say which version this is.")
    ] = False,
) -> None:
    """Take the options that stand before a command."""
