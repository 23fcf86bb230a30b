"""Verse that no capital begins: set in far, or the next stanza; and narrow text that was wrapped."""

from __future__ import annotations

import pytest

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


SUNG = [
    # sentences that rhyme two by two, a colon at the end of one
    "All ye that watch, attend and hear:\nThe rules are short, the oil is dear.\nWho comes in drink shall pay a pot,\nAnd he that sleeps shall pay the lot.\n",
    # in turns, a question among them
    "Who goes there in the dark of night?\nThe boat is in, the tide is deep.\nI only came to see the light.\nThen say your name, and let me sleep.\n",
]


@pytest.mark.parametrize("text", SUNG)
def test_whole_sentences_that_rhyme_are_verse(text: str) -> None:
    stanza = "".join(f"          {line}\n" for line in text.splitlines())
    assert kept(stanza) == 1
    assert kept(f"{stanza}{' ' * 34}(the boat-house, 1712)\n") == 1


def test_whole_sentences_that_do_not_rhyme_are_text() -> None:
    steps = "Light the lamp at dusk.\nTrim the wick at noon.\nRing the bell in fog.\nWrite it all down.\n"
    assert kept("".join(f"          {line}\n" for line in steps.splitlines())) == 0


def test_a_stanza_behind_its_number() -> None:
    song = (
        "  1.  O thou that burnest in the gloom\n        And hast not slept since May,\n"
        "      There's many a keeper's in his tomb\n        That lit thee in his day.\n\n"
        "  2.  But when the glass is mended quite,\n        And when the wicks are new,\n"
        "      We'll light thee all a summer night\n        Till all the harbours sue.\n"
    )
    assert kept(song) == 2


def test_an_item_behind_its_number_is_no_stanza() -> None:
    item = "  1.  The lamp is lit at dusk by Maren,\n      Tom and Isak. The bell is rung by\n      Maren alone.\n"
    assert kept(item) == 0


def test_verse_between_the_lines_of_a_paragraph() -> None:
    """A colon leads to it, and the text goes on at its left with no blank line between."""
    song = (
        '   "Now who goes there, and whither bound,\n   And have you got a penny?\n'
        "   For those who walk on holy ground\n   Without one, there's not any.\"\n"
    )
    led = PROSE.rstrip("\n").replace("had it bound.", "he said:\n")
    blocks = read_text(f"{led}{song}and shut the door of the lamp room behind him.\n", "log", "ascii").blocks
    assert [len(block.lines) for block in blocks if block.kind is Kind.PREFORMATTED] == [4]
    steps = song.replace("penny", "lamp").replace("ground", "stairs")
    blocks = read_text(f"{led}{steps}and shut the door of the lamp room behind him.\n", "log", "ascii").blocks
    assert not any(block.kind is Kind.PREFORMATTED for block in blocks)


def test_two_lines_set_in_far_below_a_colon() -> None:
    text = (
        "     Over the stair he had written with his own hand:\n\n"
        "                    The moon is mistress of the sea\n"
        "                    but not of the keeper\n"
    )
    assert kept(text) == 1
    assert kept(text.replace(" " * 20, " " * 7)) == 0


TURNS = (
    "  O tape, that windest slow and long through many winter nights,\n"
    "    Thy whistle is a wintry song;\n"
    "  I sat beside thee for an hour, and put out all the other lights:\n"
    "    And someone has cut off the power.\n"
)


def test_full_lines_of_verse_at_two_indents_in_turn() -> None:
    assert kept(TURNS) == 1


def test_questions_over_their_answers_are_no_verse() -> None:
    assert kept(TURNS.replace("nights,", "nights?").replace("lights:", "lights?")) == 0
