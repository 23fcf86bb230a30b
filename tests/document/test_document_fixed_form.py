"""FORTRAN in fixed form: one listing, whatever stands in its columns 1 and 6."""

from __future__ import annotations

from textwrap import indent

import pytest
from test_document_torn_lines import PROSE

from fit.document.text import read_text

LISTING = """\
C     **********
C
C     COUNT THE TINS OF OIL IN THE STORE.
C
      INTEGER TINS,NIGHT
      DOUBLE PRECISION OIL(9),
     *                 LEFT(9)
      DATA OIL(1),OIL(2),OIL(3),
     *     OIL(4),OIL(5)
     *     /1.4D-1,1.8D-1,2.2D-1,2.5D-1,
     *      2.9D-1/
C
C     AT NIGHT THE LAMP BURNS.
C
      DO 10 NIGHT = 1, 9
         LEFT(NIGHT) = OIL(NIGHT)
   10    CONTINUE
 1000 FORMAT (5X,15H TINS OF OIL   ,16X,I10 //
     *        5X,15H NIGHTS        )
      END
"""
HEAD = """\
      SUBROUTINE LAMP(OIL,WICK,GLASS,
     *                TINS,NIGHT)
      INTEGER TINS,NIGHT
      EXTERNAL STORE
"""
TO_FILL_IN = """\
        SUBROUTINE STORE(TINS,NIGHT)
        INTEGER TINS,NIGHT
        ----------
        COUNT THE TINS OF THE NIGHT
        AND RETURN THEM IN TINS.
        ----------
        RETURN
        END
"""


def kept(text: str) -> list[str]:
    """The program texts between two paragraphs, each as it stands."""
    blocks = read_text(PROSE + text + PROSE, "log", "ascii").blocks
    return ["".join(f"{line.chars}\n" for line in block.lines) for block in blocks if block.code]


@pytest.mark.parametrize("margin", ["", "  ", "        "])
def test_a_listing_is_one_piece_right_below_text_too(margin: str) -> None:
    assert kept(indent(LISTING, margin)) == [LISTING]


def test_blank_lines_and_remarks_between_statements_are_part_of_it() -> None:
    parted = LISTING.replace("C\nC     AT", "\n*     AT")
    assert kept(parted) == [parted]


def test_a_head_that_goes_on_has_no_bullets() -> None:
    assert kept(HEAD) == ["".join(line[5:] for line in HEAD.splitlines(keepends=True))]


def test_a_head_with_its_end_holds_what_is_to_be_filled_in() -> None:
    assert kept(TO_FILL_IN) == ["".join(line[8:] for line in TO_FILL_IN.splitlines(keepends=True))]


@pytest.mark.parametrize(
    "text",
    [
        "*     THE LAMP IS LIT AT DUSK.\n*     THE HORN IS SOUNDED IN FOG.\n",
        "C     Count the tins.\nD     Ring the bell.\n",
    ],
)
def test_bullets_and_letters_before_words_are_no_program(text: str) -> None:
    assert kept(text) == []
