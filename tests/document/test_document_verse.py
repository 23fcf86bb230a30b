"""Verse that no capital begins: set in far, or the next stanza; and narrow text that was wrapped."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "     The keeper of the light was fond of verse, and wrote some of it into the log\n"
    "when the nights were long. His brother kept it, and had it bound.\n\n"
)


def kept(text: str) -> int:
    """How many blocks between two paragraphs are lines that stay lines."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks
    return sum(block.kind is Kind.PREFORMATTED for block in blocks)


def test_verse_in_small_letters_set_in_far_among_first_line_indents() -> None:
    text = (
        "                o harbour lights, o harbour bells,\n"
        "                how far away you seem,\n"
        "                when all the sea between us swells\n"
        "                and moonlight makes it gleam\n"
    )
    assert kept(text) == 1


def test_the_next_stanza_in_small_letters() -> None:
    text = (
        "    the lamp is low, the wind is high,\n    the gulls have gone to bed,\n"
        "    and only I am left awake\n    to trim the wick instead.\n\n"
        "    o harbour lights, o harbour bells\n    how far away you seem\n"
        "    when all the sea between us swells\n    and moonlight makes it gleam\n"
    )
    assert kept(text) == 2


def test_narrow_text_that_was_wrapped_flows() -> None:
    text = (
        "                the lamp is lit at dusk by the\n                keeper of the watch, and he\n"
        "                puts it out at sunrise when\n                the sea is bright again\n"
    )
    assert kept(text) == 0
