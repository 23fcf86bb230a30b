"""``fit terminals``: the list, one terminal, and the terminal of a session, as its user sees them."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from fit.cli import build_app
from fit.dialect.description_file import parse
from fit.report.notation_help import EXAMPLE
from fit.width import text_cells


def run(*arguments: str, columns: int = 80, typed: bytes | None = None) -> Result:
    environment = {"COLUMNS": str(columns), "LINES": "24"}
    return CliRunner().invoke(build_app("terminals"), ["terminals", *arguments], env=environment, input=typed)


def test_the_list_says_how_a_cell_is_addressed_what_wraps_and_what_attributes_cost() -> None:
    result = run()
    assert result.exit_code == 0
    lines = result.output.splitlines()
    assert "vt52        ESC Y row+32 column+32                        never    free" in lines
    assert "tvi912      ESC = row+32 column+32                        at once  1 cell" in lines
    assert "hz1500      ~ DC1 column+96 row+96                        at once  free" in lines


@pytest.mark.parametrize("columns", [40, 80])
@pytest.mark.parametrize("arguments", [(), ("--all",), ("tvi950",), ("dumb",), ("vt52-small",)])
def test_no_line_is_wider_than_the_terminal(arguments: tuple[str, ...], columns: int) -> None:
    result = run(*arguments, columns=columns)
    assert result.exit_code == 0
    # The list of every name cannot break a name; the longest of the database has 28 letters.
    assert max(map(text_cells, result.output.splitlines())) <= columns


def test_a_terminal_is_described() -> None:
    lines = run("vt52-small", columns=100).output.splitlines()
    assert lines[1:] == [
        "size           80x24",
        "cursor         ESC Y row+32 column+32",
        "last column    does not wrap: the last column is replaced",
        "attributes     take no cell",
        "status line    none",
        "unknown codes  ESC and the next byte disappear",
        "cannot         insert characters; delete characters; underline; line drawing",
        "decoded        by its description",
        "from           vt52-small.toml",
    ]


def test_the_terminal_of_a_session_comes_with_evidence_and_the_runner_up(tmp_path: Path) -> None:
    log = b"".join(
        b"~\x11%c%cebb %d\r\n~\x0f~\x1flamp~\x19" % (0x60 + line, 0x61 + line, line) for line in range(20)
    )
    path = tmp_path / "log.raw"
    path.write_bytes(b"~\x1c" + log)
    result = run(str(path))
    assert result.exit_code == 0
    first, _, second, *others = result.output.splitlines()
    assert first == "hz1500: clear."
    assert second == "1. hz1500"
    assert any(line.startswith("2. ") for line in others)
    text = " ".join(result.output.split())
    assert "bytes of sequences explained, 0 not understood" in text
    assert " 2. " in text


def test_plain_text_needs_none() -> None:
    result = run("-", typed=b"the lamp is lit\r\n")
    assert result.output == "Plain text: none needed. Every terminal shows it alike.\n"


def test_a_change_half_way_is_said_with_its_place() -> None:
    first = b"".join(b"\x1bY%c%cebb\x1bK" % (40 + line, 33 + line) for line in range(12))
    second = b"".join(b"~\x11%c%cflood~\x0f~\x1f!~\x19" % (0x60 + line, 0x61 + line) for line in range(18))
    result = run("-", typed=first + second)
    assert result.output.splitlines()[0] == "The session changes its terminal half way."
    assert (
        f"up to byte {len(first)}" in result.output.replace("\n", " ")
        or f"up to byte {len(first) + 1}" in result.output
    )


def test_the_notation_comes_with_an_example_that_can_be_read() -> None:
    result = run("--notation", columns=40)
    assert max(map(len, result.output.splitlines())) <= 40
    assert EXAMPLE in result.output
    assert EXAMPLE.count("\n") <= 20
    assert parse(EXAMPLE, "tide", "tide.toml").expressions["cup"].expand(2, 7) == b"\x1bY\"'"


def test_an_unknown_name_is_answered_with_the_nearest() -> None:
    result = run("vt5z")
    assert result.exit_code == 2
    assert result.stderr.startswith("fit: no terminal is named 'vt5z'; the nearest names are vt5")


def test_an_unknown_encoding_is_refused() -> None:
    result = run("-", "--encoding", "ebcdic", typed=b"x")
    assert result.exit_code == 2
    assert result.stderr == "fit: no encoding is named 'ebcdic'; known are utf-8, cp437, latin-1, 7bit\n"


def test_a_name_wins_over_a_file_of_that_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("vt52").write_bytes(b"a log\r\n")
    assert run("vt52").output.splitlines()[1].startswith("size")
    assert run("./vt52").output.startswith("Plain text")
