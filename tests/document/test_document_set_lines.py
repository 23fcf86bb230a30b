"""Short lines that stay lines, and titles that ornaments and boxes stand around."""

from __future__ import annotations

import pytest
from test_document_headings import PROSE
from test_document_kept_prose import between

from fit.document.blocks import Kind
from fit.document.text import read_text


@pytest.mark.parametrize(
    "part",
    [
        f"{' ' * 46}The Skerry Light\n{' ' * 46}4 November 1886\n",
        "    A. Berg\n    The Skerry Light\n    (by the relief boat only)\n",
        '          "The lamp, the lamp, the only lamp,\n           It lit the wet and found the damp."\n',
    ],
)
def test_short_lines_stay_lines(part: str) -> None:
    blocks = between(part)
    assert [block.kind for block in blocks] == [Kind.PREFORMATTED]
    assert [line.chars.strip() for line in blocks[0].lines] == [line.strip() for line in part.splitlines()]


def test_text_set_far_right_flows() -> None:
    part = "".join(
        f"{' ' * 40}{line}\n" for line in ("the lamp is lit at dusk and it", "is put out when the sun is up.")
    )
    assert [block.kind for block in between(part)] == [Kind.PARAGRAPH]


@pytest.mark.parametrize(
    ("line", "title"),
    [("----[ Stores ]----------------", "Stores"), ("====[ 2. The oil ]====", "2. The oil")],
)
def test_a_title_in_a_rule(line: str, title: str) -> None:
    blocks = between(f"{line}\n")
    assert [(block.kind, block.text.chars) for block in blocks] == [(Kind.HEADING, title)]


def test_a_title_of_two_lines_with_a_comma() -> None:
    text = f"           ORDERS FOR THE KEEPERS OF THE OUTER LIGHTS,\n              TOGETHER WITH ORDERS FOR THE BOAT\n\n{PROSE}"
    block = read_text(text, "log", "ascii").blocks[0]
    assert block.kind is Kind.HEADING
    assert block.text.chars == "ORDERS FOR THE KEEPERS OF THE OUTER LIGHTS, TOGETHER WITH ORDERS FOR THE BOAT"


def test_centred_lines_of_a_box_stay_lines_below_their_title() -> None:
    inner = ("KEEPERS OF THE SKERRY", "a story game for two keepers", "The book of the year")
    edge = "*" * 40
    blocks = between("\n".join([edge, *(f"*{line:^38}*" for line in inner), edge, ""]))
    assert [block.kind for block in blocks] == [Kind.HEADING, Kind.PREFORMATTED]
    assert [line.chars.strip() for line in blocks[1].lines] == list(inner[1:])
