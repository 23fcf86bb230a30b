"""Screens by name, by size and by file; every error is one whole sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.errors import FitError
from fit.screen.named import FIELDS, find_screen, parse_size, screen_names
from fit.screen.rules import DecalnRule, PendingRule, Rules, SelectiveRule, WrapRule
from fit.units import Size


def test_the_screens_that_come_with_the_program() -> None:
    assert {name: str(find_screen(name).size) for name in screen_names()} == {
        "desk": "80x25",
        "desk24": "80x24",
        "pocket": "40x8",
    }
    assert find_screen("pocket").terminal is None


def test_a_size_is_columns_by_rows() -> None:
    assert parse_size(" 40X8 ") == Size(rows=8, columns=40)
    assert str(Size(rows=8, columns=40)) == "40x8"
    assert find_screen("1x1").size.cells == 1
    assert find_screen("500x500").size.cells == 250_000


def test_the_small_screen_has_less_than_a_fifth_of_the_cells() -> None:
    # In the trade 40x8 is called about a quarter of 80x25 (common practice, no source): the cells say otherwise.
    small, big = find_screen("pocket").size, find_screen("desk").size
    assert (small.columns / big.columns, small.rows / big.rows, small.cells / big.cells) == (0.5, 0.32, 0.16)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("40", "'40' is no screen size; write columns x rows, such as 40x8"),
        ("0x8", "a screen of '0x8' cannot be measured; rows and columns go from 1 to 500"),
        ("40x501", "a screen of '40x501' cannot be measured; rows and columns go from 1 to 500"),
        ("-40x8", "'-40x8' is no screen size; write columns x rows, such as 40x8"),
        ("4e1x8", "'4e1x8' is no screen size; write columns x rows, such as 40x8"),
        (
            "9" * 5000 + "x8",
            f"a screen of '{'9' * 40}' cannot be measured; rows and columns go from 1 to 500",
        ),
        (
            "attic",
            "no screen is named 'attic'; known are desk, desk24, pocket, a size such as 40x8, or a .toml file",
        ),
        ("none.toml", "none.toml: cannot be read: No such file or directory; name a readable .toml file"),
    ],
)
def test_what_is_no_screen(text: str, sentence: str) -> None:
    with pytest.raises(FitError) as caught:
        find_screen(text)
    assert str(caught.value) == sentence


def write(folder: Path, text: str) -> str:
    path = folder / "lamp.toml"
    path.write_text(text, "utf-8")
    return str(path)


def test_a_file_of_the_user(tmp_path: Path) -> None:
    text = """about = "the lamp room"
rows = 4
columns = 20
terminal = "vt52"
memory_top = 0xC000
wrap = "immediate"
pending = "keep"
decaln = "stay"
selective_erase = "plain"
insert_lines_home = true
back_wrap = true
"""
    assert {line.partition(" =")[0] for line in text.splitlines()} == set(FIELDS)
    screen = find_screen(write(tmp_path, text))
    assert screen.name == "lamp"
    assert (screen.size, screen.terminal, screen.memory_top) == (Size(4, 20), "vt52", 0xC000)
    assert screen.rules == Rules(
        WrapRule.IMMEDIATE,
        PendingRule.KEEP,
        DecalnRule.STAY,
        SelectiveRule.PLAIN,
        insert_lines_home=True,
        back_wrap=True,
    )


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("rows = 8", "lacks rows or columns; write both, such as rows = 8 and columns = 40"),
        ("rows = 8\ncolumns = '40'", "has columns = '40'; it must be a whole number from 1 to 500"),
        ("rows = true\ncolumns = 40", "has rows = True; it must be a whole number from 1 to 500"),
        (
            "rows = 8\ncolumns = 40\nwrap = 'never'",
            "has wrap = 'never'; it must be one of deferred, immediate, none, word",
        ),
        ("rows = 8\ncolumns = 40\nterminal = 52", "has terminal = 52; it must be text in quotes"),
        (
            "rows = 8\ncolumns = 40\ninsert_lines_home = 1",
            "has insert_lines_home = 1; it must be true or false",
        ),
        ("row = 8", f"has an unknown field 'row'; known are {', '.join(FIELDS)}"),
        ("rows =", "is no TOML: Invalid value (at end of document)"),
    ],
)
def test_a_broken_file(tmp_path: Path, text: str, sentence: str) -> None:
    name = write(tmp_path, text)
    with pytest.raises(FitError) as caught:
        find_screen(name)
    assert str(caught.value) == f"{name}: {sentence}"
