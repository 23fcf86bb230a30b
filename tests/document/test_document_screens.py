"""Screens, layers and forms drawn as boxes: neither bars in some of their panes nor leaders make lists and tables of them."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = "The second keeper looks at the board in the evening before he goes up the stair to the lamp.\n\n"
DRAWN = {
    "a screen with a foot": """\
+--------------------------------------------+
|  LAMP BOARD                  Dusk at 21:14 |
+----------------------+---------------------+
|  Last watch          |  Stores             |
|    second keeper     |    wicks         14 |
|    relieved at four  |    oil           60 |
+----------------------+---------------------+
|  F1 Help   F2 Light the lamp   F10 Leave   |
+--------------------------------------------+
""",
    "two panes over a foot": """\
+----------------------+---------------------+
|  Books               |  Stores             |
|                      |                     |
|  LOG                 |  wicks           14 |
|  TIDES               |  oil             60 |
+----------------------+---------------------+
|  F1 Help   F2 Light the lamp   F10 Leave   |
+--------------------------------------------+
""",
    "layers": """\
+--------------------------------------------+
|                 Log program                |
+--------------+--------------+--------------+
|  Lamp        |  Horn        |  Bell        |
|  driver      |  driver      |  driver      |
+--------------+--------------+--------------+
|                  Lamp system               |
+--------------------------------------------+
""",
}
SEA = """\
~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~
~ ~ ~ ~ ##### ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~
~ ~ ###.....### ~ ~ Sound ~ ~ ~ X ~
~ ~ #...T..H...# ~ ~ ~ ~ ~ ~ ~ ~ ~ ~
~ ~ ###...####====== ~ ~ ~ ~ ~ ~ ~ ~
~ ~ ~ ~ ##### ~ ~ ~ ~ ~ ~ ~ ~ ~ ~ ~
"""
NOTED = """\
+--------------+--------------+
| Stores       | Number       |
+--------------+--------------+
| wicks        | 14           |
| oil          | 60           |
+--------------+--------------+
| Counted on the first of May |
+-----------------------------+
"""


@pytest.mark.parametrize("text", DRAWN.values(), ids=DRAWN.keys())
def test_a_screen_or_layers_are_a_picture(text: str) -> None:
    _, block = read_text(BEFORE + text, "board", "ascii").blocks
    assert block.kind is Kind.PICTURE
    assert [line.chars for line in block.lines] == text.splitlines()


def test_a_remark_below_the_rows_leaves_a_table_one() -> None:
    assert read_text(BEFORE + NOTED, "stores", "ascii").blocks[1].kind is Kind.TABLE


def test_a_map_whose_sea_is_single_signs_is_a_picture() -> None:
    _, block = read_text(BEFORE + SEA, "map", "ascii").blocks
    assert block.kind is Kind.PICTURE
    assert [line.chars for line in block.lines] == SEA.splitlines()


FORMS = {
    "a title in the edge": """\
+---------------- New Keeper ----------------+
| Name  : __________________   Watch : ___   |
| Boat  : __________________   Berth : _     |
| From  : __/__/__     To : __/__/__         |
+--------------------------------------------+
""",
    "a title in the frame": """\
+--------------------------------------------+
|                 New Keeper                 |
|                                            |
|  Name  : __________________   Watch : ___  |
|  Boat  : __________________   Berth : _    |
|                                            |
+--------------------------------------------+
""",
    "contents in a box": """\
+------------------------------+
| Contents                     |
|                              |
| 1. The lamp ............. 3  |
| 2. The horn ............. 5  |
| 3. The bell ............. 9  |
+------------------------------+
""",
}


@pytest.mark.parametrize("text", FORMS.values(), ids=FORMS.keys())
def test_leaders_and_lines_to_fill_in_leave_a_box_whole(text: str) -> None:
    _, block = read_text(BEFORE + text, "form", "ascii").blocks
    assert [line.chars for line in block.lines] == text.splitlines()


def test_what_is_typed_at_a_prompt_of_words_is_no_title() -> None:
    seen = "          Lamp room> G\n\n          Good night, keeper. You were here for an hour.\n          NO LAMP\n"
    blocks = read_text(BEFORE + seen, "board", "ascii").blocks
    assert all(block.kind is not Kind.HEADING for block in blocks)
