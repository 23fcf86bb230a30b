"""Tables in groups under one head, and values under numbers in two or three lines."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

GROUPS = """\
  Lamps     PART #1      PART #2      PART #3  Relative Cost   WATCHES
  ---------------------------------------------------------------------
  Main lamp Wick Holder  Oil Feed     Glass    58   1  2  2  3
  Spare lam Main lamp    Wick Holder  Oil Cask 271  3  2  4  5
  Hand      Glass        Wick Holder  Oil      98   1  2  3  4
  Yard lamp Hand lamp    Glass        Post     58   2  2  4  3

  Horns
  ---------------------------------------------------------------------
  Fog horn  Bellows      Reed         Pipe     73   1  1  3  3
  Boat horn Reed         Reed         Pipe End 60   2  1  5  5

  Bells
  ---------------------------------------------------------------------
  Yard bell Bronze       Clapper      Rope     18   1  1  1  1
  Hand bell Bronze Cap   Clapper      Handle   5    1  1  2  3
  Boat bell Bronze       Clapper Eye  Rope     18   3  1  2  1
"""


def test_each_group_is_a_table_with_the_names_of_the_columns_said_again() -> None:
    document = read_text(GROUPS, "stores", "ascii")
    rows = rows_of(document.blocks)
    head = " = PART #1 = PART #2 = PART #3 = Relative Cost = WATCHES"
    assert [row for row in rows if " = " in row] == [f"Lamps{head}", f"Horns{head}", f"Bells{head}"]
    assert "Spare lam | Main lamp | Wick Holder | Oil Cask | 271 | 3 2 4 5" in rows
    assert "Boat horn | Reed | Reed | Pipe End | 60 | 2 1 5 5" in rows
    assert len(rows) == 12
    assert all(place < 0 for place in document.blocks[1].rows[0][1].sources)


def test_a_table_with_one_rule_is_none_of_groups() -> None:
    text = "\n".join(GROUPS.split("\n")[:6]) + "\n"
    assert all("Horns" not in row for row in rows_of(read_text(text, "stores", "ascii").blocks))


def test_groups_whose_columns_stand_nowhere_are_left_alone() -> None:
    ragged = GROUPS.replace("Wick Holder", "Wick").replace("Reed         Pipe", "Reed Pipe")
    assert not any(row.startswith("Horns = ") for row in rows_of(read_text(ragged, "stores", "ascii").blocks))


MATRIX = """\
The more sacks there are one in the other, the less a lamp in them is dry,
as was tried in the boat:

  sacks:  0    1    2    3    4     5     6      7      8        n
  odds:  1/1  2/2  3/4  4/8  5/16  6/32  7/64  8/128  9/128  (n+1)/128

The chances of a lit wick in a storm are these, by the hours of the watch:
      # Hours:    0      1      2      3      4      5      6      7
       trimmed:  22.7%  22.7%  19.5%  15.4%  10.7%   5.7%   2.6%   0.8%
     untrimmed:  35.4%  35.4%  22.9%   6.3%    0      0      0      0

The lamps of a watch go out together:

  lamp:     -main-  -yard-  -boat-  -hand-  -hall-  -roof-  -loft-
  watch:    [     first      ][     middle     ][     last      ]
"""


def test_values_under_their_numbers_are_kept_as_drawn() -> None:
    blocks = read_text(MATRIX, "trials", "ascii").blocks
    drawn = [
        [line.chars.split()[0] for line in block.lines] for block in blocks if block.kind is Kind.PICTURE
    ]
    assert drawn == [["sacks:", "odds:"], ["#", "trimmed:", "untrimmed:"], ["lamp:", "watch:"]]


def test_many_rows_with_labels_are_a_table_and_two_sentences_are_none() -> None:
    rows = "".join(f"  day{day}:  {day}0    {day}1    {day}2    {day}3    {day}4\n" for day in range(1, 6))
    assert [
        block.kind for block in read_text(f"  hour:  6    8    10    12    14\n{rows}", "log", "ascii").blocks
    ] == [Kind.TABLE]
    barred = "   light |  horn |  bell\n  day:    1 |     2 |     3\nnight:    4 |     5 |     6\n"
    assert len(rows_of(read_text(barred, "log", "ascii").blocks)) == 3
    talk = "Rowan:  the  lamp  is  lit  at  dusk\nMorag:  the  horn  is  blown  in  fog\n"
    assert all(block.kind is not Kind.PICTURE for block in read_text(talk, "talk", "ascii").blocks)


def test_names_of_files_filled_like_text_are_one_paragraph() -> None:
    text = """\
The book of the lamp is kept in these files, of which none may be lost:

     lamp_trim.log    lamp_oil.log    lamp_wick.log   lamp.log   horn.log
     lamp_hours.log   lamp_fog.log  bell_day.log  bell_night.log  bell.c
     stores_oil.log  stores_rope.log stores_wick.log boats.log boat_a.log
     boat_b.log panel.log

All others are the keeper's own.
"""
    blocks = read_text(text, "files", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH] * 3
    assert blocks[1].text.chars.split() == text.split("\n\n")[1].split()


def test_names_of_files_in_columns_are_no_running_text() -> None:
    text = """\
The book of the lamp is kept in these files:

     lamp.log    lamp_oil.log    wick.log
     horn.log    horn_oil.log    bell.log
     boat.log    boat_oil.log    oars.log

All others are the keeper's own.
"""
    assert read_text(text, "files", "ascii").blocks[1].kind is not Kind.PARAGRAPH


def test_thousands_of_rows_of_stars_are_read() -> None:
    """Where a run of rows ends at the most lines that one has, no column may have been found yet."""
    rows = "*   *    *  *\n" * 5 + "\n"
    assert read_text(rows * 600, "stars", "ascii").blocks


@pytest.mark.parametrize(
    "text",
    [
        "Keeper     Boat      Rope\n-------------------------\n\nKeeper     Boat      Rope\n-------------------------\na   b    c\n",
        (
            "Keeper     Boat      Rope\n-------------------------\nanna       one       two\nbert       one       two\n"
            "carl       one       two\n\nOthers\n-------------------------\nx y  z\nq   r s\n"
        ),
        "Keeper     Boat      Rope\n-------------------------\nanna       one       two\n\nOthers\n-------------------------\n",
    ],
    ids=["a head said again", "other columns", "a group without rows"],
)
def test_groups_that_show_no_common_columns_are_read(text: str) -> None:
    assert read_text(text, "boats", "ascii").blocks


CORRECTIONS = """\
The figures by which the glass is corrected are these:

       Reading                          Factor  Offset  Lamp
       -----------------------------------------------------
north  r0 (24/14 + 1) * @               2.633     0       -
       r2 (22/30 + 1) * @               1.737     0       -
       r3 (2/19) * @                    1.474     0       -
       r5 (160/35)*(@ - r0) + @         5.482    -4.482  all
       r6 (36/16)*(@ - r0) + @          3.222    -2.222  all

west   r3 (7 + 1)*@                     1.68      0       -
       r4 (8 + 1)*@                     3.8       0       -

harbor r5 (5 * @) - 14.91               5.14    -14.91    -
       r6 (3 * @) -  7.71               3.14     -7.71    -
"""


def test_groups_that_blank_lines_part_stand_under_the_head() -> None:
    assert rows_of(read_text(CORRECTIONS, "a document", "ascii").blocks) == [
        " = Reading = Factor = Offset = Lamp",
        "north | r0 (24/14 + 1) * @ | 2.633 | 0 | -",
        " | r2 (22/30 + 1) * @ | 1.737 | 0 | -",
        " | r3 (2/19) * @ | 1.474 | 0 | -",
        " | r5 (160/35)*(@ - r0) + @ | 5.482 | -4.482 | all",
        " | r6 (36/16)*(@ - r0) + @ | 3.222 | -2.222 | all",
        "west | r3 (7 + 1)*@ | 1.68 | 0 | -",
        " | r4 (8 + 1)*@ | 3.8 | 0 | -",
        "harbor | r5 (5 * @) - 14.91 | 5.14 | -14.91 | -",
        " | r6 (3 * @) - 7.71 | 3.14 | -7.71 | -",
    ]


MARKS = """\
Keepers   Ann Con Edo Gil
            Bob Dan Fay Hal
=============================
lamp      * * *   * * *
horn          *       *   *
bell      *   * * *     * *
oil       * *       * * *
stores      *             *
"""


def test_marks_two_cells_apart_stay_under_what_they_mark() -> None:
    (table,) = read_text("What each keeper does:\n\n" + MARKS, "a document", "ascii").blocks[1:]
    assert table.kind is Kind.PICTURE
    assert [line.chars for line in table.lines] == MARKS.splitlines()


def test_marks_under_columns_with_gutters_are_a_table() -> None:
    text = "Keeper    Lamp    Horn    Bell\nAnn       x       x       x\nBob               x       x\nCon       x               x\n"
    assert rows_of(read_text(text, "a document", "ascii").blocks) == [
        "Keeper = Lamp = Horn = Bell",
        "Ann | x | x | x",
        "Bob |  | x | x",
        "Con | x |  | x",
    ]
