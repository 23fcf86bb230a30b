"""Tables whose columns colons part, and lists of keys with colons, which are none."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

STORES = """The stores and what they cost are these:

  Stores                 :    The cask :  The boat : Shelf
  ---------------------------------------------------------
  For the lamp
  Colza oil              :       1/2d  :     4s 0d : A
  Wicks of cotton and    :       1/4d  :     2s 6d : A
  of plaited wool        :             :           :
  Soap                   :     1 1/2d  :           : A or B
  All of them            :             :           : 4

which is dear.
"""
CALLS = """The horn has three calls.

  Call          : Blasts   : What it says to the boats
  Fog           : two      : The rock cannot be seen, and the cur-
                :          : rent is strong.
  Landing       : one long : Come in.
  Storm
"""
FORMS = """The log has this head.

  Keeper   : A. Ash           Watch    : the first
  Oil      : two quarts       Hour     : six
  Wick     : trimmed          Sea      : calm

"""
KEYS = """The keys of the lamp room.

  Red      : the tank, and the tap below it
  Green    : the gallery : mind the step
  Blue     : the store

"""
CURVE = """The height of the tide at the landing.

  60 +-----------------------+
     |    :    :    :    :   |
     |    :    :    :    :   |
     |    :    :    :    :   |
  40 +-----------------------+

"""


def test_columns_that_colons_part() -> None:
    """Cells that are wrapped, cells that are empty, and a line that names the rows below it."""
    blocks = read_text(STORES, "stores", "ascii").blocks
    assert rows_of(blocks) == [
        "Stores = The cask = The boat = Shelf",
        "For the lamp |  |  | ",
        "Colza oil | 1/2d | 4s 0d | A",
        "Wicks of cotton and of plaited wool | 1/4d | 2s 6d | A",
        "Soap | 1 1/2d |  | A or B",
        "All of them |  |  | 4",
    ]
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.TABLE, Kind.PARAGRAPH]
    assert blocks[1].lines[3].chars == "Colza oil              :       1/2d  :     4s 0d : A"


def test_columns_that_colons_part_without_a_rule() -> None:
    rows = rows_of(read_text(CALLS, "calls", "ascii").blocks)
    assert [row.replace(" = ", " | ") for row in rows] == [
        "Call | Blasts | What it says to the boats",
        "Fog | two | The rock cannot be seen, and the current is strong.",
        "Landing | one long | Come in.",
    ]


def test_keys_with_colons_are_no_such_table() -> None:
    """Two entries of a form side by side, a colon in the text of a key, and the ground of a curve."""
    for text in (FORMS, KEYS, CURVE):
        blocks = read_text(text, "keys", "ascii").blocks
        assert not [block for block in blocks if "colons" in block.note]
