"""Drawings at the left of running text, row by row: each is read for itself. A legend stays beside its strokes."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = "The second keeper reads these lines in the evening before he goes up the stair to the lamp.\n\n"
SLIP = r"""
            A             This is the slip, which goes down to
            *             the sea at the north of the rock, and
           / \            is wet at every tide.
          /   \
         /     \          At B the boat is hauled up by two
        /       \         of the keepers when the wind is in
       /         \        the west.
   ---/-----------\---
  B  /             \  C
"""


def blocks(text: str) -> tuple[Block, ...]:
    return read_text(BEFORE + text + "\n" + BEFORE, "a document", "ascii").blocks[1:-1]


def test_a_drawing_left_of_text_stays_whole_and_the_text_flows_below_it() -> None:
    drawing, *text = blocks(SLIP)
    drawn = [line[:26].rstrip() for line in SLIP.strip("\n").split("\n")]
    left = min(len(line) - len(line.lstrip()) for line in drawn)
    assert drawing.kind is Kind.PICTURE
    assert [line.chars for line in drawing.lines] == [line[left:] for line in drawn]
    assert [(block.kind, block.text.chars) for block in text] == [
        (
            Kind.PARAGRAPH,
            "This is the slip, which goes down to the sea at the north of the rock, and is wet at every tide.",
        ),
        (
            Kind.PARAGRAPH,
            "At B the boat is hauled up by two of the keepers when the wind is in the west.",
        ),
    ]


def test_the_foot_of_the_drawing_may_be_wider_than_the_column_of_the_text() -> None:
    foot = " - - * - - - - - - - - * - - - - -\n"
    drawing, *text = blocks(SLIP + foot)
    assert drawing.lines[-1].chars == foot.strip()
    assert len(text) == 2


def test_what_explains_a_stroke_stays_beside_it() -> None:
    legend = r"""
   | | | |
   | | | +----  the lamp is lit at dusk
   | | +------  the oil is in the store
   | +--------  the boat is on the slip
   +----------  the horn is for the fog
"""
    assert [block.kind for block in blocks(legend)] == [Kind.PICTURE]


def test_signs_and_what_they_mean_are_no_drawing() -> None:
    signs = (
        "  /    turns the lamp to the left, and\n       lets it stand there\n"
        "  \\    turns the lamp to the right, and\n       lets it stand there\n"
        "  |    leaves it where it is\n  -    puts it out for the\n       day\n"
    )
    assert not [block for block in blocks(signs) if block.kind is Kind.PICTURE]


FACE = r"""
The keeper
----------

       _____      TREGEAR, who is the first of the keepers and will for-
      /_____\     give much. He answers all questions about the lamp, but
      | o o |     none about the goat. Give him tea be-
      |  >  |     fore you ask for oil.
       \_~_/
"""


def test_a_drawing_with_straight_sides_below_the_rule_under_a_title() -> None:
    title, drawing, text = blocks(FACE)
    assert (title.kind, drawing.kind) == (Kind.HEADING, Kind.PICTURE)
    assert drawing.lines[0].chars.strip() == "_____"
    assert text.text.chars.endswith(
        "will forgive much. He answers all questions about the lamp, but none about the goat. Give him tea before you ask for oil."
    )


def test_signs_at_two_columns_and_their_names_are_no_drawing() -> None:
    signs = "   --------\n       =        (equal)\n       /=       (not equal)\n       <        (less)\n       <=       (less or equal)\n       >        (greater)\n"
    assert not [block for block in blocks(signs) if block.kind is Kind.PICTURE]


def test_the_signs_before_the_remarks_of_a_program_are_no_drawing() -> None:
    program = """\
        :0
        *$ ! ^Bell:.*$AT_NIGHT
        {

            #   Do not ring the bell. This saves a walk up the stairs
            #   (ninety). Also do not try to wake the first keeper,
            #   again saving one walk to the house. With these, the
            #   night is shorter and there is more of the tea.

            BELL   = "no"
"""
    assert not [block for block in blocks(program) if block.kind is Kind.PICTURE]
