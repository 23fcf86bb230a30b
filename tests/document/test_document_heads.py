"""Heads of tables: what names columns, and what is no name and must never be printed twice."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text


def heads(text: str) -> list[list[str]]:
    """The cells of each row that is a head."""
    return [
        [cell.chars for cell in row]
        for block in read_text(text, "a document", "ascii").blocks
        for row in block.rows[: block.header_rows]
    ]


BODY = """\
  Lamp    40     The lamp of the gallery.
  Horn    12     The horn in the lee of the tower.
  Boat    3      The boat, with the oars that belong to it.
"""
BOX = """\
+---------+-----------------------------------+
| {:<8}| {:<34}|
+=========+===================================+
| Lamp    | lit at dusk                       |
| Horn    | blown in fog                      |
+---------+-----------------------------------+
"""


@pytest.mark.parametrize(
    ("key", "text", "named"),
    [
        ("Thing", "What it is for", True),
        ("Thing", "What is it for?", True),
        ("Brass", "is polished by the second keeper.", False),
    ],
)
def test_a_sentence_names_no_column(key: str, text: str, named: bool) -> None:
    assert bool(heads(BOX.format(key, text))) is named
    assert bool(heads(f"  {key:8}Pints  {text}\n  ------  -----  ----------------\n{BODY}")) is named


def test_one_number_in_a_column_without_a_name_shows_no_head() -> None:
    """The number of a page between the lines of a text, and nothing over it."""
    text = """\
    Fires.       Grass is burnt in April only, with the wind
                 from  the  lamp, and never within a furlong of
                 the store or of the boat.
    Ropes.       A broken rope is bound with the twine that hangs
17            HANDBOOK FOR KEEPERS
"""
    found = read_text(text, "a document", "ascii").blocks
    assert not any(block.header_rows for block in found)
    assert all(block.kind in {Kind.TABLE, Kind.ITEM} for block in found)


def test_names_over_all_but_the_keys_of_rows_that_go_on_below() -> None:
    text = """\
                        One way     Both ways   Remarks
    Keeper              1s 50       2s 50
    Child               9d          1s 20       Up to 14 years;
                                                with a keeper
    Dog                 9d          1s 20       On a lead. No
                                                dogs in the
                                                lantern
    Barrel              5d
    Bishop              free        free        Shows his ring
"""
    assert heads(text) == [["", "One way", "Both ways", "Remarks"]]
    assert heads(text.replace("One way", "0 way ")) == []
