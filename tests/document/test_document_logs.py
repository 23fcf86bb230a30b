"""Logs of a program keep their lines; three dots that lead to a page, and sentences that stop at them, are none."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = "The clock looks for what it needs before it is wound. On the rock it says:\n\n"
AFTER = "\nThe keeper writes all of this into the log before he goes up to the lamp.\n"
LOOKED = (
    "checking for oil... yes\n"
    "checking for a wick (cotton)... /store/wick -n\n"
    "checking whether the bell rings... yes\n"
    "clock: warning: could not find your horn\n"
)
NAMED = (
    "lampscan<Info>: Ignoring lamp0 because the store has a link to it.\n"
    "lamp1<*1>: LIT -- LIT -- dark.\n"
    "lamp2<*1>: LIT -- OK\n"
    "lamp2<*1>: LIT Z -- OK\n"
    "lamp2<*1>: LIT Q0 -- OK\n"
    "        [more of the same]\n"
    "lamp2<*1>: Turns: 12 -- OK\n"
)
MADE = "".join(
    f"lamp[1]: Entering the store `/skerry/store/{room}'\nlamp[1]: Nothing to be done for `{room}'.\n"
    for room in ("oil", "wick", "bell")
)
CONTENTS = "The lamp................. 3\nThe lighting of the lamp... 4\nThe bell................ 11\nThe horn of the rock...... 12\n"


def blocks(text: str) -> list[Block]:
    return list(read_text(f"{BEFORE}{text}{AFTER}", "log", "ascii").blocks[1:-1])


@pytest.mark.parametrize("text", [LOOKED, NAMED, MADE])
def test_a_log_is_one_piece_with_all_its_lines(text: str) -> None:
    (block,) = blocks(text)
    assert block.code
    assert [line.chars for line in block.lines] == text.splitlines()


def test_leaders_to_pages_are_no_log() -> None:
    assert {block.kind for block in blocks(CONTENTS)} == {Kind.ITEM}


def test_sentences_that_stop_at_three_dots_are_no_log() -> None:
    text = "looking for the boat... the keeper said no more\nabout it, and the lamp went out.\n"
    assert not any(block.code for block in blocks(text))


def test_records_with_three_strokes_above_each_are_no_titles_with_rules() -> None:
    text = "rock: > lamp watch\n---\nlamp: lit\n---\nlamp: dark\noil: 14\n---\nlamp: lit\n"
    (block,) = blocks(text)
    assert block.code
    assert [line.chars for line in block.lines] == text.splitlines()


def test_three_strokes_between_paragraphs_part_them() -> None:
    text = "The lamp was lit at dusk by the keeper.\n---\nThe bell was rung for the boat.\n---\nThe boat came in the night.\n---\n"
    assert not any(block.code for block in blocks(text))
