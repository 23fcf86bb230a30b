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


LETTERS = """\
The signs of the flags on the mast of the rock are known to all boats:

      b   When hoisted, shows the boats that come near from the landing, and those
            that the keeper does not know.
      c   When hoisted, shows the boats that have left the landing of the rock in
            the morning, or went by.
      k   When hoisted, shows that oil is wanted.
      l   When hoisted, shows the boats that are too long for the landing and have
            to wait outside.
      s   When hoisted, shows the signals of the mainland that have no flag of
            their own on the rock.
      w   The wind has turned since the flags were last hoisted in the morning and
            the boat must wait.
   Flags of the night:
      x   No flag can be seen.
"""


def test_texts_at_one_column_whose_rest_hangs_at_one_step() -> None:
    """Blanks may bring all texts to one column, and a line further left ends the last entry."""
    assert [label for label, _ in items(LETTERS)] == [*"bcklswx"]
    assert items(LETTERS)[5][1].endswith("the boat must wait.")
