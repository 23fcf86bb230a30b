"""Info files: what parts their nodes, and the tables at their end, are no words of the manual."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Document, Kind
from fit.document.text import read_text

PROSE = """\
The keeper on watch reads the barometer at the full hour and writes what
it shows into the log, whatever the weather may be, before he goes up to
the lamp. The second keeper signs the page in the morning.
"""


def node(name: str, around: str, text: str) -> str:
    return f"\x1f\nFile: skerry.info,  Node: {name},  {around}\n\n{text}\n"


MANUAL = (
    "This is skerry.info, made from skerry.texi.\n\nINFO-DIR-SECTION Lights\nSTART-INFO-DIR-ENTRY\n"
    "* Skerry: (skerry).           Keeping the lamp.\nEND-INFO-DIR-ENTRY\n\n"
    + node("Top", "Next: Lamp,  Up: (dir)", f"{PROSE}\n* Menu:\n\n* Lamp::\n* Bell::\n")
    + node("Lamp", "Next: Bell,  Prev: Top,  Up: Top", f"1 Lamp\n******\n\n{PROSE}")
    + node(
        "Bell",
        "Prev: Lamp,  Up: Top",
        f"2 Bell\n******\n\n{PROSE}\n\0\b[index\0\b]\n* Menu:\n\n* fog:   Bell.\n",
    )
)
TABLES = (
    "\x1f\nTag Table:\nNode: Top\x7f211\nRef: Watch\x7f300\nNode: Lamp\x7f500\nNode: Bell\x7f700\n"
    "\x1f\nEnd Tag Table\n\n\x1f\nLocal Variables:\ncoding: us-ascii\nEnd:\n"
)


def info(text: str) -> Document:
    return read_text(text, "skerry.info", "ascii")


def furniture(blocks: tuple[Block, ...]) -> list[str]:
    return [line.chars for block in blocks if block.kind is Kind.FURNITURE for line in block.lines]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("feed", ["", "\f"])
def test_the_lines_of_nodes_are_furniture(feed: str, end: str) -> None:
    text = (MANUAL + TABLES).replace("\x1f\nFile", f"\x1f{feed}\nFile").replace("\n", end)
    document = info(text)
    assert document.remarks == ()
    told = furniture(document.blocks)
    assert told[:3] == ["INFO-DIR-SECTION Lights", "START-INFO-DIR-ENTRY", "END-INFO-DIR-ENTRY"]
    assert [line.split("Node: ")[1].split(",")[0] for line in told if line.startswith("File:")] == [
        "Top",
        "Lamp",
        "Bell",
    ]
    assert told[-8:-3] == [
        "Node: Top 211",
        "Ref: Watch 300",
        "Node: Lamp 500",
        "Node: Bell 700",
        "End Tag Table",
    ]
    assert document.left_out is not None
    assert document.left_out.words == ()


def test_the_text_of_nodes_is_read_like_any_other() -> None:
    blocks = [block for block in info(MANUAL + TABLES).blocks if block.kind is not Kind.FURNITURE]
    assert [block.text.chars for block in blocks if block.kind is Kind.HEADING] == ["1 Lamp", "2 Bell"]
    assert sum(block.text.chars.startswith("The keeper on watch") for block in blocks) == 3
    items = [block.text.chars for block in blocks if block.kind is Kind.ITEM]
    assert {"Lamp::", "Bell::", "fog: Bell."} <= set(items)


def test_a_file_of_nothing_but_places_is_all_furniture() -> None:
    text = "This is skerry.info, made from skerry.texi.\n\n\x1f\nIndirect:\nskerry.info-1: 211\nskerry.info-2: 900\n"
    document = info(text + TABLES.replace("Tag Table:\n", "Tag Table:\n(Indirect)\n", 1))
    assert [block.kind for block in document.blocks[:1]] == [Kind.PARAGRAPH]
    assert {block.kind for block in document.blocks[1:]} == {Kind.FURNITURE}
    assert document.remarks == ()


@pytest.mark.parametrize("mark", ["", "\x1f\n"])
def test_lines_that_look_so_in_another_text_are_text(mark: str) -> None:
    line = "Tag Table:" if not mark else "A line"
    document = info(
        f"{PROSE}\n{mark}{line}\nFile: skerry.log, Node: Top, Up: the rock\n\nEND-INFO-DIR-ENTRY\n\n{PROSE}"
    )
    assert furniture(document.blocks) == []
    assert len(document.remarks) == len(mark) // 2
