"""Fractions and other formulas written over several lines: the parts stay above one another."""

from __future__ import annotations

from textwrap import dedent

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


INTEGRAL = """\
          /     _
 Oil  =   | Wx dt        Left  =  Barrel - Oil
          /
"""
RAISED = """\
                      2        (h+1)/2
 Reach = Light x Lens   + Tower
"""
BRACED = (
    " where  oil = pints a night |\n"
    "        wax = candles       |  in the long watch\n"
    "       lens = lit glass     |\n"
)


@pytest.mark.parametrize("text", [INTEGRAL, RAISED, BRACED])
def test_integral_signs_exponents_and_braces_stay_where_they_are(text: str) -> None:
    blocks = between(text)
    assert [block.kind for block in blocks] == [Kind.PICTURE]
    assert [line.chars for line in blocks[0].lines] == dedent(text).splitlines()


@pytest.mark.parametrize(
    "text",
    [
        "       pints\n lamp = 48  of the best oil\n",
        "  / the stair\n  | lamp = 3  lens = 4\n  \\ the landing\n",
        " oil = 48   | the pints\n wax = 12   | candles\n tin = 3    | boxes\n",
    ],
)
def test_words_over_an_equation_and_columns_behind_a_bar_are_no_formula(text: str) -> None:
    assert "formula" not in [block.note for block in between(text)]
