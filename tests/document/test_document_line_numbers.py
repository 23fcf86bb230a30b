"""Numbers of every fifth line in the margin of a draft: no part of its text."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

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
