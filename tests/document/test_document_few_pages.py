"""Furniture of documents of three to five pages without form feeds: there is little to compare."""

from __future__ import annotations

from textwrap import wrap

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

TEXT = (
    "The keeper on watch writes down the hour and the state of the sea and he looks to the lamp at every "
    "second hour of the night until the sun is up and the curtains of the lantern are drawn and then "
)
LAST = 17
"""Lines of the last page, which is not full."""


def book(heads: list[str], feet: list[str]) -> tuple[Block, ...]:
    """The blocks of one sentence over a page for each foot; one blank line parts it from a head or foot."""
    lines = wrap(TEXT * 60, 64)
    out = ["THE KEEPERS AND THEIR LAMP".center(64).rstrip(), ""]
    for number, foot in enumerate(feet):
        height = LAST if number == len(feet) - 1 else 39
        head = [heads[number], ""] if heads[number] else []
        out += [*head, *lines[39 * number : 39 * number + height], "", *([foot, ""] if foot else [])]
    return read_text("\n".join(out) + "\n", "a book", "ascii").blocks


def numbered(form: str, count: int) -> list[str]:
    return [form.format(number).center(64).rstrip() for number in range(1, count + 1)]


@pytest.mark.parametrize("count", [3, 4, 5])
@pytest.mark.parametrize("foot", ["-- {} --", "- {} -", "{}", "\u2500\u2500 {} \u2500\u2500"])
@pytest.mark.parametrize("head", ["", "THE DROWNED BELL"])
def test_a_number_below_each_page_and_the_same_head_above(count: int, foot: str, head: str) -> None:
    """The last page is shorter, and its number ends the document."""
    blocks = book(["", *[head.center(64).rstrip()] * (count - 1)], numbered(foot, count))
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [
        Kind.HEADING,
        Kind.PARAGRAPH,
    ]


def test_two_heads_that_take_turns() -> None:
    heads = ["THE BOOK OF THE ROCK", "OF THE LAMP AND ITS OIL"] * 2
    blocks = book(["", *(head.center(64).rstrip() for head in heads)], numbered("{}", 5))
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [
        Kind.HEADING,
        Kind.PARAGRAPH,
    ]


def test_a_head_without_a_number_that_cuts_sentences() -> None:
    blocks = book(["", *["THE DROWNED BELL".center(64).rstrip()] * 3], [""] * 4)
    assert sum(block.kind is Kind.FURNITURE for block in blocks) == 3


def test_numbers_over_parts_are_no_pages() -> None:
    """The last one is no foot of a shorter page: it has its part below it, and does not end the document."""
    lines = wrap(TEXT * 30, 64)
    parts = [(1, 40), (2, 25), (3, 30)]
    text = "\n\n".join(f"{number:>32}\n\n" + "\n".join(lines[:height]) + " so." for number, height in parts)
    blocks = read_text(f"THE BELL\n\n{text}\n", "a book", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def test_a_line_that_ends_three_parts_of_other_lengths_is_text() -> None:
    parts = [("lamp", 9), ("oil", 15), ("bell", 6)]
    texts = [(name, "\n".join(wrap(TEXT * times + "he sleeps.", 64))) for name, times in parts]
    text = "".join(f"Of the {name}\n\n{said}\n\n\nTo the list of parts\n\n\n" for name, said in texts)
    blocks = read_text(text, "a book", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


def test_the_first_line_of_a_record_that_comes_again_in_other_lists_is_text() -> None:
    """Its sentence ends with the next line each time, and another record stands above it."""
    record = "lamp:                 the lamp that is lit at\nwhat is said of it:   all that the keepers know of it\n\n"
    lists = [
        f"Of {name}:\n\n{record}"
        + "".join(
            f"{name}:                 the {name} number {number} that is kept in the\n                      {other}\n\n"
            for number in range(9)
        )
        for name, other in (("wick", "drawer"), ("horn", "box"), ("bell", "shed"))
    ]
    blocks = read_text("\n".join(lists), "a book", "ascii").blocks
    assert not [block for block in blocks if block.kind is Kind.FURNITURE]


@pytest.mark.parametrize(
    "form", ["All keepers{:>12}{:>30}", "All keepers        -{}-{:>30}", "All keepers        Page {}{:>30}"]
)
def test_the_heads_of_a_letter_of_three_pages_say_to_whom_which_page_and_when(form: str) -> None:
    lines = wrap(TEXT * 20, 64)
    pages = ["\n\n".join(lines[20 * number : 20 * number + 20]) for number in range(3)]
    heads = [form.format(number, "4 June 1883") for number in (2, 3)]
    text = f"{pages[0]}\n\n\n\n{heads[0]}\n\n\n{pages[1]}\n\n\n\n{heads[1]}\n\n\n{pages[2]}\n"
    blocks = read_text(text, "a letter", "ascii").blocks
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [Kind.PARAGRAPH]
    other = text.replace(heads[1], heads[1].replace("3", "7", 1))
    blocks = read_text(other, "records", "ascii").blocks
    assert not any(block.kind is Kind.FURNITURE for block in blocks)


def test_heads_that_turn_with_the_side_of_the_page_and_end_in_a_figure() -> None:
    lines = wrap(TEXT * 20, 64)
    heads = [
        f"LH 14:85{'Page ' + str(at):>56}" if at % 2 else f"Page {at}{'LH 14:85':>58}" for at in range(1, 5)
    ]
    pages = [f"{head}\n\n\n" + "\n".join(lines[20 * at : 20 * at + 20]) for at, head in enumerate(heads)]
    blocks = read_text("\n\f".join(pages), "rules", "ascii").blocks
    assert [block.kind for block in blocks if block.kind is not Kind.FURNITURE] == [Kind.PARAGRAPH]
