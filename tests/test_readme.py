"""The README: every command and option stands in it, its examples are what the program prints, its code runs."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from house_map import map_text, parts, sentence
from readme_examples import README, ROOT, agrees, blocks, run

from fit.cli import COMMANDS, EXIT_BELOW_BAR, EXIT_INTERRUPTED, EXIT_OK, EXIT_UNUSABLE
from fit.dialect.registry import find_dialect
from fit.screen.named import find_screen

TEXT = README.read_text("utf-8")


def section(command: str) -> str:
    found = re.search(rf"^### fit {command}\n(.*?)(?=^##)", TEXT, re.DOTALL | re.MULTILINE)
    assert found is not None, f"README.md has no section for fit {command}"
    return found[1]


def options_of(command: str) -> set[str]:
    """Every option name of a command, as its help lists them."""
    listed = re.findall(
        r"^ +((?:-\w, )?--[\w-]+(?: / --[\w-]+)?)", run(f"fit {command} --help"), re.MULTILINE
    )
    return {name for names in listed for name in re.split(r", | / ", names)} - {"-h", "--help"}


@pytest.mark.parametrize("command", COMMANDS)
def test_every_option_is_documented(command: str) -> None:
    text = section(command)
    missing = {
        name for name in options_of(command) if not re.search(rf"`[^`]*(?<![\w-]){name}(?![\w-])", text)
    }
    assert missing == set()


def test_options_are_found_where_there_are_some() -> None:
    assert {"--json", "--look", "--lf-down"} <= options_of("check")


@pytest.mark.parametrize(("command", "shown"), blocks(), ids=[block[0] for block in blocks()])
def test_example(command: str, shown: str) -> None:
    assert agrees(run(command), shown), "python tests/readme_examples.py writes the examples anew"


def test_there_are_examples_with_two_verdicts() -> None:
    assert len({verdict for verdict in ("WORKABLE WITH HOLDS", "BROKEN") if verdict in TEXT}) == 2


def test_exit_codes() -> None:
    listed = {int(code) for code in re.findall(r"^\| (\d+) \|", TEXT, re.MULTILINE)}
    assert listed == {EXIT_OK, EXIT_BELOW_BAR, EXIT_UNUSABLE, EXIT_INTERRUPTED}


def test_ci_runs_the_test_command() -> None:
    commands = re.findall(r"```sh\n(.*?)\n```", TEXT, re.DOTALL)
    assert len(commands) == 2
    assert commands[1] in (ROOT / ".ci" / "run").read_text("utf-8").splitlines()


def test_the_python_example_runs(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    code = re.findall(r"```python\n(.*?)```", TEXT, re.DOTALL)
    assert len(code) == 1
    monkeypatch.chdir(ROOT)
    exec(code[0], {})
    assert "workable with holds" in capsys.readouterr().out


def test_the_toml_examples_are_a_terminal_and_a_screen(tmp_path: Path) -> None:
    terminal, screen = re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL)
    assert len(terminal.splitlines()) <= 20
    (tmp_path / "lamp40.toml").write_text(terminal, "utf-8")
    (tmp_path / "wide.toml").write_text(screen, "utf-8")
    dialect = find_dialect(str(tmp_path / "lamp40.toml"), "utf-8")
    assert dialect.feed(b"\x1bY\x22\x25", 0)[0][2:4] == ("cursor_position", (3, 6))
    assert find_screen(str(tmp_path / "wide.toml")).size.columns == tomllib.loads(screen)["columns"]


def test_the_map_is_current() -> None:
    assert parts()[1] == map_text(), "python tests/house_map.py writes the map anew"


def test_every_file_says_what_it_does() -> None:
    assert [path.name for path in (ROOT / "fit").rglob("*.py") if not sentence(path)] == []
