"""Bars in the margin beside lines that were altered since the last issue, and bars that are sides of something else."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

ORDERS = """\
3.1  The lamp shall be lit before the sun has set, and shall not be
     put out before it has risen.

3.2  The keeper on watch shall not leave the lantern. If the goat is
     heard upon the stairs he shall ring once, and wait.

     a)  The boat is hauled up above the spring mark,
     b)  the oars are kept indoors, because the last ones were
         taken by the sea,
     c)  and the painter is never cut.
"""
ALTERED = (3, 4, 7, 8)
"""The lines of the orders that were altered."""


def told(text: str) -> list[str]:
    """The blocks that are no furniture: label and text of each, or its lines."""
    return [
        _told(block)
        for block in read_text(text, "orders", "ascii").blocks
        if block.kind is not Kind.FURNITURE
    ]


def _told(block: Block) -> str:
    return f"{block.label.chars} {block.text.chars}".strip() or "/".join(line.chars for line in block.lines)


@pytest.mark.parametrize("bar", ["|", "\u2502"])
@pytest.mark.parametrize("right", [True, False])
def test_bars_beside_altered_lines_are_no_part_of_the_text(bar: str, *, right: bool) -> None:
    lines = [f"    {line}" for line in ORDERS.splitlines()]
    for index in ALTERED:
        lines[index] = f"{lines[index]:<74}{bar}" if right else f"{bar}{lines[index][1:]}"
    read = told("\n".join(lines) + "\n")
    assert read == told(ORDERS)
    assert read[1].endswith("he shall ring once, and wait.")


def test_a_bar_beside_a_blank_line_between_two_altered_paragraphs() -> None:
    lines = ORDERS.splitlines()
    for index in (0, 1, 2, 3):
        lines[index] = f"{lines[index]:<74}|"
    assert told("\n".join(lines) + "\n") == told(ORDERS)


def test_text_that_reaches_beyond_the_bars_shows_that_they_are_none() -> None:
    lines = ORDERS.splitlines()
    for index in ALTERED:
        lines[index] = f"{lines[index]:<74}|"
    assert "|" in " ".join(told("\n".join(lines) + "\n\n" + "-" * 76 + "\n"))


def test_bars_at_all_lines_between_blank_ones_set_an_aside_off() -> None:
    """What was altered ends somewhere in the middle of the text; an aside is whole."""
    aside = "|   The oars of the boat are ash, and are oiled\n|   in spring and once more before the winter, when\n|   they are not in use.\n"
    text = "".join(f"    {line}\n" for line in ORDERS.splitlines())
    (block,) = [
        block
        for block in read_text(f"{text}\n{aside}", "orders", "ascii").blocks
        if "ash" in block.text.chars
    ]
    assert block.note == "text behind a bar"
