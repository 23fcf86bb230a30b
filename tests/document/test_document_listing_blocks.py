"""Listings between two rules alike, as AsciiDoc sets them, and what else stands between rules."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""
COMMANDS = ("# lamp --light north", "$ ring -n 3 bell", "# log --read > /rock/log", "$ tide | sort -n")


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


def kept(block: Block) -> list[str]:
    return [line.chars for line in block.lines] if block.code else []


@pytest.mark.parametrize("rule", ["----", "-" * 40, "...."])
def test_what_attributes_name_is_a_listing(rule: str) -> None:
    (block,) = between(f"[source,sh]\n{rule}\nmake lamp\nmake help\n{rule}\n")
    short = rule[:32]
    assert kept(block) == ["[source,sh]", short, "make lamp", "make help", short]


def test_attributes_tell_of_all_rules_of_the_document() -> None:
    blocks = between(
        f"[source]\n----\nmake lamp\n----\n\n{PROSE}\nRing the bell:\n----\nmake bell\n----\n\nRead the log\n"
        f"\n----\nmake log\n\nmake help\n----\n"
    )
    assert [kept(block)[1:-1] for block in blocks if block.code][1:] == [
        ["make bell"],
        ["make log", "", "make help"],
    ]
    assert not any(block.kind is Kind.HEADING and block.text.chars.startswith("make") for block in blocks)


def test_several_programs_between_rules_tell_of_the_others() -> None:
    text = "".join(f"{PROSE}\n----\n{command}\n----\n\n" for command in COMMANDS)
    blocks = between(f"{text}{PROSE}\n----\nmake lamp\n----\n")
    assert [kept(block) for block in blocks if block.code] == [
        ["----", command, "----"] for command in (*COMMANDS, "make lamp")
    ]


def test_a_title_between_rules_stays_one() -> None:
    text = "".join(f"{PROSE}\n----\n{command}\n----\n\n" for command in COMMANDS)
    blocks = between(f"{text}----------\nThe stores\n----------\n\n{PROSE}")
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["The stores"]


TITLES = [
    f"Lamps\n-----\nIn the north.\n\nBells\n-----\n{PROSE}",
    f"lamp=north,lit\n--------------\nlamp=south,lit\n--------------\n\n{PROSE}",
    f"----------\n{PROSE}----------\n",
    "----------------\nLamp     Hours\n----------------\nNorth      12\nSouth       9\n----------------\n",
]


@pytest.mark.parametrize("text", TITLES)
def test_titles_text_and_tables_are_no_listings(text: str) -> None:
    assert not any(
        line.chars.startswith("---") for block in between(text) if block.code for line in block.lines
    )
