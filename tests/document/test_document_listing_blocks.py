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
    "       | Lamp | Bell |\n---------------------\n\\north | lit  | 4    |\n\\south | dark | 9    |\n---------------------\n",
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


def test_several_tall_pairs_that_hardly_read_as_text_show_what_the_others_hold() -> None:
    graph = "            G-H-I-J\n           /       \\\nA-B-C-D-E-F         O\n           \\       /\n            K-L-M-N"
    counts = "            7 7 6 5\n1 2 3 4 5 6/       \\0\n            7 7 6 5"
    pieces = [graph, counts, "oil * wicks\n  lamp / wick", "N * M * T lamps", "$ log lamps"]
    told = "The keeper draws the lamps of the coast as follows in the book of the rock:"
    text = "".join(f"{told}\n\n-------------\n{piece}\n-------------\n\n" for piece in pieces)
    blocks = read_text(text, "log", "ascii").blocks
    assert ["\n".join(line.chars for line in block.lines[1:-1]) for block in blocks[1::2]] == pieces
    titles = "".join(
        f"{told}\n\n-------------\nThe lamp of the\nrock is out\n-------------\n\n" for _ in pieces
    )
    assert not any(block.lines and len(block.lines) > 1 for block in read_text(titles, "log", "ascii").blocks)


def test_a_rule_right_over_text_closes_no_listing() -> None:
    """Rules part the questions of a list, and what stands between them hardly reads as text."""
    rule = "-" * 60
    question = (
        f"{rule}\nQuestion {{}}\n\n> Where is the oil?\n>\n> A keeper\n\nbelow/the/lamp  or\nin/the/store  or\n\n"
        "A. Keeper     'Light is all'\nkeeper at the rock           Skerry\n"
    )
    text = "".join(question.format(number) for number in range(1, 8)) + f"{rule}\n"
    blocks = read_text(text, "questions", "ascii").blocks
    assert sum(block.text.chars.startswith("Question") for block in blocks) == 7


def test_rows_of_several_columns_between_rules_are_tables() -> None:
    rule = "-" * 60
    fields = "0/0   byte  1   wick       number of the wick\n4/4   long  12  glass      what the glass shows at six\n"
    fields += "8/8   long  1   oil        pints in the tank\n"
    text = "".join(
        f"* {name} block of the log\n{rule}\n{fields}{rule}\n\n{PROSE}\n" for name in ("Lamp", "Horn", "Bell")
    )
    blocks = between(text)
    assert not any(block.code for block in blocks)
    (table, *_) = [block for block in blocks if block.kind is Kind.TABLE]
    assert [[cell.chars for cell in row] for row in table.rows][1] == [
        "4/4",
        "long",
        "12",
        "glass",
        "what the glass shows at six",
    ]
