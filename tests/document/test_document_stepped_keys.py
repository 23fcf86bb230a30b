"""Keys whose texts go on at one step from them; wide blanks behind the first words of hanging paragraphs make none."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

WORDS = """\
The log knows these words:

  oil_left  what is left in the tank of the lamp, as the rod in it
     shows at the end of each watch;
  wick  length of the wick
  turns  a synonym for lamp_turns

  lamp_turns  number of turns that the lamp has made since it was lit,
     or nought by day;

  o  oil in the tank

  horn_blasts  number of blasts since the fog was first seen from the
     gallery of the tower, all of them of the same length;

  boat_expected  whether the boat is looked for at the landing, with
     its stores and its mail;

  keeper_on_watch  name of the keeper who has the watch, as he wrote
     it himself;
  last_entry  hour of the last entry
"""
HUNG = """\
Oil is kept in the tank below the stair, where no lamp and no pipe is
   allowed, whatever the weather.

Wicks are kept in the drawer of the table, and the keeper counts them
   on every Sunday of the year.

Lamp  glass is kept in straw; the boat has brought it over the bar and
   the keeper has carried it.
"""


KINDS = "".join(
    f"  {name}  ({kind})  {said}\n     in each night.\n\n"
    for name, kind, said in (
        ("FogBell", "bool", "ring the bell"),
        ("LampTurns", "int", "turns of the lamp"),
        ("OilLeft", "int", "the oil that is left"),
        ("Keeper", "name", "who has the watch"),
        ("HornLength", "int", "the length of a blast"),
    )
)


def items(text: str) -> list[tuple[str, str]]:
    blocks = read_text(text, "lamp", "ascii").blocks
    return [(one.label.chars, one.text.chars) for one in blocks if one.kind is Kind.ITEM]


def test_each_entry_is_an_item_though_the_texts_begin_at_many_columns() -> None:
    assert [label for label, _ in items(WORDS)] == [
        "oil_left",
        "wick",
        "turns",
        "lamp_turns",
        "o",
        "horn_blasts",
        "boat_expected",
        "keeper_on_watch",
        "last_entry",
    ]
    assert items(WORDS)[1] == ("wick", "length of the wick")
    assert items(WORDS)[3][1] == "number of turns that the lamp has made since it was lit, or nought by day;"


def test_one_wide_blank_in_hanging_paragraphs_parts_no_key() -> None:
    assert items(HUNG) == []


def test_a_key_with_its_kind_behind_wide_blanks_is_no_key_of_one_word() -> None:
    assert "FogBell" not in [label for label, _ in items(KINDS)]
