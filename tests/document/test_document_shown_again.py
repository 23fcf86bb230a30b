"""Samples shown twice, their lines ended in other places: those ends are what is shown, and stay."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

LEAD = "The printer of the watch room fills each order to the width that it is set to, as here:\n\n"
LONG = "    The keeper reads the glass\n    and the gauge, and then he\n    writes them down.\n\n"
WIDE = "    The keeper reads the glass and the gauge,\n    and then he writes them down.\n\n"
END = "The words are the same in both, and only the ends of the lines are others.\n"


def kinds(text: str) -> list[Kind]:
    """The kinds of the blocks that are set in."""
    return [block.kind for block in read_text(text, "orders", "ascii").blocks if block.level]


def test_the_same_words_in_other_lines_stay_lines() -> None:
    blocks = read_text(LEAD + LONG + "After it was set wider:\n\n" + WIDE + END, "orders", "ascii").blocks
    assert [[line.chars for line in block.lines] for block in blocks if block.code] == [
        [line.strip() for line in part.splitlines() if line] for part in (LONG, WIDE)
    ]


def test_a_sample_that_differs_in_its_signs_stays_too() -> None:
    text = "Change this:\n\n    oil 4381, wicks 70000\n    and rope 56890\n\nto this:\n\n    oil 4,381, wicks 70,000\n    and rope 56,890\n\n"
    assert kinds(LEAD + text + END) == [Kind.PREFORMATTED, Kind.PREFORMATTED]


def test_a_letter_over_blank_lines_is_one_sample() -> None:
    first = "    Orr writes:\n    > Is the oil in?\n    It is not here yet.\n\n"
    second = "    Orr writes:\n\n    > Is the\n    > oil in?\n\n    It is not\n    here yet.\n\n"
    assert kinds(LEAD + first + "After it was parted:\n\n" + second + END) == [Kind.PREFORMATTED] * 2


def test_other_words_are_text_that_is_set_in() -> None:
    other = (
        "    The keeper trims the wick of\n    the lamp, and he fills it up\n    before the watch ends.\n\n"
    )
    assert kinds(LEAD + LONG + "On other evenings this is to be done:\n\n" + other + END) == [
        Kind.PARAGRAPH,
        Kind.PARAGRAPH,
    ]


def test_the_same_lines_again_are_the_same_text_again() -> None:
    assert kinds(LEAD + LONG + "And on the next evening:\n\n" + LONG + END) == [
        Kind.PARAGRAPH,
        Kind.PARAGRAPH,
    ]
