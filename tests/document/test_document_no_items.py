"""Signs that begin no item: dashes of a sentence at the beginning of a line; and a blank too many there."""

from __future__ import annotations

import pytest
from test_document_torn_lines import shape

_DASHES = (
    "The log of the rock tells all that is to be known about the lamp\n"
    "- how often it was lit, which oil it burned, etc.  It also has the tides of\n"
    "the north landing, which the second keeper writes into it in the morning of a day\n"
    "- i.e. at six.\n"
)
_IN_ITEM = (
    "The keepers have two books on the rock:\n"
    "  * a log.  In it stands all that is to be known about the lamp of a year\n"
    "- how often it was lit, which oil it burned, and so on.\n"
)
_BLANK = (
    "Before the boat comes in the morning, the second keeper looks to the\n"
    " Landing  of the seals. There he sees to the ropes, the hooks and the\n"
    "oil of the winch, and when all of it is well he goes up to the tower.\n"
)
_LIST = (
    "The drill of the second keeper has three parts, and he knows all of them by\n"
    "- heart\n"
    "- hand, since it is dark when he has to do them and nobody holds a lantern\n"
    "- voice\n"
)
_FIRST_LINES = (
    "In the evening the keeper goes up to the lamp and lights it, and he stays.\n"
    " In the morning he comes down and writes into the log what he has seen of\n"
    "the sea, of the boats and of the birds, and he goes to bed after that.\n"
    " At noon he looks to the winch, the ropes and the hooks of the landing, and\n"
    "when all of it is well he rests until the evening.\n"
)


@pytest.mark.parametrize("text", [_DASHES, _BLANK], ids=["dashes", "a blank too many"])
def test_a_line_goes_on_with_the_sentence_above_it(text: str) -> None:
    assert shape(text) == [" ".join(text.split())]


def test_a_dash_below_an_item_goes_on_with_its_sentence() -> None:
    assert [line[:4] for line in shape(_IN_ITEM)] == ["The ", "[*] "]


def test_items_with_dashes_below_one_another() -> None:
    assert [line[:4] for line in shape(_LIST)][1:] == ["[-] "] * 3


def test_first_lines_set_in_by_a_blank_begin_paragraphs_below_the_end_of_a_sentence() -> None:
    assert len(shape(_FIRST_LINES)) == 3
