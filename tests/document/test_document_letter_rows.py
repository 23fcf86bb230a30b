"""Rows of a few kinds of letters stay lines: they are data, whatever stands before them."""

from __future__ import annotations

from fit.document.blocks import Kind
from fit.document.text import read_text

ABOVE = "The shutter sends long and short in groups of ten, and the clerk on\nthe shore counts them at the left, like this:\n\n"
ROWS = """\
       1  LSLLSSSLSL SSLLSLSSLS LSLSSLLSSL

      31  LLSSLSLSLS L
"""
NAMED = """\
  3    20
North     LSLLSSSLSL LLSSLSLSLS
South rockLSLLSSSLSL LLSSLSLSLS
Landing   LSLLSSSLSL SSLLSLSSLS
"""
BELOW = "\nand so to the end of the watch, when he signs the sheet.\n"


def lines_of(rows: str) -> list[str]:
    blocks = read_text(ABOVE + rows + BELOW, "signals", "ascii").blocks
    assert [block.kind for block in blocks] == [Kind.PARAGRAPH, Kind.PREFORMATTED, Kind.PARAGRAPH]
    return [line.chars for line in blocks[1].lines]


def test_counted_rows_are_no_titles_and_no_items() -> None:
    assert lines_of(ROWS) == [line[6:] for line in ROWS.splitlines()]


def test_a_row_alone_below_its_lead_is_no_title() -> None:
    assert lines_of("   300   LSLLSSSLSL SSLLSLSSLS LSLSS\n") == ["300   LSLLSSSLSL SSLLSLSSLS LSLSS"]


def test_rows_behind_names_are_no_items() -> None:
    assert lines_of(NAMED) == NAMED.splitlines()


def test_rows_one_below_the_other_with_strokes_between_them_are_no_keys() -> None:
    text = "  Compare:\n    Sent: LSLLSSSLSLSSLLSLSSLS\n          |||||  |||||||||||||\n    Seen: LSLLS--LSLSSLLSLSSLS\n"
    assert lines_of(text) == [line[2:] for line in text.splitlines()]


def test_titles_in_capitals_have_more_letters() -> None:
    text = "2  THE LIGHTING OF THE LAMP\n\nThe keeper lights the lamp at dusk and puts it out when the sun is up.\n"
    assert read_text(text, "manual", "ascii").blocks[0].kind is Kind.HEADING


WEIGHED = """\
4  114  W C
Weights     11111111111100110000
            11110111111111111111
C  3  0.5  1  2
Classes     5111136343678975AAA8
            633792246624457364222
North       LSLLSSSLSLLLSSLSLSLS
South       LSLLSSSLSLSLSSLSLSLS
Landing     LSLLSSSLSLSSLLSLSSLS

            SSLLSLSSLSLSSLLSLSSL
            LSLLSSSLSLSSLLSLSSLS
"""


def test_rows_of_figures_among_rows_of_letters_are_rows_too() -> None:
    assert lines_of(WEIGHED) == WEIGHED.splitlines()


def test_figures_that_words_explain_are_no_rows() -> None:
    listed = "  1100110011001100  all lamps but the last\n  LSLLSSSLSLLLSSLS  both bells\n  AA00110011001100  none\n"
    blocks = read_text(ABOVE + listed + BELOW, "signals", "ascii").blocks
    assert not any(block.code for block in blocks)
