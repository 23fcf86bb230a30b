"""The 7 bits of the device: what stands for what, where columns matter, and what nothing stands for."""

from __future__ import annotations

import sys
import unicodedata
from array import array

import pytest
from hypothesis import given, settings, strategies as st

from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.report.device_characters import BY_LANGUAGE, OWN
from fit.report.device_text import LACKING, DeviceDocument, to_seven_bits


def text(chars: str) -> Text:
    return Text(chars, array("q", range(len(chars))), bytes(len(chars)))


def written(*blocks: Block, language: str = "en_US") -> DeviceDocument:
    return to_seven_bits(Document("", blocks, "text", "utf-8"), language)


def paragraph(chars: str, language: str = "en_US") -> Text:
    return written(Block(Kind.PARAGRAPH, text(chars)), language=language).document.blocks[0].text


def line(chars: str, kind: Kind = Kind.PREFORMATTED) -> str:
    return written(Block(kind, lines=(text(chars),))).document.blocks[0].lines[0].chars


READ_ALOUD = [
    ("“Don’t,” she said – wait…", '"Don\'t," she said - wait...'),
    ("oil—and wick", "oil--and wick"),
    ("2½ gallons, ½ a gill", "2-1/2 gallons, 1/2 a gill"),
    ("10³ yd, 10⁻² m, 3 m², x²", "10^3 yd, 10^-2 m, 3 m2, x2"),
    ("1/√n, √(a + b), √", "1/sqrt n, sqrt(a + b), sqrt"),
    ("H₂O", "H2O"),
    ("57°N, 18 °C, 90°", "57 deg N, 18 deg C, 90 deg"),
    ("☺ ♫ ♣ ▬ ‼ ∟", ":) * * - !! angle "),
    ("4 × 5 ± 1 ≤ 30 → yes", "4 x 5 +/- 1 <= 30 -> yes"),
    ("¿Quién vive? ¡Oil!", "?Quien vive? !Oil!"),
    ("£5, €3, ©", "GBP5, EUR3, (c)"),
    ("Größe, naïve, Ørsted, łódź", "Grosse, naive, Orsted, lodz"),
    ("Ελλάδα, Москва", "Ellada, Moskva"),
    ("e\u0301a\u200d", "ea"),
]


def test_signs_of_a_drawing_keep_their_column() -> None:
    assert line("│ ☺☻♥ │ ←→↔ ↑↓↕ │ §¶‼∟ │", Kind.PICTURE) == "| oo* | <>- ^v| | sp!L |"


@pytest.mark.parametrize(("chars", "form"), READ_ALOUD)
def test_what_is_written_reads_aloud_as_what_it_stands_for(chars: str, form: str) -> None:
    assert paragraph(chars).chars == form


def test_a_question_mark_turned_over_is_not_lacking() -> None:
    changes = written(Block(Kind.PARAGRAPH, text("\u00bfQui\u00e9n?"))).changes
    assert not changes.lacking
    assert changes.written["\u00bf"] == "?"


def test_an_angle_that_stands_alone_at_the_start_is_a_bullet() -> None:
    item = written(Block(Kind.ITEM, text("Trim the wick."), label=text("\u00bb"))).document.blocks[0]
    assert item.label.chars == ">"
    assert paragraph("\u00bbThe lamp\u00ab").chars == '"The lamp"'


def test_a_language_spells_its_letters_in_its_own_way() -> None:
    assert paragraph("Größe Ähre", "de_DE").chars == "Groesse Aehre"
    assert paragraph("på øen", "da").chars == "paa oeen"
    assert all(form.isascii() for spelling in BY_LANGUAGE.values() for form in spelling.values())


def test_places_and_marks_are_kept_and_no_line_ends_inside_what_was_one_character() -> None:
    found = paragraph("a…b")
    assert list(found.sources) == [0, 1, 1, 1, 2]
    assert list(found.marks) == [0, Mark.NO_BREAK, Mark.NO_BREAK, 0, 0]


def test_what_the_layout_needs_is_kept_for_it() -> None:
    found = paragraph("so\u00adft 10\u202fkm a\u200bb")
    assert found.chars == "so\u00adft 10 km a\u200bb"
    assert [index for index, mark in enumerate(found.marks) if mark & Mark.NO_BREAK] == [7, 8]


COLUMNS = [
    ("┌──┬──┐", "+--+--+", Kind.PICTURE),
    ("│ é… │", "| e. |", Kind.PICTURE),
    ("│√ Oil│", "|v Oil|", Kind.PICTURE),
    ("╔══╗║█░", "+==+|#.", Kind.PICTURE),
    ("oil ≤ 4 |", "oil < 4 |", Kind.PICTURE),
    ("oil ≤  4 |", "oil <= 4 |", Kind.PICTURE),
    ("fog  ⇒  bell |", "fog  => bell |", Kind.PICTURE),
    ("a → b   |", "a -> b  |", Kind.PREFORMATTED),
    ("£5      |", "GBP5    |", Kind.PREFORMATTED),
    ("£5|", "GBP5|", Kind.PREFORMATTED),
    ("灯 x", "Deng x", Kind.PREFORMATTED),
    ("a\u00a0b", "a b", Kind.PREFORMATTED),
]


@pytest.mark.parametrize(("chars", "form", "kind"), COLUMNS)
def test_lines_keep_their_columns_where_there_is_room(chars: str, form: str, kind: Kind) -> None:
    assert line(chars, kind) == form


def test_what_nothing_stands_for_is_listed_with_its_place() -> None:
    found = written(Block(Kind.PARAGRAPH, text("a \ue000\ue000 b")))
    assert found.document.blocks[0].text.chars == "a ?? b"
    assert (found.changes.lacking, found.changes.first_lacking) == ({"\ue000": 2}, {"\ue000": 2})


def test_what_was_written_is_counted() -> None:
    found = written(Block(Kind.PARAGRAPH, text("½ 2½ é")))
    assert found.changes.written == {"½": "1/2", "é": "e"}
    assert found.changes.counts == {"½": 2, "é": 1}


def test_labels_and_cells_are_written_and_furniture_is_not() -> None:
    item = Block(Kind.ITEM, text("é"), text("•"))
    table = Block(Kind.TABLE, rows=((text("ä"), text("–")),))
    away = Block(Kind.FURNITURE, lines=(text("– 3 –"),))
    blocks = written(item, table, away).document.blocks
    assert (blocks[0].label.chars, blocks[0].text.chars) == ("*", "e")
    assert [cell.chars for cell in blocks[1].rows[0]] == ["a", "-"]
    assert blocks[2] == away


def test_every_own_form_is_printable_ascii_and_short() -> None:
    for char, form in OWN.items():
        assert form.isascii(), char
        assert form.isprintable(), char
        assert 1 <= len(form) <= 10, char


def test_box_drawing_characters_take_one_cell_each() -> None:
    assert {len(OWN[chr(code)]) for code in range(0x2500, 0x2580)} == {1}


def test_every_character_of_unicode_comes_out_in_seven_bits() -> None:
    every = [chr(code) for code in range(0xA0, sys.maxunicode + 1, 23) if not 0xD800 <= code < 0xE000]
    found = written(Block(Kind.PARAGRAPH, text("".join(every))))
    kept = found.document.blocks[0].text.chars
    assert all(char.isascii() or char in "\u00ad\u200b\u00a0" for char in kept)
    # What has neither a name nor a form of its own is what a question mark stands for.
    named = [c for c in found.changes.lacking if unicodedata.category(c) in ("Ll", "Lu") and ord(c) < 0x250]
    assert named == []
    assert kept.count(LACKING) >= found.changes.lacking.total() > 0


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=30))
def test_nothing_is_dropped_without_a_word(chars: str) -> None:
    found = written(Block(Kind.PARAGRAPH, text(chars)))
    places = set(found.document.blocks[0].text.sources)
    for place, char in enumerate(chars):
        assert place in places or char in found.changes.written
