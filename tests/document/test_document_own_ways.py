"""Columns of which one holds no running text for long: code beside verse, tables, and what goes on below the shorter one."""

from __future__ import annotations

from textwrap import wrap

import pytest
from test_document_columns import GOAT, OIL, TIDE, beside, column, texts

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.document.text.columns.own_ways import own_ways

CODE = ["  10 FOR D=1 TO 7", '  20 PRINT "OIL";D', "  30 NEXT D", "  40 GOTO 10"]
TABLE = [
    "Boat       Day       Cargo",
    "---------  --------  -------",
    "Petrel     Monday    oil",
    "Whimbrel   Friday    coal",
]
VERSE = [
    "The lamp is trimmed, the oil is in,",
    "The goat has eaten half the tin;",
    "And who will tell the board of it?",
]
LAST = "The next number comes out when there is something to put into it. Letters are welcome and will be printed if they can be read."
ASKED = "The keepers have asked for a grease-pot that can be filled with one hand, and for a lid."
FOUND = "The goat was found on the gallery with half of the list of stores in it."
LEFT = [
    "A PROGRAM",
    "",
    *column(ASKED, width=34),
    "",
    *CODE,
    "",
    "WANTED",
    "",
    "* a tin of paint",
    "* a rope",
]
RIGHT = ["THE BOATS", "", *TABLE, "", "A SONG", "", *VERSE, "", *column(GOAT, width=36)]


def barred(rows: list[str], column: int) -> list[str]:
    """The rows with a bar in the gutter of their columns."""
    return [f"{row[:column]:<{column}}|{row[column + 1 :]}" for row in rows]


def test_code_and_a_list_beside_a_table_and_verse_are_columns() -> None:
    rows = beside(LEFT, RIGHT, width=36, gutter=4)
    for page in (rows, barred(rows, 37)):
        read = texts([*page, "", *wrap(LAST, 74)])
        assert read[0] == "A PROGRAM"
        assert read[2] == " | ".join(line.strip() for line in CODE)
        assert read.index("WANTED") < read.index("THE BOATS") < read.index("A SONG")
        assert read[-2:] == [GOAT, LAST]


def test_a_label_in_the_middle_of_its_row_begins_beside_its_text_and_is_no_column() -> None:
    """It begins beside the middle of a sentence, but no sentence begins beside the middle of a label."""
    labels = ["", "The second of the keepers", "and the first one, who has the", "key", "", "The boy", ""]
    cells = [*wrap(ASKED, 26)[:4], "", *wrap(FOUND, 26)[:2]]
    assert not own_ways([labels, cells])
    assert own_ways([[*labels, "", ""], ["", "A SONG", "", *cells[:-1]]])


def test_code_and_tables_below_the_shorter_column_belong_to_the_longer_one() -> None:
    for last in (CODE, TABLE):
        left = ["OIL", "", *column(OIL, TIDE, GOAT, width=34), "", *last]
        right = ["THE GOAT", "", *column(GOAT, OIL, width=34)]
        read = texts([*beside(left, right, width=34, gutter=4), "", *wrap(LAST, 74)])
        assert read[-4:] == ["THE GOAT", GOAT, OIL, LAST]


@pytest.mark.parametrize("title", ["To our readers", "To our readers\n--------------"])
def test_a_title_over_text_as_wide_as_the_page_is_none_of_the_longer_column(title: str) -> None:
    left, right = column(OIL, TIDE, GOAT, width=34), column(GOAT, TIDE, width=34)
    read = texts([*beside(left, right, width=34, gutter=4), "", title, "", *wrap(LAST, 74)])
    assert read == [OIL, TIDE, GOAT, GOAT, TIDE, "To our readers", LAST]


def test_code_below_a_column_that_stops_in_a_sentence_is_none_of_it() -> None:
    left, right = column(OIL, TIDE, f"{GOAT[:-1]}, and", width=34), column("that was all.", OIL, width=34)
    read = texts([*beside(left, right, width=34, gutter=4), "", *CODE, "", *wrap(LAST, 74)])
    assert read[2:4] == [f"{GOAT[:-1]}, and that was all.", OIL]


def test_a_title_beside_the_first_line_of_a_paragraph_is_the_head_of_its_column() -> None:
    left = ["OF THE TIDE", "", *column(TIDE, OIL, width=34)]
    right = column(f"{GOAT[0]}{GOAT[1:]}", TIDE, width=34)
    assert texts(beside(left, right, width=34, gutter=6)) == ["OF THE TIDE", TIDE, OIL, GOAT, TIDE]


def test_a_few_lines_beside_the_first_ones_of_a_paragraph_that_goes_on_alone() -> None:
    left = ["NEWS", "", *column(OIL, width=34), "", "WANTED", "", "* a tin of paint", "* a rope"]
    right = ["THE GOAT", "", *column(FOUND, width=34)]
    read = texts([*beside(left, right, width=34, gutter=4), "", *wrap(LAST, 74)])
    assert read[:3] == ["NEWS", OIL, "WANTED"]
    assert read[-3:] == ["THE GOAT", FOUND, LAST]


def test_few_lines_of_two_cells_are_a_row_of_a_table() -> None:
    rows = beside(wrap(ASKED, 30), wrap(FOUND, 30), width=34, gutter=4)
    document = read_text("\n".join(["Asked" + " " * 33 + "Answered", *rows]) + "\n", "a document", "ascii")
    assert not any("newspaper" in block.note for block in document.blocks)
    assert document.blocks[0].kind is not Kind.PARAGRAPH


def test_an_entry_of_an_index_that_did_not_fit_goes_on_in_its_line() -> None:
    left = ["Bell, 2", "Boats, 1; of oil, 3; of tea,", "   4; lost, 7", "Goat, 5", "Oil, 1, 3"]
    right = ["Rocks, 1", "Stairs, 2, 4", "   of iron, 9", "Tides, 8", "Wicks, 6"]
    blocks = read_text("\n".join(beside(left, right, width=36, gutter=4)) + "\n", "index", "ascii").blocks
    assert [[line.chars for line in block.lines] for block in blocks] == [
        ["Bell, 2", "Boats, 1; of oil, 3; of tea, 4; lost, 7", "Goat, 5", "Oil, 1, 3"],
        right,
    ]


def test_a_signature_in_the_middle_of_its_column_is_no_title() -> None:
    name = [" " * 12 + "T. Arran,", " " * 12 + "Skerry Quay"]
    left, right = (
        [*column(OIL, width=34), "", *name, "", *column(TIDE, width=34)],
        column(GOAT, OIL, width=34),
    )
    assert texts(beside(left, right, width=34, gutter=4)) == [OIL, "T. Arran, | Skerry Quay", TIDE, GOAT, OIL]


def test_columns_without_any_line_go_no_ways() -> None:
    assert not own_ways([[], []])


def test_an_index_with_entries_under_words_and_entries_that_did_not_fit() -> None:
    left = [
        "Airing, 12",
        "Barometer",
        "  reading of, 14",
        "  setting of, when the sea",
        "      runs high, 15",
        "Boat",
    ]
    left += ["  landing from, 7"]
    right = [
        "Clock, 8",
        "Distress",
        "  signals of, 80",
        "  when none are seen, 81",
        "Fog",
        "  in the log, 4",
        "Goat, 5",
    ]
    blocks = read_text("\n".join(beside(left, right, width=36, gutter=4)) + "\n", "index", "ascii").blocks
    assert [[line.chars for line in block.lines] for block in blocks] == [left, right]


def test_names_over_deeper_ones_without_page_numbers_are_no_index() -> None:
    left = ["Boats", "  Petrel", "Oars", "  of ash", "Lamps, 12", "Wicks, 4"]
    right = ["Goats", "  the old one", "Tins", "  of oil", "Rope, 8", "Tea, 2"]
    document = read_text("\n".join(beside(left, right, width=36, gutter=4)) + "\n", "stores", "ascii")
    assert not any(block.note == "column of an index" for block in document.blocks)
