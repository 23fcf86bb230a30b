"""Titles that one word and a number count: headings all of them where some were read as such."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch trims the lamp at dusk and again at midnight, and he
writes both hours in the log book, so that the relief can see them there.
"""
READ = ("Section 1: The Lamp at Dusk", "Section 2: The Bell at Night", "Section 3: The Horn in Fog")


def headings(*titles: str) -> list[str]:
    """What becomes of titles over running text: the level and the words of each heading."""
    text = "\n".join(f"{title}\n\n{PROSE}" for title in titles)
    blocks = read_text(PROSE + "\n" + text, "log", "ascii").blocks
    return [f"{block.level} {block.text.chars}" for block in blocks if block.kind is Kind.HEADING]


def test_a_title_with_small_letters_and_signs_counts_on() -> None:
    assert len(headings(*READ)) == len(READ)
    assert (
        headings(*READ, "Section 4: the lamp (see the sheet in the store), not for the relief.")[-1]
        == "1 Section 4: the lamp (see the sheet in the store), not for the relief."
    )


def test_a_title_below_the_rule_that_ends_a_letter() -> None:
    letter = f"Maren               \nmaren@skerry.example             North Landing\n{'-' * 60}\nSection 4"
    assert headings(*READ, letter)[-1] == "1 Section 4"


@pytest.mark.parametrize(
    "line",
    [
        "Clause 4: the lamp (see the sheet in the store), not for the relief.",
        "Section 4: the lamp (see the sheet in the store), not for the relief.\nand what the second keeper says of it.",
    ],
)
def test_what_counts_nothing_or_goes_on_is_no_title(line: str) -> None:
    assert len(headings(*READ, line)) == len(READ)


def test_numbers_in_no_order_count_nothing() -> None:
    numbers = (7, 3, 9, 1, 8, 2)
    titles = [
        f"Section {number}: the lamp (see the sheet in the store), not for the relief." for number in numbers
    ]
    found = headings(READ[2], READ[1], READ[0], *titles)
    assert not any("relief" in heading for heading in found)
