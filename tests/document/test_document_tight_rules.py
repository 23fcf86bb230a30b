"""Titles right in a rule, heavy rules, lines of a file of keepers, and questions of two sentences."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE, shape

from fit.document.blocks import Kind
from fit.document.text import read_text


@pytest.mark.parametrize("title", ["STORES", "LAMP DRILL"])
def test_a_title_in_capitals_right_in_a_rule(title: str) -> None:
    rule = f"-{title}".ljust(70, "-")
    block = read_text(f"{PROSE}{rule}\n\n{PROSE}", "log", "ascii").blocks[1]
    assert (block.kind, block.text.chars) == (Kind.HEADING, title)


def test_small_letters_right_in_a_rule_are_a_fill_in() -> None:
    rule = "-oil".ljust(70, "-")
    assert Kind.HEADING not in [b.kind for b in read_text(f"{PROSE}{rule}\n\n{PROSE}", "log", "ascii").blocks]


def test_a_heavy_rule_is_shortened() -> None:
    block = read_text(f"{PROSE}{chr(0x2501) * 70}\n\n{PROSE}", "log", "utf-8").blocks[1]
    assert block.kind is Kind.PREFORMATTED
    assert "rule" in block.note


def test_lines_with_nothing_between_their_colons_are_one_piece() -> None:
    text = "      +maren::::::\n      +tom::::::\n      +ada::::::\n      +:*:::::/skerry/NoLamp\n"
    blocks = read_text(
        f"{PROSE}For example, to let two keepers in:\n\n{text}\n{PROSE}", "log", "ascii"
    ).blocks
    assert [[line.chars for line in block.lines] for block in blocks if block.lines] == [
        ["+maren::::::", "+tom::::::", "+ada::::::", "+:*:::::/skerry/NoLamp"]
    ]


def test_a_question_of_two_sentences_behind_its_number() -> None:
    text = (
        "4.4) After the relief had left, all, or some, of the wicks in the\n"
        "     box of the store had been marked with a 'Wet'.\n"
        "     What can I do?\n"
    )
    assert shape(text + "\nA.   Dry them on the stove, and use them first.\n")[0] == "[4.4)] " + " ".join(
        text.split()[1:]
    )


def test_a_question_below_one_is_another() -> None:
    text = "4.4) What is to be done with the wet wicks?\n     What can I do?\n"
    assert len(shape(text)) == 2


CONTENTS = """\
Contents

1.  The lamp
    1.1  What is a mantle?
    1.2  + Does it smoke?
2.  Where to write
    2.1  + Addresses
"""


def test_a_rule_between_blank_lines_ends_the_list_above_it() -> None:
    rule = "-" * 70
    blocks = read_text(f"{PROSE}\n{CONTENTS}\n{rule}\n\n1.  The lamp\n\n{PROSE}", "log", "ascii").blocks
    assert not any(block.rows for block in blocks)
    labels = [block.label.chars for block in blocks if block.kind is Kind.ITEM]
    assert labels[:5] == ["1.", "1.1", "1.2", "2.", "2.1"]


def test_a_rule_below_the_head_of_a_table_parts_it_from_the_rows_whatever_blank_lines_there_are() -> None:
    table = f"Part        Weight      Left\n\n{'-' * 29}\n\nlamp oil    12 lb       4\nwicks       1 lb        40\nrope        9 lb        2\n"
    (rows,) = [
        block.rows for block in read_text(f"{PROSE}\n{table}\n{PROSE}", "log", "ascii").blocks if block.rows
    ]
    assert [[cell.chars for cell in row] for row in rows][-1] == ["rope", "9 lb", "2"]
    assert len(rows) == 4
