"""The stages together: what `import fit` offers, remedies, a second session, two terminals, assumed looks."""

from __future__ import annotations

import doctest
from dataclasses import replace

import pytest
from hypothesis import given, settings, strategies as st

import fit
from fit import pipeline
from fit.errors import DialectError, ScreenError, UsageError
from fit.loss.figures import Cause
from fit.pipeline import measure, reflow_session, remedies, replay, show_look
from fit.remedy.findings import BreakEnd, RemedyKind, Report
from fit.screen.fates import Fate
from fit.screen.grid import Grid, Hooks
from fit.screen.pieces import Row
from fit.screen.screen import Screen
from fit.session import Event, EventKind, Session, Waits
from fit.units import Size

SENTENCE = "The keeper climbs the stair with the oil and trims the lamp before the tide has turned. "


def typed(*turns: tuple[str, str], **facts: object) -> Session:
    """A session of turns: what is printed, then what is typed."""
    output, events = "", []
    for printed, keys in turns:
        output += printed
        events.append(Event(len(output.encode()), EventKind.INPUT, keys.encode()))
    return Session(output.encode(), tuple(events), waits=Waits.INPUTS, encoding="utf-8", **facts)  # type: ignore[arg-type]  # facts of a session


def story(turns: int, sentences: int) -> Session:
    return typed(*((SENTENCE * sentences + "\r\n> ", "look\r") for _ in range(turns)))


def tried(report: Report, kind: RemedyKind) -> float | None:
    return next(remedy for remedy in report.remedies if remedy.kind == kind).figures.score


@pytest.mark.parametrize("module", [fit, pipeline])
def test_the_examples_run(module: object) -> None:
    names = {name: getattr(fit, name) for name in fit.__all__}
    assert doctest.testmod(module, extraglobs=names).failed == 0  # type: ignore[arg-type]  # a module


def test_replay_gives_the_screen_and_the_fates() -> None:
    screen = replay(Session(b"one\r\ntwo\r\nsix"), "5x2")
    assert screen.display == ["two  ", "six  "]
    assert (screen.cursor.row, screen.cursor.column) == (1, 3)
    assert screen.fates is not None
    assert [screen.fates.code[at] for at in (0, 5)] == [Fate.SCROLLED, Fate.SEEN]


def test_short_turns_are_comfortable() -> None:
    report = measure(story(turns=3, sentences=2))
    assert (str(report.verdict), report.best) == ("comfortable", None)


def test_long_turns_are_workable_with_holds() -> None:
    report = measure(story(turns=3, sentences=5))
    assert str(report.verdict) == "workable with holds"
    assert report.best in (RemedyKind.HOLD, RemedyKind.WORD_WRAP_HOLD)
    assert tried(report, RemedyKind.FORESIGHT) == report.planned.score == 100.0


def test_remedies_come_best_first() -> None:
    report = measure(story(turns=3, sentences=5))
    found = remedies(report)
    assert found[0].kind == report.best
    assert [remedy.refused is None for remedy in found] == sorted(
        (remedy.refused is None for remedy in found), reverse=True
    )


def test_break_points_say_where_and_what() -> None:
    report = measure(story(turns=1, sentences=4), small="40x6")
    point = report.break_points[0]
    assert point.end is BreakEnd.SENTENCE
    assert point.words.endswith("has turned.")
    assert report.session.output[: point.at].decode().endswith("turned.")
    assert "".join(point.rows[-1:]).strip() or point.rows[-2].strip()


def test_the_shared_watch_equals_a_screen_of_its_own() -> None:
    """Holds change nothing on a screen; so a screen that really holds keeps the same glyphs as seen."""
    session = story(turns=3, sentences=6)
    report = measure(session)
    screen = Screen(Size(8, 40))
    holds: list[int] = []

    def hold(at_work: Grid, _: Row) -> None:
        holds.append(at_work.at)
        at_work.hold()

    screen.hooks = Hooks(before_scroll_off=hold)
    dialect = report.setup.small.decoder()
    start = 0
    for moment in report.setup.moments:
        screen.apply(dialect.feed(session.output[start : moment.at], start))
        screen.look(moment.at)
        start = moment.at
    assert len(holds) == next(r for r in report.remedies if r.kind == RemedyKind.HOLD).figures.holds


def test_assumed_looks_stand_before_rows_leave_unseen() -> None:
    session = Session(b"".join(b"entry %d\r\n" % number for number in range(60)), encoding="utf-8")
    report = measure(session, big="80x25")
    assert report.looks_assumed
    assert (report.looks, report.lost_anyway) == (3, 0)


def test_a_page_that_is_cleared_had_a_look() -> None:
    page = b"\x1b[H\x1b[2JOil: low\r\nTide: high"
    report = measure(Session(page * 3, encoding="utf-8"))
    assert (report.looks, report.lost_anyway) == (3, 0)


def test_a_program_that_refuses() -> None:
    big = typed(("Chart\r\n", "n"), ("Chart\r\n", "s"), ("Bye", "q"))
    small = typed(("The screen is too small.\r\n", "n"))
    report = measure(big, small_session=small)
    assert str(report.verdict) == "refuses"
    assert report.pair is not None
    assert report.pair.behaviour == ("refuses",)


def test_output_alone_does_not_say_that_a_program_refuses() -> None:
    big = typed(("Chart" * 20 + "\r\n", "n"), ("Chart\r\n", "s"), ("Bye", "q"))
    told = measure(big, small_session=Session(b"Chart" * 8 + b"\r\nChart\r\nBye"))
    assert str(told.verdict) != "refuses"
    assert told.pair is not None
    assert told.pair.behaviour == ("adapts",)
    assert "What was typed at the small size was not recorded" in told.pair.sentence


def test_a_program_that_ends_before_anything_is_typed_refuses_where_inputs_are_kept() -> None:
    big = typed(("Chart\r\n", "n"), ("Chart\r\n", "s"), ("Bye", "q"))
    small = Session(b"The screen is too small.\r\n", keeps_inputs=True, ending="exited")
    assert str(measure(big, small_session=small).verdict) == "refuses"
    # A capture at which nobody typed, ended by its limit, shows no refusal.
    assert str(measure(big, small_session=replace(small, ending="limit")).verdict) != "refuses"


def test_a_program_that_adapts_and_pages() -> None:
    big = typed(("".join(f"{number:2} {'oil ' * 14}\r\n" for number in range(20)), "q"), ("Bye", "q"))
    pages = ["".join(f"{number:2} oil oil oil\r\n" for number in range(7)) + "More? " for _ in range(3)]
    small = typed(*((page, " ") for page in pages), ("Bye", "q"))
    report = measure(big, small_session=small)
    assert report.pair is not None
    assert report.pair.behaviour == ("adapts", "pages")
    assert report.pair.figures.score == 100.0
    assert report.best == RemedyKind.SECOND_SESSION


def test_a_second_session_of_another_size_is_refused() -> None:
    session = replace(story(turns=2, sentences=1), name="small.jsonl")
    for size in (Size(25, 80), Size(9, 40)):
        with pytest.raises(UsageError) as caught:
            measure(session, small_session=replace(session, size=size))
        assert str(caught.value) == (
            f"small.jsonl: is no session of a program that was told 40x8: it was told {size}; "
            "record it with fit capture --tell 40x8"
        )
    assert measure(session, small_session=replace(session, size=Size(8, 40))).pair is not None


def test_a_second_session_of_another_command_is_doubted() -> None:
    session = replace(story(turns=2, sentences=1), command="story.py")
    pair = measure(session, small_session=replace(session, command="ledger.py")).pair
    assert pair is not None
    assert pair.sentence.startswith("Careful: the commands differ, 'story.py' and 'ledger.py'. Told 40x8, ")
    same = measure(session, small_session=session).pair
    assert same is not None
    assert same.sentence.startswith("Told 40x8, ")


def test_the_same_output_is_unchanged() -> None:
    session = story(turns=2, sentences=1)
    report = measure(session, small_session=session)
    assert report.pair is not None
    assert report.pair.behaviour == ("unchanged",)


def test_the_wrong_terminal_shows_codes_as_text() -> None:
    session = typed(("\x1b[H\x1b[2JOil: low\r\n\x1b[1mTide\x1b[m: high", ""))
    report = measure(session, small_terminal="vt52")
    assert report.figures.score is not None
    assert report.figures.score < 80
    assert report.other_terminal is not None
    assert report.other_terminal.endswith("were it set right, it would be 100.")
    assert Cause.CODES in report.figures.causes


def test_a_wrong_terminal_that_costs_nothing_is_said_to_cost_nothing() -> None:
    report = measure(Session(b"Oil: low", encoding="utf-8"), big_terminal="vt100", small_terminal="vt52")
    assert report.other_terminal is not None
    assert report.other_terminal.endswith("the score is 100, and it would be the same were it set right.")


def test_demands() -> None:
    session = typed(("\x1b[?1049h\x1b[1;24r\x1b[20;50Hoil\x1b[7mlow\x1b[m\x1b[2;5Hwick\x1b(0lqk", ""))
    demands = measure(session).demands
    assert (demands.highest_row, demands.highest_column) == (20, 50)
    assert (demands.moves, demands.moves_outside, demands.share_outside) == (2, 1, 0.5)
    assert (demands.rows_outside, demands.columns_outside) == ((20,), (50,))
    assert demands.scroll_regions == ((1, 24),)
    assert demands.reverse_video
    assert demands.line_drawing
    assert demands.alternate_screen


def test_colours_are_no_reverse_video() -> None:
    assert not measure(typed(("\x1b[38;5;7mOil", ""))).demands.reverse_video


def test_padded_rows() -> None:
    assert measure(typed((f"{'Oil: low':80}{'Tide: high':80}", ""))).demands.padded_rows == 2


def test_what_was_not_understood_is_counted() -> None:
    report = measure(typed(("Oil\x1b[5~\x1b[5~ low\x1b[99;8~", "")))
    assert [(entry.times, entry.first) for entry in report.unknown] == [(2, 3), (1, 15)]


def test_both_screens_at_a_look() -> None:
    session = typed(("lamp\r\noil\r\ntide\r\n", "\r"), ("", ""))
    shown = show_look(measure(session, "10x5", "10x3"), 1)
    assert [row.rstrip() for row in shown.big_rows] == ["lamp", "oil", "tide", "", ""]
    assert [row.rstrip() for row in shown.big_marks] == ["----", "", "", "", ""]
    assert [row.rstrip() for row in shown.small_rows] == ["oil", "tide", ""]
    assert "".join(shown.small_marks).strip() == ""


def test_what_is_not_clean_is_marked() -> None:
    shown = show_look(measure(typed(("\x1b[5;1Hlantern\x1b[6;1Hoil", "")), "10x8", "10x4"), 1)
    assert shown.small_rows[-1] == "oiltern   "
    assert shown.small_marks[-1] == "  ??      "  # neighbours that the big screen does not give them


def test_errors_are_sentences() -> None:
    session = typed(("Oil", ""))
    with pytest.raises(UsageError, match="'0x8' cannot be measured"):
        measure(session, small="0x8")
    with pytest.raises(ScreenError, match="no screen is named 'lantern'"):
        measure(session, small="lantern")
    with pytest.raises(DialectError, match="no terminal is named 'lantern'"):
        measure(session, big_terminal="lantern")
    with pytest.raises(UsageError, match="there is no look 9; the session has looks 1 to 1"):
        show_look(measure(session), 9)


BYTES = st.binary(max_size=60) | st.lists(
    st.sampled_from([b"\x1b[", b"5;9H", b"2J", b"lamp ", b"\r\n", b"\x1b#8", b"a\x1b[9b", b"\x1b[?1049h", b"\x1b[?1049l",
                     b"\xe6\xb5\xb7", b"e\xcc\x81", b"\x1b[2;3r", b"\x1bM", b"\x1b[3L", b"\x1b[4@", b"\x1b[2P", b"\x1bc", b"\x1b[?7l"]),
    max_size=30,
).map(b"".join)  # fmt: skip


@given(turns=st.lists(BYTES, max_size=4), small=st.sampled_from(["1x1", "7x3", "40x8"]))
@settings(max_examples=120, deadline=None)
def test_any_bytes_are_measured(turns: list[bytes], small: str) -> None:
    output, events = b"", []
    for turn in turns:
        output += turn
        events.append(Event(len(output), EventKind.INPUT, b"x\r"))
    report = measure(Session(output, tuple(events), waits=Waits.INPUTS), "12x6", small)
    figures = report.figures
    lost = sum(figures.causes.values())
    assert figures.shown - figures.intact == lost
    assert sum(len(report.words_lost_in(turn.look)) > 0 for turn in figures.turns) <= len(figures.turns)
    assert len(list(report.lines)) == figures.lines.damaged + figures.lines.lost
    for ratio in (
        figures.needed_shown,
        figures.clean,
        figures.text_kept,
        figures.turns_read,
        report.placed_share,
    ):
        assert ratio is None or 0 <= ratio <= 1
    reflow_session(report)
    for number in range(1, report.looks + 1):
        show_look(report, number)


def test_a_size_out_of_range_is_refused_however_it_is_given() -> None:
    with pytest.raises(UsageError, match="a screen of '0x0' cannot be measured"):
        measure(Session(b"dusk"), Size(0, 0))
    with pytest.raises(UsageError, match="a screen of '501x8' cannot be measured"):
        replay(Session(b"dusk"), Size(8, 501))


def test_the_example_of_the_package_runs_as_it_stands() -> None:
    assert doctest.testmod(fit).failed == 0


def test_the_report_says_who_chose_the_encoding() -> None:
    session = Session(b"dusk", encoding="latin-1")
    assert measure(session).encoding_evidence == "The session says so."
    assert measure(session, encoding="cp437").encoding_evidence == "It was given."
