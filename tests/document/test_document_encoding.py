"""Encodings found from the bytes: each case is a text as its keeper would have saved it."""

from __future__ import annotations

import pytest

from fit.document import read_document_bytes
from fit.document.encoding import decode
from fit.errors import DocumentError, UsageError

# Python's own codecs are the reference for what the bytes mean.
FOUND = [
    ("The lamp is lit at dusk.", "ascii"),
    ("Größe über die Brücke, Fähre", "cp437"),
    ("Größe über die Brücke, Fähre", "latin-1"),
    ("“Don’t go,” she said – wait… it’s late", "cp1252"),
    ("┌──────┐\n│ Lamp │\n└──────┘", "cp437"),
    ("The hours of the lamp:\n┌──────┬─────┐\n│ Lamp │ lit │\n└──────┴─────┘\n", "cp437"),
    ("┌─┬─┐\n│ │ │\n└─┴─┘", "cp437"),
    ("4 m³ of oil, 12 m² of glass", "latin-1"),
    ("║ tide ║ oil ║", "cp437"),
    ("╡Lamp╞\n═══ ═╣ oil", "cp437"),
    ("The lamp is lit at dusk.¹ The log is kept.\n\n¹ By the first keeper.\n", "latin-1"),
    ("Each flash takes 0.5 µs.", "latin-1"),
    ("© 1987 The keepers. A flash takes 3 µs.¹", "latin-1"),
    ("█████░░░ 50%", "cp437"),
    ("Café à la crème, voilà", "cp437"),
    ("the keepers´ lamp, and it is lit", "latin-1"),
    ("18 °C and ½ pint", "latin-1"),
    ("18 °C and ½ pint", "cp437"),
    ("ÄÖÜ ÜBER", "latin-1"),
    ("Señor Ñandú ¿qué?", "cp437"),
    ("Señor Ñandú ¿qué?", "latin-1"),
    ("wait—stop", "cp1252"),
    ("£5 — cash", "cp1252"),
    ("• one\n• two", "cp1252"),
    ("→ the café", "utf-8"),
]


@pytest.mark.parametrize(("text", "encoding"), FOUND)
def test_the_bytes_show_the_encoding(text: str, encoding: str) -> None:
    found = decode(text.encode(encoding), "log.txt")
    assert (found.text, found.encoding) == (text, encoding)


@pytest.mark.parametrize(
    ("data", "text"),
    [(b"\xabd\xbb \xbd", "\u00abd\u00bb \u00bd"), (b"\xc3\xa9", "\u00e9"), (b"\x97", "\u2014")],
)
def test_a_page_that_names_no_encoding_has_that_of_the_standard(data: bytes, text: str) -> None:
    page = read_document_bytes(b"<html><p>" + data, "x")
    assert page.blocks[0].text.chars == text
    named = read_document_bytes(b"<html><meta charset=cp437><p>" + data, "x")
    assert named.encoding == ("utf-8" if data[0] == 0xC3 else "cp437")


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_marks_and_zero_bytes_show_unicode(encoding: str) -> None:
    text = "The lamp is lit at dusk, the log is kept.\n"
    assert decode(text.encode(encoding), "log.txt").text == text


def test_one_damaged_byte_does_not_change_the_encoding() -> None:
    found = decode("Fähre, Brücke, Größe, Möwe, Düne, Höhe, \xff".encode() + b"\xff", "log.txt")
    assert found.encoding == "utf-8"
    assert "1 character not decoded, shown as U+FFFD, the first at character 41" in found.remarks[1]


SAYS_SO = [
    ('<meta charset="windows-1251">\n<p>\u041c\u0430\u044f\u043a', "cp1251"),
    ("<META HTTP-EQUIV=x CONTENT='text/html; charset=ISO-8859-1'>\u2014 \u00e9", "cp1252"),
    ('<?xml version="1.0" encoding="iso-8859-7"?>\u03c6\u03ac\u03c1\u03bf\u03c2', "iso8859-7"),
    ('.\\" -*- coding: koi8-r -*-\n.TH \u043c\u0430\u044f\u043a', "koi8-r"),
]


@pytest.mark.parametrize(("text", "encoding"), SAYS_SO)
def test_a_document_that_says_its_encoding_is_believed(text: str, encoding: str) -> None:
    found = decode(text.encode(encoding), "x")
    assert (found.text, found.encoding) == (text, encoding)
    assert found.remarks == (f"encoding {encoding}: the document says so",)


@pytest.mark.parametrize("said", ["utf-8", "nosuch", "rot13", "x" * 90])
def test_what_it_says_is_not_believed_where_it_cannot_be(said: str) -> None:
    text = f'<meta charset="{said}">\n<p>Gr\u00f6\u00dfe, M\u00f6we'
    assert decode(text.encode("latin-1"), "x").text == text


def test_an_encoding_that_is_given_is_used() -> None:
    assert decode(b"M\x94we", "log.txt", "CP437").text == "Möwe"
    assert decode(b"M\x94we", "log.txt", "cp1252").text == "M”we"


def test_an_unknown_encoding_is_named() -> None:
    with pytest.raises(UsageError) as caught:
        decode(b"x", "log.txt", "morse")
    assert str(caught.value) == (
        "no encoding is named 'morse'; known are utf-8, ascii, cp437, latin-1, cp1252, utf-16"
    )


def test_zero_bytes_are_no_text() -> None:
    with pytest.raises(DocumentError) as caught:
        decode(b"ab\x00\x01\x02", "lamp.bin")
    assert str(caught.value) == (
        "lamp.bin, byte 2: holds zero bytes and is no text document; give a text, or the encoding with --encoding"
    )


def test_a_fit_of_nothing_is_told_without_a_sign() -> None:
    document = read_document_bytes(b"S\xf8r Light is lit.\n", "a log")
    assert document.remarks[1].endswith("better than CP437, 1 to 0")


SIGNS = [
    (
        b"Move with \x18, \x19, \x1b and \x1a in the log.",
        "Move with \u2191, \u2193, \u2190 and \u2192 in the log.",
    ),
    (b"\x10 Oil\r\n\x11 Wicks", "\u25ba Oil\r\n\u25c4 Wicks"),
    (b"  \x1e  more above,\r\n  \x1f  more below", "  \u25b2  more above,\r\n  \u25bc  more below"),
    (b"\xb3 lamp \x16\x17 \xb3\r\n\x15 14 \x03", "\u2502 lamp \u25ac\u21a8 \u2502\r\n\u00a7 14 \u2665"),
    (b" \x07 Oil\r\nkeys \x12 and \x0f.", " \u2022 Oil\r\nkeys \u2195 and \u263c."),
]


@pytest.mark.parametrize(("data", "text"), SIGNS)
def test_codes_below_20h_are_the_signs_of_the_old_set_in_a_text_that_is_in_it(data: bytes, text: str) -> None:
    assert decode(data, "log.txt", "cp437").text == text
    assert decode(data.translate(None, b"\xb3"), "log.txt").text == data.translate(None, b"\xb3").decode()


@pytest.mark.parametrize(
    "data",
    [
        b"the har\x1fbour and the sun\x1eset, then the har\x1f\r\n",
        b"\x0eTHE LAMP\x14 and \x02oil\x02 and \x0f\r\n",
        b"\x1b[1mLamp\x1b[0m \x1b4oil\x1b5\r\n\x0f   narrow\r\n\x12\r\n",
        b"the end\r\n\x1a old rest of a record",
    ],
    ids=["hyphens of word processors", "attributes", "commands of printers", "end of a file"],
)
def test_codes_that_are_commands_stay(data: bytes) -> None:
    assert decode(data, "log.txt", "cp437").text == data.decode()
