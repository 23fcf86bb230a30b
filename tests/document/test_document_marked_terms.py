"""Terms that two colons mark, over texts that are set in right below them; where a blank line stands between, they lead to text as it is."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

OPTIONS = """\
The lamp takes these words.

`-l, --light`::
  Light the lamp of the tower
  and write it down.

`  |) `::
  first quarter of the moon

-q::
--quiet::
    Light no lamp, whatever the keeper has asked for and however dark it is outside.
+
See the log of the lamp.

--horn::
    Sound the horn:
-s;;
--short;;
    in short blasts
-l;;
    in long ones, as in a storm

LAMP_OIL::
    The oil of the lamp; see
    [the stores] for more of it.

Trim the wick.::
+
    $ trim --wick
"""
LITERAL = """\
The log of the first night reads as follows::

    calm, no moon

That of the second night is as short::

    rain, no moon

That of the third night is the shortest of all::

    no moon
"""
LABELS = """\
_lamp::
        ld a,(oil)
_wick::
        ld a,(wick)
_horn::
        ld a,(horn)
"""

LEVEL = """\
The lamp does these things in turn.


wick::
Reads all files '$LAMP/wick/*.var' for every lamp. If the
keeper has more in
'$LOG/more.var', it is read.
+
More of it stands in the log.

oil::
A short list of what is in the tank is printed.

horn::
Calls `horn(8)` for the fog. It can be found
at https://skerry.example/horn/.

Store of the log::
lamp get log://skerry/log.lamp
"""
COLONS = """\
The lamp is lit with the command that stands in the log of the year::
light the lamp

It is put out with this one::
put out the lamp

The horn is sounded with the third of the commands::
sound the horn for an hour
"""


def blocks(text: str) -> tuple[Block, ...]:
    return read_text(text, "lamp", "ascii").blocks


def items(text: str) -> list[tuple[str, str]]:
    return [(one.label.chars, one.text.chars) for one in blocks(text) if one.kind is Kind.ITEM]


def test_every_term_of_one_build_is_an_item_whatever_it_looks_like() -> None:
    assert items(OPTIONS) == [
        ("`-l, --light`::", "Light the lamp of the tower and write it down."),
        ("` |) `::", "first quarter of the moon"),
        ("-q::", ""),
        (
            "--quiet::",
            "Light no lamp, whatever the keeper has asked for and however dark it is outside.",
        ),
        ("--horn::", "Sound the horn:"),
        ("-s;;", ""),
        ("--short;;", "in short blasts"),
        ("-l;;", "in long ones, as in a storm"),
        ("LAMP_OIL::", "The oil of the lamp; see [the stores] for more of it."),
        ("Trim the wick.::", ""),
    ]


def test_the_text_of_a_term_may_stand_at_its_margin() -> None:
    assert items(LEVEL) == [
        (
            "wick::",
            "Reads all files '$LAMP/wick/*.var' for every lamp. If the keeper has more in '$LOG/more.var', it is read.",
        ),
        ("oil::", "A short list of what is in the tank is printed."),
        (
            "horn::",
            "Calls `horn(8)` for the fog. It can be found at https://skerry.example/horn/.",
        ),
        ("Store of the log::", "lamp get log://skerry/log.lamp"),
    ]


def test_a_sentence_that_leads_to_what_stands_at_its_margin_is_no_term() -> None:
    assert items(COLONS) == []


def test_two_colons_before_a_blank_line_mark_no_term() -> None:
    assert items(LITERAL) == []


def test_labels_of_a_program_are_no_terms() -> None:
    assert items(LABELS) == []


def test_two_terms_are_too_few() -> None:
    assert items("Lamp::\n    ld a,1\n\nOil::\n    ld a,2\n") == []


def test_a_rule_ends_the_text_of_a_term_at_its_margin() -> None:
    fenced = LEVEL.replace("More of it", "----\n$ wick --more\n----\nMore of it")
    assert any("$ wick --more" in [line.chars for line in block.lines] for block in blocks(fenced))


def test_a_sentence_over_a_command_is_no_term() -> None:
    text = "".join(
        f"For a full list of what the {name} can do::\n    +$ {name} --help+\n\n"
        for name in ("lamp", "bell", "horn", "boat")
    )
    assert items(text) == []
