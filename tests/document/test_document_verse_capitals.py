"""Verse that its capitals show, in the middle of sentences, and the stanzas beside it."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what it\n"
    "shows into the log, whatever the weather may be, before he goes up the stair\n"
    "to the lamp room again.\n\n"
)


def kept(text: str) -> list[list[str]]:
    """The lines of each block between two paragraphs that stays lines."""
    blocks = read_text(PROSE + text + "\n" + PROSE, "a song", "ascii").blocks
    return [[line.chars for line in block.lines] for block in blocks if block.kind is Kind.PREFORMATTED]


@pytest.mark.parametrize("second", ["", "    "])
def test_capitals_in_the_middle_of_sentences(second: str) -> None:
    verse = [
        "When signals fall and lamps are low",
        f"{second}And all the boats are in,",
        "There's none but I who needs to know",
        f"{second}How cold the night has been.",
    ]
    assert kept("".join(f"    {line}\n" for line in verse)) == [verse]


def test_a_line_that_is_turned_over_and_the_couplet_above() -> None:
    first = ["Short wick, long wick, where have you been?", "    Up to the gallery to look at the queen."]
    second = [
        "Short wick, long wick, what did you there?",
        "    Went half way round and fell down the stair;",
        "        Six for a sorrow,",
        "        Nine for the light,",
        "        And three for the one who is",
        "            up half the night.",
    ]
    text = "\n\n".join("\n".join(f"      {line}" for line in stanza) for stanza in (first, second))
    assert kept(f"{text}\n") == [first, second]


def test_a_couplet_below_that_ends_its_first_line_in_a_colon() -> None:
    first = [
        "The first is still, as in a well;",
        "    The second rings it like a bell.",
        "The third will dance, the fourth will jump,",
        "    And break the glass, the wick, the pump.",
    ]
    last = ["The fifth, my friend, is not for thee:", "    Shut up the lamp and make the tea."]
    text = "\n\n".join("\n".join(f"          {line}" for line in stanza) for stanza in (first, last))
    assert kept(f"{text}\n") == [first, last]


@pytest.mark.parametrize(
    "lines",
    [
        [
            "The keeper of the lamp went up the stair with the oil, and then",
            "Holm came after him, and Maren, as",
            "Holm told us later, went for the boat, which was new.",
        ],
        [
            "He wrote to me, as he wrote to all of us in those dark days:",
            "The boat is late. It was late in May.",
            "The oil is low.",
        ],
    ],
)
def test_names_and_sentences_that_begin_a_line_are_no_verse(lines: list[str]) -> None:
    assert kept("\n".join(lines) + "\n") == []
