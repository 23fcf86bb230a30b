"""Each way in which a run can end, and the limits that end it."""

from __future__ import annotations

import pytest
from machine_assembler import call, program, text

from fit.errors import ProgramError, UsageError
from fit.machine.ending import UNLIMITED, Ending, EndingKind, Limits
from fit.machine.host import Host
from fit.machine.run import Run, run_program
from fit.machine.setting import Setting


def ending(source: str, limits: Limits | None = None, keys: bytes = b"") -> Ending:
    """How a program ends."""
    return run(source, limits, keys).ending


def run(source: str, limits: Limits | None = None, keys: bytes = b"") -> Run:
    """A program within limits."""
    return run_program(program(source), keys, Setting(limits=limits or Limits()))


FOR_EVER = "again: jp again\n"


@pytest.mark.parametrize(
    ("source", "kind", "sentence"),
    [
        ("ret\n", EndingKind.LEFT, "left by itself: it returned"),
        (call(0), EndingKind.LEFT, "left by itself: it called function 0"),
        ("jp 0\n", EndingKind.WARM_START, "warm start"),
        ("halt\n", EndingKind.HALTED, "halted: it executed HALT at 0100h"),
        ("jp 0x38\n", EndingKind.WILD_JUMP, "wild jump: it ran into an empty restart vector at 0038h"),
        ("rst 0x38\n", EndingKind.WILD_JUMP, "wild jump: it ran into an empty restart vector at 0038h"),
        (
            "jp 0xfc00\n",
            EndingKind.WILD_JUMP,
            "wild jump: it ran into the operating system's memory at FC00h",
        ),
        (call(1), EndingKind.SCRIPT_ENDED, "script ended"),
    ],
)
def test_endings(source: str, kind: EndingKind, sentence: str) -> None:
    found = ending(source)
    assert (found.kind, str(found)) == (kind, sentence)


def test_a_limit_of_silent_time() -> None:
    assert str(ending(FOR_EVER, Limits(silent_ticks=1_000_000))) == (
        "limit of silent time: it did nothing for 1,000,000 clock ticks"
    )


def test_a_limit_of_clock_ticks() -> None:
    source = "again: " + call(2, 65) + "jp again\n"
    found = ending(source, Limits(ticks=2_000_000))
    assert (found.kind, found.detail) == (EndingKind.TICKS, "it ran for 2,000,000 clock ticks")


def test_a_limit_of_output() -> None:
    result = run("again: " + call(2, 65) + "jp again\n", Limits(output=10_000))
    assert str(result.ending) == "limit of output: it printed 10,000 bytes"
    assert len(result.session.output) == 10_000


def test_a_limit_of_output_that_a_program_passes_at_once() -> None:
    """It prints and ends in less time than the clock is looked at."""
    source = call(9, "text") + call(2, 66) + "ret\n" + text("text", "lamp")
    result = run(source, Limits(output=1))
    assert (str(result.ending), result.session.output) == ("limit of output: it printed 1 byte", b"lamp")


def test_a_limit_of_clock_ticks_is_looked_at_where_a_program_waits() -> None:
    source = call(1) + call(2, 65) + call(1) + call(2, 66) + "ret\n"
    result = run(source, Limits(ticks=1), b"xy")
    assert (str(result.ending), result.session.output) == (
        "limit of clock ticks: it ran for 1 clock tick",
        b"",
    )
    result = run(source, Limits(ticks=100), b"xy")
    assert (result.ending.kind, result.session.output) == (EndingKind.TICKS, b"xA")
    assert run(source, Limits(ticks=2_000), b"xy").session.output == b"xAyB"


def test_a_limit_of_waits() -> None:
    assert (
        str(ending("again: " + call(1) + "jp again\n", Limits(waits=1), b"abcdef"))
        == "limit of waits: it waited 1 time"
    )
    assert ending("again: " + call(1) + "jp again\n", Limits(waits=3), b"abcdef").kind is EndingKind.WAITS


def test_a_limit_of_seconds() -> None:
    limits = Limits(seconds=0.05, silent_ticks=None, ticks=None)
    assert ending(FOR_EVER, limits).kind is EndingKind.SECONDS


def test_a_text_without_an_end_is_printed_once() -> None:
    fill = "ld hl, 0x3000\nfill: ld (hl), 65\ninc hl\nld a, h\ncp 0xf0\njp nz, fill\n"
    found = ending(
        "jp start\nstart: " + fill + "again: " + call(9, 0x3000) + "jp again\n", Limits(output=200_000)
    )
    assert found.kind is EndingKind.OUTPUT


def test_without_limits_a_program_may_compute_for_long() -> None:
    """A billion ticks, then a text: what processor exercisers do."""
    source = """
    ld b, 50
    outer: push bc
    ld hl, 0
    inner: dec hl
    ld a, h
    or l
    jp nz, inner
    pop bc
    dec b
    jp nz, outer
    """ + call(9, "done")
    result = run(source + "ret\n" + text("done", "ok"), UNLIMITED)
    assert result.session.output == b"ok"
    assert result.ticks > 70_000_000


def test_a_restart_vector_that_the_program_filled_is_its_own() -> None:
    source = "ld a, 0xc9\nld (0x30), a\nrst 0x30\n" + call(2, 65) + "ret\n"
    assert run(source).session.output == b"A"


@pytest.mark.parametrize("top", [0x100, 0xFC00, -1])
def test_an_impossible_top_is_refused(top: int) -> None:
    with pytest.raises(UsageError) as error:
        Host(program("ret\n"), Setting(top=top))
    assert str(error.value) == f"memory cannot end at {top:X}h; choose a top from 0180h to FB06h"


def test_a_program_larger_than_memory_is_refused() -> None:
    with pytest.raises(ProgramError) as error:
        Host(program("org 0x1100\nret\n"), Setting(top=0x1000))
    assert str(error.value) == "TEST.COM: the program is 4,097 bytes long, and memory up to 1000h holds 3,838"


def test_memory_ends_at_the_word_at_6() -> None:
    host = Host(program("ret\n"), Setting(top=0x8000))
    assert int.from_bytes(host.cpu.memory[6:8], "little") == 0x8000
    assert bytes(host.cpu.memory[0x7FFE:0x8000]) == b"\x00\x00"


def test_the_command_line_is_parsed_into_page_zero() -> None:
    host = Host(program("ret\n"), Setting(arguments="b:log.txt tide*.?"))
    memory = host.cpu.memory
    assert bytes(memory[0x5C:0x68]) == b"\x02LOG     TXT"
    assert bytes(memory[0x6C:0x78]) == b"\x00TIDE????" + b"?  "
    assert bytes(memory[0x80:0x93]) == bytes((18,)) + b" B:LOG.TXT TIDE*.?"
