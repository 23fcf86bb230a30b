"""Settings with what they mean beside them: one blank is enough where a setting fills its column."""

from __future__ import annotations

import pytest

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.document.text.lines.reading import read_lines
from fit.document.text.lists.settings import find_settings

BEFORE = "The file of the lamps has one entry a lamp, and what stands in it is told here, one line each:\n\n"
SETTINGS = """\
  lamp="north"\\                   which lamp of the rock this entry is for
  section="Lamps/Harbour"\\        in what part of the log it is written
  keeper="the second keeper too"\\ who has to light it
  wick="3" \\                      the size of its wick
"""
LAST = '  drawing="/rock/drawings/lamps/north"  the drawing that hangs in the tower.\n'


@pytest.mark.parametrize("last", ["", LAST])
def test_each_setting_has_its_text_at_one_column(last: str) -> None:
    lines, _ = read_lines(SETTINGS + last)
    found = find_settings(lines, [None] * len(lines))
    assert {index: lines[index].cells[column:] for index, column in found.items()} == {
        0: "which lamp of the rock this entry is for",
        1: "in what part of the log it is written",
        2: "who has to light it",
        3: "the size of its wick",
        **({4: "the drawing that hangs in the tower."} if last else {}),
    }


def test_settings_with_remarks_of_a_program_beside_them_stay_lines() -> None:
    text = "  lamp=north      # which lamp\n  wick=3          # its size\n  oil=whale       # what it burns\n"
    (block,) = read_text(f"{BEFORE}{text}\nThe keeper reads it.\n", "lamps", "ascii").blocks[1:-1]
    assert block.kind is Kind.PREFORMATTED


def test_settings_among_statements_are_no_keys() -> None:
    text = SETTINGS + "  light $lamp; wait 10\n"
    blocks = read_text(f"{BEFORE}{text}\nThe keeper reads it.\n", "lamps", "ascii").blocks
    assert not any(block.kind is Kind.ITEM for block in blocks)
