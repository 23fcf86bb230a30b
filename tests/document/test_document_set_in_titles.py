"""Titles set in from the text right below them, and first lines that are set in."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

TITLES = ["The lamp", "Oil", "Wicks and oil", "Boats", "Log book", "The bell"]


def headings(parts: list[str]) -> list[str]:
    """The headings of parts with a blank line between."""
    blocks = read_text("\n".join(parts), "rules", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


def part(title: str) -> str:
    return (
        f"          {title}\n"
        "     The keeper on watch sees to it at the full hour and writes into\n"
        "     the log what he has found, whatever the weather may be.\n"
    )


def test_words_set_in_over_the_parts_of_a_manual_are_titles() -> None:
    assert headings(list(map(part, TITLES))) == TITLES


@pytest.mark.parametrize(
    "parts",
    [
        [part(title) for title in TITLES[:3]],
        [part(title + ",") for title in TITLES],
        [
            f"        {words}\n    And goes down to the sea,\n    And none will ever tell a soul\n    What may have come to be.\n"
            for words in (
                "The keeper takes his oil and can",
                "The boat is lost, the bell is still,",
                "Night",
                *TITLES[:3],
            )
        ],
    ],
    ids=["few", "commas", "stanzas"],
)
def test_what_else_is_set_in_over_text(parts: list[str]) -> None:
    assert [title for title in headings(parts) if title.rstrip(",") in TITLES] == []
