"""Cursor addresses turned around: every place of the grid comes back, whatever the expression."""

from __future__ import annotations

import re

import pytest

from fit.dialect.byte_trie import Trie
from fit.dialect.expression import TerminfoExpression
from fit.dialect.inversion import FROM_ZERO, Inverse, invert
from fit.dialect.terminfo_database import entry_names, read_entry
from fit.dialect.token_table import build
from fit.errors import DialectError

_EXPRESSIONS = {
    "two bytes from 20h": b"\x1bY%p1%' '%+%c%p2%' '%+%c",
    "column first": b"\x1e%p2%' '%+%c%p1%' '%+%c",
    "decimal, from one": b"\x1b[%i%p1%d;%p2%dH",
    "three digits": b"\x1bF%p2%03d%p1%03d",
    "hexadecimal": b"\x1eFP%p2%2.2X%p1%2.2X",
    "bytes as they are": b"\x10%p2%c%p1%c",
    "exclusive or": b"\x0c%p2%'`'%^%c%p1%'`'%^%c",
    "two sequences": b"\x1bX%p1%' '%+%c\x1bY%p2%' '%+%c",
    "a condition": b"~\x11%p2%p2%?%{30}%>%t%' '%+%;%'`'%+%c%p1%'`'%+%c",
    "coded decimal": b"\x0b%p1%' '%+%c\x10%p2%{10}%/%{16}%*%p2%{10}%m%+%c",
    "mixed, so enumerated": b"\x1b%p1%p2%^%' '%+%c%p2%' '%+%c",
}


def turned(text: bytes, rows: int = 24, columns: int = 80) -> Inverse:
    return invert(TerminfoExpression(text), (FROM_ZERO, FROM_ZERO), (range(rows), range(columns)))


@pytest.mark.parametrize("text", _EXPRESSIONS.values(), ids=_EXPRESSIONS.keys())
def test_every_place_comes_back(text: bytes) -> None:
    inverse = turned(text)
    expression = TerminfoExpression(text)
    for row in range(24):
        for column in range(80):
            form = expression.expand(row, column)
            assert inverse.match(form + b"x") == len(form)
            assert inverse.values(form) == (row, column)


@pytest.mark.parametrize("text", _EXPRESSIONS.values(), ids=_EXPRESSIONS.keys())
def test_every_beginning_is_known_as_one(text: bytes) -> None:
    beginning = re.compile(turned(text).beginning, re.DOTALL)
    for place in ((0, 0), (9, 10), (23, 79)):
        form = TerminfoExpression(text).expand(*place)
        assert all(beginning.fullmatch(form[:size]) for size in range(1, len(form)))


def test_two_places_with_the_same_bytes_are_refused() -> None:
    with pytest.raises(DialectError) as caught:
        turned(b"\x1b%p1%p2%+%c")
    assert str(caught.value) == "its parameters (0, 1) and (1, 0) give the same bytes, b'\\x1b\\x01'"


def test_the_terminals_own_places_come_before_those_beyond_it() -> None:
    # Row 128 would be sent as 80h, which is row 0 of this terminal.
    assert turned(b"\x10%p1%c%p2%c").values(b"\x10\x80\x80") == (0, 0)


def test_digits_of_fixed_width_take_none_from_the_text() -> None:
    assert turned(b"\x1eFP%p2%2.2X%p1%2.2X").match(b"\x1eFP15004") == 7


def test_a_set_of_strings_matches_its_longest() -> None:
    strings = {b"a", b"ab", b"abcd", b"ax", b"[x]", b"-"}
    pattern = re.compile(Trie.of(strings).whole(), re.DOTALL)
    for string in strings:
        found = pattern.match(string + b"?")
        assert found is not None
        assert found[0] == string
    assert pattern.match(b"b") is None
    found = pattern.match(b"abc")
    assert found is not None
    assert found[0] == b"ab"


def test_beginnings_reach_the_end_of_the_data() -> None:
    pattern = re.compile(Trie.of({b"ab", b"abcd", b"x"}).beginning())
    assert [bool(pattern.match(text)) for text in (b"a", b"ab", b"abc", b"abcd", b"x", b"b", b"abx")] == [
        True, True, True, False, False, False, False,
    ]  # fmt: skip


@pytest.mark.slow
@pytest.mark.outside
def test_at_least_1500_entries_of_the_database_are_decoded_without_ambiguity() -> None:
    files = {
        (*entry.aliases, entry.name): entry for entry in map(read_entry, entry_names()) if entry is not None
    }
    entries = {min(names): entry for names, entry in files.items() if "cup" in entry.expressions}
    if len(entries) < 1500:
        pytest.skip("this system's terminal database is a small one")
    good = [name for name, entry in entries.items() if _is_decoded(name)]
    assert len(good) >= 1500


def _is_decoded(name: str) -> bool:
    """Whether each place of the terminal's own grid comes back from its bytes."""
    entry = read_entry(name)
    assert entry is not None
    try:
        table = build(entry)
    except DialectError:
        return False
    inverse = next(one.inverse for one in table.addressed if one.name == "cup")
    cup = entry.expressions["cup"]
    rows, columns = min(entry.lines, 100), min(entry.columns, 200)
    return all(
        inverse.values(cup.expand(row, column)) == (row, column)
        for row in range(rows)
        for column in range(columns)
    )
