"""The choice of an encoding: texts of the Skerry Light as programs of each kind would print them."""

from __future__ import annotations

import pytest

from fit.dialect.encoding import CP437, ENCODINGS, LATIN_1, SEVEN_BIT, TABLES, UTF_8, choose_encoding

ENGLISH = "The lamp was lit at dusk and burned until the morning watch came up the stairs. "
GERMAN = "Der Wärter öffnete früh die Tür; über der Klippe zogen Möwen vorüber. "
FRENCH = "Le gardien a préféré dîner tôt; la marée était déjà haute à l'entrée. "
FRAME = "┌──────────┐\r\n│ Oil  40% │\r\n├──────────┤\r\n│ Wick ok  │\r\n└──────────┘\r\n"


def even_parity(text: str) -> bytes:
    return bytes(byte | (byte.bit_count() & 1) << 7 for byte in text.encode("ascii"))


def last_letters_marked(text: str) -> bytes:
    marked = bytearray(text.encode("ascii"))
    for index in range(len(marked) - 1):
        if chr(marked[index]).isalpha() and not chr(marked[index + 1]).isalpha():
            marked[index] |= 0x80
    return bytes(marked)


@pytest.mark.parametrize(
    ("data", "name"),
    [
        (b"", UTF_8),
        (ENGLISH.encode(), UTF_8),
        (GERMAN.encode("utf-8"), UTF_8),
        (FRAME.encode("utf-8"), UTF_8),
        ("海上は静か".encode(), UTF_8),
        (GERMAN.encode("utf-8")[9:], UTF_8),
        (GERMAN.encode("utf-8") + b"\xc3", UTF_8),
        (GERMAN.encode("utf-8") * 20 + b"\xff\xfe" + ENGLISH.encode(), UTF_8),
        (GERMAN.encode("cp437"), CP437),
        (FRENCH.encode("cp437"), CP437),
        (FRAME.encode("cp437"), CP437),
        ((ENGLISH * 5000).encode() + FRAME.encode("cp437"), CP437),
        ("Oil ████░░░░ 50%".encode("cp437"), CP437),
        ("│Oil│Wick│".encode("cp437"), CP437),
        ("12° N".encode("cp437"), CP437),
        (GERMAN.encode("latin-1"), LATIN_1),
        (FRENCH.encode("latin-1"), LATIN_1),
        ((ENGLISH * 5000).encode() + GERMAN.encode("latin-1"), LATIN_1),
        ("12° N".encode("latin-1"), LATIN_1),
        ("© the keepers; £5".encode("latin-1"), LATIN_1),
        (b"\x9b2J\x9b1;1H" + ENGLISH.encode(), LATIN_1),
        (even_parity(ENGLISH), SEVEN_BIT),
        (bytes(byte | 0x80 for byte in ENGLISH.encode()), SEVEN_BIT),
        (last_letters_marked(ENGLISH), SEVEN_BIT),
    ],
)
def test_the_encoding_is_found(data: bytes, name: str) -> None:
    choice = choose_encoding(data)
    assert (choice.name, choice.evidence[-1:]) == (name, ".")


def test_the_evidence_is_said() -> None:
    assert (
        choose_encoding("dämmern".encode()).evidence
        == "The characters above 7Fh (1) are all well-formed UTF-8."
    )
    assert (
        choose_encoding(even_parity(ENGLISH)).evidence
        == "All bytes have even parity, and are ASCII without bit 7."
    )


@pytest.mark.parametrize("cut", range(4))
def test_a_character_on_the_border_of_two_blocks_is_whole(cut: int) -> None:
    data = b"x" * (65536 - cut) + "\U0001f6a2".encode()
    assert choose_encoding(data).evidence == "The characters above 7Fh (1) are all well-formed UTF-8."


def test_tables() -> None:
    assert set(TABLES) == set(ENCODINGS) - {UTF_8}
    for table in TABLES.values():
        assert len(table) == 256
        assert table[:128] == bytes(range(128)).decode("ascii")
    assert TABLES[CP437][0xDA] == "┌"
    assert TABLES[CP437][0xFF] == "\u00a0"
    assert TABLES[LATIN_1][0x9B] == "\x9b"
    assert TABLES[SEVEN_BIT][0xC1] == "A"
