"""Lines with a bar at the left of each: asides, boxes that are open at their right, and what only looks like them."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""
NOTE = """\
   |  The boat lands on the lee side of the rock, and on no other, for
   |  the swell breaks the oars that come too near.
"""


def between(text: str) -> list[Block]:
    """The blocks between two paragraphs."""
    return list(read_text(f"{PROSE}\n{text}\n{PROSE}", "log", "ascii").blocks[1:-1])


def test_an_aside_flows_without_its_bars() -> None:
    (block,) = between(NOTE)
    assert (block.kind, block.level) == (Kind.PARAGRAPH, 1)
    assert block.text.chars == (
        "The boat lands on the lee side of the rock, and on no other, for "
        "the swell breaks the oars that come too near."
    )


def test_a_bar_alone_parts_two_paragraphs() -> None:
    blocks = between(f"{NOTE}   |\n   |  The oars are ash.\n")
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH] * 2
    assert blocks[1].text.chars == "The oars are ash."


def test_an_aside_of_one_line_among_others() -> None:
    blocks = between(f"{NOTE}\n{PROSE}\n   |  The oars of the boat are ash.\n")
    assert blocks[-1].text.chars == "The oars of the boat are ash."


def test_one_line_behind_a_bar_shows_nothing() -> None:
    (block,) = between("   |  The oars of the boat are ash.\n")
    assert block.text.chars == "| The oars of the boat are ash."


PROGRAM = """\
  |lamps = 3
  |
  |if lamps > 2:
  |    light(north)
  |    ring(bell)
"""


def test_a_program_in_a_box_open_at_its_right() -> None:
    rule = f"  +{'-' * 50}\n"
    (block,) = between(f"{rule}{PROGRAM}{rule}")
    assert (block.kind, block.code) == (Kind.PREFORMATTED, True)
    assert [line.chars for line in block.lines] == [
        "lamps = 3",
        "",
        "if lamps > 2:",
        "    light(north)",
        "    ring(bell)",
    ]


def test_text_in_such_a_box_flows() -> None:
    rule = f"   +{'-' * 50}\n"
    (block,) = between(f"{rule}{NOTE}{rule}")
    assert block.kind is Kind.PARAGRAPH
    assert block.text.chars.startswith("The boat lands")


def test_a_box_with_a_name_keeps_its_frame() -> None:
    text = ".-[ north lamp (lit) ]-\n|\n| oil    = 14 gallons\n| wicks  = 3\n|\n`----\n"
    (block,) = between(text)
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines] == text.splitlines()


LINES = [
    "   | The lamp is lit\n   |     when the sun is down,\n   | and put out\n   |     when it is up again.\n",
    "   |  > lamp north\n   |  The lamp of the north is lit.\n   |  >\n",
    "   |  /lamp\n   |  /ring 4\n   |  /log rock.log\n",
]


@pytest.mark.parametrize("text", LINES)
def test_verse_and_what_is_typed_keep_lines_and_bars(text: str) -> None:
    (block,) = between(text)
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines] == [line[3:] for line in text.splitlines()]


OTHERS = [
    "   | north | lit  |\n   | south | dark |\n   | west  | lit  |\n",
    "          |\n          |\n          |\n    ------+------\n          |\n",
]


@pytest.mark.parametrize("text", OTHERS)
def test_tables_and_drawings_are_none(text: str) -> None:
    assert [block.kind for block in between(text)] in ([Kind.TABLE], [Kind.PICTURE])


def test_branches_of_a_program_stay_with_it() -> None:
    text = (
        "  type lamp =\n"
        "    | North of int   (* hours *)\n    | South of int   (* hours *)\n    | Dark           (* none *)\n"
    )
    (block,) = between(text)
    assert block.kind is Kind.PREFORMATTED
    assert [line.chars for line in block.lines] == [line[2:] for line in text.splitlines()]


def test_items_and_a_word_over_an_aside_flow_too() -> None:
    blocks = between(
        "   |  NOTE:\n   |\n   |  a)  The lamp burns oil of the best sort, and of no other, for the\n"
        "   |      glass is blackened by it.\n   |\n   |  b)  'The bell' is rung in fog.\n"
    )
    assert [(block.kind, block.level) for block in blocks] == [
        (Kind.PARAGRAPH, 1),
        (Kind.ITEM, 1),
        (Kind.ITEM, 1),
    ]
