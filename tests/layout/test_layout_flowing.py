"""Flowing text to lines: widths, long words, labels, wide characters, sources."""

from __future__ import annotations

from typing import Any

import pytest
from documents import Maker

from fit.document.blocks import Block, Kind, Mark
from fit.layout.lines import INSERTED, LineFlag
from fit.width import text_cells


def paragraph(chars: str, width: int, **settings: Any) -> list[str]:
    return Maker().paragraph(chars).lines(width, **settings)


def test_a_word_is_hyphenated_with_a_hyphen_put_in() -> None:
    maker = Maker().paragraph("keep the lighthouse lit")
    first, second = maker.lay_out(15).lines
    assert (first.text, second.text) == ("keep the light-", "house lit")
    assert first.flags & LineFlag.HYPHEN
    assert first.sources[-1] == INSERTED
    assert [maker.source[source] for source in first.sources[:-1]] == list("keep the light")
    assert [maker.source[source] for source in second.sources] == list("house lit")


def test_without_hyphenation_no_word_is_parted() -> None:
    assert paragraph("keep the lighthouse lit", 15, hyphenate=False) == ["keep the", "lighthouse lit"]
    assert paragraph("keep the lighthouse lit", 15, max_hyphens=0) == ["keep the", "lighthouse lit"]


def test_a_long_address_is_cut_after_its_separators() -> None:
    lines = paragraph("see http://skerry.example/lamp/drill_book.txt now", 20)
    assert lines == ["see http://skerry.", "example/lamp/drill_", "book.txt now"]


def test_a_path_is_parted_after_a_slash_where_half_a_line_would_stay_empty() -> None:
    lines = paragraph("the log of the watch is kept in /var/log/skerry/watches.text", 36)
    assert lines == ["the log of the watch is kept in", "/var/log/skerry/watches.text"]
    lines = paragraph("the log is in /var/log/skerry/lamp/old_watches", 36)
    assert lines == ["the log is in /var/log/skerry/lamp/", "old_watches"]


@pytest.mark.parametrize(
    ("name", "whole"), [("OIL_LEVEL_AT_DUSK", True), ("NUMBER_OF_PINTS_LEFT_AT_DUSK", False)]
)
def test_a_name_is_parted_after_a_low_line_only_where_it_takes_more_than_half_a_line(
    name: str, whole: bool
) -> None:
    lines = Maker().paragraph(f"The gauge gives us {'the oil ' * whole}{name} on each evening.").lines(40)
    assert any(name in line for line in lines) == whole
    assert whole or any(line.endswith("_") for line in lines)


def test_wide_blanks_behind_the_bullet_of_a_line_take_no_room_from_it() -> None:
    lines = paragraph("#       --lamp=the-big-one-on-top-of-all-of-it\nand go on with the other lamp.", 40)
    assert lines == ["# --lamp=the-big-one-on-top-of-all-of-it", "and go on with the other lamp."]


def test_what_has_no_separator_is_cut_with_a_mark() -> None:
    assert paragraph("abcdefghijklmnopqrstuvwxyz0123456789", 16) == [
        "abcdefghijklmno\\",
        "pqrstuvwxyz0123\\",
        "456789",
    ]
    assert paragraph("abcdefghijklmnop0123", 16, mark=">")[0] == "abcdefghijklmno>"


@pytest.mark.parametrize("width", [1, 2, 3])
def test_the_narrowest_lines_have_no_marks(width: int) -> None:
    lines = paragraph("the lighthouse is lit", width)
    assert "".join(lines) == "thelighthouseislit"
    assert max(map(len, lines)) <= width


@pytest.mark.parametrize("name", ["wickulator", "``wickulator''", "*wickulator*"])
def test_names_of_programs_are_never_hyphenated(name: str) -> None:
    chars = f"you can run the {name} at dusk"
    assert "wicku" in " ".join(paragraph(chars, 24)).partition("- ")[0]
    maker = Maker().paragraph(chars).kept("LOAD wickulator, display", code=True)
    assert not any(line.flags & LineFlag.HYPHEN for line in maker.lay_out(24).lines)


def test_names_that_the_document_has_as_keys_or_sets_off_are_never_hyphenated() -> None:
    chars = "the keeper did resignal it"
    assert paragraph(chars, 21)[0] == "the keeper did resig-"
    assert not any(line.endswith("-") for line in Maker().item("resignal", "it").paragraph(chars).lines(21))
    maker = Maker().paragraph(chars)
    text = maker.text("run resignal")
    marks = bytes(Mark.CODE if index > 3 else 0 for index in range(len(text)))
    maker.blocks.append(Block(Kind.PARAGRAPH, type(text)(text.chars, text.sources, marks)))
    assert not any(line.endswith("-") for line in maker.lines(21))


def test_english_words_of_program_texts_are_hyphenated_like_others() -> None:
    maker = Maker().paragraph("keep the lighthouse lit").kept("LOAD lighthouse", code=True)
    assert maker.lines(15)[0] == "keep the light-"


def test_words_that_are_set_off_are_never_hyphenated() -> None:
    maker = Maker()
    text = maker.text("run lamplighter at dusk")
    marks = bytes(Mark.CODE if 4 <= index < 15 else 0 for index in range(len(text)))
    maker.blocks.append(Block(Kind.PARAGRAPH, type(text)(text.chars, text.sources, marks)))
    assert maker.lines(9) == ["run lam\\", "plighter", "at dusk"]
    assert maker.lines(12) == ["run", "lamplighter", "at dusk"]


def test_a_reader_may_forbid_a_break() -> None:
    maker = Maker()
    text = maker.text("the tide table")
    marks = bytes(Mark.NO_BREAK if index == 8 else 0 for index in range(len(text)))
    maker.blocks.append(Block(Kind.PARAGRAPH, type(text)(text.chars, text.sources, marks)))
    assert maker.lines(10) == ["the", "tide table"]


def test_units_stay_together_until_the_line_is_too_narrow() -> None:
    assert paragraph("trim it to 3 mm at dusk", 13) == ["trim it to", "3 mm at dusk"]
    layout = Maker().paragraph("J. R. R. Hollis").lay_out(5)
    assert any(decision.degraded and "belong together" in decision.what for decision in layout.decisions)


def test_wide_characters_break_between_each_other_and_count_two_cells() -> None:
    lines = paragraph("灯台守は毎晩ランプを点ける。", 10)
    assert "".join(lines) == "灯台守は毎晩ランプを点ける。"
    assert all(text_cells(line) <= 10 for line in lines)
    assert not any(line.startswith("。") for line in lines)


def test_combining_characters_stay_with_their_base() -> None:
    lines = paragraph("e\u0301" * 30, 10)
    assert all(line.startswith("e") for line in lines)
    assert all(text_cells(line) <= 10 for line in lines)


def test_a_wide_character_on_a_screen_of_one_column_is_said_to_be_too_wide() -> None:
    layout = Maker().paragraph("灯").lay_out(1)
    assert [line.text for line in layout.lines] == ["灯"]
    assert "too wide" in layout.decisions[0].what
    assert layout.decisions[0].degraded


def test_soft_hyphens_are_used_and_do_not_show() -> None:
    assert paragraph("lamp\u00adroom stair", 6) == ["lamp-", "room", "stair"]
    assert paragraph("the lamp\u00adroom is lit", 12) == ["the lamproom", "is lit"]


def test_a_no_break_space_is_a_blank_at_which_nothing_breaks() -> None:
    assert paragraph("up to 3\u00a0lamps", 8) == ["up to", "3 lamps"]


def test_headings_are_not_hyphenated() -> None:
    assert Maker().heading("The lighthouse obviously").lines(14) == ["The lighthouse", "obviously"]
