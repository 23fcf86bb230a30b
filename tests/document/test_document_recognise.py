"""Formats recognised by what stands in a document, and what is refused, with the whole sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from fit.document import read_document, read_document_bytes
from fit.errors import DocumentError, UsageError

CORPUS = Path(__file__).parents[2] / "corpus/documents"
FORMAT_OF_ENDING = {".txt": "text", ".md": "markdown", ".html": "html", ".7": "man"}


def found(text: str) -> str:
    return read_document_bytes(text.encode(), "unnamed").format


@pytest.mark.parametrize(
    "path", sorted(p for p in CORPUS.iterdir() if p.suffix in FORMAT_OF_ENDING), ids=lambda p: p.name
)
def test_the_documents_of_the_station_show_their_format_without_their_name(path: Path) -> None:
    document = read_document_bytes(path.read_bytes(), "unnamed")
    assert document.format == FORMAT_OF_ENDING[path.suffix]
    assert document.remarks[0].startswith(f"format {document.format}: ")


def test_the_corpus_has_each_format() -> None:
    assert {p.suffix for p in CORPUS.iterdir()} >= set(FORMAT_OF_ENDING)


TEXTS_THAT_ARE_NO_MARKUP = [
    "# a comment\n# of a script\nprint 1\n# and more\n",
    "Chapter\n=======\n\n* one\n* two\n\n1. three\n",
    "if a < b and c > d then <stop>\n",
    ".PA\n.OP\nText with dots\n",
    "Costs: 5 * 3 ** 2, see [1] and `quoted'.\n[1]: the book\n",
    "| a | b |\n| 1 | 2 |\n",
    (
        "LAMP ROOM\n\n     The clockwork is  wound before the lamp is lit, and not after it.\n"
        "     Use `oil' and `wick', never `gas'; the keeper on watch\n     writes it in the book that is kept here.\n\n"
        "# wind the clock\n\n`wind` [a](b) **c**\n"
    ),
    "The answer to each question is in the log of the station.\nSee `oil` and\n" * 30 + "\n# oil\n\n`wick`\n",
    "The Oil\n~~~~~~~\n\nThe oil is in the tank.\n\nThe Wick\n~~~~~~~~\n\nThe `wick` is in the drawer.\n",
    "".join(
        f"**-{key}** or **--{what}**\n   The {what} is asked for, and the `log` shows it when the lamp is lit.\n\n"
        for key, what in (("o", "oil"), ("w", "wick"), ("g", "glass"))
    ),
    "Give `find` the name [as said](below) of a `place`:\n\n- #<name> finds a lamp\n- #<name>@<room> finds it there\n- <shelf>/<name>\n",
    "Write a page like this one for the lamp:\n\n.TH LAMP 7\n.SH NAME\n\n"
    + "It is read by the keepers.\n" * 30,
]


@pytest.mark.parametrize("text", TEXTS_THAT_ARE_NO_MARKUP)
def test_text_is_taken_for_nothing_else(text: str) -> None:
    assert found(text) == "text"


@pytest.mark.parametrize(
    "markup", [".TH A 1\n.SH B\n", "# a\n[b](c)\n```\nd\n```\n", "<p>a<p>b<p>c<ul><li>d"]
)
def test_pages_that_show_markup_are_text(markup: str) -> None:
    assert found(f"Page one\n\f{markup}") == "text"


MARKED_UP = [
    ("# Lamp\n\nSee [the log](log.md) and `oil`.\n", "markdown"),
    ("Lamp\n\n```\nLIST\n```\n\n**Never** touch it.\n", "markdown"),
    (
        "# Lamp\n\nIt burns all night.\n\n## Oil\n\nIt is in the tank below.\n\n## Wick\n\nIt is in the drawer of the desk.\n",
        "markdown",
    ),
    (
        (
            "# Lamp\n\nQ: Is the `oil` in the tank that stands below the\n  stair of the lamp room?\n\n"
            "A: It is, and the `wick` lies in the drawer of the desk\n  below the window.\n\n## Oil\n\nA: No, the oil is kept in the\n  cellar.\n"
        ),
        "markdown",
    ),
    ("# Lamp\n\nSee [the log](log.md) and `<name> <room> <shelf> <tin>`, <b>daily</b>.\n", "markdown"),
    ("<h1>Lamp</h1><p>Oil<p>Wick", "html"),
    ("\n<!-- x --><!DOCTYPE HTML>\nLamp", "html"),
    (".TH LAMP 7\n.SH NAME\nlamp \\- burns\n", "man"),
    ('\'\\" t\n.\\" comment\n.TH LAMP 7\nlamp\n', "man"),
]


@pytest.mark.parametrize(("text", "format_"), MARKED_UP)
def test_markup_shows(text: str, format_: str) -> None:
    assert found(text) == format_


@pytest.mark.parametrize("name", ["lamp.html", "LAMP.HTM", "lamp.txt"])
def test_the_name_of_a_page_counts_where_it_has_tags(name: str) -> None:
    of_page = "text" if name.endswith("txt") else "html"
    assert read_document_bytes(b"The lamp, <b>as ever</b>.", name).format == of_page
    assert read_document_bytes(b"The lamp, <as> ever.", name).format == "text"


def test_letters_that_hold_the_byte_of_a_soft_line_end_make_no_word_processor_file() -> None:
    assert found("Sova\u010d\nten o\u010d\nna majaku \u017eije s\u00e1m.\n\u00cd\n\u010d\n") == "text"
    assert (
        read_document_bytes("Uzav\u0159en\u00ed \u0164\nje zde.\n\nA tak.\n".encode("cp1250"), "x").format
        == "text"
    )


def test_a_format_that_is_given_is_used() -> None:
    document = read_document_bytes(b"<p>a", "x", format="text")
    assert (document.format, document.blocks[0].text.chars) == ("text", "<p>a")
    assert document.remarks[0] == "format text: as given"


def test_padding_of_the_last_record_is_no_text() -> None:
    document = read_document_bytes(b"The lamp.\r\n" + b"\x1a" * 117, "x")
    assert document.remarks[-1] == "117 bytes of padding at the end left out"
    assert document.blocks[0].text.chars == "The lamp."


REFUSED = [
    (b"", "x: is empty; give a document with text in it"),
    (b" \r\n\t\x1a\x1a", "x: is empty; give a document with text in it"),
    (b"%PDF-1.7 ...", "x: is a PDF document, which cannot be read; turn it into text first"),
    (b"PK\x03\x04...", "x: is a ZIP archive; unpack it first"),
    (b"\x1f\x8b\x08\x00", "x: is a file compressed with gzip; uncompress it first"),
    (
        b"\x7fELF\x02\x01",
        "x: is a program for a modern operating system, which cannot be read; turn it into text first",
    ),
    (b"{\\rtf1 The lamp}", "x: is an RTF document, which cannot be read; turn it into text first"),
    (
        b"ab\x00\x01",
        "x, byte 2: holds zero bytes and is no text document; give a text, or the encoding with --encoding",
    ),
    (
        b"\x1c\x1d\x7f\x1c" * 40 + b"text",
        "x: is no text document: 73 % of its bytes are control codes; give a text, Markdown, HTML or manual page",
    ),
    (
        b"<!doctype html><script>x</script>",
        "x: holds no text when read as html; give another --format, if it is another",
    ),
]


@pytest.mark.parametrize(("data", "sentence"), REFUSED)
def test_what_cannot_be_read_is_named(data: bytes, sentence: str) -> None:
    with pytest.raises(DocumentError) as caught:
        read_document_bytes(data, "x")
    assert str(caught.value) == sentence


def test_a_missing_file_and_an_unknown_format_are_named(tmp_path: Path) -> None:
    with pytest.raises(DocumentError) as caught:
        read_document(tmp_path / "no.txt")
    assert str(caught.value).endswith(
        "no.txt: cannot be read: No such file or directory; name a readable document"
    )
    with pytest.raises(UsageError) as unknown:
        read_document_bytes(b"x", "x", format="morse")
    assert str(unknown.value) == "no format is named 'morse'; known are text, wordproc, markdown, html, man"


def test_zeros_at_the_end_are_padding_where_no_other_stands_in_the_text() -> None:
    document = read_document_bytes(b"The lamp is lit at dusk.\r\n" + bytes(102), "DRILL.TXT")
    assert document.remarks[-1] == "102 bytes of padding at the end left out"
    assert document.blocks[0].text.chars == "The lamp is lit at dusk."


def test_zeros_within_a_text_are_still_refused() -> None:
    with pytest.raises(DocumentError, match="zero bytes"):
        read_document_bytes(b"The lamp\0\1\2 is lit.\r\n" + bytes(80), "DRILL.TXT")


@pytest.mark.parametrize(
    "header", ['{"form": "fit-session", "version": 1}', '{"version": 2, "width": 80, "height": 25}']
)
def test_a_recorded_session_is_no_document(header: str) -> None:
    data = (header + '\n{"out": "The lamp is lit."}\n').encode()
    with pytest.raises(DocumentError, match="recorded session"):
        read_document_bytes(data, "drill.jsonl")
    assert read_document_bytes(data, "drill.jsonl", "text").blocks
