"""Tables of figures: the rule under a sum is no rule under a head, and years or counted columns are one."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.text import read_text

BILL = """
     Oil for the lamp, refined                      1.20
     Paper, stiff, 4 quires                         2.40
     Pie-dish                                       0.85
"""
BILL_ROWS = ["Oil for the lamp, refined | 1.20", "Paper, stiff, 4 quires | 2.40", "Pie-dish | 0.85"]


def rows(text: str) -> list[str]:
    """The rows of all tables with bars between their cells, those of heads with ``=``."""
    return rows_of(read_text(text, "a document", "ascii").blocks)


@pytest.mark.parametrize("stroke", ["                    ----", "------------------------", "    ____"])
def test_a_rule_above_a_total_makes_no_head_of_the_rows_above_it(stroke: str) -> None:
    total = f"{stroke:>56}\n     Total                                          4.45\n"
    assert rows(BILL + total) == [*BILL_ROWS, "Total | 4.45"]
    bare = f"{stroke:>56}\n                                                    4.45\n"
    assert rows(BILL + bare) == [*BILL_ROWS, " | 4.45"]


def test_a_rule_under_a_head_still_makes_one() -> None:
    text = "     Store                                         Price\n     " + "-" * 51 + BILL
    text += " " * 52 + "----\n" + " " * 52 + "4.45\n"
    assert rows(text) == ["Store = Price", *BILL_ROWS, " | 4.45"]


def test_years_over_a_sum() -> None:
    text = "                                    1984      1985\n     Letters                        48.00     52.00\n"
    text += "     Sale of eggs                    3.50      1.25\n                                    -----     -----\n"
    text += "     Total                          51.50     53.25\n                                    =====     =====\n"
    assert rows(text) == [
        " = 1984 = 1985",
        "Letters | 48.00 | 52.00",
        "Sale of eggs | 3.50 | 1.25",
        "Total | 51.50 | 53.25",
    ]


COUNTS = "{}\n{}  Gull           1,204   1,198   1,311   1,290\n  Shag              44      51      38\n"
COUNTS += "  Turnstone         17              22      19\n"


@pytest.mark.parametrize("between", ["", "\n"])
@pytest.mark.parametrize(
    ("names", "first"),
    [
        ("                  1979    1980    1981    1982", " = 1979 = 1980 = 1981 = 1982"),
        ("  Bird            1979    1980    1981    1982", "Bird = 1979 = 1980 = 1981 = 1982"),
        ("  Hour               0       6      12      18", "Hour = 0 = 6 = 12 = 18"),
    ],
)
def test_counted_columns_have_a_head(names: str, first: str, between: str) -> None:
    text = COUNTS.format(names, between)
    assert rows(text)[:2] == [first, "Gull | 1,204 | 1,198 | 1,311 | 1,290"]


def test_seasons_count_columns() -> None:
    text = (
        "Hens         1979-80    1980-81\nBrown              4          6\nWhite             11          9\n"
    )
    assert rows(text)[0] == "Hens = 1979-80 = 1980-81"


def test_a_row_of_figures_is_no_head() -> None:
    rising = "  Oil        1      2      3\n  Wick       4      9      1\n  Rope       1      0      0\n"
    assert rows(rising)[0] == "Oil | 1 | 2 | 3"
    both = "  Oil        1      2      3      4\n  Wick       2      4      6      8\n  Rope       1      0      0      0\n"
    assert rows(both)[0] == "Oil | 1 | 2 | 3 | 4"


def test_a_head_apart_without_a_word_over_the_keys() -> None:
    text = "                  Sat.     Sun.     Weekdays\n\nHarbour, dep.     08:15    09:30    07:00\n"
    text += "Skerry, dep.      16:00    15:30    if at all\nHarbour, arr.     16:40\n"
    assert rows(text)[:2] == [" = Sat. = Sun. = Weekdays", "Harbour, dep. | 08:15 | 09:30 | 07:00"]


ACCOUNT = """
     Brought forward ............................ 112.40
     Letters, 24 at 2.00 ........................  48.00
                                                  ------
                                                  160.40

     Less postage ...............................  11.20
     Less tea, biscuits and a new tin for the biscuits 9.05
                                                  ------
     Carried forward ............................ 140.15
                                                  ======
"""


def test_an_account_with_leaders_has_sums_and_an_entry_without_room() -> None:
    blocks = read_text(
        f"The keeper of the tea writes:\n{ACCOUNT}\nNobody objected.\n", "a document", "ascii"
    ).blocks
    assert [block.text.chars for block in blocks[1:-1]] == [
        "Brought forward ... 112.40",
        "Letters, 24 at 2.00 ... 48.00",
        "160.40",
        "Less postage ... 11.20",
        "Less tea, biscuits and a new tin for the biscuits 9.05",
        "Carried forward ... 140.15",
    ]


@pytest.mark.parametrize("dots", ["\u00b7" * 30, " \u00b7" * 15 + " ", "\u2219" * 30])
def test_leaders_of_middle_dots(dots: str) -> None:
    lines = f"The Lamp {dots} 1\nThe Horn {dots} 4\nThe Boat {dots}12\n"
    blocks = read_text(lines, "a document", "utf-8").blocks
    assert [block.text.chars.split()[-1] for block in blocks] == ["1", "4", "12"]


def test_a_head_of_two_lines_apart_without_a_word_over_the_keys() -> None:
    text = "                      1979    1980    1981\n                      tons    tons    tons\n\n"
    text += "Coal                    44      51      38\nOil                      3       8       5\n"
    text += "Water                  120     118     131\n"
    assert rows(text) == [
        " = 1979 tons = 1980 tons = 1981 tons",
        "Coal | 44 | 51 | 38",
        "Oil | 3 | 8 | 5",
        "Water | 120 | 118 | 131",
    ]


def test_rows_without_a_key_are_no_head_of_the_rows_below_them() -> None:
    text = "        Tab      ends a word of the log\n        Space    ends a word of the log\n\n"
    text += (
        ",       Comma    parts two wicks\n;       Sign     starts a remark\n:       Colon    ends a name\n"
    )
    assert " = " not in " ".join(rows(text))


def test_the_word_beside_a_sum_may_stand_over_a_gutter() -> None:
    text = """
No.  Article      Unit    Min   In hand  Order  Price  Value
001  Lamp oil     barrel    4         7      5   2.40  16.80
002  Wick, round  doz       2         3      -   0.35   1.05
003  Wick, flat   doz       2         1      5   0.30   0.30
                                                       -----
                                         Total         18.15
"""
    assert rows(text)[-1] == " |  |  |  |  | Total |  | 18.15"


def test_a_title_right_over_a_head_is_no_row() -> None:
    text = """
Account 1201  Oil                                    Page  7
Date     Text                 Debit    Credit   Balance
01-03    Brought forward                        112.40
02-03    Harbour, 4 barrels    48.00            160.40
09-03    Lamp, used                      12.20  148.20
31-03    Carried forward                        148.20
"""
    assert rows(text)[:2] == [
        "Date = Text = Debit = Credit = Balance",
        "01-03 | Brought forward |  |  | 112.40",
    ]


def test_wide_blanks_around_the_sign_of_a_formula_part_no_columns() -> None:
    formula = "    Oil = Hours * (1 + Wick/Glass)  -  (Wick/Glass) * Rest\n\n"
    said = "So, the usual figure is:  1 + Wick/Glass\n    the other figure is:  - (Wick/Glass)\n"
    assert rows("All oil of a night is then:\n\n" + formula + said) == []


@pytest.mark.parametrize("sign", ["", "\u00a3 "])
def test_a_rule_above_a_total_that_the_reader_fills_in_makes_no_head_of_the_rows(sign: str) -> None:
    order = [
        ("___ books of tides, at 2.50", "______"),
        ("___ lamp glasses, at 1.20", "______"),
        ("Postage", "  1.00"),
    ]
    text = "".join(f"     {key:<42}{sign}{value}\n" for key, value in order)
    text += f"{'--------':>55}\n     {'Total':<42}{sign}______\n"
    assert rows(f"Please send me:\n\n{text}") == [
        f"___ books of tides, at 2.50 | {sign}______",
        f"___ lamp glasses, at 1.20 | {sign}______",
        f"Postage | {sign}1.00",
        f"Total | {sign}______",
    ]
