"""What looks like rows beside a table, or like a table, and is none: the end of a paragraph, the output of a program."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text


def test_the_end_of_a_paragraph_right_above_a_table_is_no_row_though_its_sentences_have_wide_blanks() -> None:
    text = """\
Each of the stores that are listed below is kept in one of the rooms of the
tower (those of the house are counted apart, on the first day of each month
as well).  The keeper who counts them says in the log which of them he found
short, or which were not there at all, and in which watch.  All stores
are counted by two keepers.
  STORE            ROOM  PINTS   SHARE   LEAST   WATCH
  ~~~~~~~~~~~~~~~  ~~~~  ~~~~~~  ~~~~~~  ~~~~~~  ~~~~~
  lamp oil         4     120     2*all   40      1/2
  wick grease      4     3       1*all   1       1/1
  rape oil         2     12      2*all   4       2/1
"""
    document = read_text(text, "stores", "ascii")
    assert document.blocks[0].kind is Kind.PARAGRAPH
    assert document.blocks[0].text.chars.endswith("All stores are counted by two keepers.")
    assert rows_of(document.blocks) == [
        "STORE = ROOM = PINTS = SHARE = LEAST = WATCH",
        "lamp oil | 4 | 120 | 2*all | 40 | 1/2",
        "wick grease | 4 | 3 | 1*all | 1 | 1/1",
        "rape oil | 2 | 12 | 2*all | 4 | 2/1",
    ]


OUTPUT = """\
The lamp shows what it counted, if the key is held down:

    lamp      Kind of burner Four wicks
              oil left 127 pints  oil used 255 pints  Mark 255
              LIT TURNING  Count 2000  Beam 1
              strokes 0 missed 0 doubled 0 late 0
              rests 519 missed 0 doubled 0 late 0

and goes out again.
"""


def test_values_with_their_names_as_many_as_a_line_holds_are_no_cells() -> None:
    blocks = read_text(OUTPUT, "lamp", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert [line.chars.split() for line in blocks[1].lines] == [
        line.split() for line in OUTPUT.split("\n")[2:7]
    ]


def test_rows_under_one_key_with_a_cell_in_each_column_are_a_table() -> None:
    text = """\
    lamp      oil left      127 pints
              oil used      255 pints
              wicks         4
"""
    assert rows_of(read_text(text, "lamp", "ascii").blocks) == [
        "lamp | oil left | 127 pints",
        " | oil used | 255 pints",
        " | wicks | 4",
    ]


def test_words_right_below_a_rule_that_a_blank_line_parts_from_a_table_are_no_row() -> None:
    text = """\
1907-04-22:   the wicks were cut
1907-07-06:   oil for the long nights came by boat
1907-09-20:   the glass was cleaned

-------------------------------------------------------
Contents

1) THE LAMP
2) THE HORN
"""
    blocks = read_text(text, "book", "ascii").blocks
    assert "Contents" in [block.text.chars for block in blocks]
    assert all("Contents" not in row for row in rows_of(blocks))


ENDED = """\
  Wicks:                Letters:              All else:
  T. Marrow             Miss R. Pell          The Wardens
  Mill Lane             The School House      Boat House
  Upper Skerry          Lower Skerry          Maren Quay

==================================================================
End of the questions of the keepers
"""


def test_a_rule_left_of_a_table_and_parted_from_it_ends_it() -> None:
    blocks = read_text(ENDED, "questions", "ascii").blocks
    assert rows_of(blocks)[-1] == "Upper Skerry | Lower Skerry | Maren Quay"
    assert blocks[-1].text.chars == "End of the questions of the keepers"
    inside = ENDED.replace("\n\n=", "\n=")
    assert rows_of(read_text(inside, "questions", "ascii").blocks)[-1].startswith("End")


SORTED = """\
To put the entries in order, write:
  order the log = 'hour'   " by the hours
  order the log = 'wind'   " by the winds
  order the log = 'name'   " by the keepers
  order the log = 'page'   " by the pages
The usual order is that of the hours.
"""


def test_a_sentence_left_of_all_rows_right_below_them_is_no_part_of_a_cell() -> None:
    assert read_text(SORTED, "log", "ascii").blocks[-1].text.chars == "The usual order is that of the hours."
