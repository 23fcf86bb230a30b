"""Which processor a program needs, and how much memory.

Source: Intel, 8080/8085 Assembly Language Programming Manual: twelve codes are no instructions.
"""

from __future__ import annotations

import pytest
from machine_assembler import call, program, text

from fit.machine.cpu import Processor
from fit.machine.host import Host
from fit.machine.loader import Program
from fit.machine.memory_need import lowest_memory, masked
from fit.machine.opcodes import UNDEFINED
from fit.machine.processor import ProcessorClass, ProcessorNeed, processor_class
from fit.machine.run import repeat_run, run_program
from fit.machine.setting import Setting

HELLO = call(9, "hello") + "ret\n" + text("hello", "The lamp is lit.\r\n")


def need(source: str) -> ProcessorNeed:
    """The class of a program that needs no keys."""
    loaded = program(source)
    return processor_class(loaded, run_program(loaded).schedule, Setting())


def test_twelve_opcodes_are_not_defined_on_the_8080() -> None:
    assert [f"{code:02X}" for code in UNDEFINED] == [
        "08",
        "10",
        "18",
        "20",
        "28",
        "30",
        "38",
        "CB",
        "D9",
        "DD",
        "ED",
        "FD",
    ]


@pytest.mark.parametrize("opcode", UNDEFINED)
@pytest.mark.parametrize("processor", list(Processor))
def test_each_is_noticed_where_it_is_executed(opcode: int, processor: Processor) -> None:
    image = bytes((0x00, opcode, 0x00, 0x00, 0xC9))
    host = Host(Program("X.COM", image), Setting(processor=processor, watches_opcodes=True))
    host.advance(1)
    assert host.opcodes is not None
    assert (0x101, opcode) in host.opcodes.hits


def test_data_that_looks_like_opcodes_is_not_counted() -> None:
    result = need(HELLO + "db " + ", ".join(str(code) for code in UNDEFINED))
    assert (result.kind, result.hits) == (ProcessorClass.SAFE_8080, ())


def test_a_z80_program_is_one() -> None:
    result = need("ld a, 65\nex af, af'\nld a, 66\nex af, af'\nld e, a\nld c, 2\ncall bdos\n" + HELLO)
    assert result.kind is ProcessorClass.NEEDS_Z80
    assert result.hits[0] == (0x102, 0x08)


def test_an_opcode_without_consequence_is_undecided() -> None:
    result = need("db 8, 8\n" + HELLO)
    assert result.kind is ProcessorClass.UNDECIDED
    assert "prints the same" in result.reason


def test_a_program_that_refuses_an_8080_needs_a_z80() -> None:
    """Adding overflows: the Z80 tells overflow where the 8080 tells parity."""
    source = (
        "ld a, 0x7f\ninc a\njp pe, z80\n" + call(9, "sorry") + "ret\nz80: ld b, 2\nmore: djnz more\n" + HELLO
    )
    result = need(source + text("sorry", "Not on this processor.\r\n"))
    assert result.kind is ProcessorClass.NEEDS_Z80


LOOKS = "ld a, 0x7f\ninc a\njp pe, z80\n"
"""Adding overflows: the Z80 tells overflow where the 8080 tells parity."""
QUICK = "jp done\nz80: ld b, 2\nmore: djnz more\n" + call(9, "quick") + "done: "
TEXTS = text("slow", "The lamp turns slowly.\r\n") + text("quick", "The lamp turns quickly.\r\n")


def test_a_program_that_has_other_code_for_an_8080_is_safe_there() -> None:
    """Both ways print a line of their own, and come to the same end."""
    result = need(LOOKS + call(9, "slow") + QUICK + HELLO + TEXTS)
    assert (result.kind, result.same_transcript) == (ProcessorClass.SAFE_8080, False)
    assert [hit.opcode for hit in result.hits] == [0x10]
    assert result.reason == "it executes 10h on a Z80 alone: it looks which processor it runs on"


def test_a_program_that_shows_less_on_an_8080_has_left() -> None:
    assert need(LOOKS + "ret\n" + QUICK + HELLO + TEXTS).kind is ProcessorClass.NEEDS_Z80


def test_a_refusal_that_ends_as_all_does_is_one() -> None:
    sorry = TEXTS.replace(text("slow", "The lamp turns slowly.\r\n"), text("slow", "It needs a Z80.\r\n"))
    assert need(LOOKS + call(9, "slow") + QUICK + HELLO + sorry).kind is ProcessorClass.NEEDS_Z80


def test_other_words_without_the_same_end_leave_it_undecided() -> None:
    result = need(LOOKS + call(9, "slow") + "ret\n" + QUICK + "ret\n" + TEXTS)
    assert result.kind is ProcessorClass.UNDECIDED
    assert result.reason.endswith("it looks which processor it runs on, and prints otherwise on an 8080")


LIT = text("lit", "The lamp is lit.\r\n")


def test_a_run_that_ends_otherwise_is_not_the_same() -> None:
    """The Z80 jumps over the HALT at which an 8080 stops; both have printed the same."""
    result = need(call(9, "lit") + "jr done\nnop\ndb 0x76\ndone: ret\n" + LIT)
    assert result.kind is ProcessorClass.NEEDS_Z80
    assert result.reason == (
        "it executed 18h from 0108h on, and on an 8080 it ends otherwise: halted: it executed HALT at 010Bh"
    )


def test_a_run_that_comes_out_of_a_text_by_accident_is_not_the_same() -> None:
    """An 8080 passes over the jump and runs through what stands behind the code, opcodes of blanks among it."""
    result = need(call(9, "lit") + "jr done\nnop\ndb 0x20, 0x20\ndone: ret\n" + LIT)
    assert result.kind is ProcessorClass.NEEDS_Z80
    assert [hit.opcode for hit in result.hits] == [0x18]
    assert result.reason.endswith("on an 8080 it goes astray: it comes to 20h at 010Bh")


def test_a_program_that_shows_more_without_the_codes_of_an_8085_is_undecided() -> None:
    """RIM, which a Z80 takes for a jump into nowhere."""
    result = need("db 0x20\n" + call(9, "lit") + "ret\n" + LIT)
    assert result.kind is ProcessorClass.UNDECIDED
    assert result.reason == (
        "it executed 20h from 0100h on, and shows more where that does nothing: it may be for an 8085"
    )


def test_opcodes_after_an_index_prefix_belong_to_it() -> None:
    """DD CB is one instruction: the address of CBh is no hit of its own."""
    host = Host(Program("X.COM", b"\xdd\xcb\x00\x46\xc9"), Setting(watches_opcodes=True))
    host.advance(1)
    assert host.opcodes is not None
    assert host.opcodes.hits == [(0x100, 0xDD)]


def test_code_that_a_program_makes_is_found_when_it_is_scanned_again() -> None:
    """It moves EXX to 3000h, computes for a while, and calls it."""
    source = "ld a, 0xd9\nld (0x3000), a\nld a, 0xc9\nld (0x3001), a\nld b, 10\nouter: push bc\nld hl, 0\n"
    source += "inner: dec hl\nld a, h\nor l\njp nz, inner\npop bc\ndec b\njp nz, outer\ncall 0x3000\n"
    assert (0x3000, 0xD9) in need(source + HELLO).hits


def test_hits_that_mean_something_else_on_the_8085() -> None:
    assert [hit.opcode for hit in need("db 0x20, 0x00\n" + HELLO).hits_8085] == [0x20]


def test_processors_print_the_same_where_a_program_is_8080_code() -> None:
    loaded = program(HELLO)
    runs = [repeat_run(loaded, (), Setting(processor=kind)) for kind in Processor]
    assert runs[0].session == runs[1].session


# Memory


def test_a_program_that_uses_little_needs_little() -> None:
    loaded = program(HELLO)
    result = lowest_memory(loaded, run_program(loaded).schedule, Setting())
    assert (result.top, result.reason) == (0x206, "the program itself would not fit")


def test_a_program_that_writes_at_an_address_needs_memory_up_to_it() -> None:
    loaded = program("ld a, 1\nld (0x5a10), a\n" + HELLO)
    result = lowest_memory(loaded, run_program(loaded).schedule, Setting())
    assert result.top == 0x5B06
    assert result.reason == "with a top of 5A06h it writes at 5A10h"


def test_data_put_under_the_top_does_not_count_as_need() -> None:
    loaded = program(
        "ld hl, (6)\nld sp, hl\ndec h\nld (hl), 1\n" + call(9, "hello") + "jp 0\n" + text("hello", "lit")
    )
    result = lowest_memory(loaded, run_program(loaded).schedule, Setting())
    assert result.top is not None
    assert result.top <= 0x306


def test_a_program_that_says_it_has_too_little_needs_more() -> None:
    source = "ld a, (7)\ncp 0x40\njp nc, enough\n" + call(9, "little") + "ret\nenough: " + HELLO
    loaded = program(source + text("little", "Not enough memory.\r\n"))
    result = lowest_memory(loaded, run_program(loaded).schedule, Setting())
    assert (result.top, result.reason) == (0x4006, "it prints otherwise")


def test_a_program_may_tell_how_much_memory_is_free() -> None:
    assert masked(b"FREE: 51,200 bytes") == masked(b"FREE:  9,999 bytes")
    assert masked(b"TOP FB06H") == masked(b"TOP 5A06H")
    assert masked(b"TOP 06FBh, C303FE00 C3 06 FB") == masked(b"TOP 065Ah, C3035D00 C3 06 5A")
    assert masked(b"FREE: 51,200 bytes") != masked(b"FULL: 51,200 bytes")


def test_a_bound_on_the_first_search_is_the_top_of_the_run() -> None:
    loaded = program("ld a, 1\nld (0x5a10), a\n" + HELLO)
    setting = Setting(top=0x6000)
    assert lowest_memory(loaded, run_program(loaded, setting=setting).schedule, setting).top == 0x5B06
