"""Page ends between two lines: a sentence that goes on with a sign, and a title that begins below them."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PARAGRAPH = (
    "The keeper on watch writes down the hour, the wind and\n"
    "the state of the sea, and he looks to the lamp at every\n"
    "second hour of the night.\n"
)


def read(text: str) -> tuple[Block, ...]:
    """The blocks of a text between paragraphs, without furniture."""
    blocks = read_text(f"{PARAGRAPH}\n{text}\n\n{PARAGRAPH}", "a document", "ascii").blocks
    return tuple(block for block in blocks if block.kind is not Kind.FURNITURE)[1:-1]


@pytest.mark.parametrize("rule", ["=", "-"])
@pytest.mark.parametrize("title", ["LETTERS TO THE MAINLAND", "Letters to the Mainland"])
def test_an_underlined_title_at_the_top_of_a_page_below_a_full_last_line(title: str, rule: str) -> None:
    """The full last line of a paragraph, with its stop, does not go on in a line that has a rule under it."""
    text = (
        f"The mails come over with the relief boat, and they wait\n"
        f"in the store until the keeper on watch has asked for it.\n\f{title}\n{rule * len(title)}\n\n{PARAGRAPH}"
    )
    paragraph, heading, _ = read(text)
    assert paragraph.text.chars.endswith("has asked for it.")
    assert heading.kind is Kind.HEADING
    assert heading.text.chars == title


@pytest.mark.parametrize(
    ("above", "below"),
    [
        (
            "one with the ring - the other one is for the oil store",
            "- and it has to be back in its place by noon.",
        ),
        (
            "one for the store, as has been explained in section",
            "7. It can be skipped by those who have one.",
        ),
        ("one that was made for us, as follows from the rule", "(2) above, and nobody else has another one."),
    ],
)
@pytest.mark.parametrize("foot", ["\f", "\n" * 9])
def test_a_sentence_goes_on_with_a_sign_at_the_top_of_a_page(above: str, below: str, foot: str) -> None:
    """A full line without a stop, and no list that is going on: what stands at the page top is no item."""
    (paragraph,) = read(f"The key of the lamp room hangs in the hall. It is the\n{above}\n{foot}{below}")
    assert paragraph.kind is Kind.PARAGRAPH
    assert paragraph.text.chars.endswith(f"{above} {below}")


def test_a_list_goes_on_at_the_top_of_a_page() -> None:
    """Items without stops have their fellows on both sides of the page end."""
    first = "- the oil that was used for the lamp in all of the night"
    second = "- the wicks that were cut and those that are to be cut"
    blocks = read(f"The keeper writes down:\n\n{first}\n\f{second}\n- the weather")
    assert [block.kind for block in blocks[1:]] == [Kind.ITEM] * 3


def test_a_section_begins_at_the_top_of_a_page() -> None:
    """A number before words that stand alone and end no sentence is that of a title."""
    blocks = read(
        f"The keeper writes down the hours, the wind and the sea\n\n\f7. Wicks of the Lamp\n\n{PARAGRAPH}"
    )
    assert blocks[0].text.chars.endswith("the wind and the sea")
    assert blocks[1].text.chars.endswith("Wicks of the Lamp")


def test_a_term_at_the_top_of_a_page_is_no_part_of_the_text_before() -> None:
    """A line over one that is set deeper begins something of its own, below a line that ends in a stop."""
    text = (
        "The mails come over with the relief boat, and they wait\n"
        "in the store until the keeper on watch has asked for it.\n"
        "\fLanding   one of the steps in the rock, of which there are\n"
        "          four if the one at the north is counted\n"
        "Warden    see Office"
    )
    assert read(text)[0].text.chars.endswith("has asked for it.")


def test_a_number_within_an_item_begins_no_item() -> None:
    """The item stops where no sentence can end, and the number under its text has no fellow."""
    blocks = read(
        "  1.  The oil is measured at noon, when the lamp is out.\n"
        "  2.  The sums are made as they are shown in lines 1 and\n"
        "      2. They are written in the book.\n"
        "  3.  The book is signed."
    )
    assert [block.label.chars for block in blocks] == ["1.", "2.", "3."]
    assert blocks[1].text.chars.endswith("shown in lines 1 and 2. They are written in the book.")


@pytest.mark.parametrize(("label", "texts"), [("l4.", 2), ("", 1)])
def test_a_number_with_the_letter_for_the_figure_one_begins_its_text_at_the_top_of_a_page(
    label: str, texts: int
) -> None:
    """Where the text of the last page has such a label, as wide; without one the full last line goes on."""
    above = f"l3.   {PARAGRAPH[0].lower()}{PARAGRAPH[1:].strip()} When the relief boat has called, he signs."
    text = f"{above}\n\f{label}{'   ' if label else ''}Nothing in this changes the rule about the landing, which stays\nshut.\n"
    assert len(read(text)) == texts


@pytest.mark.parametrize(("word", "caught"), [("then", True), ("than", False)])
def test_the_first_word_of_the_next_page_at_the_foot_of_this_one_is_no_text(word: str, caught: bool) -> None:
    text = f"{PARAGRAPH[:-2]} and\n{word:>54}\n\fthen he goes down to the kitchen.\n"
    found = [block.text.chars for block in read(text)]
    whole = " ".join(f"{PARAGRAPH[:-2]} and then he goes down to the kitchen.".split())
    assert (found == [whole]) is caught


def test_a_key_whose_text_stands_on_the_next_page() -> None:
    text = (
        "Messages are:\n\n  no oil\n      The tin is empty, or the keeper has closed the\n      cock of it.\n\n"
        "  no wick\n\f      The wick has burnt down. It is cut in the store, and\n      nowhere else.\n\n"
        "  no glass\n      The glass has sprung. There is one in the chest on the\n      landing.\n"
    )
    assert [block.label.chars for block in read(text)[1:]] == ["no oil", "no wick", "no glass"]


def test_a_short_line_where_entries_hang_on_both_sides_of_a_page_end() -> None:
    text = (
        "Berg, I. Ten winters on the rock, with an appendix upon\n"
        "      soup. Second edition.\n"
        "Anonymous. The weights of the great clock: an enquiry.\n"
        "\f      1902.\n"
        "Holm, M. Overcoats. A list, which is given to those who\n"
        "      look cold.\n"
    )
    assert [block.text.chars.split()[-1] for block in read(text)] == ["edition.", "1902.", "cold."]
