"""Bars, numbers, paint, printable text and tables."""

from __future__ import annotations

import pytest

from fit.report.bars import bar, strip
from fit.report.ink import Ink, Paint
from fit.report.numbers import count, percent, points, ranges, rate
from fit.report.plain import clip_start, pad, printable, wrap
from fit.report.tables import table
from fit.width import text_cells


@pytest.mark.parametrize(
    ("share", "drawn"),
    [
        (0.0, ".........."),
        (0.001, "#........."),
        (0.5, "#####....."),
        (0.999, "#########."),
        (1.0, "##########"),
        (None, "----------"),
    ],
)
def test_bar_is_full_or_empty_only_where_the_share_is(share: float | None, drawn: str) -> None:
    assert bar(share, 10) == drawn


@pytest.mark.parametrize(
    ("shares", "cells", "drawn"),
    [
        ([1.0, 0.95, 0.94, 0.6, 0.1, 0.0], 10, "##++-."),
        ([1.0, 1.0, 0.0, 0.0, 1.0, 0.3], 3, "#.+"),
        ([0.0, 1.0, 1.0], 2, ".#"),
        ([], 10, ""),
    ],
)
def test_a_strip_has_a_sign_a_turn_or_a_sign_for_neighbours(
    shares: list[float], cells: int, drawn: str
) -> None:
    assert strip(shares, cells) == drawn


@pytest.mark.parametrize(
    ("share", "said"),
    [(0.0, "0%"), (0.001, "<1%"), (0.614, "61%"), (0.9999, ">99%"), (1.0, "100%"), (None, "-")],
)
def test_percent_never_says_all_or_nothing_of_a_part(share: float | None, said: str) -> None:
    assert percent(share) == said


@pytest.mark.parametrize(
    ("score", "said"),
    [
        (79.96, "79.9"),
        (79.6, "79.6"),
        (80.0, "80"),
        (80.4, "80"),
        (59.51, "59.5"),
        (99.97, "99.9"),
        (100.0, "100"),
        (0.0, "0"),
        (None, "-"),
    ],
)
def test_points_are_not_lifted_over_the_bar_of_a_verdict(score: float | None, said: str) -> None:
    assert points(score) == said


def test_counts_and_rates_are_read_as_people_say_them() -> None:
    assert count(1, "line") == "1 line"
    assert count(2400, "line") == "2,400 lines"
    assert count(2, "key press", "key presses") == "2 key presses"
    assert rate(1.25) == "1.2"
    assert (rate(1.5), rate(1.504), rate(1.54)) == ("1.5", "1.51", "1.54")
    assert rate(None) == "-"


@pytest.mark.parametrize(
    ("numbers", "said"), [((), ""), ((3,), "3"), ((1, 9, 10, 11), "1, 9-11"), ((1, 2), "1-2")]
)
def test_neighbours_become_a_range(numbers: tuple[int, ...], said: str) -> None:
    assert ranges(numbers) == said


def test_no_control_character_reaches_the_terminal() -> None:
    hostile = "a\x1b[31mb\x07c\x9bd\u202ee\udc80f\n"
    assert printable(hostile) == "a\\x1b[31mb\\x07c\\x9bd\\u202ee\\udc80f\\x0a"


def test_letters_of_any_script_stay() -> None:
    assert printable("Skerry, Grüße, 漢字, e\u0301") == "Skerry, Grüße, 漢字, e\u0301"


@pytest.mark.parametrize("cells", [1, 2, 3, 7, 40])
def test_wrapped_lines_keep_the_words_and_the_width(cells: int) -> None:
    text = "the lamp 漢字漢字 draws its breath too quicklyandverylongindeed"
    lines = wrap(text, cells)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(text_cells(line) <= max(cells, 2) for line in lines)


def test_a_text_without_words_gives_no_line() -> None:
    assert wrap("  ", 10, first="- ") == []


def test_the_end_of_long_words_is_kept_before_a_break() -> None:
    assert clip_start("near the bottom of its cup.", 12) == "..its cup."
    assert clip_start("its cup.", 12) == "its cup."


def test_pad_counts_cells_not_characters() -> None:
    assert pad("漢", 4) == "漢  "
    assert pad("9", 3, right=True) == "  9"


def test_the_bending_column_gives_way_to_the_figures() -> None:
    lines = table(["", "score"], [["hold before a row goes", "97"], ["as it is", "54"]], 20)
    assert lines == [
        "               score",
        "hold before a",
        "  row goes        97",
        "as it is          54",
    ]


def test_paint_is_nothing_without_colour() -> None:
    assert Paint()("word", Ink.BOLD, Ink.RED) == "word"
    assert Paint(enabled=True)("word", Ink.BOLD, Ink.RED) == "\x1b[1;31mword\x1b[m"
    assert Paint(enabled=True)("word", Ink.PLAIN) == "word"
