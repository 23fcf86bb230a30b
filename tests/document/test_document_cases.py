"""Cases that begin alike over what is to be done in them, and lists that begin behind the words that lead to them."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.

"""


def texts(text: str) -> list[str]:
    """What stands between two such paragraphs, label and text of each block."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1]
    return [" ".join(filter(None, (block.label.chars, block.text.chars))) for block in blocks]


def test_what_is_to_be_done_stands_below_each_case() -> None:
    text = (
        "     If you want to burn the OLD OIL on the next night\n"
        "        Make a note of it\n"
        "        Go to step 3.\n"
        "     If you want to burn the BEST OIL (of this year) in every lamp\n"
        "        Make a mark in the book\n"
        "        Go to step 3.\n"
        "     If you want to burn the NEW OIL in one of the lamps\n"
        "        Make a cross on the can\n"
        "        Go to step 3.\n"
    )
    assert " ".join(texts(text)) == " ".join(text.split())
    assert len(texts(text)) == 9


def test_two_lines_that_begin_alike_are_a_paragraph() -> None:
    text = (
        "When the wind turns to the north the lamp needs another wick, and oil.\n"
        "When the wind drops, the old one is put back in its place in the tower.\n"
    )
    assert texts(text) == [" ".join(text.split())]


def test_a_letter_under_the_one_that_words_lead_to() -> None:
    text = (
        "Drill: a) LIGHT <lamp one>, <lamp two>, <lamp three>, <lamp of the boat>\n"
        "       b) TRIM <list of all lamps>\n"
    )
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1]
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.ITEM]
    assert blocks[1].label.chars == "b)"
