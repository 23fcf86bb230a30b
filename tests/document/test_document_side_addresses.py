"""Addresses side by side are read one after the other; the rows of a list of berths are a table."""

from __future__ import annotations

from plain_blocks import rows_of

from fit.document.blocks import Kind
from fit.document.text import read_text

LEAD = "Letters of the keepers go to one of these, whoever of them is nearer to the boat:\n\n"
END = "\nNo money is sent to the secretary, as it has to be counted at once by the treasurer.\n"


def kept(text: str) -> list[list[str]]:
    """The lines of the blocks that stay lines."""
    blocks = read_text(LEAD + text + END, "log", "ascii").blocks
    return [[line.chars for line in block.lines] for block in blocks if block.kind is Kind.PREFORMATTED]


def test_two_addresses_of_different_heights() -> None:
    text = (
        "     The Secretary of the Light       The Treasurer\n"
        "     Clapper House                    The Mill behind the Church\n"
        "     4, Clapper Lane                  Lower Skerry\n"
        "     Skerry Sound\n"
    )
    assert kept(text) == [
        ["The Secretary of the Light", "Clapper House", "4, Clapper Lane", "Skerry Sound"],
        ["The Treasurer", "The Mill behind the Church", "Lower Skerry"],
    ]


def test_a_house_in_each_row_makes_a_list_of_it() -> None:
    berths = (
        "     Mr. Pell            4 Maren Quay\n"
        "     Mr. Marrow          5 Maren Quay\n"
        "     Mr. Thripp          7 Mill Quay\n"
    )
    assert rows_of(read_text(LEAD + berths + END, "log", "ascii").blocks)[1] == "Mr. Marrow | 5 Maren Quay"


def test_columns_with_names_of_one_word_over_them_are_a_table() -> None:
    berths = "     Boat        Berth\n     Maren       4 Mill Quay\n     Isak        Landing\n     Tom         Landing\n"
    assert rows_of(read_text(LEAD + berths + END, "log", "ascii").blocks)[:2] == [
        "Boat | Berth",
        "Maren | 4 Mill Quay",
    ]
