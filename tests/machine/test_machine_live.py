"""A person plays: keys come when they come, and the session is as if a script had typed them."""

from __future__ import annotations

from machine_assembler import call, program, text
from machine_samples import Typist, guess, repaint, story

from fit.machine import EndingKind, Host, Setting
from fit.machine.live import LIVE_LIMITS, joined_inputs, play_live
from fit.machine.run import Run
from fit.session import EventKind


def played(source: str, keys: list[bytes]) -> tuple[Run, Typist]:
    person = Typist(keys)
    return play_live(Host(program(source), Setting(limits=LIVE_LIMITS)), person), person


def inputs(run: Run) -> list[bytes]:
    return [event.data for event in joined_inputs(run).events if event.kind is EventKind.INPUT]


def test_a_line_typed_key_by_key_is_one_input() -> None:
    run, person = played(story(), [b"n", b"o", b"\r", b"q", b"\r"])
    assert run.ending.kind is EndingKind.WARM_START
    assert b"You are at the foot of the tower." in person.seen
    assert person.seen == run.session.output
    assert inputs(run) == [b"no\r", b"q\r"]


def test_a_key_reaches_a_program_that_polls_and_counts() -> None:
    run, _ = played(guess(), [b"x", b"9"])
    assert b"A number (1-8): 9" in run.session.output
    assert inputs(run) == [b"x", b"9"]


def test_keys_into_a_moving_picture_are_no_moments_for_reading() -> None:
    run, _ = played(repaint(), [b"x", b"q"])
    waits = [event for event in run.session.events if event.kind is EventKind.WAIT]
    assert run.ending.kind is EndingKind.LEFT or run.ending.kind is EndingKind.WARM_START
    assert not any(event.is_look for event in waits[1:])


def test_leaving_ends_the_session_with_a_reason() -> None:
    run, _ = played(story(), [])
    assert str(run.ending) == "whoever played left"


def test_a_program_that_prints_for_ever_can_be_left() -> None:
    run, person = played("again: " + call(9, "gull") + "jp again\n" + text("gull", "gull "), [])
    assert str(run.ending) == "whoever played left"
    assert person.seen.startswith(b"gull gull ")
