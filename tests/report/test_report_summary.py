"""The summary reads well at 80 and at 40 columns, with and without colour."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from report_samples import REPORT

from fit.loss.figures import Demands, Figures
from fit.loss.verdict import Rating, Verdict
from fit.report.advice import MASTER_COPY
from fit.report.demands import demand_sentences
from fit.report.facts import sequence
from fit.report.ink import Paint
from fit.report.lines import line_list
from fit.report.style import Style
from fit.report.summary import summary
from fit.units import Size
from fit.width import text_cells


def flat(text: str) -> str:
    """The words of a text, however its lines are broken."""
    return " ".join(text.split())


@pytest.mark.parametrize("width", [40, 60, 80, 100])
def test_no_line_is_wider_than_the_page(width: int) -> None:
    for text in (summary(REPORT, Style(width)), "".join(line_list(REPORT, Style(width)))):
        assert [line for line in text.splitlines() if text_cells(line) > width] == []


@pytest.mark.parametrize("width", [40, 80])
def test_everything_the_reader_must_know_is_there(width: int) -> None:
    text = flat(summary(REPORT, Style(width)))
    for words in (
        "WORKABLE WITH HOLDS score 54 of 100",
        "97 with 1.3 extra key presses a turn",
        "needed shown (67%) times clean (80%)",
        "34 kept, 6 damaged, 20 lost",
        "411 of 1,204 characters could never be read",
        "scrolled off",
        "lost: The lamp above you sounds wrong",
        "up to row 24 and column 79; 80% of them lead out of 40x8",
        "rows 9-24; columns 41-43, 60, 79",
        "(status lines): row 1",
        "Told 40x8, the program adapts and pages",
        "* hold 97",
        "(hold with foresight)",
        "set for the small screen: does not apply; no second session was given",
        "* It lifts the score",
        "bottom of its cup.",
        "turn by turn -#-",
        "The small screen at the first of them:",
        "4 looks: before each recorded input and at the end",
        "50% of the columns, 32% of the rows and 16% of the cells",
        "Encoding utf-8. Only 7-bit bytes were printed",
        "Lost anyway: 96 of 1,300 printed characters",
        "Not understood: 3 sequences: ESC [ ? 7 z (2 x, first at byte 120); ESC [ = 1 FFh",
        MASTER_COPY,
    ):
        assert words in text


def test_a_remark_is_said_once() -> None:
    assert flat(summary(REPORT, Style())).count("The last line of the recording was cut") == 1


def test_assumed_looks_are_said() -> None:
    report = replace(REPORT, looks_assumed=True, looks_rule="before a row leaves the big screen unseen")
    assert "4 looks: looks assumed, before a row leaves" in flat(summary(report, Style()))


def test_nothing_shown_gives_a_page_without_figures() -> None:
    nothing = Figures()
    report = replace(
        REPORT,
        figures=nothing,
        placed_share=None,
        lost_anyway=0,
        verdict=Verdict(Rating.NOT_MEASURED, "nothing was shown on the big screen"),
    )
    text = summary(report, Style())
    assert "NOT MEASURED\n  Nothing was shown on the big screen" in text
    assert "needed shown  " not in text


def test_colour_carries_no_meaning_alone() -> None:
    coloured = summary(REPORT, Style(80, Paint(enabled=True)))
    assert "\x1b[" in coloured
    assert re.sub(r"\x1b\[[0-9;]*m", "", coloured) == summary(REPORT, Style(80))


def test_a_program_that_never_moves_the_cursor_asks_for_nothing() -> None:
    assert demand_sentences(Demands(), Size(8, 40)) == ["nothing but lines: it never moves the cursor"]


def test_bytes_of_a_sequence_can_be_read() -> None:
    assert sequence(b"\x1b P\x00\x7f\xff") == "ESC SP P 00h DEL FFh"


def test_lines_say_cause_and_byte() -> None:
    assert "".join(line_list(REPORT, Style())).splitlines() == [
        "60 lines: 34 kept, 6 damaged, 20 lost",
        "byte 10, look 1, row 3: DAMAGED, displaced",
        "    | The lamp above you sounds wrong tonight;",
        "byte 60, look 1, row 4: LOST, scrolled off by byte 333",
        "    | Nine cans on the shelf",
    ]


def test_another_terminal_and_unknown_sequences_are_said_beside_the_verdict() -> None:
    report = replace(REPORT, other_terminal="the program is set for the terminal vt52")
    lines = summary(report, Style()).splitlines()
    assert "  The program is set for the terminal vt52." in lines[2:9]
    assert "Careful: 3 sequences were not understood." in flat("\n".join(lines[2:9]))
