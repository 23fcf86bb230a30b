"""Titles between runs of signs, over their text or with their words behind them: common practice, no source."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

TEXT = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair.\n"
)
ROWS = "-WICK=n    :length of the wick\n-TOPS=n    :number of best hours\n-HORN      :LOUD or SOFT\n"


def headings(text: str) -> list[str]:
    """The texts of all headings."""
    blocks = read_text(text, "log", "ascii").blocks
    return [block.text.chars for block in blocks if block.kind is Kind.HEADING]


@pytest.mark.parametrize(
    "title", ["***The lamp:***", "***Lamp and horn in fog:****", "=== The First Watch: ==="]
)
def test_a_title_between_signs_right_over_what_it_heads(title: str) -> None:
    assert headings(f"{TEXT}\n{title}\n{ROWS}\n{TEXT}") == [title]


def test_the_number_of_a_title_between_signs_with_its_words_behind_it() -> None:
    text = "".join(
        f">> HELP {number} <<             Help for {words}\n\n{TEXT}\n\n"
        for number, words in (
            ("1", "the lamp"),
            ("B", "the horn - and for the bell of the old landing"),
            ("3", "fog"),
        )
    )
    assert headings(text) == [
        ">> HELP 1 << Help for the lamp",
        ">> HELP B << Help for the horn - and for the bell of the old landing",
        ">> HELP 3 << Help for fog",
    ]


def test_what_was_typed_at_a_prompt_of_two_signs_is_no_title() -> None:
    assert not headings(f"{TEXT}\n>> light lamp << oil\n>> put out lamp\n\n{TEXT}")


def test_a_sign_of_and_is_no_word_of_a_title_in_capitals() -> None:
    assert headings(f"{TEXT}\n\nLAMPS & HORNS:\n\n{TEXT}") == ["LAMPS & HORNS:"]
