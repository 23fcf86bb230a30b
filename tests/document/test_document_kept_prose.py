"""Running text that its neighbours or its signs make look like lines that stay lines."""

from __future__ import annotations

import pytest
from test_document_headings import PROSE

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

SIGNS = (
    "The  signs  of  the book are those of the old keepers:\n"
    "+,  -,  *,  / and %.  So is ^  for  a  night  of  fog.\n"
    "Brackets  are  permitted  in the usual way.  The  bell\n"
    "Horn is written as a square; there are some more signs\n"
    "! (the bell, but not for fog), &&, ||, ==, !=, >=, <=,\n"
    "<, >.\n"
)


def between(part: str) -> list[Block]:
    """The blocks of a part between two paragraphs."""
    return list(read_text(f"{PROSE}\n{part}\n{PROSE}", "log", "ascii").blocks[1:-1])


@pytest.mark.parametrize(
    "part",
    [
        "See also: ``lamp_filling_hours'', ``lamp_trimming_hour'',\n``lamp_oil_in_store''\n",
        "set: the page has the rest of a watch that was begun on the page before\n   it\n",
        SIGNS,
    ],
)
def test_a_paragraph_with_few_words_of_text(part: str) -> None:
    blocks = between(part)
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH]
    assert blocks[0].text.chars == " ".join(part.split())


def test_a_command_deeper_below_a_full_line_stays_apart() -> None:
    part = "To hear of the nights of fog in this year, and in the year before it, type\n      foglog seen\n"
    assert all("type foglog" not in block.text.chars for block in between(part))


def test_questions_with_numbers_in_sixteens_are_items() -> None:
    asked = ("Have you lit a lamp?", "... Alone?", "Did you 'borrow' oil?", "... Twice?", "Do you ring?")
    part = "".join(f"( 0x{number:03X} {text})\n" for number, text in enumerate(asked, 8))
    blocks = between(part)
    assert [(block.kind, block.label.chars) for block in blocks] == [
        (Kind.ITEM, f"( 0x{number:03X}") for number in range(8, 13)
    ]


def test_values_in_sixteens_are_no_numbers_of_items() -> None:
    part = "    LAMPSTATE\n        0x0 Lit\n        0x1 Out\n        0x2 Dim\n"
    assert all(block.kind is not Kind.ITEM for block in between(part))
