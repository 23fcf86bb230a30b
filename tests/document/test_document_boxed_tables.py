"""Tables in a box whose sides are their only bars, and boxes that hold something else."""

from __future__ import annotations

import re

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair.\n"
)


def read(text: str) -> list[Block]:
    return list(read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


def tables(text: str) -> list[list[list[str]]]:
    """The rows of each table."""
    return [
        [[cell.chars for cell in row] for row in block.rows]
        for block in read(text)
        if block.kind is Kind.TABLE
    ]


def test_blanks_part_the_columns_of_a_box_with_a_rule_below_its_head() -> None:
    box = """\
  ------------------------------------------------------------------
  |landing       open/shut by day  keeper          number of steps |
  ------------------------------------------------------------------
  |south         open              <nobody>        40              |
  |north gully   shut              second keeper   112             |
  ------------------------------------------------------------------
                  TABLE 3.  Landings of the Skerry
"""
    table, caption = read(box)
    assert (table.kind, table.header_rows) == (Kind.TABLE, 1)
    assert [[cell.chars for cell in row] for row in table.rows] == [
        ["landing", "open/shut by day", "keeper", "number of steps"],
        ["south", "open", "<nobody>", "40"],
        ["north gully", "shut", "second keeper", "112"],
    ]
    words = caption.text.chars or caption.lines[0].chars
    assert words.split() == ["TABLE", "3.", "Landings", "of", "the", "Skerry"]


def test_one_row_is_enough_under_several_names() -> None:
    box = """\
+--------------------------------+
| Store    Where      Left       |
+--------------------------------+
| wicks    in tower   two boxes  |
+--------------------------------+
"""
    assert tables(box) == [[["Store", "Where", "Left"], ["wicks", "in tower", "two boxes"]]]


def test_figures_that_end_at_one_place() -> None:
    box = """\
----------------------------
|Store      Cans left  Boxes|
----------------------------
|oil            12         7|
|paraffin      140          |
|wicks           -        40|
----------------------------
"""
    assert tables(box) == [
        [["Store", "Cans left", "Boxes"], ["oil", "12", "7"], ["paraffin", "140", ""], ["wicks", "-", "40"]]
    ]


LEFT = {
    "no rule below the first line": """\
------------------------
|Store     Cans   Boxes|
|oil       12     7    |
|paraffin  140    none |
------------------------
""",
    "a rule below the second line": """\
------------------------
|Store     Cans   Boxes|
|oil       12     7    |
------------------------
|paraffin  140    none |
|wicks     none   40   |
------------------------
""",
    "no edge below": """\
------------------------
|Store     Cans   Boxes|
------------------------
|oil       12     7    |
------------------------
|paraffin  140    none |
""",
    "a row without a side": """\
------------------------
|Store     Cans   Boxes|
------------------------
|oil       12     7    |
-paraffin  140    none |
|wicks     none   40   |
------------------------
""",
    "arrows between the words": """\
------------------------------
|Lamp          Store         |
------------------------------
|oil -> lamp   oil -> can    |
|wick -> lamp  wick -> box   |
------------------------------
""",
    "a field whose columns have no words": """\
--------------
|A   B   C   |
--------------
|.   o   x   |
|o   x   .   |
|x   .   o   |
--------------
""",
    "cells that stand where they like": """\
---------------------------------
|Lamp room    Store     Landing |
---------------------------------
|oil          wicks     boat    |
|  wick         wax       rope  |
|   lens       bread     crane  |
---------------------------------
""",
    "one row off its names": """\
---------------------------------
|Lamp room    Store     Landing |
---------------------------------
|  oil         wax       boat   |
---------------------------------
""",
    "words here and there": """\
---------------------------------
|Lamp room    Store     Landing |
---------------------------------
|oil          wicks     boat    |
|             wax               |
|lens                           |
|                       crane   |
---------------------------------
""",
    "a name over two columns": """\
----------------------------------
|Lamp and stores       Landing   |
----------------------------------
|oil    wicks          boat      |
|lens   wax            rope      |
----------------------------------
""",
    "two names over one line": """\
--------------------------
|Skerry Light   Version  |
--------------------------
|Third book     of five  |
--------------------------
""",
}


@pytest.mark.parametrize("name", LEFT)
def test_other_boxes_are_drawn_as_before(name: str) -> None:
    assert tables(LEFT[name]) == []
    assert [block.kind for block in read(LEFT[name])] == [Kind.PICTURE]


def test_running_text_below_a_title_is_text() -> None:
    box = """\
+---------------------------------------------------------+
| Fog on the rock                                         |
+---------------------------------------------------------+
| Sound the horn.  Then count the blasts, and write them  |
| into the book.  When the fog lifts, the second keeper   |
| stops the horn and goes up to the lamp.                 |
+---------------------------------------------------------+
"""
    assert tables(box) == []


def test_a_box_whose_rows_have_not_all_as_many_cells_is_read() -> None:
    text = """\
       ________________________________
|        |Spare   |               |
|       |wicks   |Where they are |
|________|________|kept___________|
|Lower   |        |               |
|store   |12      |In the oil     |
|room____|________|cellar_________|
|Upper   |        |               |
|store_2_|7_______|On_a_shelf_____|
"""
    blocks = read_text(text, "stores", "ascii").blocks
    found = [
        part.chars
        for block in blocks
        for part in (block.text, *block.lines, *(cell for row in block.rows for cell in row))
    ]
    assert set(re.findall(r"[A-Za-z]+|\d+", " ".join(found))) == set(re.findall(r"[A-Za-z]+|\d+", text))
