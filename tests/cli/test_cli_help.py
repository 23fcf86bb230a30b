"""Help and lists on a narrow terminal: whole words, and no line wider than it is."""

from __future__ import annotations

import pytest
from typer.testing import CliRunner

from fit.cli import COMMANDS, build_app

WIDTHS = [40, 59, 60, 80, 200]


def printed(width: int, *arguments: str) -> str:
    chosen = arguments[0] if arguments[0] in COMMANDS else None
    result = CliRunner().invoke(build_app(chosen), arguments, env={"COLUMNS": str(width)})
    assert (result.exit_code, result.stderr) == (0, "")
    return result.stdout


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_help_is_as_wide_as_the_terminal(command: str, width: int) -> None:
    shown = printed(width, *command.split(), "--help")
    assert max(map(len, shown.splitlines())) <= min(width, 80)


@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_help_has_the_same_words_at_every_width(command: str) -> None:
    """A word at a line's end may be parted at its own hyphen, but never in the middle."""
    wide, narrow = ("".join(printed(width, *command.split(), "--help").split()) for width in (80, 40))
    assert narrow == wide
    words = set(printed(80, *command.split(), "--help").replace("-", " ").split())
    assert set(printed(40, *command.split(), "--help").replace("-", " ").split()) <= words


@pytest.mark.parametrize("width", [20, 30, 40, 80])
def test_the_list_of_screens_is_as_wide_as_the_terminal(width: int) -> None:
    shown = printed(width, "screens")
    assert max(map(len, shown.splitlines())) <= width
    assert " ".join(shown.split()).startswith("desk 80x25 a terminal on the desk")
