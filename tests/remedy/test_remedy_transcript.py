"""The transcript at the small width: joined where text was only wrapped, broken where holds belong."""

from __future__ import annotations

import textwrap

from hypothesis import given, settings, strategies as st

from fit.looks import Look, LookKind, LookRule, Looks
from fit.pipeline import measure, reflow_session
from fit.session import Event, EventKind, Session, Waits
from fit.units import Size

STORY = (
    "The watch room is round, as every room is here, and the furniture has had to learn it: "
    "a curved bench, a curved shelf for the signal book, and a barometer that leans a little."
)
WORDS = st.lists(st.text("abcdefghij", min_size=1, max_size=9), min_size=12, max_size=60)


def reflow(output: bytes, big: str = "80x25", small: str = "40x8", width: int | None = None) -> str:
    session = Session(output, events=(Event(0, EventKind.INPUT),), waits=Waits.INPUTS, encoding="utf-8")
    looks = Looks((Look(len(output), LookKind.END),), LookRule.INPUTS, "at the end")
    return reflow_session(measure(session, big, small, looks=looks), width)


def test_rows_that_the_program_wrapped_become_a_paragraph() -> None:
    rows = textwrap.wrap(STORY, 70)
    assert reflow("\r\n".join(rows).encode()) == textwrap.fill(STORY, 40) + "\n"


def test_rows_that_the_terminal_cut_are_joined_without_a_blank() -> None:
    assert reflow(STORY.encode()) == textwrap.fill(STORY, 40) + "\n"


def test_a_blank_in_the_last_column_is_not_lost() -> None:
    first = "x" * 75 + " end "
    assert len(first) == 80
    assert reflow((first + "next word").encode(), width=80).split()[-3:] == ["end", "next", "word"]


def test_lists_headings_and_tables_keep_their_lines() -> None:
    output = b"STORES\r\n\r\n1. oil for the lamp\r\n2. wick for the lamp\r\n\r\nOil      9 cans\r\nWick     4 dozen\r\n"
    assert reflow(output) == output.decode().replace("\r\n", "\n")


def test_a_form_feed_stands_at_each_break_point() -> None:
    paragraphs = [textwrap.wrap(STORY, 70) for _ in range(6)]
    output = "\r\n\r\n".join("\r\n".join(rows) for rows in paragraphs).encode()
    session = Session(output, events=(Event(0, EventKind.INPUT),), waits=Waits.INPUTS)
    report = measure(
        session, small="40x8", looks=Looks((Look(len(output), LookKind.END),), LookRule.INPUTS, "")
    )
    text = reflow_session(report)
    assert text.count("\f") == len(report.break_points) > 0
    assert text.replace("\f", "").split() == (STORY + " ").split() * 6


def test_text_that_even_the_big_screen_lost_is_in_the_transcript() -> None:
    output = b"".join(b"entry %d of the log\r\n" % number for number in range(60))
    assert reflow(output).replace("\f", "").splitlines() == [
        f"entry {number} of the log" for number in range(60)
    ]


@given(words=WORDS, width=st.integers(10, 60))
@settings(max_examples=40, deadline=None)
def test_greedy_layout_agrees_with_textwrap(words: list[str], width: int) -> None:
    text = " ".join(words)
    size = Size(25, 80)
    output = text.encode()
    session = Session(output, waits=Waits.INPUTS, encoding="utf-8")
    looks = Looks((Look(len(output), LookKind.END),), LookRule.INPUTS, "at the end")
    report = measure(session, size, Size(25, 80), looks=looks)
    assert reflow_session(report, width) == textwrap.fill(text, width, break_on_hyphens=False) + "\n"
