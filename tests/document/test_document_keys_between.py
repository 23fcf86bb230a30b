"""Signs that stand for themselves between keys of their list: no prompt, no remark, no command."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = """\
The slate in the store has a column of signs, and the keeper on watch writes
one of them beside each hour, so that the relief can see what was done.

"""
KEYS = """\
     n       The nth hour of the watch, counted from the one at which the lamp
             was lit.

     $       The last hour of the watch.

     %       An  abbreviation for all hours, from the first to the last of the
             watch.

     +n -n   An offset from the hour at which this is written.
"""
ROWS = """\
     \\|      parts the hours
     ?       0 or 1 blasts of the horn: same as \\{0,1\\}
     +       1 or more blasts of the horn: same as \\{1,\\}
     \\a      "alert" bell     (BEL, by hand, 0x07)
     \\b      boat             (BS, by eye, 0x08)
     \\n      night            (LF, all night, 0x0A)
     \\t      horizontal lamp  (HT, by day, 0x09)
     \\bBBB   blasts, where BBB are 1-8 blasts, [0-1]
     \\dDDD   days, where DDD are 1-3 days, [0-9]
"""


def items(text: str) -> list[str]:
    return [
        block.label.chars
        for block in read_text(BEFORE + text, "slate", "ascii").blocks
        if block.kind is Kind.ITEM
    ]


def test_signs_of_prompts_between_keys() -> None:
    assert items(KEYS) == ["n", "$", "%", "+n -n"]


def test_rows_that_begin_as_commands_of_a_formatter_do() -> None:
    rows = rows_of(read_text(BEFORE + ROWS, "slate", "ascii").blocks)
    assert [row.split(" | ")[0] for row in rows] == [
        "\\|",
        "?",
        "+",
        "\\a",
        "\\b",
        "\\n",
        "\\t",
        "\\bBBB",
        "\\dDDD",
    ]


@pytest.mark.parametrize(
    "line",
    [
        "     % light the lamp of the landing",
        "     %         The number of blasts at another column than that of all others.",
    ],
)
def test_what_is_typed_between_keys_is_no_key(line: str) -> None:
    first, rest = KEYS.split("     %", 1)
    assert items(f"{first}{line}\n\n     +{rest.split('     +', 1)[1]}") == ["n", "$", "+n -n"]


def test_values_that_look_like_statements_below_others_that_do_not() -> None:
    text = """\
     Pi = 1  -> the horn is one of the fog horns of the landing.
     Pi = 2  -> the horn is one of the tower (with a key).

     Pa = 1  -> sound once.
     Pa = 2  -> stop.
     Pa = 3  -> sound as told in Pv.
"""
    assert items(text) == ["Pi = 1", "Pi = 2", "Pa = 1", "Pa = 2", "Pa = 3"]


def test_the_first_sign_of_a_list() -> None:
    text = "     $       The last hour of the watch.\n\n" + KEYS.split("\n\n", 2)[2]
    assert items(f"     %       The first hour of the watch.\n\n{text}") == ["%", "$", "%", "+n -n"]


def test_the_same_sign_again_is_a_mark_before_lines_that_stay() -> None:
    text = """\
     lamp    the lamp of the landing
     #       two lamps in one line of the slate
     #       the first for the north, the second for the south
     #       and what the keeper says of it
     horn    the horn of the tower
"""
    blocks = read_text(BEFORE + text, "slate", "ascii").blocks
    assert not any(row[0] == "#" for row in rows_of(blocks))
    assert "#" not in items(text)
