"""Rows whose key leaves but one blank before its text: the other rows of the list show where all texts begin."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

BEFORE = (
    "What the keeper writes on the slate is told here, one word and what it asks of the second keeper:\n\n"
)
FIRST = """\
   OPEN f Open the store with the key of the tower
   SHUT f Shut the store and hang up its key
   WICK   Trim the wick of the lamp

   FILL n Fill the lamp from the tins in the store
   BELL   Ring the bell as the log book has it
   HORN   Sound the horn in the fog
"""
ALONE = """
   LAMP   Light the lamp at dusk

   Slew rrr Turn the glass by hand

   TIDE     Read the tide table
   RAIN     Empty the gauge
   WIND r   Read the vane on the roof
"""


def test_tight_rows_are_rows_like_the_others() -> None:
    assert rows_of(read_text(BEFORE + FIRST, "slate", "ascii").blocks) == [
        "OPEN f | Open the store with the key of the tower",
        "SHUT f | Shut the store and hang up its key",
        "WICK | Trim the wick of the lamp",
        "FILL n | Fill the lamp from the tins in the store",
        "BELL | Ring the bell as the log book has it",
        "HORN | Sound the horn in the fog",
    ]


def test_a_tight_row_alone_between_the_others() -> None:
    text = FIRST.replace("   ", "     ") + ALONE.replace("LAMP   ", "LAMP     ")
    assert "Slew rrr | Turn the glass by hand" in rows_of(read_text(BEFORE + text, "slate", "ascii").blocks)


def test_a_long_key_whose_text_goes_on_at_the_column_of_the_others() -> None:
    text = """\
   light(lamp, hour) Light a lamp at the hour, and keep it lit until the
                     hour of the next call.

   trim(wick)        Trim a wick, and write it down in the log book with the
                     hour and the name of the keeper.

   ring(hour)        Ring the bell at the hour, and at each hour after that
                     until the fog lifts from the landing.

   sound(horn)       Sound the horn in the fog.
"""
    labels = [
        block.label.chars
        for block in read_text(BEFORE + text, "slate", "ascii").blocks
        if block.kind is Kind.ITEM
    ]
    assert labels == ["light(lamp, hour)", "trim(wick)", "ring(hour)", "sound(horn)"]


@pytest.mark.parametrize(
    "line",
    [
        "   Spells of weather",  # a title over the list
        "   Things to Write",
        "   A light tower that has a lamp in each of its windows is lit from below.",
    ],
)
def test_a_line_before_or_behind_the_list_is_no_row(line: str) -> None:
    for text in (f"{line}\n\n{FIRST}", f"{FIRST}\n{line}\n\nThe keeper reads it.\n"):
        blocks = read_text(BEFORE + text, "slate", "ascii").blocks
        assert any(
            line.strip() in {block.text.chars, *(kept.chars for kept in block.lines)} for block in blocks
        )


def test_words_in_small_letters_are_no_row_of_texts_with_capitals() -> None:
    text = f"{FIRST}\n   of the fog there is a table in the log book\n\n{FIRST}"
    assert not any("table" in row for row in rows_of(read_text(BEFORE + text, "slate", "ascii").blocks))


def test_a_key_that_fills_the_room_to_texts_behind_a_colon() -> None:
    text = """\
-wick         :turn up the wick of the lamp
-horn=        :LOUD or SOFT
-case         :lower or upper, for the log only
-night_watch= :first or second
-bell_in_fogs=:OFF or ON, for all of the watches
-range=m,n    :hours of the log that are to be written
"""
    rows = rows_of(read_text(BEFORE + text, "slate", "ascii").blocks)
    assert rows[4:] == [
        "-bell_in_fogs= | :OFF or ON, for all of the watches",
        "-range=m,n | :hours of the log that are to be written",
    ]
