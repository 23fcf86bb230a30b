"""Tables of manual pages to blocks."""

from __future__ import annotations

import pytest
from plain_blocks import assert_places_hold

from fit.document.blocks import Kind
from fit.document.man import read_man

HEAD = ".TH T 1\n"


@pytest.mark.parametrize(
    ("table", "header_rows"),
    [
        ("lB lB\nl l.\nwatch\thours\nfirst\t4\nmiddle\t4\n_\nboth\t8", 1),
        ("cI cI\ncI l.\nwatch\thours\nfirst\t4\nmiddle\t4", 1),
        ("l l\n_\nl l.\nwatch\thours\nfirst\t4", 1),
        ("l l.\nwatch\thours\n_\nfirst\t4", 1),
        ("lB lB.\nwatch\thours\nfirst\t4", 0),
        ("lB l.\nwatch\thours\nfirst\t4", 0),
        ("l l\n_ _\nr r.\nwatch\thours\nfirst\t4", 1),
        ("c l\nc l\nlw9 l.\nname of\thours\nwatch\tof it\nfirst\t4\nlast\t4", 2),
        ("c l\nc l\nlw9 l.\nname of\thours\nwatch\tof it\nfirst\t4", 0),
        ("c c\nab c.\nwatch\thours\nfirst\t4\nlast\t4", 1),
        ("l n\na n.\noil\t4\nof it burnt\t3\nof it spilt\t1", 0),
        ("l l\nl ^.\noil\tin the store\nrope\t\\^\nwick\t\\^", 0),
        ("l l\nl l\nl lx.\nfirst\t4\nmiddle\t4\nlast\t4", 0),
        ("l l\nl lx.\n\\fBwatch\\fP\t\\fIhours\\fP\nfirst\t4\nlast\t4", 1),
        ("l l l.\n\\fBwatch\thours\\fP\nfirst\t4\tdark\nlast\t4\tdark", 1),
        ("l l.\n\\fBwatch\\fP\t\\fBhours\\fP\nfirst\t4\n\\fBboth\\fP\t\\fB8\\fP", 0),
        ("l l.\n\\fBfirst\\fP\n\\fBlamp\\fP\tdark\nbell\tmute", 0),
        ("l l.\nwatch\thours\n.TH\nfirst\t4\nlast\t4", 1),
    ],
)
def test_header_rows_are_set_off_above_a_rule_or_aligned_otherwise(table: str, header_rows: int) -> None:
    block = read_man(f"{HEAD}.TS\n{table}\n.TE", "t.1", "utf-8").blocks[-1]
    assert block.header_rows == header_rows


def test_a_cell_over_all_columns_above_the_others_is_the_title() -> None:
    table = ".TS\ntab(:);\nc s s\nlb l l.\nLamps of the rock\n_\nLamp:Oil:Care\n_\nmain:rape:daily\nspare:none:-\n.TE"
    title, block = read_man(HEAD + table, "t.1", "utf-8").blocks[1:]
    assert (title.kind, title.text.chars) == (Kind.PARAGRAPH, "Lamps of the rock")
    assert [[cell.chars for cell in row] for row in block.rows] == [
        ["Lamp", "Oil", "Care"],
        ["main", "rape", "daily"],
        ["spare", "none", "-"],
    ]
    assert block.header_rows == 1
    (alone,) = read_man(HEAD + ".TS\nc s\nl l.\nLamps\n.TE", "t.1", "utf-8").blocks[1:]
    assert (alone.kind, alone.text.chars) == (Kind.PARAGRAPH, "Lamps")


def test_the_lines_of_a_cell_stay_lines() -> None:
    cell = (
        "T{\nTrim the\nwick.\n.br\nFill the oil.\n.sp\nThen:\n.IP 1.\nlight it\n.nf\nflame\n  high\n.fi\nT}"
    )
    (row,) = read_man(f"{HEAD}.TS\nl l.\ndusk\t{cell}\n.TE", "t.1", "utf-8").blocks[1].rows
    assert row[1].chars == "Trim the wick.\nFill the oil.\nThen:\n1. light it\nflame\n\u00a0\u00a0high"


def test_a_font_holds_from_cell_to_cell_but_not_to_the_next_row() -> None:
    table = ".TS\nl l.\n\\fBwatch\thours\nfirst\t4\nlast\t4\n.TE"
    rows = read_man(HEAD + table, "t.1", "utf-8").blocks[1].rows
    assert [[set(cell.marks) for cell in row] for row in rows] == [[{1}, {1}], [{0}, {0}], [{0}, {0}]]


def test_blanks_inside_one_column_stay() -> None:
    rows = ["          Mean   Most", "Oil        3.5    4.0", "Candles      -     12"]
    table = ".TS\ncenter;\nl.\n.ft CW\n" + "\n".join(rows).replace("-", "\\-") + "\n.ft R\n.TE\nend"
    block, end = read_man(HEAD + table, "t.1", "utf-8").blocks[1:]
    assert (block.kind, block.code, [line.chars for line in block.lines]) == (Kind.PREFORMATTED, False, rows)
    assert end.text.chars == "end"


@pytest.mark.parametrize(
    "cells", [["one lamp", "two lamps"], ["one  lamp", "two lamps"], ["one", " ", "two"]]
)
def test_words_in_one_column_are_cells(cells: list[str]) -> None:
    block = read_man(HEAD + ".TS\nl.\n" + "\n".join(cells) + "\n.TE", "t.1", "utf-8").blocks[1]
    assert [[cell.chars for cell in row] for row in block.rows] == [
        [" ".join(cell.split())] for cell in cells if cell.strip()
    ]


@pytest.mark.parametrize(
    ("table", "rows"),
    [
        (
            "cb | cb s\ncb | cb cb\nl l l.\nDay\tMorning\n\\^\ttime\tfeet\nMonday\t4.12\t3.9\n\\^\t16.40\t4.1",
            ["Day|Morning|Morning", "|time|feet", "Monday|4.12|3.9", "Monday|16.40|4.1"],
        ),
        (
            "lB lB lB\nl l l\nl s l\nl l s.\nDay\tSea\tSky\nMonday\tcalm\tblue\nall the week\tfog\nSunday\tunseen",
            ["Day|Sea|Sky", "Monday|calm|blue", "all the week||fog", "Sunday|unseen|unseen"],
        ),
        ("l l\nl ^.\noil\tin the store\nrope\t\\^", ["oil|in the store", "rope|"]),
        ("l l\n^ l.\noil\tred\n\\^\tblue", ["oil|red", "oil|blue"]),
    ],
)
def test_cells_over_several_columns_or_rows_are_said_again(table: str, rows: list[str]) -> None:
    document = read_man(f"{HEAD}.TS\n{table}\n.TE", "t.1", "utf-8")
    assert ["|".join(cell.chars for cell in row) for row in document.blocks[1].rows] == rows
    assert_places_hold(document)


@pytest.mark.parametrize(
    ("table", "blocks"),
    [
        ("l l\nl s.\noil\tlow\nrope is wanting", ["t oil|low", "p rope is wanting"]),
        (
            "lB lB\nl l\nl s\nl l.\nKey\tDoes\nq\tquits\nBy night:\nw\twakes",
            ["t Key|Does", "t q|quits", "p By night:", "t Key|Does", "t w|wakes"],
        ),
        ("lB lB\nl s.\nKey\tDoes\nNo keys yet", ["t Key|Does", "p No keys yet"]),
    ],
)
def test_a_cell_over_all_columns_stands_apart(table: str, blocks: list[str]) -> None:
    document = read_man(f"{HEAD}.TS\n{table}\n.TE", "t.1", "utf-8")
    found = [
        row
        for block in document.blocks[1:]
        for row in (
            [f"p {block.text.chars}"]
            if block.kind is Kind.PARAGRAPH
            else ["t " + "|".join(cell.chars for cell in row) for row in block.rows]
        )
    ]
    assert found == blocks
    assert_places_hold(document)


@pytest.mark.parametrize(
    ("table", "rows"),
    [
        (
            "F\tFOG\tSounds the horn.\n\t\tThree times.\n\t\tThen once.",
            ["F|FOG|Sounds the horn./Three times./Then once."],
        ),
        ("F\tFOG\n\t\tSounds the horn.", ["F|FOG|Sounds the horn."]),
        ("F\tFOG\tSounds\n_\n\t\tThe end", ["F|FOG|Sounds", "||The end"]),  # a rule parts them
        ("F\tFOG\tfeet\n\t\t42", ["F|FOG|feet", "||42"]),  # a figure is no text that goes on
        ("F\tFOG\tred\n\tBELL\tblue", ["F|FOG|red", "|BELL|blue"]),  # a row of the same key
        ("F\tFOG\tred\n\tBELL", ["F|FOG|red", "|BELL|"]),
        ("F\tFOG\tred\n\\^\t\\^\tblue", ["F|FOG|red", "F|FOG|blue"]),
    ],
)
def test_a_row_of_one_cell_goes_on_with_the_row_above(table: str, rows: list[str]) -> None:
    document = read_man(f"{HEAD}.TS\nl l l.\n{table}\n.TE", "t.1", "utf-8")
    found = ["|".join(cell.chars.replace("\n", "/") for cell in row) for row in document.blocks[1].rows]
    assert found == rows
    assert_places_hold(document)
