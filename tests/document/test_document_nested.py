"""Lines set deeper below a line that opens them: nested program text is no table, and a term is no start of its meaning."""

from __future__ import annotations

import pytest

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

BEFORE = (
    "The second keeper reads the log in the evening and writes down what he has not understood of it.\n\n"
)


def blocks(text: str) -> list[Block]:
    """The blocks of a text, those of the paragraph before it left out."""
    return list(read_text(BEFORE + text, "a document", "ascii").blocks)[1:]


PROGRAMS = {
    "statements that a word closes": """\
        repeat 3
            lamp on;   wait 5
            lamp off;  wait 10
            horn;      wait 1
        end
        stop
""",
    "one statement leaves a single blank": """\
    while dark do
        lamp on;  wait 5
        lamp off; wait 10
    done
""",
    "fields that may be left out": """\
   object {
       string           lamp-name;
      [lamp-time        lamp-lit-at;]
      [string           lamp-colour<0..*>;]
   } lamp-obj;
""",
    "the answer to a command": """\
    % count /log/may /log/june
         52    178   1347 /log/may
         52    178   1347 /log/june
        104    356   2694 total
    0.1u 0.1s 0:00 13%
    %
""",
}


@pytest.mark.parametrize("text", PROGRAMS.values(), ids=PROGRAMS.keys())
def test_nested_lines_stay_as_they_are_typed(text: str) -> None:
    (block,) = blocks(text)
    assert block.kind is Kind.PREFORMATTED
    assert block.code
    margin = min(len(line) - len(line.lstrip()) for line in text.splitlines())
    assert [line.chars for line in block.lines] == [line[margin:] for line in text.splitlines()]


def test_a_table_between_lines_at_the_margin_is_one() -> None:
    text = "Stores\n   wicks     12\n   chimneys   4\n   ropes      3\nBoats\n   cutter     1\n   gig        2\n   punt       1\n"
    kinds = [block.kind for block in blocks(text)]
    assert Kind.TABLE in kinds
    assert Kind.PREFORMATTED not in kinds


TERMS = """\
    a cone, point up
            gale expected from the north

    a cone, point down
            gale expected from the south, or from the north as well, if the
            cone has been hung up by the second keeper

    a ball
            nothing is expected
"""


def test_terms_that_read_as_the_start_of_a_sentence() -> None:
    assert [(block.label.chars, block.text.chars) for block in blocks(TERMS)] == [
        ("a cone, point up", "gale expected from the north"),
        (
            "a cone, point down",
            "gale expected from the south, or from the north as well, if the cone has been hung up by the second keeper",
        ),
        ("a ball", "nothing is expected"),
    ]


def test_hanging_paragraphs_that_fill_their_lines_go_on() -> None:
    hanging = (
        "the lamp was lit at dusk by the first keeper, who had to climb up to\n   the gallery for it\n\n"
    )
    hanging += "the boat was hauled up by the second keeper, who had been asked to by\n   the first one\n"
    assert [block.kind for block in blocks(hanging)] == [Kind.PARAGRAPH] * 2


def test_an_entry_of_a_list_in_columns_may_hold_others() -> None:
    fields = """\
long hours;              hours that the lamp has been lit
union {
  void *oil;             the oil of it, if there is any
  wick *wicks;           the wicks of it
  glass *glasses;        what stands around it
} lamp;
"""
    assert [(block.kind, len(block.rows)) for block in blocks(fields)] == [(Kind.TABLE, 6)]
