"""Drawn tables in which underscores fill up the cells: the last line of a row has them for blanks, and is its rule."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.text import read_text

CASES = {
    "rows of one line each": (
        """
   ___________________________
  |Store_|Kept_in___|Left_____|
  |Oil___|the_cellar|12_(full)|
  |Wicks_|the_loft__|40_______|
""",
        ["Store = Kept in = Left", "Oil | the cellar | 12 (full)", "Wicks | the loft | 40"],
    ),
    "rows of several lines, bars of one of them beside their places": (
        """
 ________________________________
|        |Spare   |               |
|       |wicks   |Where they are |
|________|________|kept___________|
|Lower   |        |               |
|store   |12      |In the oil     |
|room____|________|cellar_________|
|Upper   |        |               |
|store_2_|7_______|On_a_shelf_____|
""",
        [
            " = Spare wicks = Where they are kept",
            "Lower store room | 12 | In the oil cellar",
            "Upper store 2 | 7 | On a shelf",
        ],
    ),
    "a head of words over nothing but figures": (
        """
   ______________________________________
  |Pints|Hours that the|Hours that the lamp|
  |_____|lamp_burns____|burns_in_a_storm___|
  |1____|4_____________|3__________________|
  |2____|8_____________|6__________________|
""",
        [
            "Pints = Hours that the lamp burns = Hours that the lamp burns in a storm",
            "1 | 4 | 3",
            "2 | 8 | 6",
        ],
    ),
    "names with underscores in them are no filling": (
        """
  +----------+----------+
  |lamp_oil  |oil_pints |
  |lamp_wick |wick_count|
  +----------+----------+
""",
        ["lamp_oil | oil_pints", "lamp_wick | wick_count"],
    ),
    "figures beside words are rows without a head": (
        """
  +------+------+
  | oil  | 12   |
  +------+------+
  | 40   | 7    |
  +------+------+
  | 41   | 8    |
  +------+------+
""",
        ["oil | 12", "40 | 7", "41 | 8"],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    text, expected = CASES[name]
    prose = "The keeper on watch counts the stores on the first day of each month.\n"
    document = read_text(f"{prose}{text}\n{prose}", "stores", "ascii")
    assert rows_of(document.blocks) == expected


def test_the_table_as_drawn_keeps_its_underscores() -> None:
    text, _ = CASES["rows of one line each"]
    table = next(block for block in read_text(text, "stores", "ascii").blocks if block.rows)
    assert [line.chars.strip() for line in table.lines] == [line.strip() for line in text.split("\n") if line]
