"""Key scripts on 8-bit programs, and scripts made of what was typed."""

from __future__ import annotations

import pytest
from machine_assembler import call, program, text
from machine_samples import Typist, guess, menu, repaint, story, stream

from fit.machine.host import Host
from fit.machine.live import LIVE_LIMITS, joined_inputs, play_live
from fit.machine.run import Run, run_program
from fit.machine.script import ScriptKeys, script_of, typed_while_running
from fit.machine.setting import Setting
from fit.session import EventKind
from fit.source.keys import read_key_script


def run(source: str, script: str) -> Run:
    """A program with a key script."""
    return run_program(program(source), ScriptKeys(read_key_script(script.encode(), "keys")))


def typed(run: Run) -> list[bytes]:
    """What was typed at each wait."""
    return [event.data for event in run.session.events if event.kind is EventKind.INPUT]


def test_each_step_is_typed_at_a_wait() -> None:
    result = run(story(), "quiet 0.5 => n<enter>\nsee foot of the tower => e<enter>\n")
    assert typed(result) == [b"n\r", b"e\r"]
    assert b"oil store" in result.session.output


def test_a_pattern_that_was_not_printed_ends_the_run_and_is_told() -> None:
    result = run(story(), "quiet 0 => n<enter>\nsee dragon => e<enter>\n")
    assert str(result.ending) == (
        "script ended: line 2 of the key script waits for 'dragon', which was not printed"
    )


def test_a_repainting_program_goes_on_until_the_pattern_comes() -> None:
    source = repaint().replace("again: ld hl, (ticks)", "again: ld hl, (ticks)\nld a, h\ncp 3\njp z, late", 1)
    source += "late: " + call(9, "over") + call(1) + "ret\n" + text("over", "The watch is over.")
    result = run(source, "see watch is over => x\n")
    assert typed(result) == [b"x"]


@pytest.mark.parametrize("step", ["see fog", "quiet 0.5"])
def test_a_program_that_prints_for_ever_gets_its_step(step: str) -> None:
    result = run(stream(), f"{step} => x\n")
    assert typed(result) == [b"x"]
    assert result.session.output.endswith(b"A boat!\r\n")


def test_a_step_may_wait_for_a_number_of_bytes() -> None:
    """18 bytes a line: it looks for a key after the third."""
    result = run(stream(), "printed 40 => x\n")
    assert result.session.output == b"Nothing but fog.\r\n" * 3 + b"xA boat!\r\n"


def test_bytes_that_were_not_printed_end_the_run_and_are_told() -> None:
    result = run(story(), "printed 90000 => n<enter>\n")
    assert str(result.ending) == (
        "script ended: line 1 of the key script waits for 90,000 bytes, and fewer were printed"
    )


def test_steps_that_did_not_come_due_are_counted() -> None:
    keys = ScriptKeys(read_key_script(b"quiet 0 => n<enter>\nsee dragon => e<enter>\n", "keys"))
    run_program(program(story()), keys)
    assert keys.told == "1 of its 2 steps came due"
    all_due = ScriptKeys(read_key_script(b"quiet 0 => n<enter>\n", "keys"))
    run_program(program(story()), all_due)
    assert all_due.told == ""


@pytest.mark.parametrize("source", [stream(), guess(), repaint()])
def test_what_a_person_typed_while_it_ran_is_typed_again_at_the_same_place(source: str) -> None:
    host = Host(program(source), Setting(limits=LIVE_LIMITS))
    first = play_live(host, Typist([b"x", b"9", b"q"]))
    script = script_of(joined_inputs(first), typed_while_running(first, by_hand=True))
    assert script.startswith("printed ")
    assert run(source, script).session.output == first.session.output


def test_a_step_that_types_nothing_is_passed_over() -> None:
    assert typed(run(menu(), "see choice => \nquiet 0 => t\n")) == [b"t"]


def test_what_was_typed_makes_a_script_that_types_it_again() -> None:
    first = run_program(program(story()), [b"n\r", b"take <oil> \r", b" ", b"\x1b\x01\r"])
    script = script_of(first.session)
    assert script.splitlines()[1] == "quiet 0 => take<space><lt>oil><space><enter>"
    again = run(story(), script)
    assert again.session == first.session
