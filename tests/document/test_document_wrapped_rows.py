"""Rows whose later lines have text in some columns only, though no rule parts the rows."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.text import read_text


def rows(text: str) -> list[str]:
    """The rows of the tables, heads with ``=``."""
    return rows_of(read_text(text, "a document", "ascii").blocks)


CASES = {
    "a cell goes on with a small word between bars": (
        """
+-------+------------------------+--------+--------------+
| Class |      Borrower          | Lamps  |    Weeks     |
+-------+------------------------+--------+--------------+
|   A   | Lighthouse, member     |   40   |      12      |
|       | of the board           |        |              |
|   B   | Lighthouse, other      |   10   |       6      |
|   C   | School or club         |    2   |       2, not |
|       |                        |        |  renewable   |
+-------+------------------------+--------+--------------+
""",
        [
            "Class = Borrower = Lamps = Weeks",
            "A | Lighthouse, member of the board | 40 | 12",
            "B | Lighthouse, other | 10 | 6",
            "C | School or club | 2 | 2, not renewable",
        ],
    ),
    "a key in the middle of its row, and no rule between the rows": (
        """
+----------+-------+--------------------------+-----------------+
| Keeper   | Hours | May be asked to          | May not         |
+----------+-------+--------------------------+-----------------+
|          |   48  | Trim lamps, ring bells   | Sing            |
| Second   |       | where there is no horn,  |                 |
|          |       | and light the stove      |                 |
|          |   54  | Anything that does not   | Touch the lens  |
| Third    |       | need a ladder            |                 |
| Boy      |   40  | Stand on the landing     | Leave it        |
+----------+-------+--------------------------+-----------------+
""",
        [
            "Keeper = Hours = May be asked to = May not",
            "Second | 48 | Trim lamps, ring bells where there is no horn, and light the stove | Sing",
            "Third | 54 | Anything that does not need a ladder | Touch the lens",
            "Boy | 40 | Stand on the landing | Leave it",
        ],
    ),
    "a key below a line without one that ended": (
        """
| Keeper   | Hours | Does                     |
|----------|-------|--------------------------|
|          |   48  | Trims the lamps.         |
| Second   |   54  | Winds the clock.         |
| Third    |   54  | Feeds the goat.          |
""",
        [
            "Keeper = Hours = Does",
            " | 48 | Trims the lamps.",
            "Second | 54 | Winds the clock.",
            "Third | 54 | Feeds the goat.",
        ],
    ),
    "figures go on behind a comma": (
        """
-----------------------------------------------------------
Signal                     Strokes                 Answer
-----------------------------------------------------------
Boat in sight              1                       1
Boat at the landing        2-3                     2-3
Boat in sight without her  9 on the large bell,    same
mate                       4-5 on the small one
-----------------------------------------------------------
""",
        [
            "Signal = Strokes = Answer",
            "Boat in sight | 1 | 1",
            "Boat at the landing | 2-3 | 2-3",
            "Boat in sight without her mate | 9 on the large bell, 4-5 on the small one | same",
        ],
    ),
    "the last of many letters beside a sentence that goes on": (
        """
-----------------------------------------------------
Lamp       Letters             Remark
-----------------------------------------------------
White      E I S H             Count them as they go
                               by, or you will send
                               five.
Green      T M O               Slow letters.
Red        C F K L P Q R X Y   Learn these last, one
           Z                   a day.
-----------------------------------------------------
""",
        [
            "Lamp = Letters = Remark",
            "White | E I S H | Count them as they go by, or you will send five.",
            "Green | T M O | Slow letters.",
            "Red | C F K L P Q R X Y Z | Learn these last, one a day.",
        ],
    ),
    "a key goes on, and a tolerance, beside another cell": (
        """
   Adjust       Where    Value            Instrument
   -----------  -------  ---------------  -------------
   Shutter      R14      7.50 in. +/-     Brass rule,
   speed                 0.02             fine side
   Servo zero   R22      0 mm +/- 5 mm    Gauge
   Reel brake   nut                       Spring gauge
""",
        [
            "Adjust = Where = Value = Instrument",
            "Shutter speed | R14 | 7.50 in. +/- 0.02 | Brass rule, fine side",
            "Servo zero | R22 | 0 mm +/- 5 mm | Gauge",
            "Reel brake | nut |  | Spring gauge",
        ],
    ),
    "one cell alone in the middle, and cells that begin beside one that goes on": (
        """
   -----------------------------------------------------
    Hut        Fuel           Tools            Inspected
   -----------------------------------------------------
    Landing    2 cwt.         Bars, 2          weekly
                              Shovels, 4
    Stair      1 cwt.         Bars, 1          monthly
    Gallery    As much as     Bars, 1
               is left        Brooms, long,    daily in
                              hand, 2          winter
   -----------------------------------------------------
""",
        [
            "Hut = Fuel = Tools = Inspected",
            "Landing | 2 cwt. | Bars, 2 Shovels, 4 | weekly",
            "Stair | 1 cwt. | Bars, 1 | monthly",
            "Gallery | As much as is left | Bars, 1 Brooms, long, hand, 2 | daily in winter",
        ],
    ),
    "rows under one key, each with a word and figures of its own": (
        """
   Landing     dep.    9.40    11.10
   Stair       arr.   10.09    11.39
               dep.   10.15    14.35
   Gallery     arr.   10.41    15.01
""",
        [
            "Landing | dep. | 9.40 | 11.10",
            "Stair | arr. | 10.09 | 11.39",
            " | dep. | 10.15 | 14.35",
            "Gallery | arr. | 10.41 | 15.01",
        ],
    ),
    "the rest of a key set in below it, of whatever signs": (
        """
   Kind of boat         Laden     Empty     Remarks
   ---------------------------------------------------------
   Supply boat           1.20      0.60
   Lugger, up to         2.50      1.25     Sundays double
    70 feet
   Keeper's dinghy       0.80               Half in winter
   Raft                            0.40     By day only
   ---------------------------------------------------------
""",
        [
            "Kind of boat = Laden = Empty = Remarks",
            "Supply boat | 1.20 | 0.60 | ",
            "Lugger, up to 70 feet | 2.50 | 1.25 | Sundays double",
            "Keeper's dinghy | 0.80 |  | Half in winter",
            "Raft |  | 0.40 | By day only",
        ],
    ),
    "a key without cells among keys that are set in is none": (
        """
   Kind of boat         Laden     Empty     Remarks
   ---------------------------------------------------------
   Supply boat           1.20      0.60     Once a week
    70 feet
     in winter           2.50      1.25     Sundays double
     in summer           0.80      0.40     Half by night
   Raft                            0.40     By day only
   ---------------------------------------------------------
""",
        [
            "Kind of boat = Laden = Empty = Remarks",
            "Supply boat | 1.20 | 0.60 | Once a week",
            "70 feet |  |  | ",
            "in winter | 2.50 | 1.25 | Sundays double",
            "in summer | 0.80 | 0.40 | Half by night",
            "Raft |  | 0.40 | By day only",
        ],
    ),
    "a key that ends in a colon is whole, and so is the one above it": (
        """
      Skerry lamp:    no limit
      store:          no limit
      boat lamp 1:    4000 pints
      boat lamp 2:    40 pints
      rock lamp:      [pending]
""",
        [
            "Skerry lamp: | no limit",
            "store: | no limit",
            "boat lamp 1: | 4000 pints",
            "boat lamp 2: | 40 pints",
            "rock lamp: | [pending]",
        ],
    ),
    "without the colons each line has all its cells as well": (
        """
      Skerry lamp     no limit
      store           no limit
      Boat lamp 1     4000 pints
      Boat lamp 2     40 pints
""",
        ["Skerry lamp | no limit", "store | no limit", "Boat lamp 1 | 4000 pints", "Boat lamp 2 | 40 pints"],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    text, wanted = CASES[name]
    assert rows(text) == wanted


def test_a_line_in_small_letters_with_all_its_cells_is_a_row() -> None:
    text = (
        "        Midsummer*                              Day of the boat\n"
        "        Mon before 6th Sun of the winter        Oil Monday\n"
        "        day after the great fog*                holiday\n"
    )
    assert rows_of(read_text(text, "log", "ascii").blocks)[1:] == [
        "Mon before 6th Sun of the winter | Oil Monday",
        "day after the great fog* | holiday",
    ]


def test_a_key_that_dots_carry_to_its_value_is_whole() -> None:
    """What stands alone below it, less deep, is the name of the next branch."""
    entries = [
        ("and", "and all tins"),
        ("wick", "equality"),
        ("get_next", "get next tin"),
        "horn",
        ("pump", "pressing air together"),
        "bell",
        ("rope", "tests rope"),
        ("strike", "tests strokes"),
    ]
    lines = [
        f"    {one}" if isinstance(one, str) else f"      {one[0]}  {'.' * (49 - len(one[0]))}  {one[1]}"
        for one in entries
    ]
    text = "rock\n  house\n    lamp\n" + "\n".join(lines) + "\n"
    found = rows_of(read_text(text, "tests", "ascii").blocks)
    assert [row.split()[0] for row in found] == [one if isinstance(one, str) else one[0] for one in entries]
    assert found[2].endswith(". | get next tin")


def test_a_key_that_begins_like_the_one_above_it_is_a_key_of_its_own() -> None:
    text = (
        "    lamp a.oil              -> fill it\n"
        "    lamp a.oil b.oil        -> fill it from both tins\n"
        "    lamp -U a.oil b.oil     -> fill it and throw the tins away\n"
        "    lamp *.oil\n"
    )
    assert rows_of(read_text(text, "lamp", "ascii").blocks)[-1] == "lamp *.oil | "


def test_keys_that_come_again_below_a_rule_are_no_head() -> None:
    text = "".join(
        f"what:   lamp --{name}\nwhy:    it says the same as --{other}\n\n--------------------------\n\n"
        for name, other in (("lit", "on"), ("dark", "off"), ("dim", "low"))
    )
    rows = rows_of(read_text(text, "old", "ascii").blocks)
    assert not any(" = " in row for row in rows)


def test_a_sentence_under_a_sentence_says_more_in_its_cell() -> None:
    text = (
        "   Open log       P    Take the log of a year from the shelf.\n"
        "                       The page of today is opened.\n"
        "   Close log      C    Put the log back.\n"
        "   Add line       A    Add a line to this page.\n"
        "   Strike line    D    Strike out a line of this page.\n"
    )
    assert rows(text)[:2] == [
        "Open log | P | Take the log of a year from the shelf. The page of today is opened.",
        "Close log | C | Put the log back.",
    ]


def test_a_list_inside_a_cell_has_columns_of_its_own() -> None:
    text = """\
0/0     char    4       id              what log it is
4/4     word    1       size in lines   64, and no more
8/8     long    1       sum             the usual sum of it
12/c    word    1       keeper          who wrote it
16/10   word    1       flags           as a rule 17
                                Bit     If set it means
                                0       No log is kept after this one
                                1       No lamp is lit but this one
                                2       The lamp is taken down in the
                                        morning
24/18   word    1       bad lines       where they begin
28/1c   word    1       tides           where they begin
"""
    assert rows(text)[4:9] == [
        "16/10 | word | 1 | flags | as a rule 17",
        " |  |  | Bit | If set it means",
        " |  |  | 0 | No log is kept after this one",
        " |  |  | 1 | No lamp is lit but this one",
        " |  |  | 2 | The lamp is taken down in the morning",
    ]


BOXED = """\
+------------------------------------+
| Lamp  | Keeper | Wicks | Oil | Log |
|       |        | a day |     |     |
|-------+--------+-------+-----+-----|
| North | Rowan  |   4   | 2.5 |  12 |
|   4   |   II   |       |     |     |
|-------+--------+-------+-----+-----|
| North | Holm   |   2   | 0.8 |  15 |
|   5   |        |       |     |     |
|-------+--------+-------+-----+-----|
| South | Finch  |   1   | 0.6 |   7 |
|   1   |        |       |     |     |
+------------------------------------+
"""


def test_rules_part_rows_of_which_the_first_line_alone_fills_all_cells() -> None:
    assert rows(BOXED) == [
        "Lamp = Keeper = Wicks a day = Oil = Log",
        "North 4 | Rowan II | 4 | 2.5 | 12",
        "North 5 | Holm | 2 | 0.8 | 15",
        "South 1 | Finch | 1 | 0.6 | 7",
    ]


def test_rules_part_groups_whose_lines_fill_half_of_their_cells() -> None:
    text = BOXED.replace("|   5   |        |       |     |     |", "|   5   | Rowan  |   3   |     |     |")
    assert "5 | Rowan | 3 |  | " in rows(text)


def test_figures_under_figures_begin_a_row_though_the_key_stands_above() -> None:
    text = """\
     Order    Source                     Source to glass        Rail
     ---------------------------------------------------------------
     4        rape oil, up to 100 W                187,5         350
              oil, one wick                     187,5 a)         350
     5        tallow                                 150
     6        gas, with mantle, or                   110      300 b)
              acetylene
"""
    assert rows(text)[1:] == [
        "4 | rape oil, up to 100 W | 187,5 | 350",
        " | oil, one wick | 187,5 a) | 350",
        "5 | tallow | 150 | ",
        "6 | gas, with mantle, or acetylene | 110 | 300 b)",
    ]


STAGES = """\
  Stage      On the quay                  In the boat
             Take in the lower ladder,    Wait. Nobody is to cast off
  Flood      and see to the fenders of    while the buoy leans inward.
             every boat on the north
             side.

             Nothing.                     Cast off at once: slack
  Slack                                   lasts eleven minutes, and
                                          less at springs.

             Let down the ladder. Look    Keep to the middle. The
  Ebb        for the boat-hook, which     reef, which dries, lies to
             will be on the steps.        the south of it.
"""


def test_keys_in_the_middle_of_their_rows_the_first_one_right_below_the_head() -> None:
    found = rows(STAGES)
    assert found[0] == "Stage = On the quay = In the boat"
    assert found[1].startswith("Flood | Take in the lower ladder, and see to the fenders of every boat")
    assert [row.split()[0] for row in found[2:]] == ["Slack", "Ebb"]


def test_a_key_right_below_a_full_row_where_no_other_stands_in_the_middle() -> None:
    text = STAGES.replace("\n\n             Nothing.", "\n\n  Slack      Nothing.").replace(
        "\n  Slack                ", "\n                       "
    )
    text = text.replace("             Let down the", "  Ebb        Let down the").replace(
        "  Ebb        for the", "             for the"
    )
    found = rows(text)
    assert found[1] == " | Take in the lower ladder, | Wait. Nobody is to cast off"
