"""Commands right over what they do, at the same indent: a run of entries of which each alone looks like something else."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text

PROSE = (
    "The keeper on watch reads the barometer at the full hour and writes what\n"
    "it shows into the log, whatever the weather may be, before he goes up.\n\n"
)


def items(*entries: str) -> list[tuple[int, str, str]]:
    """Level, label and text of each item between two paragraphs."""
    text = PROSE + "".join(f"{entry}\n\n" for entry in entries) + PROSE
    blocks = read_text(text, "log", "ascii").blocks
    return [(block.level, block.label.chars, block.text.chars) for block in blocks if block.kind is Kind.ITEM]


ENTRIES = (
    "LIGHT <lamp>\nLight the lamp and sign for it.",
    "FORWARD\nSend all letters of the rock to the harbour",
    "RINg [on|off]\nRings the bell when there is fog. It is not rung when the keepers sleep\nunless a boat is out.",
    "Oil <cans> <lamp>\nCount the cans.",
    "WICK\nTrim the wick of the lamp that is lit.",
)


def test_forms_of_commands_and_words_in_capitals() -> None:
    assert items(*ENTRIES) == [
        (0, *(" ".join(part.split("\n")) for part in entry.split("\n", 1))) for entry in ENTRIES
    ]


@pytest.mark.parametrize(
    "entries",
    [
        # three are no run
        ENTRIES[:3],
        # without the form of a command they may be titles, or names over what is said of them
        tuple(entry.replace("<", "").replace(">", "").replace("[on|off]", "") for entry in ENTRIES),
        # what each does is program text
        tuple(f"{entry.splitlines()[0]}\nLDA #12" for entry in ENTRIES),
        # the first line was wrapped
        tuple(
            "The keeper who has the first watch of the night lights the <lamp>\nWhen he is asked to do that."
            for _ in range(5)
        ),
    ],
)
def test_what_is_left_alone(entries: tuple[str, ...]) -> None:
    assert items(*entries) == []
