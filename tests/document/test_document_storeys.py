"""Heads of two storeys, keys that are numerals, and labels of forms that are too long for their column."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

STOREYS = """\
                          In summer            In winter
                      -----------------    -----------------
    Watch             Oil          Wick    Oil          Wick
    north               21           26      24           29
    south               28           37      30           41
    landing             19            -      22            -
"""


def test_the_names_over_several_columns_go_with_each_name_under_them() -> None:
    blocks = read_text(STOREYS, "stores", "ascii").blocks
    [block] = [block for block in blocks if block.kind is Kind.TABLE]
    cells = [[cell.chars for cell in row] for row in block.rows]
    assert cells[0] == ["Watch", "In summer Oil", "In summer Wick", "In winter Oil", "In winter Wick"]
    assert cells[1] == ["north", "21", "26", "24", "29"]
    assert block.header_rows == 1


def test_names_of_single_columns_stand_beside_those_over_several() -> None:
    text = (
        "    Station            Winter quarter      Summer quarter     Remarks\n"
        "                       ---------------     ---------------\n"
        "                       Gallons   Hours     Gallons   Hours\n"
        "    -----------------------------------------------------------------\n"
        "    Skerry                 214   1,420         131     880    {}\n"
        "    North Sand             198   1,416         122     861\n"
        "    Harrow Point           240   1,433         150     902\n"
        "    -----------------------------------------------------------------\n"
    )
    for remark in ("new burner", ""):
        blocks = read_text(text.format(remark), "stores", "ascii").blocks
        [block] = [block for block in blocks if block.kind is Kind.TABLE]
        cells = [[cell.chars for cell in row] for row in block.rows]
        assert cells[0][:3] == ["Station", "Winter quarter Gallons", "Winter quarter Hours"]
        assert cells[0][5] == "Remarks"
        assert cells[1] == ["Skerry", "214", "1,420", "131", "880", remark]


@pytest.mark.parametrize("ends", ["++", "\u250c\u2510", "\u256d\u256e"])
def test_brackets_under_the_names_over_several_columns(ends: str) -> None:
    stroke = "-" if ends == "++" else "\u2500"
    bracket = ends[0] + stroke * 15 + ends[1]
    text = STOREYS.replace("-" * 17, bracket)
    [block] = [block for block in read_text(text, "stores", "utf-8").blocks if block.kind is Kind.TABLE]
    cells = [[cell.chars for cell in row] for row in block.rows]
    assert cells[0] == ["Watch", "In summer Oil", "In summer Wick", "In winter Oil", "In winter Wick"]


GRADES = """\
    Grade           by day  night      log   tally
    ----------------------------------------------
    Learner         yes     no         no    no

    Keeper          yes     yes        no    yes

    Keeper with
    a boat          yes     yes        yes   yes

    Warden          no                 yes   yes
"""


def test_a_key_that_goes_on_below_its_first_line_begins_a_row_below_a_blank_line() -> None:
    [block] = [block for block in read_text(GRADES, "grades", "ascii").blocks if block.kind is Kind.TABLE]
    assert [cell.chars for cell in block.rows[3]] == ["Keeper with a boat", "yes", "yes", "yes", "yes"]
    assert len(block.rows) == 5


def test_a_title_over_more_rows_is_no_part_of_a_key() -> None:
    blocks = read_text(
        GRADES.replace("Keeper with", "Beginners").replace("a boat", "Oddy  "), "grades", "ascii"
    ).blocks
    rows = [[cell.chars for cell in row] for block in blocks for row in block.rows]
    assert not any(row[0].startswith("Beginners O") for row in rows)


def test_a_rule_a_column_is_no_upper_storey() -> None:
    text = "    Watch      Oil\n    -----      ---\n    north      21\n    south      28\n"
    blocks = read_text(text, "stores", "ascii").blocks
    [block] = [block for block in blocks if block.kind is Kind.TABLE]
    assert [cell.chars for cell in block.rows[0]] == ["Watch", "Oil"]


def test_keys_that_are_numerals_stand_under_a_head() -> None:
    text = """\
    Degree   What has happened           Who is to be told

      I.     Lamp out for less           The next light
             than a quarter of an
             hour

      II.    Lamp out for longer;        The office; the
             or a boat ashore            harbour, if the
                                         boat is theirs

      III.   Lamp has fallen down        Everybody
"""
    blocks = read_text(text, "rules", "ascii").blocks
    [block] = [block for block in blocks if block.kind is Kind.TABLE]
    assert block.header_rows == 1
    other = text.replace("I. ", "A  ").replace("II. ", "B   ").replace("III.", "C   ")
    [block] = [block for block in read_text(other, "rules", "ascii").blocks if block.kind is Kind.TABLE]
    assert block.header_rows == 0


FORM = """\
      Place:      north stair, step 9
      Hour:       2 July, 4.15 p.m.
      Keeper:     Tobias
      What went out:
                  The lamp.
      What was done:
                  It was lit again, by the man
                  who had put it out.
"""


def test_a_label_of_a_form_that_is_too_long_stands_over_what_was_filled_in() -> None:
    blocks = read_text(FORM, "form", "ascii").blocks
    [block] = [block for block in blocks if block.kind is Kind.TABLE]
    assert [[cell.chars for cell in row] for row in block.rows[-2:]] == [
        ["What went out:", "The lamp."],
        ["What was done:", "It was lit again, by the man who had put it out."],
    ]


def test_words_with_a_colon_over_lines_at_another_place_are_no_label_of_the_form() -> None:
    blocks = read_text(FORM.replace("            The lamp.", "  The lamp."), "form", "ascii").blocks
    [block] = [block for block in blocks if block.kind is Kind.TABLE]
    assert len(block.rows) == 3
