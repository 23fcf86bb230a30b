"""Tables with a rule over some columns only: rows that share a label, and heads of two storeys."""

from __future__ import annotations

import pytest
from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text


def shown(text: str) -> list[str]:
    """The rows of tables, heads with ``=``, and the text or the kind of all other blocks."""
    found = []
    for block in read_text(text, "a document", "ascii").blocks:
        found += rows_of([block])
        if not block.rows:
            found.append(block.text.chars or block.kind.value)
    return found


CASES = {
    "a label beside a rule that parts two rows, between bars": (
        """
+------------+------------------+------------------+
| Fault      | Cause            | Remedy           |
+============+==================+==================+
|            | Wick too high    | Turn it down     |
| Lamp smokes|------------------+------------------|
|            | Draught on the   | Close the shutter|
|            | gallery          |                  |
+------------+------------------+------------------+
| Lamp dies  | Oil frozen       | Warm the can     |
+------------+------------------+------------------+
""",
        [
            "Fault = Cause = Remedy",
            "Lamp smokes | Wick too high | Turn it down",
            "Lamp smokes | Draught on the gallery | Close the shutter",
            "Lamp dies | Oil frozen | Warm the can",
        ],
    ),
    "a label of two lines beside a typed rule": (
        """
   ----------------------------------------------------------
   Sign           Glass       Expect         Work
   ----------------------------------------------------------
                  rising      Frost          Brass
   Ring round     -------------------------------------------
   the moon       falling     Rain, after    Indoors,
                              midnight       with lamps
   ----------------------------------------------------------
   Red sky        any         Clear sky      Brass
   ----------------------------------------------------------
""",
        [
            "Sign = Glass = Expect = Work",
            "Ring round the moon | rising | Frost | Brass",
            "Ring round the moon | falling | Rain, after midnight | Indoors, with lamps",
            "Red sky | any | Clear sky | Brass",
        ],
    ),
    "a head of two storeys, one name over all columns but the keys": (
        """
   +-------------+---------------------------------------+
   |             |   Working days                        |
   |   Month     +------------------+--------------------+
   |             |   Brass          |   Boat             |
   +-------------+------------------+--------------------+
   | March       | All of it, as    | --                 |
   |             | ordered          |                    |
   | April       | --               | Tar, inside        |
   +-------------+------------------+--------------------+
""",
        [
            "Working days",
            "Month = Brass = Boat",
            "March | All of it, as ordered | --",
            "April | -- | Tar, inside",
        ],
    ),
    "a head of two storeys, with two names": (
        """
   +---------+-----------------+-----------------+
   |         | East            | West            |
   | Month   +--------+--------+--------+--------+
   |         | Lamp   | Horn   | Lamp   | Horn   |
   +---------+--------+--------+--------+--------+
   | March   | 210    | 14     | 190    | 12     |
   | April   | 180    | 3      | 160    | 2      |
   +---------+--------+--------+--------+--------+
""",
        [
            "Month = East Lamp = East Horn = West Lamp = West Horn",
            "March | 210 | 14 | 190 | 12",
            "April | 180 | 3 | 160 | 2",
        ],
    ),
    "a rule that opens into the next room is a drawing": (
        """
   +-------------+---------------------------------------+
   |   stores      1                  |                  |
   |             +------------------+ |   2              |
   |   oil       |    wicks         |                    |
   +-------------+------------------+--------------------+
""",
        ["picture"],
    ),
    "a stroke under the figures of one column parts no rows that share a key": (
        """
   Oil of the quarter, in gallons, by month:

   January        cold        40
   February       cold        38
   March          mild        22
                              --------
   Together                   100
""",
        [
            "Oil of the quarter, in gallons, by month:",
            "January | cold | 40",
            "February | cold | 38",
            "March | mild | 22",
            "Together |  | 100",
        ],
    ),
    "labels in the middle of their rows, rules between the groups and no bars": (
        """
    ---------------------------------------------------------------
                  oil     fill it to the mark in the brass
      lamp        wick    trim it square
                  lens    wipe it with the soft cloth
    ---------------------------------------------------------------
                  bell    strike it each half minute
      fog         horn    wind it and let it go
                  flag    take it in
    ---------------------------------------------------------------
      book        ink     thaw it
                  pen     cut it
    ---------------------------------------------------------------
""",
        [
            "lamp | oil | fill it to the mark in the brass",
            "lamp | wick | trim it square",
            "lamp | lens | wipe it with the soft cloth",
            "fog | bell | strike it each half minute",
            "fog | horn | wind it and let it go",
            "fog | flag | take it in",
            "book | ink | thaw it",
            "book | pen | cut it",
        ],
    ),
    "labels between two rows of figures, with a text that is wrapped beside them": (
        """
--------------------------------------------------------------------
Lamp           Feet of       Pints     Wicks     Remarks
               draught       of oil    a week
--------------------------------------------------------------------
                 0-5          9         4.5      Trim at once; in two
Great lamp                                       steps, an hour apart.
                 5-10         5         2.5
--------------------------------------------------------------------
                 0-5         11         5.5      As above, but in
Stair lamp                                       three steps.
                 5-10         6         3
--------------------------------------------------------------------
Hand lamp        any          4         2        Not on the gallery
                                                 in wind.
--------------------------------------------------------------------
""",
        [
            "Lamp = Feet of draught = Pints of oil = Wicks a week = Remarks",
            "Great lamp | 0-5 | 9 | 4.5 | Trim at once; in two steps, an hour apart.",
            "Great lamp | 5-10 | 5 | 2.5 | ",
            "Stair lamp | 0-5 | 11 | 5.5 | As above, but in three steps.",
            "Stair lamp | 5-10 | 6 | 3 | ",
            "Hand lamp | any | 4 | 2 | Not on the gallery in wind.",
        ],
    ),
    "a label beside the middle of its row, whose key stands there once": (
        """
--------------------------------------------------------------------
Lamp           Who           Remarks
--------------------------------------------------------------------
                             Trim at once; in two steps, an hour
Great lamp     keeper        apart, and wipe
                             the glass.
--------------------------------------------------------------------
                             As above, but in three steps, and not
Stair lamp     wife          before the
                             great one.
--------------------------------------------------------------------
""",
        [
            "Lamp = Who = Remarks",
            "Great lamp | keeper | Trim at once; in two steps, an hour apart, and wipe the glass.",
            "Stair lamp | wife | As above, but in three steps, and not before the great one.",
        ],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    text, wanted = CASES[name]
    assert shown(text) == wanted


def test_a_label_said_again_has_no_place_in_the_document() -> None:
    text, _ = CASES["a label beside a rule that parts two rows, between bars"]
    (table,) = [block for block in read_text(text, "a document", "ascii").blocks if block.kind is Kind.TABLE]
    assert min(table.rows[1][0].sources) > 0
    assert set(table.rows[2][0].sources) == {-1}
