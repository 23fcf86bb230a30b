"""Numbers in the margin of every paragraph, as standards have them: labels, and no part of what stands beside them."""

from __future__ import annotations

from itertools import count

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PARAGRAPH = """\
{}The lamp of the light is lit at sunset, and the keeper on watch writes
down the hour in the log, with the state of the sea and that of the sky, and
he looks to the lamp at every second hour of the night.
"""
SHORT = "{}The parts of the lamp are these:\n"
BULLETS = """\
{}  * the burner, with its wicks, which is cleaned in the morning when the
        lamp is cold, and the glass over it;

{}  * the tank.
"""
RULE = """\
{}    lamp_order ::=
          light lamp_name [at_hour]
        | trim lamp_name
"""
CODE = """\
{}    loop
           Lamp.Trim(Now);
           exit when Morning;
        end loop;
"""


def numbered(*parts: str, form: str = "{:<4}") -> str:
    """The parts with their numbers, three times over."""
    numbers = count(1)
    return "\n".join(
        part.format(*(form.format(next(numbers)) for _ in range(part.count("{}")))) for part in parts * 3
    )


def blocks(text: str) -> tuple[Block, ...]:
    return read_text(text, "a standard", "ascii").blocks


def told(block: Block) -> str:
    return "\n".join(line.chars for line in block.lines) or block.text.chars


def test_what_stands_beside_a_number_is_read_as_without_it() -> None:
    found = blocks(numbered(PARAGRAPH, SHORT, BULLETS, RULE, CODE))
    labels = [block.label.chars for block in found if block.label.chars]
    assert labels[:6] == ["1", "2", "3 *", "4 *", "5", "6"]
    assert labels[-2:] == ["17", "18"]
    assert [block.level for block in found[:2]] == [0, 0]
    assert found[0].text.chars.startswith("The lamp of the light is lit at sunset, and")
    assert found[1].text.chars == "The parts of the lamp are these:"
    kept = [block for block in found if block.kind is Kind.PREFORMATTED]
    assert told(kept[0]).startswith("lamp_order ::=\n")
    assert told(kept[1]) == "loop\n   Lamp.Trim(Now);\n   exit when Morning;\nend loop;"
    assert len(kept) == 6


def test_a_number_with_its_printing_needs_no_more_than_one_blank() -> None:
    found = blocks(numbered(PARAGRAPH, PARAGRAPH, BULLETS, form="{}/2 "))
    assert [block.label.chars for block in found[:4]] == ["1/2", "2/2", "3/2 *", "4/2 *"]
    assert found[0].text.chars.startswith("The lamp")


def test_a_heading_with_a_number_is_none_of_them() -> None:
    text = numbered(PARAGRAPH, BULLETS, CODE)
    found = blocks(f"{text}\n\n9.1 The Lamp\n\n\n{text}")
    assert [block.text.chars for block in found if block.kind is Kind.HEADING] == ["9.1 The Lamp"]


@pytest.mark.parametrize("part", [BULLETS, CODE])
def test_a_few_numbers_among_many_paragraphs_are_items(part: str) -> None:
    others = "\n".join(PARAGRAPH.format("") for _ in range(20))
    text = numbered(PARAGRAPH, part)
    assert "1 *" not in [block.label.chars for block in blocks(f"{others}\n{text}")]


def test_numbers_that_do_not_count_are_text() -> None:
    found = blocks("\n".join(CODE.format(f"{number:<4}") for number in (40, 7, 33, 12) * 4))
    assert "40" not in [block.label.chars for block in found if not block.text.chars]


DRAFT = (
    "           No person shall land fish upon the rock between the\n"
    "        hours of nine and four, except herring, and those only in\n"
    "        baskets of the measure that has been approved.\n"
    "           Nets shall not be spread to dry upon the rails of the\n"
    "  {}  stair or on the steps. A net that is so spread may be\n"
    "        taken up by the keeper, and kept until sixpence has been\n"
    "        paid.\n"
    "           A vessel lying at the rock shall have a man on board at\n"
    "        all times when there is less than six feet of water, and two\n"
    "  {}  men in an on-shore wind.\n"
)


@pytest.mark.parametrize(("first", "second", "counted"), [("   5", "  10", True), ("   5", "  15", False)])
def test_numbers_of_every_fifth_line_are_no_text(first: str, second: str, counted: bool) -> None:
    blocks = read_text(DRAFT.format(first, second), "a draft", "ascii").blocks
    told = " ".join(block.text.chars for block in blocks if block.kind is not Kind.FURNITURE)
    assert ("of the stair or" in told and "and two men" in told) is counted
    assert ([line.chars.strip() for block in blocks for line in block.lines] == ["5", "10"]) is counted
