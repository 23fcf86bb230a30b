"""Sessions with remarks in brackets far to the right, all through a document: rows alone, answers and program text."""

from __future__ import annotations

from fit.document.blocks import Block, Kind
from fit.document.text import read_text

TYPED = """\
_lamp<CR>_                  (to see which lamps
                             are lit)
LAMPS = 2, WICKS = 1
_      CALL LIT(1)<CR>_
_      END<CR>_
  ....                      (a list follows)

_log out<CR>_               (to go to bed)
GOOD NIGHT.
SLEEP.

"""
TOLD = (
    "  The keeper on watch writes down the hour and the state of the sea, and looks to the\n"
    "  lamp at every second hour of the night.\n\n"
)


def blocks(text: str) -> tuple[Block, ...]:
    return read_text(text, "a session", "ascii").blocks


def test_each_row_has_its_remark_and_answers_stay_lines() -> None:
    found = blocks(TYPED * 8)[:5]
    assert [block.kind for block in found] == [
        Kind.TABLE,
        Kind.PREFORMATTED,
        Kind.TABLE,
        Kind.TABLE,
        Kind.PREFORMATTED,
    ]
    rows = [[[cell.chars for cell in row] for row in block.rows] for block in found]
    assert rows[0] == [["_lamp<CR>_", "(to see which lamps are lit)"]]
    assert [line.chars for line in found[1].lines] == [
        "LAMPS = 2, WICKS = 1",
        "_      CALL LIT(1)<CR>_",
        "_      END<CR>_",
    ]
    assert rows[2] == [["....", "(a list follows)"]]
    assert rows[3] == [["_log out<CR>_", "(to go to bed)"]]
    assert [line.chars for line in found[4].lines] == ["GOOD NIGHT.", "SLEEP."]


def test_running_text_between_the_sessions_flows() -> None:
    found = blocks((TYPED + TOLD) * 8)
    told = [block.text.chars for block in found if block.kind is Kind.PARAGRAPH]
    assert told == [" ".join(TOLD.split())] * 8


def test_few_remarks_in_a_long_document_show_no_such_sessions() -> None:
    found = blocks(TYPED + TOLD * 60)
    assert [block.kind for block in found[:2]] != [Kind.TABLE, Kind.PREFORMATTED]
