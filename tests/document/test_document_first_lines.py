"""Paragraphs of one line where the first lines of the others are set in."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PARAGRAPH = (
    "     The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair\n"
    "to the lamp room again.\n\n"
)
LINE = "     The keeper who has lit the lamp shall do this:\n\n"
LIST = "  (1)  write the hour into the log;\n  (2)  ring the bell, twice if there is fog.\n\n"


def level(text: str) -> int:
    """The level of the paragraph of one line, less that of the first paragraph."""
    blocks = read_text(text, "log", "ascii").blocks
    [single] = [block for block in blocks if block.text.chars == LINE.strip()]
    assert single.kind is Kind.PARAGRAPH
    return single.level - blocks[0].level


def test_a_paragraph_of_one_line_is_no_deeper_than_the_others() -> None:
    assert level(4 * PARAGRAPH + LINE + LIST) == 0


@pytest.mark.parametrize(
    "text",
    [
        PARAGRAPH.replace("     ", "") * 4 + LINE + LIST,
        PARAGRAPH + LINE + LIST,
        4 * PARAGRAPH + " (1) Light the lamp.\n (2) Ring the bell.\n\n" + LINE,
    ],
)
def test_where_no_first_lines_are_set_in_or_below_an_item_it_is(text: str) -> None:
    assert level(text) == 1
