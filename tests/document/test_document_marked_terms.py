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


def test_two_colons_before_a_blank_line_mark_no_term() -> None:
    assert items(LITERAL) == []


def test_labels_of_a_program_are_no_terms() -> None:
    assert items(LABELS) == []


def test_two_terms_are_too_few() -> None:
    assert items("Lamp::\n    ld a,1\n\nOil::\n    ld a,2\n") == []
