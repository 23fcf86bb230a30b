"""Lists side by side: items in two or three columns, keys under two names, and tables that only look like them."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

ABOVE = """\
The second keeper sees to it that all of these are in the boat before he
sets out for the landing, and the first keeper signs for them later:

"""


def items(text: str) -> list[str]:
    """The items below the paragraph, labels and texts."""
    blocks = read_text(ABOVE + text, "stores", "ascii").blocks[1:]
    assert all(block.kind is Kind.ITEM for block in blocks)
    return [f"{block.label.chars} {block.text.chars}" for block in blocks]


def test_bullets_in_two_columns_are_items_of_their_own() -> None:
    found = items("""\
   * the big kettle          * something to fish it
   * a plate, with a           out with
     spoon to it             * treacle
""")
    assert found == [
        "* the big kettle",
        "* a plate, with a spoon to it",
        "* something to fish it out with",
        "* treacle",
    ]


def test_numbers_tell_whether_items_are_read_down_or_across() -> None:
    down = items("""\
   1. oars                   3. a pail
   2. rope                   4. a lamp
""")
    across = items("""\
   1. oars                   2. rope
   3. a pail                 4. a lamp
""")
    assert down == across == ["1. oars", "2. rope", "3. a pail", "4. a lamp"]


def test_three_items_in_each_line() -> None:
    found = items("""\
   a) oars      b) rope      c) a pail
   d) a lamp    e) treacle
""")
    assert found == ["a) oars", "b) rope", "c) a pail", "d) a lamp", "e) treacle"]


def test_numbers_that_do_not_follow_one_another_are_no_list() -> None:
    text = ABOVE + "   1. oars                   1. tin\n   2. rope                   2. bag\n"
    labels = [block.label.chars for block in read_text(text, "stores", "ascii").blocks]
    assert labels.count("1.") < 2


def test_one_line_with_two_bullets_shows_no_columns() -> None:
    blocks = read_text(ABOVE + "   * oars      * rope\n   * a pail of water\n", "stores", "ascii").blocks
    assert [block.text.chars for block in blocks if block.label.chars == "*"] != [
        "oars",
        "rope",
        "a pail of water",
    ]


SIDES = """\
LIGHTING                              TRIMMING
^L        the lamp                    ^Z        all the lamps
^W        the wick alone              ^Y        the first wick; puts the
^A        all of them, with the                 old one back
          spare one                   ^X        the last wick
^R 2      the second lamp
"""


def test_keys_whose_texts_are_wrapped_under_two_names() -> None:
    blocks = read_text(SIDES, "keys", "ascii").blocks
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["LIGHTING", "TRIMMING"]
    words = " ".join(
        " ".join([block.label.chars, block.text.chars, *(cell.chars for row in block.rows for cell in row)])
        for block in blocks
    )
    assert "all of them, with the spare one ^R 2 the second lamp" in words
    assert words.endswith("the first wick; puts the old one back ^X the last wick")


def test_the_same_keys_under_two_names_are_compared() -> None:
    text = """\
BY DAY                                BY NIGHT
^L        the lamp                    ^L        the spare lamp
^W        the wick alone              ^W        both wicks
^A        all of them                 ^A        none of them
"""
    rows = rows_of(read_text(text, "keys", "ascii").blocks)
    assert any("the lamp | ^L | the spare lamp" in row for row in rows)


def test_a_dash_between_names_and_what_they_mean_is_no_bullet() -> None:
    found = items("""\
   - lamp     - The light in the tower, which is lit at dusk.
   - horn     - It sounds in fog and in snow, twice a minute.
   - boat     - This is for the stores and for the keepers.
""")
    assert found[0] == "- lamp - The light in the tower, which is lit at dusk."
