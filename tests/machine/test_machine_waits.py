"""When a program waits, and whether a person reads then."""

from __future__ import annotations

import pytest
from machine_assembler import call, program, text
from machine_samples import stream

from fit.machine.cpu import Processor
from fit.machine.ending import EndingKind, Limits
from fit.machine.run import Run, rehearse, repeat_run, run_program
from fit.machine.setting import Setting
from fit.session import EventKind, Waits

PROMPT = text("prompt", "Key? ")
SHOW = "ld e, a\nld c, 2\ncall bdos\n"
COUNTER = "again: ld hl, (0x3000)\ninc hl\nld (0x3000), hl\n" + call(6, 0xFF) + "or a\njp z, again\n"
COMPUTE = """
ld b, 120
outer: push bc
ld hl, 0
inner: dec hl
ld a, h
or l
jp nz, inner
ld e, 0xff
ld c, 6
call bdos
pop bc
dec b
jp nz, outer
"""


def run(source: str, *steps: bytes) -> Run:
    """A program with its prompt, and one step at each wait."""
    return run_program(program(source + "ret\n" + PROMPT), list(steps))


def kinds(run: Run) -> list[str]:
    """How each wait was recognised."""
    return [kind.value for kind in run.wait_kinds]


def looks(run: Run) -> list[bool]:
    """Which waits are looks."""
    return [event.is_look for event in run.session.events if event.kind is EventKind.WAIT]


def test_a_blocking_call_waits_where_it_stands() -> None:
    result = run(call(9, "prompt") + call(1), b"y")
    events = [(event.at, event.kind, event.data) for event in result.session.events]
    assert events == [(5, EventKind.WAIT, b""), (5, EventKind.INPUT, b"y")]
    assert result.session.waits is Waits.EXACT
    assert result.session.output == b"Key? y"


def test_the_keys_of_a_step_are_one_input_where_only_echo_comes_between() -> None:
    result = run(call(1) * 3, b"abc")
    assert kinds(result) == ["key"]
    assert [event.data for event in result.session.events] == [b"", b"abc"]


def test_the_keys_of_a_step_are_parted_where_something_is_printed_between() -> None:
    result = run(call(1) + call(9, "prompt") + call(1), b"ab")
    assert [(event.at, event.data) for event in result.session.events] == [
        (0, b""),
        (0, b"a"),
        (6, b""),
        (6, b"b"),
    ]
    assert looks(result) == [False, True]


def test_a_break_check_between_the_keys_of_a_line_finds_none() -> None:
    """A person waits for the echo; programs look for a key to stop their output, and would eat the line."""
    check = call(11) + "or a\njp nz, stopped\n"
    line = (
        "more: "
        + call(1)
        + "push af\n"
        + check
        + "pop af\ncp 13\njp nz, more\n"
        + call(9, "prompt")
        + "ret\n"
    )
    result = run(line + "stopped: " + call(2, ord("!")), b"lamp\r")
    assert result.session.output == b"lamp\rKey? "


def test_the_sequence_of_a_function_key_is_typed_at_once() -> None:
    """Programs tell it from the escape key by whether more follows."""
    source = call(6, 0xFD) + call(6, 0xFF) + "add a, 1\n" + SHOW
    assert run(source, b"\x1bA").session.output == b"B"


def test_a_line_read_key_by_key_is_one_look() -> None:
    """Where only echo came since the last look, nobody reads anew."""
    result = run(call(9, "prompt") + call(1) * 3 + call(2, 33) + call(1), b"a", b"b", b"c", b"d")
    assert looks(result) == [True, False, False, True]


def test_a_poll_that_nothing_but_a_key_can_end_is_proved() -> None:
    poll = "again: " + call(11) + "or a\njp z, again\n"
    result = run(call(9, "prompt") + poll + call(1), b"k")
    assert kinds(result) == ["proved poll"]
    assert result.ticks < 100_000


def test_a_loop_of_two_polls_is_proved_too() -> None:
    poll = "again: " + call(6, 0xFE) + "or a\njp nz, found\n" + call(11) + "or a\njp z, again\nfound: "
    assert kinds(run(call(9, "prompt") + poll + call(1), b"k")) == ["proved poll"]


def test_a_poll_with_a_counter_is_found_by_trial() -> None:
    result = run(call(9, "prompt") + COUNTER + SHOW, b"k")
    assert kinds(result) == ["trial poll"]
    assert result.session.output == b"Key? k"
    assert result.ticks >= 20_000_000


def test_where_a_key_was_read_200_polls_suffice() -> None:
    loop = "ld b, 3\nmore: push bc\n" + COUNTER + SHOW + "pop bc\ndec b\njp nz, more\n"
    result = run(loop, b"a", b"b", b"c")
    assert result.session.output == b"abc"
    assert result.ticks < 22_000_000


def test_a_break_check_in_a_computation_eats_no_key() -> None:
    result = run(COMPUTE + call(9, "prompt") + call(1), b"k")
    assert kinds(result) == ["key"]
    assert result.session.output == b"Key? k"


def test_a_break_check_after_the_last_key_does_not_end_the_run() -> None:
    result = run(call(1) + COMPUTE + call(9, "prompt") + call(1), b"k")
    assert result.session.output == b"kKey? "
    assert result.ending.kind is EndingKind.SCRIPT_ENDED


def test_an_ignored_key_is_eaten_where_nothing_happens_without_one() -> None:
    poll = COUNTER.replace("or a\njp z, again", "cp 113\njp nz, again")
    result = run(call(9, "prompt") + poll + call(9, "prompt"), b"x", b"q")
    assert result.session.output == b"Key? Key? "
    assert kinds(result) == ["trial poll", "trial poll"]


def test_a_program_that_repaints_gets_keys_but_nobody_reads() -> None:
    source = (
        "again: "
        + call(9, "frame")
        + call(6, 0xFF)
        + "cp 113\njp nz, again\nret\n"
        + text("frame", "\x1b=  Tide")
    )
    result = run_program(program(source), [b"a", b"q"])
    assert kinds(result) == ["realtime", "realtime"]
    assert looks(result) == [False, False]
    assert result.ending.kind is EndingKind.LEFT


def test_a_screen_that_is_drawn_once_is_read() -> None:
    """It is drawn with cursor movements, and then a counter runs while it polls."""
    screen = text("screen", '\x1b=  Tide\x1b=! Oil\x1b=" Wind' * 20)
    source = call(9, "screen") + COUNTER + SHOW + "ret\n"
    result = run_program(program(source + screen), [b"k"])
    assert (kinds(result), looks(result)) == (["trial poll"], [True])


def test_a_cursor_that_blinks_now_and_then_is_a_repaint() -> None:
    """Every 0.4 s at 4 MHz, so that it never is silent for long."""
    delay = "ld hl, 1700\ndelay: push hl\n" + call(6, 0xFF) + "pop hl\ncp 113\njp z, over\ncp 1\n"
    delay += "ld b, 40\nwait: dec b\njp nz, wait\ndec hl\nld a, h\nor l\njp nz, delay\n"
    source = "again: " + call(9, "blink") + delay + "jp again\nover: ret\n" + text("blink", "_\b \b")
    result = run_program(program(source), [b"q"])
    assert (kinds(result), looks(result)) == (["realtime"], [False])


def test_a_moving_picture_at_a_place_that_reads_keys_stays_one() -> None:
    """It asks for a key first; then the same place polls 300 times between its frames."""
    source = (
        call(9, "prompt")
        + "first: call getkey\nor a\njp z, first\nagain: "
        + call(9, "frame")
        + "call getkey\njp again\n"
    )
    source += "getkey: ld b, 100\nmore: push bc\ninc b\n" + call(6, 0xFF) + "pop bc\n"
    source += "cp 113\njp z, 0\nor a\nret nz\ndec b\njp nz, more\nld a, (turns)\ninc a\nld (turns), a\n"
    source += "ld a, (turns)\ncp 3\njp c, getkey\nld hl, (frames)\ninc hl\nld (frames), hl\nxor a\nld (turns), a\nret\n"
    source += "turns: db 0\nframes: dw 0\n"
    result = run_program(program(source + PROMPT + text("frame", "\x1b=  Tide")), [b"a", b"b", b"q"])
    assert kinds(result) == ["trial poll", "realtime", "realtime"]


def repeated(shown: str) -> Run:
    """A program that shows something again and again, and polls in between."""
    source = (
        "again: " + call(9, "frame") + call(6, 0xFF) + "cp 113\njp nz, again\nret\n" + text("frame", shown)
    )
    limits = Limits(output=60_000)
    return run_program(program(source), [b"q"], Setting(limits=limits))


@pytest.mark.parametrize(
    ("shown", "is_repainted"),
    [
        ("\x1a" + "A row of cells\r\n" * 20, True),
        ("\x1b[H" + "A row of cells\r\n" * 23, True),
        ("\x1bY  Tide\x1bY! Oil", True),
        ("\rOil 80", True),
        ("A coloured \x1b[7mline\x1b[0m of the log\r\n", False),
        ("A line of the log\r\n", False),
        (".", False),
    ],
)
def test_what_scrolls_is_no_repaint(shown: str, is_repainted: bool) -> None:
    """A stream that looks for a key between its lines is given one only because it would not end without."""
    assert kinds(repeated(shown)) == (["realtime"] if is_repainted else ["printing"])


def test_a_screen_that_is_cleared_and_slowly_filled_gets_no_key() -> None:
    """It looks for a key between the lines that it computes."""
    row = COMPUTE.replace("ld b, 120", "ld b, 3").replace("outer", "more").replace("inner", "less")
    source = call(9, "clear") + "ld a, 15\nrows: ld (left), a\n" + row + call(9, "line")
    source += "ld a, (left)\ndec a\njp nz, rows\n" + call(1) + "ret\nleft: db 0\n"
    result = run_program(program(source + text("clear", "\x1a") + text("line", "Tide\r\n")), [b"k"])
    assert kinds(result) == ["key"]


def test_a_listing_with_a_break_check_gets_no_key() -> None:
    """It scrolls: nobody is expected to type."""
    source = "ld b, 255\nagain: push bc\n" + call(9, "line") + call(11) + "pop bc\ndec b\njp nz, again\nret\n"
    result = run_program(program(source + text("line", "Tide table\r\n" * 20)), [b"x"])
    assert result.wait_kinds == ()
    assert result.ending.kind is EndingKind.LEFT


def test_a_stream_that_only_a_key_ends_is_given_one() -> None:
    result = run_program(program(stream()), [b"x"])
    assert kinds(result) == ["printing"]
    assert result.session.output.endswith(b"A boat!\r\n")
    assert 32_000 <= len(result.session.output) < 33_000
    again = repeat_run(program(stream()), result.schedule, result.setting)
    assert again.session == result.session


def test_a_stream_ends_with_its_script() -> None:
    result = run_program(program(stream()), [])
    assert result.ending.kind is EndingKind.SCRIPT_ENDED


@pytest.mark.parametrize("processor", list(Processor))
def test_a_repeated_run_gets_its_keys_at_the_same_polls(processor: Processor) -> None:
    """The counter in the polling loop, a random seed, ends at the same number on both processors."""
    source = call(9, "prompt") + COUNTER + "ld hl, (0x3000)\nld a, l\nand 0x0f\nadd a, 65\n" + SHOW
    first = run(source, b"k")
    again = repeat_run(program(source + "ret\n" + PROMPT), first.schedule, Setting(processor=processor))
    assert again.session == first.session


def test_a_rehearsal_polls_less() -> None:
    source = program(call(9, "prompt") + COUNTER + SHOW + "ret\n" + PROMPT)
    first = run_program(source, [b"k"])
    second = rehearse(source, first)
    assert second.session.output == first.session.output
    assert second.ticks < 200_000 < first.ticks


def test_a_run_without_keys_ends_at_its_first_wait() -> None:
    result = run(call(9, "prompt") + call(1))
    assert result.ending.kind is EndingKind.SCRIPT_ENDED
    assert result.session.ending == "script ended"
    assert looks(result) == [True]


def test_a_function_may_answer_the_waits() -> None:
    result = run_program(program(call(1) * 2 + "ret\n"), lambda host: b"ab"[len(host.log.events) // 2 :][:1])
    assert result.session.output == b"ab"
