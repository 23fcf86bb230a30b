"""Heads of plain-text tables: set by eye, of several lines, printed anew below a blank line, over squeezed columns."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

SENTENCE = "The stores of the rock are counted by the keeper of the watch, and the mate signs.\n\n"


def tables(text: str) -> list[list[str]]:
    """The rows of each table with bars between their cells, those of heads with ``=``."""
    return [
        rows_of([block])
        for block in read_text(SENTENCE + text + "\n" + SENTENCE, "a document", "ascii").blocks
        if block.kind is Kind.TABLE
    ]


def test_the_same_head_below_a_blank_line_begins_another_table() -> None:
    text = (
        "  Part            Number  Kept in\n"
        "  burner               2  drawer\n"
        "  mantle              12  box\n\n"
        "  Part            Number  Kept in\n"
        "  glass               24  cellar\n"
        "  gear                 3  shed\n"
    )
    assert tables(text) == [
        ["Part = Number = Kept in", "burner | 2 | drawer", "mantle | 12 | box"],
        ["Part = Number = Kept in", "glass | 24 | cellar", "gear | 3 | shed"],
    ]


def test_tables_with_one_name_for_their_keys_show_their_heads() -> None:
    text = (
        "Day         High     Height\n"
        "Monday      Noon     Sill\n"
        "Tuesday     Night    Step\n\n"
        "Day         Boat     Keeper\n"
        "Monday      Tern     Ansgar\n"
        "Thursday    Gull     Brigid\n"
    )
    assert tables(text) == [
        ["Day = High = Height", "Monday | Noon | Sill", "Tuesday | Night | Step"],
        ["Day = Boat = Keeper", "Monday | Tern | Ansgar", "Thursday | Gull | Brigid"],
    ]


def test_groups_of_rows_between_blank_lines_are_one_table() -> None:
    text = (
        "Name        Kind      Cans   Shelf\n\n"
        "lamp oil    oil         14   upper\n"
        "whale oil   oil          2   upper\n\n"
        "flour       food         9   lower\n"
        "beef        food        12   lower\n\n"
        "wick        lamp        40   drawer\n"
    )
    (rows,) = tables(text)
    assert rows[0] == "Name = Kind = Cans = Shelf"
    assert rows[-1] == "wick | lamp | 40 | drawer"
    assert len(rows) == 6


def test_names_that_do_not_stand_over_their_columns() -> None:
    rows = ["00:00 | 3.1 | NE | clear", "06:00 | 7.9 | N | cloud", "12:00 | 3.3 | NW | fog"]
    body = (
        "  00:00      3.1       NE       clear\n"
        "  06:00      7.9       N        cloud\n"
        "  12:00      3.3       NW       fog\n"
    )
    for head in (
        "  Hour Depth Wind Sky\n",
        "  Hour   Depth   Wind   Sky\n",
        "     Hour       Depth        Wind      Sky\n",
    ):
        assert tables(head + body) == [["Hour = Depth = Wind = Sky", *rows]]
    titles = ("  Wind and depth\n", "  The Hours\n", "  Wind of the rock today\n")
    assert [tables(title + body) for title in titles] == [[rows]] * 3


def test_a_head_of_several_lines_without_a_word_over_the_keys() -> None:
    text = (
        "              Oil      Wicks    Glass\n"
        "              in       in       in\n"
        "              cans     boxes    crates\n"
        "North            14        2        1\n"
        "South            40        0        3\n"
        "Stack             0        9        2\n"
    )
    assert tables(text) == [
        [
            " = Oil in cans = Wicks in boxes = Glass in crates",
            "North | 14 | 2 | 1",
            "South | 40 | 0 | 3",
            "Stack | 0 | 9 | 2",
        ]
    ]


def test_a_word_over_keys_with_figures_names_them() -> None:
    text = (
        "  Code  Meaning              What to do\n"
        "  E1    The lamp is dark     Trim the wick\n"
        "  E2    The horn is silent   Fill the boiler\n"
    )
    assert tables(text)[0][0] == "Code = Meaning = What to do"


def test_a_list_inside_the_last_column_belongs_to_its_row() -> None:
    text = (
        "  Code  Meaning                        What to do\n"
        "  E1    The lamp does not light        Trim the wick\n"
        "                                         - short: cut it\n"
        "                                         - long: cut it more\n"
        "                                       Then light it\n"
        "  E2    The horn is silent             Fill the boiler\n"
        "                                         - by day: from the tank\n"
        "                                         - by night: from the cask\n"
    )
    assert tables(text) == [
        [
            "Code = Meaning = What to do",
            "E1 | The lamp does not light | Trim the wick\n- short: cut it\n- long: cut it more\nThen light it",
            "E2 | The horn is silent | Fill the boiler\n- by day: from the tank\n- by night: from the cask",
        ]
    ]


def test_a_single_blank_parts_figures_from_what_has_a_name_of_its_own() -> None:
    text = (
        "  Name      Qty Use      Shelf\n"
        "  wick        2 burn     A\n"
        "  oil can    14 fill     A\n"
        "  leather     1 wipe     drawer\n"
    )
    assert tables(text)[0] == [
        "Name = Qty = Use = Shelf",
        "wick | 2 | burn | A",
        "oil can | 14 | fill | A",
        "leather | 1 | wipe | drawer",
    ]
    units = text.replace("Qty Use ", "In store")
    assert tables(units)[0][1] == "wick | 2 burn | A"


@pytest.mark.parametrize("sign", ["$", "%", "#", "\u00a3"])
def test_a_name_with_the_sign_of_what_is_counted_heads_its_column(sign: str) -> None:
    text = (
        "+---------+---------+--------------------+\n"
        f"| Oil for | Price {sign} | Remarks            |\n"
        "+---------+---------+--------------------+\n"
        "| Lamp    | 612     | from the store     |\n"
        "| Horn    |         | none               |\n"
        "+---------+---------+--------------------+\n"
    )
    (table,) = read_text(text, "stores", "utf-8").blocks
    assert table.header_rows == 1


def test_figures_under_one_another_with_words_behind_them() -> None:
    """The last figures of the numbers stand under one another below the name of the column, whatever follows them."""
    table = (
        "     Part        Quantity       Price      Remarks\n"
        "     Oil         10 cwt 3 qr    612        from stock\n"
        "     Wicks        2 cwt         310        to come\n"
        "     Rope         3 men         940        at once\n"
    )
    rows = [
        "Part = Quantity = Price = Remarks",
        "Oil | 10 cwt 3 qr | 612 | from stock",
        "Wicks | 2 cwt | 310 | to come",
        "Rope | 3 men | 940 | at once",
    ]
    assert tables(table) == [rows]
    astray = table.replace("  2 cwt  ", "    2 cwt")
    assert tables(astray) != [rows]


def test_a_dash_before_the_text_of_the_first_row_too_makes_no_head_of_it() -> None:
    text = "Answers of the light:\n  LIT_OK          - OK\n  LIT_NO_OIL      - The tin is empty\n  LIT_NO_WICK     - The wick is too short\n"
    (table,) = (block for block in read_text(text, "codes", "ascii").blocks if block.kind is Kind.TABLE)
    assert table.header_rows == 0


def test_single_words_each_over_its_column_name_it() -> None:
    text = (
        "Place Hours Meaning\n  0     1   Oil of the lower tin (red, with a lid)\n  1     4   Wicks (cut)\n"
        "  5     8   Log (small letters). -1 is an unknown hour\n 13         Boats\n"
    )
    (table,) = (block for block in read_text(text, "hours", "ascii").blocks if block.kind is Kind.TABLE)
    assert [cell.chars for cell in table.rows[0]] == ["Place", "Hours", "Meaning"]
    assert table.header_rows == 1


def test_a_line_of_words_beside_the_columns_is_no_head_of_them() -> None:
    text = "Oil Wicks Log\n            0     1   Oil of the lower tin\n            1     4   Wicks (cut)\n            5     8   Log (small)\n"
    blocks = read_text(text, "hours", "ascii").blocks
    assert blocks[0].text.chars == "Oil Wicks Log"


BOATS = """\
          Miles                       1        2        3        4
                                   Relief   Stores   Relief   Sats.
                                    a.m.     a.m.     p.m.    only
          -----------------------------------------------------------
           0     Landing    dep.    7.10    10.00     4.15     8.30
           2     Low Stair          7.22     10.20    4.27
           3 1/2 Gull Rock           x                 x        x
           5     Mainland   arr.    7.45    11.05     4.50     9.00
          -----------------------------------------------------------
"""


def test_below_a_rule_one_blank_parts_columns_that_the_head_does_not_name() -> None:
    [block] = [block for block in read_text(BOATS, "boats", "ascii").blocks if block.kind is Kind.TABLE]
    rows = [[cell.chars for cell in row] for row in block.rows]
    assert rows[0][3:] == ["1 Relief a.m.", "2 Stores a.m.", "3 Relief p.m.", "4 Sats. only"]
    assert rows[3][:4] == ["3 1/2", "Gull Rock", "", "x"]


def test_words_below_a_rule_that_begin_where_no_other_line_has_a_gutter_stay_in_their_column() -> None:
    plain = BOATS.replace("0     Landing ", "0  the Landing").replace("2     Low", "2  the Low")
    blocks = read_text(plain.replace("5     Mainland", "5  the Mainland")[:-1], "boats", "ascii").blocks
    rows = [[cell.chars for cell in row] for block in blocks for row in block.rows]
    assert not any(row[:2] == ["3 1/2", "Gull Rock"] for row in rows)


SIGNS = """\
             Name of it             Meaning
          ---------------------------------------------------
          _  lamp_table             (table of the lamp)
          ^  lamp_trap              (trap for moths)
          ^  rolling_barrel_by_door (barrel)
          [  oilskin                (coat)
          B  bat                    (bat or bird)
"""


def test_a_cell_up_to_one_blank_before_a_column_that_the_head_names_too_keeps_the_column() -> None:
    [block] = [block for block in read_text(SIGNS, "signs", "ascii").blocks if block.kind is Kind.TABLE]
    assert [cell.chars for cell in block.rows[3]] == ["^", "rolling_barrel_by_door", "(barrel)"]


FAULTS = """\
  +---------------------+------+------+---------------------+
  | Kind of fault       | 1885 | 1886 | Cause               |
  +---------------------+------+------+---------------------+
  | Lamp out before the |    7 |    0 |                     |
  | end of the watch    |      |      |                     |
  +---------------------+------+------+---------------------+
  | Horn not heard      |   11 |    1 | Wind from the north |
  +---------------------+------+------+---------------------+
"""


def test_years_in_order_among_names_head_a_table_with_a_rule_below_each_row() -> None:
    [[head, *rows]] = tables(FAULTS)
    assert head == "Kind of fault = 1885 = 1886 = Cause"
    assert rows[0] == "Lamp out before the end of the watch | 7 | 0 | "


@pytest.mark.parametrize("years", ["1885 | 1885", "  85 |   86", "1885 |     "])
def test_other_figures_among_words_are_a_row(years: str) -> None:
    [rows] = tables(FAULTS.replace("1885 | 1886", years))
    assert " = " not in rows[0]


LONG_KEY = """\
                   # Tins   NAME   WEEKS   CLASS   KIND   SHELF
                   ------   ----   -----   -----   ----   -----
    add tins          1+    name   weeks   class   kind   shelf
    drop a tin        1     name     0      ANY    kind     0
    drop every tin    1     name     0      ANY     ANY     0
    drop tins         1+    name     0     NONE    kind   shelf
"""


def test_a_key_up_to_one_blank_before_the_name_of_the_next_column_parts_no_table() -> None:
    """Its own cell there stands farther right: wide blanks part both."""
    [[_, *rows]] = tables(LONG_KEY)[:1]
    assert [row.split(" | ")[:2] for row in rows] == [
        ["add tins", "1+"],
        ["drop a tin", "1"],
        ["drop every tin", "1"],
        ["drop tins", "1+"],
    ]


CROWDED = """\
Keeper      Name               Way Idle    Since           Room
lampists Isak the Younger      s3  1:11 Mon 12:15  28 cellar      106
northern Ansgar of the Maren   n1       Mon 15:46  19 tower        14
brewer   Brigid the Tall       s2    4d Thu 00:58  42 tower        15
landings Mother Thripp         q5    3d Thu 21:32  20 cellar   north-
sailings Tom Thripp            q4  021: Sun 18:24  19 cellar       28
cook     Signe Marrow          q6    2d Thu 14:11  22 cellar       28
menders  Ola Pell              q7    5  Mon 15:42  27 cottages     28
mate     Anne Pell             q8  2:01 Mon 10:15  28 cellar       11
"""


def test_names_one_blank_apart_over_two_columns_and_rows_as_close() -> None:
    [rows] = tables(CROWDED)
    assert rows[:3] == [
        "Keeper = Name = Way = Idle = Since = Room",
        "lampists | Isak the Younger | s3 | 1:11 | Mon 12:15 | 28 cellar 106",
        "northern | Ansgar of the Maren | n1 |  | Mon 15:46 | 19 tower 14",
    ]


def test_rows_that_part_no_columns_below_two_names_have_both() -> None:
    [rows] = tables(CROWDED.replace("1:11 Mon", "1:11-Mon"))
    assert rows[:2] == [
        "Keeper = Name = Way = Idle Since = Room",
        "lampists | Isak the Younger | s3 | 1:11-Mon 12:15 | 28 cellar 106",
    ]


def test_a_column_below_one_name_stays_one_whatever_its_rows_part() -> None:
    [rows] = tables(CROWDED.replace("Way Idle    Since", "Way      Since   "))
    assert rows[:2] == [
        "Keeper = Name = Way = Since = Room",
        "lampists | Isak the Younger | s3 | 1:11 Mon 12:15 | 28 cellar 106",
    ]


@pytest.mark.parametrize(("colon", "part"), [(":", " | "), ("", " = ")])
def test_keys_that_have_their_names_before_them_miss_none_above(colon: str, part: str) -> None:
    text = (
        "Board of Lights               Skerry Rock\n"
        "Order for Keepers: 1288       Guild of Lamps\n"
        "Ends: Orders 1196, 742        Works of the Sound\n"
        "Station: 12                   Landing\n"
    )
    [rows] = tables(text.replace(":", colon))
    assert rows[0] == part.join(["Board of Lights", "Skerry Rock"])
