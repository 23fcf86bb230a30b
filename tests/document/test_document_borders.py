"""Borders of pages in several lines: the foot of one, the head of the next and their rules, close together."""

from __future__ import annotations

from textwrap import wrap

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

RULE = "-" * 70
FOOT = "                 NOT TO BE TAKEN FROM THE ROCK"
TITLES = ["THE LAMP", "THE HORN", "OIL", "WHEN THE FOG COMES", "STORES"]
WATCH = (
    "The keeper on watch looks to the lamp at every second hour of the night, and writes down what he "
    "sees. He trims the wick when it smokes, and fills the tank before it is empty."
)


def page(number: int) -> list[str]:
    """A page of 22 lines whose last sentence ends with it."""
    part = wrap(WATCH, 66, initial_indent=f"{number}.1     ", subsequent_indent=" " * 8)
    title = f"{number}. {TITLES[number - 1]}"
    return [title, "", *part, "", *wrap(WATCH, 66), "", *wrap(WATCH * 2, 66), *[""] * 20][:22]


def head(number: int) -> list[str]:
    return [
        f"LAMP DRILL OF THE SKERRY LIGHT                             Page {number} of 5",
        f"{'Second printing':53}12 May 1888",
    ]


def read(text: str) -> list[Block]:
    blocks = read_text(text, "a drill", "ascii").blocks
    return [block for block in blocks if block.kind is not Kind.FURNITURE]


@pytest.mark.parametrize("gap", ["", "\n\n", "\f"])
@pytest.mark.parametrize(
    ("rules", "foot", "heads"),
    [(True, True, 2), (True, True, 1), (True, False, 2), (False, True, 2), (False, True, 1)],
)
def test_all_lines_of_a_border_go_with_the_one_that_counts_the_pages(
    rules: bool, foot: bool, heads: int, gap: str
) -> None:
    lines: list[str] = []
    for number in range(1, 6):
        rule = [RULE] if rules else []
        border = [*rule, FOOT] if foot else []
        lines += [*head(number)[:heads], *rule, "", *page(number), *border]
        lines += {"": [], "\n\n": ["", ""], "\f": ["\f"]}[gap]
    blocks = read("\n".join(lines).replace("\f\n", "\f"))
    words = " ".join(block.label.chars + " " + block.text.chars for block in blocks)
    assert not any(block.lines or block.rows for block in blocks)
    assert "LAMP DRILL" not in words
    assert "printing" not in words
    assert "TAKEN" not in words
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == [
        f"{number}. {title}" for number, title in enumerate(TITLES, 1)
    ]


def test_what_ends_each_card_of_a_box_stays() -> None:
    """Cards of one length: titles that count them over rules, and lines to sign below."""
    parts = [
        "\n".join(
            [
                f"CARD {number}",
                RULE,
                "",
                *page(number),
                "",
                "Signed ............",
                "Hour ..............",
                "",
                "",
            ]
        )
        for number in (1, 2, 3, 4)
    ]
    assert not [b for b in read_text("\n".join(parts), "cards", "ascii").blocks if b.kind is Kind.FURNITURE]


@pytest.mark.parametrize("pages", [2, 3])
def test_the_number_of_a_page_behind_wide_blanks(pages: int) -> None:
    """A paper of few pages: the foot of one and the head of the next say which it is."""
    name = "The Keeper's Paper, No. 31"
    sheets = []
    for number in range(1, pages + 1):
        edge = [f"{name:50}Page {number}"]
        sheets.append(
            "\n".join([*(edge if number > 1 else []), "", *page(number), "", *(edge if number == 1 else [])])
        )
    words = " ".join(block.text.chars for block in read("\n\f".join(sheets)))
    assert "No. 31" not in words
    other = "\n\f".join(sheets).replace("Page", "Tank")
    assert sum("No. 31" in str(block) for block in read(other)) > 0


def test_the_head_of_a_manual_page_right_below_the_foot_of_the_one_before() -> None:
    """The second page has the head of the first; those after it have another."""
    text = ""
    for number, name in enumerate(["LAMP(1)", "LAMP(1)", "HORN(8)", "HORN(8)", "HORN(8)"], 1):
        text += f"{name}              THE KEEPER'S MANUAL              {name}\n\n\n"
        text += "\n".join(f"       {line}".rstrip() for line in page(number))
        text += f"\n\n\n\nThe Rock       Last change: 3 May 1888                   {number}\n"
    words = " ".join(block.text.chars for block in read(text))
    assert "MANUAL" not in words
    assert "Last change" not in words


def test_a_note_alone_at_the_foot_of_a_page_whose_text_ended_long_before() -> None:
    text = "\n".join(
        [*wrap(WATCH + "*", 66), *[""] * 14, "____________", "*  It is never empty.", "", f"{'1':>60}", "\f"]
    )
    blocks = read(text + "\n".join([*wrap(WATCH, 66), "", f"{'2':>60}", ""]))
    assert [block.text.chars for block in blocks if block.kind is Kind.NOTE] == ["It is never empty."]


@pytest.mark.parametrize(
    ("numbers", "gone"), [((2, 3), True), ((4, 3), True), ((3, 4), False), ((2, 5), False)]
)
def test_the_heads_of_two_pages_with_the_number_at_its_side(numbers: tuple[int, int], gone: bool) -> None:
    """An even number is at the left of its page and an odd one at the right: two are enough between wide margins."""
    heads = [f"{numbers[0]}   The Skerry Light", f"{'The Book of its Keepers':>66}   {numbers[1]}"]
    heads.sort(key=lambda head: [int(word) for word in head.split() if word.isdigit()])
    text = "\n\n\n".join(["\n".join(page(1)), heads[0], "\n".join(page(2)), heads[1], "\n".join(page(3))])
    words = " ".join(f"{block.label.chars} {block.text.chars} {block.lines}" for block in read(text))
    assert ("The Skerry Light" in words) is not gone
    assert ("The Book of its Keepers" in words) is not gone
