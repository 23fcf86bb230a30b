"""Tables between rules that are parted where the columns are, though a row alone or wrapped ones show no gutter."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.text import read_text

BEFORE = (
    "The keeper on watch trims the lamp at dusk and writes the hour in the log book, as it is told here.\n\n"
)
RULE = "    -------- ------------------------------------------------\n"
ROW = """\
    sticky   keeps the lamp lit through the day, also where the
             tide table says otherwise
"""


def test_one_row_between_two_rules() -> None:
    text = f"{BEFORE}Options:\n\n{RULE}{ROW}{RULE}\nReturns: nothing\n"
    blocks = read_text(text, "lamp", "ascii").blocks
    assert rows_of(blocks) == [
        "sticky | keeps the lamp lit through the day, also where the tide table says otherwise"
    ]
    assert not any("--" in block.text.chars for block in blocks)


def test_wrapped_rows_below_names_and_above_a_whole_rule() -> None:
    whole = "  " + "-" * 56 + "\n"
    text = f"""\
{whole}  Bell           What the Keeper Does
  -------------- -----------------------------------------
  once           Lights the lamp, and writes the hour in the
                 log book.

  twice          Sounds the horn until the fog has gone from
                 the landing.
{whole}"""
    assert rows_of(read_text(f"{BEFORE}{text}\nHe may ring it again.\n", "bells", "ascii").blocks) == [
        "Bell = What the Keeper Does",
        "once | Lights the lamp, and writes the hour in the log book.",
        "twice | Sounds the horn until the fog has gone from the landing.",
    ]


def test_a_rule_alone_and_text_across_the_columns_are_no_table() -> None:
    for text in (f"{RULE}{ROW}", f"{RULE}    The keeper reads it at dusk.\n{RULE}"):
        assert not rows_of(read_text(f"{BEFORE}{text}\nReturns: nothing\n", "lamp", "ascii").blocks)


THRICE = """\
====== ============= ====================================
Sign   Meaning       What the Keeper Does
====== ============= ====================================
!      Oil is low    Fills the tank.  This is told  again
                     until the tank is full.

&      Look at the   Reads the glass, which is
       glass beside  read each
       (the landing) hour from then on.

-      Lamp is out   Wakes the other one.
====== ============= ====================================
"""


def test_a_cell_as_wide_as_its_column_under_a_rule_that_stands_three_times() -> None:
    blocks = read_text(f"{BEFORE}{THRICE}\nHe may ring the bell as well.\n", "signs", "ascii").blocks
    assert rows_of(blocks) == [
        "Sign = Meaning = What the Keeper Does",
        "! | Oil is low | Fills the tank. This is told again until the tank is full.",
        "& | Look at the glass beside (the landing) | Reads the glass, which is read each hour from then on.",
        "- | Lamp is out | Wakes the other one.",
    ]
    assert not any("==" in block.text.chars for block in blocks)


def test_text_across_the_columns_is_no_row_of_such_a_table() -> None:
    text = THRICE.replace("-      Lamp is out   Wakes", "-      The lamp is out now: he wakes")
    assert len(rows_of(read_text(f"{BEFORE}{text}\nSo it is.\n", "signs", "ascii").blocks)) < 4


PARTED = """\
    Thing           lb.   Where it is said to be, and what is
                          said to be its use
    =============  =====  ===================================
    lamp              3   in your hand; light
    =============  =====  ===================================
                          lamp house, lower floor; it drives
    boiler plug      11   the pump as long as the fire is in,
                          but it is hot
    =============  =====  ===================================
    rope, 60 ft.     14
    =============  =====  ===================================
    rope, wet        25   as above, after use
    =============  =====  ===================================
                          on a nail by the door of the store,
    ledger            6   a good way from the place where it
                          is kept
    =============  =====  ===================================
"""


def test_the_last_row_of_many_that_rules_part_is_no_table_by_itself() -> None:
    blocks = read_text(PARTED, "things", "ascii").blocks
    rows = [[cell.chars for cell in row] for block in blocks for row in block.rows]
    assert rows[-1][:2] == ["ledger", "6"]
    assert rows[-1][2].startswith("on a nail by the door of the store, a good way")
