"""Characters with their places: folding, cutting, lines that stay lines."""

from __future__ import annotations

from array import array

import pytest
from hypothesis import given, strategies as st

from fit.document.blocks import Kind, Mark, Text
from fit.document.characters import TextBuilder, fold, split_lines
from fit.document.preformatted import is_picture, preformatted


def text(chars: str) -> Text:
    return Text(chars, array("q", range(len(chars))), bytes(len(chars)))


def test_folded_blanks_keep_the_place_of_the_first() -> None:
    found = fold(text(" \ta \n b  c\n"))
    assert (found.chars, list(found.sources)) == ("a b c", [2, 3, 6, 7, 9])


def test_a_no_break_space_holds_both_its_sides() -> None:
    found = fold(text("10\u00a0km"))
    assert found.chars == "10 km"
    assert [bool(mark & Mark.NO_BREAK) for mark in found.marks] == [False, True, True, False, False]


@given(st.text(alphabet=" \t\nab\u00a0", max_size=30))
def test_folding_is_splitting_and_joining(chars: str) -> None:
    found = fold(text(chars))
    assert found.chars == " ".join(
        part for part in chars.replace("\u00a0", "\x01").split(" ") for part in part.split()
    ).replace("\x01", " ")
    for char, place in zip(found.chars, found.sources, strict=True):
        assert char == chars[place] or char == " "
    assert list(found.sources) == sorted(found.sources)


def test_the_last_characters_are_found_without_building_all() -> None:
    builder = TextBuilder()
    for part in ("abc", "", "de", "f"):
        builder.add_own(part)
    assert [builder.since(begin) for begin in range(7)] == ["abcdef", "bcdef", "cdef", "def", "ef", "f", ""]


def test_lines_are_cut_at_their_ends() -> None:
    assert [line.chars for line in split_lines(text("a\n\nb\n"))] == ["a", "", "b", ""]


def test_tabs_become_blanks_and_outer_blank_lines_go() -> None:
    block = preformatted(text("\n\n\ta\n bb\tc \n\n"), level=1, code=True)
    assert block is not None
    assert (block.kind, block.level, block.code) == (Kind.PREFORMATTED, 1, True)
    assert [line.chars for line in block.lines] == ["        a", " bb     c"]
    assert list(block.lines[0].sources) == [2] * 8 + [3]
    assert preformatted(text(" \n\n"), level=0, code=False) is None


PICTURES = [
    ["\u250c\u2500\u2510", "\u2502a\u2502", "\u2514\u2500\u2518"],
    ["+---+", "| a |", "+---+"],
    ["+-------+      +------+", "| tower +------+ shed |", "+-------+      +------+"],
]
NO_PICTURES = [
    ["if (a || b)", "    c--;"],
    ["---", "title"],
    ["ls | wc", "a | b"],
    ["Trim the wick and wind the spring,"],
]


@pytest.mark.parametrize("lines", PICTURES)
def test_drawings_are_pictures(lines: list[str]) -> None:
    assert is_picture(lines)


@pytest.mark.parametrize("lines", NO_PICTURES)
def test_programs_and_verse_are_none(lines: list[str]) -> None:
    assert not is_picture(lines)
