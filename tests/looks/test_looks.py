"""A session to its looks: which rule decides, where they stand, and that it is said."""

from __future__ import annotations

import math
from array import array
from dataclasses import replace

import pytest

from fit.errors import UsageError
from fit.looks import Look, LookKind, LookRule, find_looks, with_line_speed
from fit.session import Clock, Event, EventKind, Session, Waits

TRANSCRIPT = b"""\
The lamp room. The stairs go down.
> down
The store. There is oil here.
> take oil
Taken.
> up
The lamp room.
> quit
Good night, keeper.
"""


def timed(*pieces: tuple[float, bytes], **fields: object) -> Session:
    """A session from ``(seconds, bytes)``."""
    clock = Clock()
    output = b""
    for time, data in pieces:
        clock.offsets.append(len(output))
        clock.seconds.append(time)
        output += data
    return replace(Session(output, clock=clock), **fields)  # type: ignore[arg-type]  # the fields of a session


def test_exact_waits() -> None:
    session = Session(
        b"Port? east\r\nHigh",
        events=(
            Event(2, EventKind.WAIT, is_look=False),
            Event(6, EventKind.WAIT),
            Event(6, EventKind.INPUT, b"ea"),
            Event(6, EventKind.WAIT),
            Event(6, EventKind.INPUT, b"st\r"),
        ),
        waits=Waits.EXACT,
    )
    found = find_looks(session)
    assert found.looks == (Look(6, LookKind.WAIT, b"east\r"), Look(16, LookKind.END))
    assert (found.rule, found.said) == (LookRule.EXACT, "where the program waited and at the end")


def test_a_wait_at_the_end_is_the_look_at_the_end() -> None:
    session = Session(
        b"Port? ok", events=(Event(6, EventKind.WAIT), Event(8, EventKind.WAIT)), waits=Waits.EXACT
    )
    assert find_looks(session).looks == (Look(6, LookKind.WAIT), Look(8, LookKind.WAIT))


def test_where_no_look_is_known_before_the_end_they_are_assumed() -> None:
    session = Session(
        b"log\r\n" * 99, events=(Event(0, EventKind.INPUT, b"y"), Event(495, EventKind.INPUT, b"q"))
    )
    found = find_looks(session)
    assert found.looks == (Look(495, LookKind.INPUT, b"q"),)
    assert found.rule is LookRule.ASSUMED
    assert found.said == (
        "before a row leaves the big screen unseen, and at the end (no wait is known before the end)"
    )


def test_before_each_input() -> None:
    session = Session(
        b"Port? east\r\nHigh",
        events=(
            Event(6, EventKind.INPUT, b"e", 2.0),
            Event(6, EventKind.INPUT, b"a", 2.5),
            Event(8, EventKind.INPUT, b"st\r", 3.0),
        ),
    )
    found = find_looks(session, prompts=["never"])
    assert found.looks == (
        Look(6, LookKind.INPUT, b"ea", 2.0),
        Look(8, LookKind.INPUT, b"st\r", 3.0),
        Look(16, LookKind.END),
    )
    assert (found.rule, found.said) == (LookRule.INPUTS, "before each recorded input and at the end")


def test_four_words_take_a_second() -> None:
    # 238 words a minute: Brysbaert 2019 (from memory); 4 words take 1.0084 s.
    four = b"the lamp is lit "
    assert [look.at for look in find_looks(timed((0, four), (1.008, b"and"), (9, b" so"))).looks] == [19, 22]
    assert [look.at for look in find_looks(timed((0, four), (1.009, b"and"), (1.1, b" so"))).looks] == [
        16,
        22,
    ]


def test_only_new_words_need_time() -> None:
    session = timed((0, b"one two six ten "), (5, b"more "), (5.3, b"x"))
    found = find_looks(session)
    assert found.looks == (
        Look(16, LookKind.PAUSE, time=0),
        Look(21, LookKind.PAUSE, time=5),
        Look(22, LookKind.END),
    )
    assert (
        found.said == "in each pause long enough to read the new words at 238 words a minute, and at the end"
    )


def test_a_pause_without_a_new_word_is_no_look() -> None:
    session = timed((0, b"ok "), (5, b"-"), (15, b"\x1b[2J"), (25, b"done"))
    assert [look.at for look in find_looks(session).looks] == [3, 12]


def test_the_reading_rate_can_be_given() -> None:
    session = timed((0, b"the lamp is lit "), (1, b"now"))
    assert [look.at for look in find_looks(session, words_per_minute=240).looks] == [16, 19]
    with pytest.raises(UsageError) as caught:
        find_looks(session, words_per_minute=0)
    assert str(caught.value) == "nobody reads 0 words a minute; give a rate above 0, such as 238"


def test_no_pause_is_long_enough() -> None:
    found = find_looks(timed((0, b"the lamp is lit "), (0.1, b"now")))
    assert (found.looks, found.rule) == ((Look(19, LookKind.END),), LookRule.ASSUMED)
    assert found.said.endswith("(no pause is long enough to read at 238 words a minute)")


def test_a_prompt_that_repeats_is_found() -> None:
    found = find_looks(Session(TRANSCRIPT))
    assert [(TRANSCRIPT[: look.at][-3:], look.typed) for look in found.looks[:-1]] == [
        (b"\n> ", b"down\r"),
        (b"\n> ", b"take oil\r"),
        (b"\n> ", b"up\r"),
        (b"\n> ", b"quit\r"),
    ]
    assert found.looks[-1] == Look(len(TRANSCRIPT), LookKind.END)
    assert found.said == "after each '>', the prompt at the end that stands 4 times, and at the end"


def test_the_end_at_a_prompt() -> None:
    data = TRANSCRIPT[: TRANSCRIPT.index(b"quit")]
    assert find_looks(Session(data)).looks[-1] == Look(len(data), LookKind.PROMPT)


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (TRANSCRIPT.replace(b"\n", b"\r\n"), ">"),
        (TRANSCRIPT.replace(b"> ", b"\x1b[1m> \x1b[m"), ">"),
        (TRANSCRIPT.replace(b"> ", b"What now? "), "What now?"),
        (TRANSCRIPT.replace(b"> ", b"Your order, keeper: "), "Your order, keeper:"),
        (TRANSCRIPT.replace(b"> ", b"A>"), "A>"),
        (TRANSCRIPT.replace(b"> ", b"Oil: 40\n> "), ">"),
    ],
)
def test_prompts_of_many_kinds(data: bytes, text: str) -> None:
    found = find_looks(Session(data))
    assert (found.rule, len(found.looks)) == (LookRule.PROMPTS, 5)
    assert f"'{text}'" in found.said


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"One line",
        b"The wind backed.\nThe sea got up.\nThe lamp is lit.\n",
        b"Stores:\n* oil\n* wicks\n* rope\n* flour\n",
        b"East: 04:12\nEast: 10:20\nEast: 16:35\nEast: 22:50\n",
        b"> only\nhere\n> twice\n",
        b"> one\nx\n> two\nx\n> three\nx\n" + b"and then a long end\n" * 9,
    ],
)
def test_what_is_no_prompt(data: bytes) -> None:
    found = find_looks(Session(data))
    assert (found.looks, found.rule) == ((Look(len(data), LookKind.END),), LookRule.ASSUMED)
    assert found.said.startswith("before a row leaves the big screen unseen, and at the end (no")


def test_prompts_that_the_user_gives() -> None:
    session = timed((0, b"Port [east/west] "), (30, b"east\r\nTide 04:12 - more -"))
    found = find_looks(session, prompts=[r"^Port \[.*?\] ", "- more -"])
    assert found.looks == (Look(17, LookKind.PROMPT, b"east\r"), Look(42, LookKind.PROMPT))
    assert found.said == "after each prompt that was asked for and at the end"


def test_a_prompt_that_was_not_found() -> None:
    found = find_looks(Session(TRANSCRIPT), prompts=["Port"])
    assert found.said.endswith("(no prompt that was asked for was found)")


def test_a_prompt_that_is_no_pattern_is_refused_where_none_is_needed_too() -> None:
    typed = Session(b"Port? ", (Event(6, EventKind.INPUT, b"n"),), waits=Waits.INPUTS)
    with pytest.raises(UsageError, match="is no regular expression"):
        find_looks(typed, prompts=["("])


@pytest.mark.parametrize("rate", [math.inf, math.nan, 0.0])
def test_nobody_reads_at_once(rate: float) -> None:
    with pytest.raises(UsageError, match="nobody reads"):
        find_looks(Session(b"Port"), words_per_minute=rate)


def test_no_line_is_endlessly_fast() -> None:
    with pytest.raises(UsageError, match="a line of inf bit/s is none; give a speed above 0"):
        with_line_speed(Session(b"Port"), math.inf)


def test_a_prompt_that_stands_twice_is_no_proof_and_the_option_is_named() -> None:
    twice = Session(b"What now? north\r\nA path.\r\nWhat now? ")
    assert find_looks(twice).said.endswith("no prompt stands 3 times; --prompt names one)")
    assert find_looks(twice, prompts=[r"What now\? "]).rule is LookRule.PROMPTS


def test_a_prompt_that_is_no_pattern() -> None:
    with pytest.raises(UsageError) as caught:
        find_looks(Session(b"x"), prompts=["["])
    assert str(caught.value) == (
        "the prompt '[' is no regular expression (unterminated character set at position 0); escape its signs with \\"
    )


def test_line_speed() -> None:
    # 8N1 sends 10 bits a character (common practice, no source): 320 cells take 0.33 s, 2000 take 2.08 s.
    session = with_line_speed(Session(b"x" * 4000), 9600)
    assert session.clock.time_of(0) == 0
    assert session.clock.time_of(320) == pytest.approx(0.33, abs=0.1)
    assert session.clock.time_of(2000) == pytest.approx(2.08, abs=0.1)
    assert len(session.clock.offsets) == 42


def test_a_recorded_clock_stands() -> None:
    session = Session(b"xy", clock=Clock(array("q", [0]), array("d", [7.0])))
    assert with_line_speed(session, 300) is session


def test_at_a_slow_line_one_reads_along() -> None:
    text = b"the lamp is lit and the wick is good " * 20
    assert len(find_looks(with_line_speed(Session(text), 110)).looks) > 20
    assert len(find_looks(with_line_speed(Session(text), 9600)).looks) == 1


def test_a_line_that_sends_nothing() -> None:
    with pytest.raises(UsageError) as caught:
        with_line_speed(Session(b"x"), -300)
    assert str(caught.value) == "a line of -300 bit/s sends nothing; give a speed above 0, such as 9600"
