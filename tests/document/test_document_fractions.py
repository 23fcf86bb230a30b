"""Fractions written over several lines: the parts stay above one another."""

from __future__ import annotations

import pytest
from test_document_torn_lines import PROSE

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

ONE = """\
       OIL x 8 x HOURS X Watches
Wick = -------------------------
               48 pints
"""
SEVERAL = """\
        1          1         1
Turn = ---- x ----------- x ---
       Lens   Watch x 4     Oil

          48 pints        1
     = -------------- x -----
       OIL x 8 x Lens   Watch
"""


def between(text: str) -> list[Block]:
    return list(read_text(PROSE + text + "\n" + PROSE, "log", "ascii").blocks[1:-1])


@pytest.mark.parametrize("text", [ONE, SEVERAL])
def test_fractions_are_pictures(text: str) -> None:
    blocks = between(text)
    assert [block.kind for block in blocks] == [Kind.PICTURE]
    assert [line.chars for line in blocks[0].lines] == text.splitlines()


@pytest.mark.parametrize(
    "text",
    [
        "The oil of a night\nWick = --------------\nis what the keeper fills in on the line.\n",
        "Lamp   Oil = 3   Lens\n----   -------   ----\nupper  4 pints   red\nlower  2 pints   clear\n",
    ],
)
def test_rules_that_part_no_numerator_from_a_denominator(text: str) -> None:
    assert Kind.PICTURE not in [block.kind for block in between(text)]
