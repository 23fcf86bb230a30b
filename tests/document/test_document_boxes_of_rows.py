"""Rows of tables: several lines between two rules, keys that fill their column, signs that look like bars."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair.\n"
)


def rows(text: str) -> list[list[str]]:
    """The rows of all tables."""
    blocks = read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks
    return [
        [cell.chars for cell in row] for block in blocks if block.kind is Kind.TABLE for row in block.rows
    ]


def test_a_head_with_a_rule_of_its_own_and_rows_of_several_lines() -> None:
    table = """\
+------------+---------+--------------------+
| Setting    | Since   | Meaning            |
+============+=========+====================+
| lamp_he    | all     | Height             |
| ight_limit |         | of the lamp        |
| oil_he     |         | above the rock     |
| ight_limit |         |                    |
+------------+---------+--------------------+
| fog_be     | third   | Bells              |
| ll_count   |         | in fog             |
| horn_ti    |         |                    |
+------------+---------+--------------------+
| watch_pair | fourth  | Two keepers        |
|            |         | on watch           |
+------------+---------+--------------------+
"""
    found = rows(table)
    assert [row[2] for row in found] == [
        "Meaning",
        "Height of the lamp above the rock",
        "Bells in fog",
        "Two keepers on watch",
    ]


def test_groups_of_whole_rows_below_a_head_stay_rows() -> None:
    part = "| oil    | 12    | 7     |\n| wicks  | 40    | 8     |\n+--------+-------+-------+\n"
    rule = "+--------+-------+-------+\n"
    table = f"{rule}| Store  | Tower | House |\n+========+=======+=======+\n{part}{part}{part}"
    assert len(rows(table)) == 7


def test_signs_in_the_words_of_a_long_table_are_no_bars() -> None:
    texts = ["show + ring", "a+ and b", "ab+c", "light + fog", *["the hour"] * 41]
    body = "".join(
        f"| {number:<4} | {text:<12} |\n+------+--------------+\n" for number, text in enumerate(texts)
    )
    table = f"+------+--------------+\n| Key  | Meaning      |\n+------+--------------+\n{body}"
    assert len(rows(table)) == 46


def test_keys_that_fill_their_column_are_rows() -> None:
    pairs = [
        ("lamp", "lamp status word"), ("wick", "height of wick"), ("stratum", "driver stratum"),
        ("tower wick", "count of spare wicks in the tower"), ("house wick", "count of spare wicks in the house"),
        ("glass", "barometer at noon"), ("fog", "hours of fog"),
    ]  # fmt: skip
    table = "".join(f"{key:<10} {meaning}\n\n" for key, meaning in pairs)
    assert [tuple(row) for row in rows(table)] == pairs


def test_a_justified_paragraph_below_a_full_line_is_no_table() -> None:
    text = """\
       An alternative is  the old  drill  of  the  Skerry  Light  <https://
       light.example/old/drill/for-lamp-and-bell>  book, begun in 1925, which
       provides another order for the lamp and the fog bell found in the open
       windows  and  all  the  doors,  and is read there as often as under it
       towers.  You can get this book with the old boat.
"""
    assert rows(text) == []


def test_rows_with_blank_lines_between_make_no_double_spaced_text() -> None:
    pairs = [
        ("tally", "sign for the state of the lamp in the tower"), ("remote", "name of the other light"),
        ("refid", "number of the lamp on the rock"), ("since", "hours of the watch"),
    ]  # fmt: skip
    table = "".join(f"{key:<8} {meaning}\n\n" for key, meaning in pairs)
    text = f"The keeper shows a list of all lamps in this form\n\nlamp wick oil height\n\n{table}"
    blocks = read_text(f"{PROSE}\n\n{text}\n{PROSE}", "log", "ascii").blocks
    assert "The keeper shows a list of all lamps in this form" in [block.text.chars for block in blocks]


def test_a_head_over_two_columns_of_keys_names_the_figures_beside_them() -> None:
    boats = """\
              Mon-Fri   Mon-Fri   Saturdays   Sundays
Quay    dep.    07:15     12:40       08:00     09:30
Rock    arr.    07:50     13:15       08:35     10:10
Rock    dep.    08:00     13:30                 17:00
Quay    arr.    08:40     14:05                 17:35
"""
    blocks = read_text(f"{PROSE}\n{boats}\n{PROSE}", "boats", "ascii").blocks
    (table,) = (block for block in blocks if block.kind is Kind.TABLE)
    assert table.header_rows == 1
    assert [cell.chars for cell in table.rows[0]] == ["", "", "Mon-Fri", "Mon-Fri", "Saturdays", "Sundays"]


GROUPS = """\
+-----------+----------+-----------------------------+
| Kind      | Order    | What it does                |
+-----------+----------+-----------------------------+
|           | UP       | goes to the lamp            |
| Stairs    | DOWN     | goes to the store, the      |
|           |          | long way                    |
|           | STAY     | nothing                     |
+-----------+----------+-----------------------------+
| Looking   | LOOK     | tells the room again        |
| (by day)  | WATCH    | tells what is at sea        |
+-----------+----------+-----------------------------+
"""


def test_rows_of_a_group_between_two_rules_with_the_label_beside_their_middle() -> None:
    assert rows(GROUPS)[1:] == [
        ["Stairs", "UP", "goes to the lamp"],
        ["Stairs", "DOWN", "goes to the store, the long way"],
        ["Stairs", "STAY", "nothing"],
        ["Looking (by day)", "LOOK", "tells the room again"],
        ["Looking (by day)", "WATCH", "tells what is at sea"],
    ]


def test_figures_of_a_group_of_which_the_last_is_wanting() -> None:
    table = """\
              | Cans |  First lamp |  Second lamp
--------------+------+-------------+--------------
              |  10  |    0 h 11   |    0 h 04
  Long wicks  |  50  |    1 h 02   |    0 h 15
  (by night)  | 200  |    4 h 20   |    0 h 55
--------------+------+-------------+--------------
  Short wicks |  10  |    0 h 40   |    0 h 13
  (by day)    |  50  |    3 h 58   |
--------------+------+-------------+--------------
"""
    assert rows(table)[1:] == [
        ["Long wicks (by night)", "10", "0 h 11", "0 h 04"],
        ["Long wicks (by night)", "50", "1 h 02", "0 h 15"],
        ["Long wicks (by night)", "200", "4 h 20", "0 h 55"],
        ["Short wicks (by day)", "10", "0 h 40", "0 h 13"],
        ["Short wicks (by day)", "50", "3 h 58", ""],
    ]


def test_wrapped_cells_between_rules_are_one_row() -> None:
    table = """\
+---------+-------------+------------------------------+
| Place   | Who may go  | What to look after           |
+---------+-------------+------------------------------+
| Lamp    | The keeper  | The wick is trimmed at noon, |
| room    | and his     | The Board wants the glass to |
|         | mate        | be washed after it           |
+---------+-------------+------------------------------+
| Cellar  | The mate of | The Board counts the cans in |
|         | the Keeper  | May                          |
+---------+-------------+------------------------------+
"""
    assert [row[0] for row in rows(table)[1:]] == ["Lamp room", "Cellar"]


KEYS = """\
+---------+---------------------+---------------------+
| Key     | Does                | Remark              |
+=========+=====================+=====================+
| F1      | lights the lamp     |                     |
| F2      | sounds the horn     | locked in clear air |
+---------+---------------------+---------------------+
|         | turns the lens left | The bell rings      |
| < or >  | or right as long as | before it moves.    |
|         | it is held          |                     |
+---------+---------------------+---------------------+
| SHIFT   | with another key:   |                     |
|         | half as bright      |                     |
+---------+---------------------+---------------------+
"""


def test_keys_that_differ_by_a_number_alone_are_rows_within_one_rule() -> None:
    assert rows(KEYS)[1:] == [
        ["F1", "lights the lamp", ""],
        ["F2", "sounds the horn", "locked in clear air"],
        ["< or >", "turns the lens left or right as long as it is held", "The bell rings before it moves."],
        ["SHIFT", "with another key: half as bright", ""],
    ]


def test_keys_of_two_words_within_one_rule_are_one_row() -> None:
    found = rows(KEYS.replace("F1 ", "ALT").replace("F2   ", "and 2"))
    assert found[1] == ["ALT and 2", "lights the lamp sounds the horn", "locked in clear air"]


FAULTS = """\
What you see            What it may be         What to do
------------------------------------------------------------------
No light                Wick                   Change it once, not
                                               twice
                        Oil cock shut          Open it
                        Lens cover on          Take it off
------------------------------------------------------------------
Light, but nothing      Clock run down         Wind it
turns                   Weight stuck           Wait
------------------------------------------------------------------
"""


def test_the_label_of_a_group_goes_on_beside_its_second_key() -> None:
    assert rows(FAULTS)[1:] == [
        ["No light", "Wick", "Change it once, not twice"],
        ["No light", "Oil cock shut", "Open it"],
        ["No light", "Lens cover on", "Take it off"],
        ["Light, but nothing turns", "Clock run down", "Wind it"],
        ["Light, but nothing turns", "Weight stuck", "Wait"],
    ]


def test_a_label_beside_a_key_that_goes_on_too_is_that_of_no_group() -> None:
    found = rows(FAULTS.replace("Weight stuck           Wait", "or not oiled           in June"))
    assert not any(row[:2] == ["Light, but nothing turns", "or not oiled"] for row in found)
