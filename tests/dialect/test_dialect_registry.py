"""Which decoder a terminal gets, and what is known of it besides its sequences."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.dialect.alternate_font import AlternateFont
from fit.dialect.capability_dialect import CapabilityDialect
from fit.dialect.description import UnknownRule
from fit.dialect.description_file import parse, read_packed
from fit.dialect.ecma48 import Ecma48
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.registry import dialect_of, find_description, terminal_names
from fit.dialect.terminfo_database import find_entry, read_entry
from fit.dialect.traits import traits_of
from fit.errors import DialectError


@pytest.mark.parametrize("name", ["vt100", "vt220"])
def test_terminals_after_ecma48_get_its_decoder(name: str) -> None:
    dialect = dialect_of(read_packed(name))
    assert isinstance(dialect, Ecma48)
    assert dialect.name == name


def test_the_standard_that_reports_name_can_be_asked_for() -> None:
    found = find_description("ecma48")
    assert found.name == "ecma48"
    assert "described as vt100" in found.about
    assert isinstance(dialect_of(found), Ecma48)


@pytest.mark.parametrize("name", ["vt52", "adm3a", "hz1500", "dumb", "vt52-small"])
def test_the_others_are_decoded_by_their_descriptions(name: str) -> None:
    dialect = dialect_of(read_packed(name))
    assert isinstance(dialect, CapabilityDialect)
    assert dialect.name == name


@pytest.mark.outside
@pytest.mark.parametrize(
    ("name", "follows", "why"),
    [
        ("xterm-256color", True, ""),
        ("linux", True, ""),
        ("screen", True, "its cursor up is a reverse index, which is as good"),
        ("sun", False, "its form feed clears the screen"),
        ("vt52", False, "its cursor is addressed otherwise"),
        ("dt100", False, "its attributes take a cell"),
        ("amp219", False, "its scroll region is written with blanks"),
        ("cit500", False, "it erases with ESC J and ESC K"),
    ],
)
def test_likeness_to_ecma48_is_found_by_comparing_every_sequence(name: str, follows: bool, why: str) -> None:
    entry = read_entry(name)
    if entry is None:
        pytest.skip("this system's terminal database lacks it")
    assert follows_ecma48(entry) == follows, why


def test_an_alternate_font_of_a_console_is_line_drawing() -> None:
    text = """
        [sequences]
        cup = "ESC [ row+1:d ; column+1:d H"
        smacs = "ESC [11m"
        rmacs = "ESC [10m"
        acsc = 'qDx3'
    """
    dialect = dialect_of(parse(text, "console", "console.toml"))
    assert isinstance(dialect, AlternateFont)
    drawn = [
        operation[3][0]
        for operation in dialect.feed(b"D3\x1b[11mD3\x1b[10mD3\x1b[1;12m3\x1b[0m3", 0)
        if operation[2] == "draw"
    ]
    assert drawn == ["D3", "─│", "D3", "│", "3"]
    assert dialect.finish() == []


def test_an_eight_bit_terminal_is_not_read_as_utf_8() -> None:
    text = '[sequences]\ncup = "0x9B row+1:d ; column+1:d H"\n'
    operations = dialect_of(parse(text, "eight", "eight.toml")).feed(b"\x9b2;5Hlog", 0)
    assert operations[0][2:4] == ("cursor_position", (2, 5))


def test_the_database_comes_first_and_takes_over_our_rule_for_unknown_codes() -> None:
    description = find_description("adm3a")
    assert description.unknown == UnknownRule.SWALLOW
    assert description.origin == (str(find_entry("adm3a")) if find_entry("adm3a") else "adm3a.toml")


def test_the_names_are_those_of_the_database_and_ours() -> None:
    names = terminal_names()
    assert {"vt52", "vt52-small", "adm3a", "dumb"} <= set(names)
    assert names == sorted(names)


@pytest.mark.parametrize(
    ("name", "wrap", "cells", "addressing"),
    [
        # terminfo(5): am without xenl wraps at once, am with xenl with the next glyph, no am never.
        ("adm3a", "immediate", 0, "ESC = row+32 column+32"),
        ("vt100", "deferred", 0, "ESC [ row+1 in digits ; column+1 in digits H"),
        ("vt52", "none", 0, "ESC Y row+32 column+32"),
        ("tvi912", "immediate", 1, "ESC = row+32 column+32"),
        ("hz1500", "immediate", 0, "~ DC1 column+96 row+96"),
        ("dumb", "immediate", 0, ""),
    ],
)
def test_traits(name: str, wrap: str, cells: int, addressing: str) -> None:
    traits = traits_of(read_packed(name))
    assert (traits.wrap, traits.attribute_cells, traits.addressing) == (wrap, cells, addressing)


def test_what_a_terminal_lacks() -> None:
    assert traits_of(read_packed("vt52-small")).lacks == (
        "insert characters",
        "delete characters",
        "underline",
        "line drawing",
    )
    assert not traits_of(read_packed("hz1500")).prints_tilde
    assert traits_of(read_packed("wy50")).backs_over_edge
    assert traits_of(read_packed("h19")).has_status_line


def test_ours_stands_in_for_a_closed_database_and_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("vt52", "skerry"):
        (tmp_path / name[0]).mkdir(exist_ok=True)
        (tmp_path / name[0] / name).write_bytes(b"no terminal description")
    monkeypatch.setenv("TERMINFO", str(tmp_path))
    found = find_description("vt52")
    assert found.expressions["cup"].expand(0, 0) == b"\x1bY  "
    assert found.origin == (
        f"{read_packed('vt52').origin}, for {tmp_path}/v/vt52 was passed over: "
        "is no compiled terminal description, or a damaged one"
    )
    with pytest.raises(DialectError, match="damaged"):
        find_description("skerry")
