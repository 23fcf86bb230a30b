"""Tables between three rules: names over several columns, lines over all columns, and what has none of these."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

LEAD = "The lamps of the rock and what each of them burns are in the table below.\n\n"
RULE = "   " + "-" * 66 + "\n"
HEAD = (
    "   LAMP       OIL BURNT IN THE WATCH      WICKS KEPT IN THE STORE\n"
    "              FIRST   SECOND   THIRD      LONG      SHORT\n"
)
OLD = "     1        LITTLE  MUCH     MUCH         NO        YES\n     2T       MUCH    LITTLE   NONE         YES       NO\n"
NEW = "     10       MUCH    MUCH     MUCH         YES       NO\n     11       NONE    LITTLE   MUCH         NO        YES\n"
GROUPS = (
    RULE + HEAD + RULE + "   OLD LAMPS (T = OF TIN, WITHOUT A GLASS)\n" + OLD + "   NEW LAMPS\n" + NEW + RULE
)
NAMES = (
    "LAMP = OIL BURNT IN THE WATCH FIRST = OIL BURNT IN THE WATCH SECOND = OIL BURNT IN THE WATCH THIRD"
    " = WICKS KEPT IN THE STORE LONG = WICKS KEPT IN THE STORE SHORT"
)


def blocks_of(text: str) -> list[list[str]]:
    """The rows of each table, or the text of each other block, below the lead."""
    blocks = read_text(LEAD + text + "\n" + LEAD, "stores", "ascii").blocks[1:-1]
    return [rows_of([block]) if block.kind is Kind.TABLE else [block.text.chars] for block in blocks]


def test_lines_over_all_columns_name_groups_and_each_begins_with_the_head() -> None:
    assert blocks_of(GROUPS) == [
        ["OLD LAMPS (T = OF TIN, WITHOUT A GLASS)"],
        [NAMES, "1 | LITTLE | MUCH | MUCH | NO | YES", "2T | MUCH | LITTLE | NONE | YES | NO"],
        ["NEW LAMPS"],
        [NAMES, "10 | MUCH | MUCH | MUCH | YES | NO", "11 | NONE | LITTLE | MUCH | NO | YES"],
    ]


def test_names_over_several_columns_go_with_each_name_under_them() -> None:
    [rows] = blocks_of(RULE + HEAD + RULE + OLD + NEW + RULE)
    assert rows[0] == NAMES
    assert rows[3] == "10 | MUCH | MUCH | MUCH | YES | NO"


def test_a_lower_name_over_two_columns_is_none_of_theirs() -> None:
    names, lower = HEAD.splitlines(keepends=True)
    found = blocks_of(RULE + names + lower.replace("   SECOND ", "--SECOND ") + RULE + OLD + NEW + RULE)
    assert not any("WATCH FIRST" in row for rows in found for row in rows)


def test_a_text_between_three_rules_is_no_table() -> None:
    text = (
        RULE
        + "   The Keeper of the Watch\n"
        + RULE
        + "   The keeper of the watch lights the lamp and trims the wick, and\n"
        + "   he winds the clock  that turns it;  the mate has the boat and\n"
        + "   the landing, and what comes to it in the course of the night.\n"
        + RULE
    )
    assert all(len(block) == 1 for block in blocks_of(text))
