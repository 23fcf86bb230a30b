"""Trees with words beside their branches keep their lines; one that is drawn alone is a picture."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

ABOVE = "The keeper finds his way about the store by the board at the door,\nwhich shows what lies in which of the rooms:\n\n"
TREE = """\
  - store        - what lies behind the door
    |-oil        - all casks for the lamp
    |  |-full    - the ones that came with the boat
    |  |-empty   - the ones that go back with it
    |-wicks      - cotton, by the yard
                   and ready for the lamp
"""
BELOW = "\nHe hangs the key up again when he has found what he was sent for.\n"


def test_a_tree_keeps_the_words_beside_its_branches() -> None:
    blocks = read_text(ABOVE + TREE + BELOW, "board", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert [line.chars for line in blocks[1].lines] == [line[2:] for line in TREE.splitlines()]


def test_a_tree_of_strokes_and_words_beside_it() -> None:
    text = "store\n├── oil      # all casks\n│   └── full # from the boat\n└── wicks    # by the yard\n"
    blocks = read_text(ABOVE + text + BELOW, "board", "utf-8").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    assert blocks[1].lines[0].chars == "store"


def test_a_tree_without_words_is_a_picture() -> None:
    text = "  store\n  |-- oil\n  |   |-- full\n  |   `-- empty\n  `-- wicks\n"
    blocks = read_text(ABOVE + text + BELOW, "board", "ascii").blocks
    kinds = [block.kind for block in blocks]
    assert Kind.PICTURE in kinds
    assert Kind.PREFORMATTED not in kinds


def test_flags_behind_a_bar_are_no_tree() -> None:
    text = "  +l #rock    Lights the lamp of the rock at once\n  |-l #rock   Puts out the lamp of the rock\n"
    blocks = read_text(ABOVE + text + BELOW, "board", "ascii").blocks
    assert not any(block.note == "tree of program text" for block in blocks)
