"""Tables of what goes wrong and what mends it: long cells without blank lines between the rows."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

FAULTS = """
{head}
The lamp smokes.                     Trim the wick and clean the
                                     glass in the lantern room, and
                                     the chimney, with the vinegar
                                     that stands in the store.
                                     See that the vent is open, and
                                     that no bird has built in it.
The lamp goes out at night and       Fill the tank and open the cock
cannot be lit.                       below it.
                                     Warm the oil in the kitchen.
The horn sounds ...                  Dry the reed of the horn in the
(after a storm from the south).      kitchen.
                                     Take out what was blown into the
                                     mouth of the horn.
"""


def rows(text: str) -> list[str]:
    """The rows of all tables with bars between their cells, those of heads with ``=``."""
    return rows_of(read_text(text, "a document", "ascii").blocks)


def test_names_in_capitals_over_cells_of_many_lines() -> None:
    assert rows(FAULTS.format(head="FAULT                                WHAT TO DO")) == [
        "FAULT = WHAT TO DO",
        (
            "The lamp smokes. | Trim the wick and clean the glass in the lantern room, and the chimney, with the "
            "vinegar that stands in the store. See that the vent is open, and that no bird has built in it."
        ),
        (
            "The lamp goes out at night and cannot be lit. | Fill the tank and open the cock below it. "
            "Warm the oil in the kitchen."
        ),
        (
            "The horn sounds ... (after a storm from the south). | Dry the reed of the horn in the kitchen. "
            "Take out what was blown into the mouth of the horn."
        ),
    ]


def test_names_beside_the_columns_head_no_table() -> None:
    found = rows(FAULTS.format(head="FAULT                          WHAT TO DO"))
    assert not any("FAULT" in row or "vinegar" in row for row in found)


def test_sentences_one_below_the_other_in_the_middle_column_are_one_cell() -> None:
    text = """
PART    WHAT THE SLATE SAYS              WHAT TO DO
lamp    The wick is burnt.               Trim it.
bell    The rope should go over the      Nothing.
        wheel.
        The rope is wet.
        The hook is bent.
horn    No air in the tank.              Pump.
"""
    assert rows(text)[2] == (
        "bell | The rope should go over the wheel. The rope is wet. The hook is bent. | Nothing."
    )


def test_single_words_in_the_middle_column_are_rows_of_their_own() -> None:
    text = """
PART    STORED      KEPT BY
lamp    Cellar.     Anna
        Loft.
horn    Tower.      Piet
"""
    assert [block.kind for block in read_text(text, "a document", "ascii").blocks] == [Kind.TABLE]
    assert " | Loft. | " in rows(text)
