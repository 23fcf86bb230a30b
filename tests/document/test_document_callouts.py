"""A line whose parts are marked from below: it and what the marks mean are one drawing."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

MARKED = """\
Put the following line into the book of the lamp, as it stands here:

        lamp=main oil=12 wicks=4/7/9 watch=first
             ^        ^  \\____________________/
             |        |            |
      name of lamp    |        set by the keeper
                      |
              pints, see the list of stores for more of them

The line is read at dusk.
"""


def test_a_line_marked_from_below_is_drawn_with_its_labels() -> None:
    blocks = read_text(MARKED, "book", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert [line.chars.strip() for line in blocks[1].lines] == [
        line.strip() for line in MARKED.split("\n\n")[1].split("\n")
    ]


def test_a_caret_under_a_line_of_output_draws_nothing() -> None:
    text = """\
The board says where it did not understand a key:

    lamp=main oil=twelve
              ^
    a number is wanted here
"""
    assert all(block.kind is not Kind.PICTURE for block in read_text(text, "board", "ascii").blocks)


def test_a_last_label_of_several_lines_is_text_below_the_drawing() -> None:
    text = """\
Entry of a lamp in the book of the stores:

        lamp north 12 pints
             ^     ^  ^
             |     |  what they are counted in
             |     how many
             Name of the place at which the lamp stands. It
             may be any word that the keepers know.
"""
    blocks = read_text(text, "book", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert len(blocks[1].lines) == 4
    assert blocks[2].text.chars.startswith("Name of the place")


def test_strokes_that_go_on_below_a_label_are_one_drawing_with_what_is_above() -> None:
    cross = """\
               The-horn
                  ^
                  |
    The-lamp <----+----> The-boat
                  |
                  v
               The-oil
"""
    blocks = read_text(
        f"The stair has four doors:\n\n{cross}\nEach is shut in fog.\n", "plan", "ascii"
    ).blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert len(blocks[1].lines) == len(cross.splitlines())


POINTED = """\
An order of the keeper has this form:

     Name    Place     What is to be done there
       |       |                |
     lamp(north wall)[wicks=4 oil=12] {       <= one line
        at dusk:  lit at once,  every night }
          |            |               |
       Moment        Order         Repetition
       of it         itself        of it

The order is read at dusk.
"""


def test_strokes_between_words_and_the_parts_of_a_line_are_one_drawing() -> None:
    blocks = read_text(POINTED, "book", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PICTURE, Kind.PARAGRAPH]
    assert len(blocks[1].lines) == 7


def test_strokes_that_end_at_no_word_of_their_own_draw_no_such_parts() -> None:
    text = POINTED.replace("Place", "     ").replace(" Order ", "       ")
    assert [block.note for block in read_text(text, "book", "ascii").blocks].count(
        "parts of a line marked"
    ) == 0
