"""Control sequences as manuals print them."""

from __future__ import annotations

import pytest

from fit.dialect.notation import parse
from fit.dialect.traits import spelled


@pytest.mark.parametrize(
    ("text", "capability", "parameters", "wanted"),
    [
        ("ESC K", "el", (), b"\x1bK"),
        ("^L", "clear", (), b"\x0c"),
        ("0x9B 2 J", "clear", (), b"\x9b2J"),
        ("ESC [?7h", "smam", (), b"\x1b[?7h"),
        ("~ DC2 SP DEL", "home", (), b"~\x12 \x7f"),
        ("ESC Y row+32 column+32", "cup", (2, 7), b"\x1bY\"'"),
        ("ESC P column row-1", "cup", (2, 7), b"\x1bP\x07\x01"),
        ("ESC [ row+1:d ; column+1:d H", "cup", (9, 79), b"\x1b[10;80H"),
        ("ESC F row:d3 column:d3", "cup", (9, 79), b"\x1bF009079"),
        ("~ DC1 column+96<31 row+96", "cup", (0, 30), b"~\x11\x7e`"),
        ("~ DC1 column+96<31 row+96", "cup", (0, 31), b"~\x11\x1f`"),
        ("ESC r char count+32", "rep", (45, 9), b"\x1br-)"),
        ("ESC [ count:d L", "il", (12,), b"\x1b[12L"),
        ("ESC [ top+1:d ; bottom+1:d r", "csr", (1, 22), b"\x1b[2;23r"),
    ],
)
def test_a_sequence_expands(text: str, capability: str, parameters: tuple[int, ...], wanted: bytes) -> None:
    assert parse(text, capability).expand(*parameters) == wanted


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "an empty sequence; leave the row out where the terminal has none"),
        ("ESC Y rows+32", "'rows+32', where row, column or a control character such as ESC was expected"),
        ("ESC Y row+32 count", "'count', where row, column or a control character such as ESC was expected"),
        ("ESC é", "'é', where ASCII characters or bytes such as 0x9B were expected"),
    ],
)
def test_what_was_expected_is_said(text: str, message: str) -> None:
    with pytest.raises(ValueError) as caught:
        parse(text, "cup")
    assert str(caught.value) == message


@pytest.mark.parametrize(
    ("data", "wanted"),
    [
        (b"\x1b[2J", "ESC [2J"),
        (b"~\x11", "~ DC1"),
        (b"\x1b\x0b", "ESC VT"),
        (b"\x9b1;", "0x9B 1;"),
        (b"\x7f A", "DEL SP A"),
    ],
)
def test_bytes_are_spelled_as_manuals_do(data: bytes, wanted: str) -> None:
    assert spelled(data) == wanted
