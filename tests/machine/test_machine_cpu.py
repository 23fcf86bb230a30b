"""The processor's door: the offsets of the library's packed state, frames, breakpoints, HALT."""

from __future__ import annotations

import gc
import weakref

import pytest

from fit.machine.cpu import (
    BC,
    BREAKPOINT,
    DE,
    FRAME,
    HL,
    PC,
    SP,
    A,
    B,
    C,
    Cpu,
    D,
    E,
    H,
    L,
    Processor,
)

BOTH = pytest.mark.parametrize("processor", list(Processor))


def at_100(processor: Processor, code: bytes) -> Cpu:
    """A processor about to execute ``code``."""
    cpu = Cpu(processor)
    cpu.memory[0x100 : 0x100 + len(code)] = code
    cpu.words[PC], cpu.words[SP] = 0x100, 0xF000
    return cpu


@BOTH
def test_registers_stand_at_their_offsets(processor: Processor) -> None:
    # LD BC,0201h; LD DE,0403h; LD HL,0605h; LD A,07h; JP 0200h
    cpu = at_100(processor, bytes.fromhex("010102 110304 210506 3E07 C30002"))
    cpu.break_at(0x200)
    assert cpu.run() == BREAKPOINT
    assert [cpu.view[i] for i in (C, B, E, D, L, H, A)] == [1, 2, 3, 4, 5, 6, 7]
    assert [cpu.words[i] for i in (BC, DE, HL, PC, SP)] == [0x201, 0x403, 0x605, 0x200, 0xF000]


@BOTH
def test_a_breakpoint_fires_again_until_pc_moves(processor: Processor) -> None:
    cpu = at_100(processor, b"\x00\x00\xc3\x00\x01")
    cpu.break_at(0x101)
    assert [cpu.run(), cpu.run()] == [BREAKPOINT, BREAKPOINT]
    cpu.words[PC] = 0x102
    cpu.unbreak(0x101)
    assert cpu.run() == FRAME


@BOTH
def test_a_frame_is_100_000_ticks(processor: Processor) -> None:
    cpu = at_100(processor, b"\xc3\x00\x01")
    assert cpu.run() == FRAME
    cpu.frames += 1
    assert 100_000 <= cpu.ticks < 100_020


@BOTH
def test_time_may_pass_without_instructions(processor: Processor) -> None:
    cpu = at_100(processor, b"\xc3\x00\x01")
    cpu.pass_time(60_000)
    assert cpu.ticks == 60_000
    cpu.pass_time(60_000)
    assert cpu.run() == FRAME
    cpu.frames += 1
    assert 120_000 <= cpu.ticks < 120_020


@BOTH
def test_halt_is_seen_at_the_end_of_the_frame(processor: Processor) -> None:
    cpu = at_100(processor, b"\x76")
    assert not cpu.is_halted
    assert cpu.run() == FRAME
    assert cpu.is_halted


@BOTH
def test_a_frozen_state_comes_back(processor: Processor) -> None:
    # INC (HL) for ever
    cpu = at_100(processor, b"\x34\xc3\x00\x01")
    cpu.words[HL] = 0x300
    frozen, state = cpu.freeze(), cpu.state()
    cpu.run()
    assert cpu.state() != state
    cpu.thaw(frozen)
    assert cpu.state() == state
    assert cpu.has_registers(state)


@BOTH
def test_watched_writes_are_told_until_they_are_told_once(processor: Processor) -> None:
    # LD HL,0300h; INC (HL) twice; INC HL; INC (HL); HALT
    cpu = at_100(processor, bytes.fromhex("210003 3434 23 34 76"))
    told: list[tuple[int, int]] = []

    def note(address: int, byte: int) -> bool:
        told.append((address, byte))
        return address == 0x300

    cpu.watch_writes(0x300, 2)
    cpu.on_write(note)
    cpu.run()
    assert told == [(0x300, 1), (0x301, 1)]
    assert bytes(cpu.memory[0x300:0x302]) == b"\x02\x01"


@BOTH
def test_ports_are_told_by_their_low_byte(processor: Processor) -> None:
    # LD A,12h; IN A,(34h); OUT (56h),A; HALT
    cpu = at_100(processor, bytes.fromhex("3E12 DB34 D356 76"))
    told: list[tuple[int, ...]] = []

    def read(port: int, _pc: int) -> int:
        told.append((port,))
        return 0x99

    cpu.on_ports(read, lambda port, byte, _pc: told.append((port, byte)))
    cpu.run()
    assert told == [(0x34,), (0x56, 0x99)]


def test_a_byte_after_an_index_prefix_is_known_to_be_one() -> None:
    cpu = at_100(Processor.Z80, b"\xdd\x21\x34\x12")
    cpu.break_at(0x101)
    cpu.run()
    assert cpu.is_after_prefix


class Listener:
    """Somebody who is told."""

    def told(self, _address: int, _byte: int) -> bool:
        """Once is enough."""
        return True


@BOTH
def test_a_processor_and_its_listeners_are_freed(processor: Processor) -> None:
    """The library keeps its callbacks for ever unless others take their place."""
    cpu, listener = at_100(processor, b"\x00"), Listener()
    cpu.on_write(listener.told)
    gone = weakref.ref(cpu._machine), weakref.ref(listener)
    del cpu, listener
    gc.collect()
    assert [reference() for reference in gone] == [None, None]
