"""Help and lists on a narrow terminal: whole words, and no line wider than it is."""

from __future__ import annotations

import os
from pathlib import Path

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


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--oil"], "No such option: --oil; fit --help says what can be given"),
        (["lamp"], "No such command 'lamp'; fit --help says what can be given"),
        (
            ["check", "--look", "x"],
            "Invalid value for '--look': a whole number is needed; fit check --help says what can be given",
        ),
        (
            ["check", "--fail-under", "x"],
            "Invalid value for '--fail-under': a number is needed; fit check --help says what can be given",
        ),
        (["run"], "Missing argument 'PROGRAM'; fit run --help says what can be given"),
        (
            ["check", "--small"],
            "Option '--small' requires an argument; fit check --help says what can be given",
        ),
        (
            ["screens", "desk"],
            "Got unexpected extra argument(s) (desk); fit screens --help says what can be given",
        ),
    ],
)
def test_what_cannot_be_read_of_a_command_is_one_sentence(arguments: list[str], sentence: str) -> None:
    chosen = arguments[0] if arguments[0] in COMMANDS else None
    result = CliRunner().invoke(build_app(chosen), arguments, prog_name="fit")
    assert (result.exit_code, result.stdout, result.stderr) == (2, "", f"fit: {sentence}\n")


def test_who_asks_for_nothing_is_shown_the_commands() -> None:
    result = CliRunner().invoke(build_app(None), [], prog_name="fit")
    assert result.exit_code == 2
    assert all(name in result.output for name in COMMANDS)


def test_the_library_does_not_judge_which_file_can_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An output need not be readable; of an input the command says what to do."""
    (tmp_path / "LAMP.COM").write_bytes(b"\xc9")
    monkeypatch.setattr(os, "access", lambda *_, **__: False)
    result = CliRunner().invoke(build_app("run"), ["run", str(tmp_path / "LAMP.COM")], prog_name="fit")
    assert "is not readable" not in result.stderr
    assert result.exit_code == 0
