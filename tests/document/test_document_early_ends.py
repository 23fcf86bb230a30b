"""Sentences that end early in the lines of a ragged paragraph, in documents that part paragraphs by blank lines or do not."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

_APART = [
    (
        "The keeper of the rock trims the lamp at dusk, winds the clock, and goes\n"
        f"down to the landing of the {place} to look for the boat and the oil.\n"
    )
    for place in ("north", "south", "west", "east", "gull", "seal", "upper", "lower", "old", "new")
]
_RAGGED = (
    "The log is written in the evening, when the lamp has been lit and the\n"
    "keeper has seen to the oil, the wick and the bell of the rock.\n"
    "In a fog he writes it at the bell, since the bell is rung from dusk to\n"
    "dawn and nobody else is on the rock to ring it.\n"
)
_FAR = (
    "The boat of the year is kept in\n"
    "the shed above the landing of the seals.\n"
    "When the sea is high it is hauled up to the lamp house, and two men of the\n"
    "village hold the rope.\n"
)
_LIST = (
    "The vane shows the wind at the top of the tower of the rock.\n"
    "The bell is rung in fog from dusk to dawn and in snow.\n"
    "The lamp is lit at dusk and put out at dawn.\n"
)
_NAMES = (
    "LAMP_OLD is the lamp that the keeper found in the tower.\n"
    "LAMP_NEW is the lamp that the boat of the year has brought, and of which the\n"
    "keeper knows nothing yet.\n"
)


@pytest.mark.parametrize("text", [_RAGGED, _FAR], ids=["a little", "no more than a line in mid-sentence"])
def test_a_sentence_ends_early_where_blank_lines_part_all_paragraphs(text: str) -> None:
    assert " ".join(text.split()) in shape("\n".join([*_APART, text]))


def test_the_end_of_a_sentence_is_that_of_a_paragraph_where_no_blank_line_shows_any() -> None:
    assert len(shape(_RAGGED * 6)) == 12


@pytest.mark.parametrize(("text", "count"), [(_LIST, 3), (_NAMES, 2)], ids=["sentences", "names"])
def test_entries_of_a_list_stay_apart(text: str, count: int) -> None:
    assert len(shape("\n".join([*_APART, text]))) == len(_APART) + count
