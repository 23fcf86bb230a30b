"""Words on the small screen: intact, split, displaced, clipped, overwritten, hidden; and why."""

from __future__ import annotations

from fit.looks import Look, LookKind, LookRule, Looks
from fit.loss.figures import Cause, LineCounts
from fit.pipeline import measure
from fit.remedy.findings import Report
from fit.session import Session, Waits
from fit.units import Size


def look_once(output: bytes, small: tuple[int, int] = (4, 10), big: tuple[int, int] = (10, 40)) -> Report:
    """Measure one look at the end; sizes are (rows, columns)."""
    session = Session(output, waits=Waits.INPUTS)
    looks = Looks((Look(len(output), LookKind.END),), LookRule.INPUTS, "at the end")
    return measure(session, Size(*big), Size(*small), looks=looks)


def test_a_flowing_word_may_wrap_in_the_middle() -> None:
    report = look_once(b"the lantern is lit")
    assert report.figures.text_kept == 1.0
    assert report.figures.split_words == 1


def test_a_placed_word_must_not() -> None:
    report = look_once(b"\x1b[2;5Hlantern")
    assert report.figures.text_kept == 0.0
    assert report.figures.causes == {Cause.DISPLACED: 7}


def test_placed_text_may_stand_elsewhere() -> None:
    assert look_once(b"\x1b[2;20Hlamp\x1b[1;1H").figures.text_kept == 0.0  # clamped to column 10, and split
    assert look_once(b"\x1b[9;2Hlamp").figures.text_kept == 1.0  # clamped to row 4


def test_placed_signs_may_not() -> None:
    assert look_once(b"\x1b[9;2H*").figures.text_kept == 0.0
    assert look_once(b"\x1b[2;2H*").figures.text_kept == 1.0


def test_text_that_only_reads_alike_proves_nothing() -> None:
    report = look_once(b"lamp\r\n\n\n\n\nlamp")
    assert (report.figures.shown, report.figures.intact) == (8, 4)


def test_lines_scrolled_off_are_lost() -> None:
    report = look_once(b"one\r\ntwo\r\nthree\r\nfour\r\nfive")
    assert report.figures.lines == LineCounts(kept=4, damaged=0, lost=1)
    assert [(line.text, line.cause, line.by) for line in report.lines] == [("one", Cause.SCROLLED, 22)]
    assert [(word.text, word.at) for word in report.words_lost_in(1)] == [("one", 0)]


def test_rows_clamped_onto_each_other_are_overwritten() -> None:
    report = look_once(b"\x1b[5;1Hsea\x1b[6;1Hoil")
    assert report.figures.causes == {Cause.OVERWRITTEN: 3}
    (line,) = report.lines
    assert (line.row, line.text, line.by) == (5, "sea", 15)


def test_an_erased_word_names_the_erase() -> None:
    report = look_once(b"\x1b[5;1Hsea\x1b[6;1H\x1b[K")
    assert report.figures.causes == {Cause.ERASED: 3}
    assert next(report.lines).by == 15


def test_lost_anyway_is_charged_to_nobody() -> None:
    report = look_once(b"one\r\n\x1b[H\x1b[2Jtwo")
    assert (report.printed, report.lost_anyway, report.figures.shown, report.figures.score) == (
        6,
        3,
        3,
        100.0,
    )


def test_nothing_shown_is_not_measured() -> None:
    report = look_once(b"\x1b[2J    ----")
    assert str(report.verdict) == "not measured"
    figures = report.figures
    assert (figures.score, figures.needed_shown, figures.clean, figures.text_kept, figures.turns_read) == (
        None,
    ) * 5
    assert report.placed_share is None


def test_a_screen_of_one_cell() -> None:
    assert look_once(b"oil", small=(1, 1)).figures.text_kept == 0.0


def test_the_same_size_loses_nothing() -> None:
    report = look_once(b"\x1b[3;7Hoil\r\n* wick *\r\n" * 9, small=(10, 40))
    assert (report.figures.score, report.best, len(report.break_points)) == (100.0, None, 0)
