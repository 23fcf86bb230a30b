"""Both screens at a look: beside each other, one above the other, folded; the marks stand under their cells."""

from __future__ import annotations

import re

import pytest
from report_samples import REPORT

from fit.loss.figures import LookView
from fit.report.ink import Paint
from fit.report.look import look_page
from fit.report.style import Style
from fit.width import text_cells


def rows(columns: int, count: int, texts: dict[int, str]) -> tuple[str, ...]:
    """So many rows of exactly ``columns`` cells."""
    padded = (texts.get(row, "") for row in range(count))
    return tuple(text + " " * (columns - text_cells(text)) for text in padded)


VIEW = LookView(
    2,
    123,
    rows(80, 25, {0: "Lamp   lit", 2: "漢 " + "x" * 70 + "  end!"}),
    rows(80, 25, {0: "       ---", 2: " " * 75 + "----"}),
    rows(40, 8, {0: "Lamp 9"}),
    rows(40, 8, {0: "     ?"}),
)


def test_beside_each_other_where_there_is_room() -> None:
    lines = look_page(REPORT, VIEW, Style(140)).splitlines()
    assert lines[2].split() == ["big", "80x25", "small", "40x8"]
    assert lines[4].startswith(" 1|Lamp   lit ")
    assert lines[4].endswith(" 1|Lamp 9" + " " * 34 + "|")
    assert lines[5].index("-") == lines[4].index("lit")
    assert lines[5].index("?") == lines[4].index("9")


def test_one_above_the_other_at_80_columns() -> None:
    lines = look_page(REPORT, VIEW, Style(80)).splitlines()
    assert lines.index("big 80x25") < lines.index("small 40x8")
    assert "Lamp   lit" in lines
    assert lines[lines.index("Lamp   lit") + 1] == "       ---"
    assert "  : rows 4 to 25 are blank" in lines


def test_long_rows_are_folded_in_a_narrow_terminal() -> None:
    lines = look_page(REPORT, VIEW, Style(40)).splitlines()
    start = lines.index(" 3|漢 " + "x" * 34)
    assert lines[start + 1] == "  >" + "x" * 36 + " "
    assert lines[start + 2 : start + 4] == ["  > end!", "    ----"]


@pytest.mark.parametrize("width", [40, 60, 80, 100, 140])
def test_no_line_is_wider_than_the_page(width: int) -> None:
    assert [
        line for line in look_page(REPORT, VIEW, Style(width)).splitlines() if text_cells(line) > width
    ] == []


@pytest.mark.parametrize("width", [40, 80, 140])
def test_colour_only_repeats_the_marks(width: int) -> None:
    coloured = look_page(REPORT, VIEW, Style(width, Paint(enabled=True)))
    assert "\x1b[31ml" in coloured
    assert re.sub(r"\x1b\[[0-9;]*m", "", coloured) == look_page(REPORT, VIEW, Style(width))
