"""Justified text: its lines end at one column, and the blanks between its words were widened for that."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

JUSTIFIED = """\
The  keeper who goes on watch at midnight takes the log from
the shelf below the window and  writes  the  height  of  the
barometer  into  it  before  he  looks at anything else. The
reading is copied onto the slate, so that the second  keeper
finds it there in the morning.

When  the  wind  has  gone round to the north the lamp burns
with less oil than the book says. Then the wick  has  to  be
trimmed  more  than  once in a night, and the glass is wiped
each time, because the soot would make the  light  look  red
from  the sea. If there are more than four hours of fog, the
horn is sounded by hand as well.

"""
WIDE = """\
oil     The cans are in the store, and the keeper who goes down for one of them
        writes down the hour at which he took it and the name of the lamp it was
        meant for, so that nobody has to count them by hand.
wicks   The wicks are in the drawer of the desk.

"""
TORN = """\
The boat comes on the first day of the month and brings  the
oil.  The keepers carry the cans up the stairs at once,  for
none  of them may be left on the landing over the night. Nor
can any be kept in the boat,  which has no room for anything

\fmore  than  three  barrels,  if  the  crew is to have its own
bags  when the sea is high.

The light is lit.

Cans that are empty go down again on the same day, as a rule
in the boat.

"""


def shape(text: str) -> list[tuple[Kind, str]]:
    """Kind and label of each block."""
    return [(block.kind, block.label.chars) for block in read_text(text, "log", "ascii").blocks]


def test_a_wide_blank_behind_the_first_word_of_a_justified_line_makes_no_key() -> None:
    text = JUSTIFIED + WIDE + TORN + WIDE + JUSTIFIED
    assert shape(text) == [
        (Kind.PARAGRAPH, ""),
        (Kind.PARAGRAPH, ""),
        (Kind.ITEM, "oil"),
        (Kind.ITEM, "wicks"),
        *[(Kind.PARAGRAPH, "")] * 3,
        (Kind.ITEM, "oil"),
        (Kind.ITEM, "wicks"),
        *[(Kind.PARAGRAPH, "")] * 2,
    ]


def test_keys_beside_justified_text_stay_keys() -> None:
    text = JUSTIFIED + (
        "^N   Insert  the  next  lamp  of the list into the log.  The\n"
        "     list has one lamp on each line.\n\n"
        "^P   Insert the lamp before it into the log. At the first of\n"
        "     them nothing is done.\n\n"
    )
    labels = [label for kind, label in shape(text + JUSTIFIED) if kind is Kind.ITEM]
    assert labels == ["^N", "^P"]


def test_a_justified_line_over_another_and_a_table() -> None:
    """The first words of its paragraph, with wide blanks between them, are no key, and begin no table."""
    text = (
        "In  your  copy of the lamp drill, make these corrections with\n"
        "ink.\n\n"
        "Page      Rule          Correction\n"
        '11        4 (iii)       For "lamp" read "lamp or\n'
        '                        lantern".\n'
        "12        5             Strike out the second sentence.\n"
        "30        Index         Strike it out.\n"
    )
    blocks = read_text(text, "a letter", "ascii").blocks
    assert blocks[0].text.chars == "In your copy of the lamp drill, make these corrections with ink."
    assert [[cell.chars for cell in row] for row in blocks[1].rows] == [
        ["Page", "Rule", "Correction"],
        ["11", "4 (iii)", 'For "lamp" read "lamp or lantern".'],
        ["12", "5", "Strike out the second sentence."],
        ["30", "Index", "Strike it out."],
    ]


VALUES = """\
    Bit(s)  Mask  What it says
     0-1    0x03  Number of wicks (1-4)
     2-5    0x3C  Kept for the harbour; it must be nothing for now.
      6     0x40  The horn is ready to be blown in fog.
      7     0x80  The lamp is ready to be lit at dusk.
"""


def test_one_value_in_each_row_between_its_key_and_its_text_is_no_chance() -> None:
    assert shape(JUSTIFIED + VALUES + "\n" + JUSTIFIED).count((Kind.TABLE, "")) == 1


def test_words_of_a_text_beside_keys_are_no_values() -> None:
    text = (
        "^N   The  lamp  of the list is put into the log by the keeper\n"
        "^P   The  lamp  before it is put into the log. At the first of\n"
        "^Q   The  book  is shut, and the keeper goes down to the boat\n"
        "^R   The  horn  is blown in fog from the dusk to the dawn\n"
    )
    assert (Kind.TABLE, "") not in shape(JUSTIFIED + text + "\n" + JUSTIFIED)


COLOURS = """\
      Lamp    Colour  Means
      BOAT    green   the boat is at the landing
      FOG     amber   the horn is to be blown; wait, but not long
      ROOM    red     go up and light it
"""


def test_one_word_in_each_row_below_a_name_of_one_word_is_a_value() -> None:
    """The columns are two blanks apart, as the words of justified text may be."""
    rows = rows_of(read_text(JUSTIFIED + COLOURS + "\n" + JUSTIFIED, "a document", "ascii").blocks)
    assert rows == [
        "Lamp = Colour = Means",
        "BOAT | green | the boat is at the landing",
        "FOG | amber | the horn is to be blown; wait, but not long",
        "ROOM | red | go up and light it",
    ]


def test_two_words_below_a_name_are_text() -> None:
    assert (Kind.TABLE, "") not in shape(JUSTIFIED + COLOURS.replace("amber ", "as am ") + "\n" + JUSTIFIED)


KEYED = """\
       $      put the lamp in the last window.  See  'stair'  option  descrip-
              tion.

       Space  change watches.

       gt     go up to the next floor (over the landing).

       {n}gt  go up to the floor number {n} (over the landing).
"""
SET = """\
       'oil'  kind: whole
              usual: dark
              Use pints, gills, ... instead of pt., gl.,  ...  when  counting
              stores in the book.
"""


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        (KEYED, "put the lamp in the last window. See 'stair' option description."),
        (SET, "Use pints, gills, ... instead of pt., gl., ... when counting stores in the book."),
    ],
)
def test_blanks_of_one_justified_line_beside_a_key_part_no_columns(text: str, whole: str) -> None:
    """The line below it ends its sentence, and the other keys have little to say."""
    assert whole in [block.text.chars for block in read_text(text, "keys", "ascii").blocks]
