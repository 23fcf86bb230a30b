"""Rows that stand apart by the least of signs: one rule between two, a key in the middle, a key's rest set in, the same names again."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text


def rows(text: str) -> list[str]:
    """The rows of the tables, heads with ``=``."""
    return rows_of(read_text(text, "a document", "utf-8").blocks)


CASES = {
    "two rows in a box, parted as they are from what is around them, name nothing": (
        """
    +--------------------+---------------------+---------------+
    | The Second Keeper  | Book 12, book 13    | Mondays       |
    +--------------------+---------------------+---------------+
    | The Boatman at     | Book 2              | At once, by   |
    | Oddy Harbour       |                     | the next tide |
    +--------------------+---------------------+---------------+
""",
        [
            "The Second Keeper | Book 12, book 13 | Mondays",
            "The Boatman at Oddy Harbour | Book 2 | At once, by the next tide",
        ],
    ),
    "a first row that names the columns does so above one wrapped row, too": (
        """
    +--------------------+---------------------+---------------+
    | Keeper             | Books               | When          |
    +--------------------+---------------------+---------------+
    | The Boatman at     | Book 2              | At once, by   |
    | Oddy Harbour       |                     | the next tide |
    +--------------------+---------------------+---------------+
""",
        ["Keeper = Books = When", "The Boatman at Oddy Harbour | Book 2 | At once, by the next tide"],
    ),
    "full rows below numbered names": (
        """
    +---------+---------+
    | Column1 | Column2 |
    +---------+---------+
    | oil1    | wick2   |
    | oil3    | wick3   |
    +---------+---------+
""",
        ["Column1 = Column2", "oil1 | wick2", "oil3 | wick3"],
    ),
    "a key in the middle between rules, beside cells that begin above it": (
        """
    -----------------------------------------------------------
    Landing           Weekdays            Saturdays    Sundays
    -----------------------------------------------------------
                      6.40, 8.10          7.31
    North Stair       9.55 and            and 19.40    9.00
                      every hour
    -----------------------------------------------------------
    South Stair       8.18                7.23          -
    -----------------------------------------------------------
""",
        [
            "Landing = Weekdays = Saturdays = Sundays",
            "North Stair | 6.40, 8.10 9.55 and every hour | 7.31 and 19.40 | 9.00",
            "South Stair | 8.18 | 7.23 | -",
        ],
    ),
    "the rest of a key, set in, beside rests of its cells": (
        """
    Lamp           Lit           What is seen            Nights
    The great one  all year      Ships, and gulls that      9
                                 fly into it
    The red one    Feb. to       A rock                    10
                   July
    Double lamp    always        One light, or two,         4
     in the stair                according to the
                                 keeper
    The horn                     Seldom anything            -
""",
        [
            "Lamp = Lit = What is seen = Nights",
            "The great one | all year | Ships, and gulls that fly into it | 9",
            "The red one | Feb. to July | A rock | 10",
            "Double lamp in the stair | always | One light, or two, according to the keeper | 4",
            "The horn |  | Seldom anything | -",
        ],
    ),
    "what is set in below a key with cells of its own is a row": (
        """
    Lamp           Lit           What is seen            Nights
    The great one  all year      Ships                      9
    The red one    Feb. to July  A rock                    10
     its twin      March         Another rock               4
    The horn       in fog        Seldom anything            7
""",
        [
            "Lamp = Lit = What is seen = Nights",
            "The great one | all year | Ships | 9",
            "The red one | Feb. to July | A rock | 10",
            "its twin | March | Another rock | 4",
            "The horn | in fog | Seldom anything | 7",
        ],
    ),
    "a cell with a word that is cut, and its third line with a capital": (
        """
    Stair     Opened  Closed  Steps         Keeper
    ----------------------------------------------------
    North     4.30    11.50   210           Tuck
    Reed                      70            Pargeter
    South     4.45    12.5    93            Tuck, ex-
                                            cept on
                                            Fridays
    ----------------------------------------------------
""",
        [
            "Stair = Opened = Closed = Steps = Keeper",
            "North | 4.30 | 11.50 | 210 | Tuck",
            "Reed |  |  | 70 | Pargeter",
            "South | 4.45 | 12.5 | 93 | Tuck, except on Fridays",
        ],
    ),
    "a cut word beside a second key of the same row": (
        """
    l w,      (windows)   Show a list of lan-
    l W                   tern windows.
    ------------------------------------------
    l x       (lamp)      Light it.
    ------------------------------------------
    l t,      (time)      Ring the bell for
    l T                   the watch.
    ------------------------------------------
    l v       (view)      Look out.
""",
        [
            "l w, l W | (windows) | Show a list of lantern windows.",
            "l x | (lamp) | Light it.",
            "l t, l T | (time) | Ring the bell for the watch.",
            "l v | (view) | Look out.",
        ],
    ),
    "keys that end in a hyphen over others in small letters": (
        """
    lamp-     trims the lamp      at dusk
    horn+     winds the horn      in fog
    bell-     rings the bell      at noon
    gull-     feeds the gulls     never
""",
        [
            "lamp- | trims the lamp | at dusk",
            "horn+ | winds the horn | in fog",
            "bell- | rings the bell | at noon",
            "gull- | feeds the gulls | never",
        ],
    ),
    "the same names again: each part has rows of its own height": (
        """
    Key   Meaning                     Key   Meaning
    ---   -------------------------   ---   -------------------------
    A     abandon the watch           N     next lamp
    C     call the keeper of the      P     put out
          lower lamp room             R     red light on or off
    D     dim                         Z     wind the horn
""",
        [
            "Key = Meaning = Key = Meaning",
            "A | abandon the watch | N | next lamp",
            "C | call the keeper of the lower lamp room | P | put out",
            "D | dim | R | red light on or off",
            " |  | Z | wind the horn",
        ],
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_the_lines_of_rows(case: str) -> None:
    text, expected = CASES[case]
    assert rows(text) == expected


BOXES = """\
    \u250c\u2500\u2500\u2500\u252c\u2500\u2500\u2500\u2510
    \u2502 7 \u2502 8 \u2502     7 8   up
    \u251c\u2500\u2500\u2500\u253c\u2500\u2500\u2500\u2524
    \u2502 4 \u2502 5 \u2502     4 5   left, right
    \u2514\u2500\u2500\u2500\u2534\u2500\u2500\u2500\u2518"""


@pytest.mark.parametrize("note", ["     0     stop", ""])
def test_a_box_with_a_note_beside_its_lower_side_is_drawn(note: str) -> None:
    text = f"The keys of the lamp stand so:\n\n{BOXES}{note}\n\nThe second keeper has worn them out.\n"
    blocks = read_text(text, "a document", "utf-8").blocks
    kinds = [block.kind for block in blocks]
    assert kinds[1] is (Kind.PICTURE if note else Kind.TABLE)
    assert len(kinds) == 3
