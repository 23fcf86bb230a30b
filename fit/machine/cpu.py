"""One processor with 64 KiB of memory. The only door to ``z80``.

The library shows its whole state as one packed, writable view; the offsets below are those of its
packed structure and are held by tests. Callbacks hold no reference to the machine: the library's
type takes no part in garbage collection, and a cycle through a callback would never be freed.
"""

from __future__ import annotations

import weakref
from collections.abc import Callable
from enum import StrEnum
from typing import Final, NamedTuple

from z80 import I8080Machine, Z80Machine

C, B, E, D, L, H, F, A = range(8)
"""Offsets of the byte registers in `Cpu.view`."""

BC, DE, HL, AF, PC, SP = range(6)
"""Offsets of the register pairs in `Cpu.words`."""

BREAKPOINT: Final = 1
"""Event: the instruction at PC carries a breakpoint; it was not executed."""
FRAME: Final = 8
"""Event: `FRAME_TICKS` clock ticks have passed since the last frame."""
FRAME_TICKS: Final = 100_000
MEMORY_SIZE: Final = 0x10000

_BREAK_MARK: Final = 1
_WRITE_MARK: Final = 4
_FRAME_TICK: Final = slice(20, 24)
_PREFIX_8080: Final = 28
_PREFIX_Z80: Final = 44


class Processor(StrEnum):
    """The instruction set a program is run with."""

    I8080 = "8080"
    Z80 = "z80"


class Frozen(NamedTuple):
    """The state of a processor and its memory at one moment."""

    state: bytes
    frames: int


class Cpu:
    """A processor that runs until a breakpoint or the end of a frame.

    ``view`` is the packed state in bytes, ``words`` its register pairs, ``memory`` its 65,536 bytes.
    ``run()`` returns `BREAKPOINT`, `FRAME` or both; whoever calls it adds to ``frames``.
    """

    def __init__(self, processor: Processor) -> None:
        self.processor = processor
        self._machine: I8080Machine | Z80Machine
        if processor is Processor.I8080:
            self._machine, start, self._halted = I8080Machine(), _PREFIX_8080, 26
            # The interrupt flag is all that the 8080 has beside its registers.
            self._rest: tuple[slice, ...] = (slice(24, 25),)
        else:
            self._machine, start, self._halted = Z80Machine(), _PREFIX_Z80, 41
            # Everything but R (at 36), which counts instructions.
            self._rest = (slice(24, 36), slice(37, 41))
        self.view = self._machine.get_state_view()
        self.words = self.view[0:12].cast("H")
        self.memory = self.view[start:]
        self.run = self._machine.run
        self.frames = 0

    def __del__(self) -> None:
        # The library never gives its callbacks up, and with them all that they hold.
        self._machine.set_write_callback(_ignore_write)
        self._machine.set_input_callback(_ignore_read)
        self._machine.set_output_callback(_ignore_write)

    @property
    def ticks(self) -> int:
        """Clock ticks since the start."""
        return self.frames * FRAME_TICKS + int.from_bytes(self.view[_FRAME_TICK], "little")

    @property
    def is_halted(self) -> bool:
        """Whether a HALT was executed; the library then spins and looks at no breakpoint."""
        return self.view[self._halted] != 0

    @property
    def is_after_prefix(self) -> bool:
        """Whether an index prefix was just read: the byte at PC belongs to its instruction."""
        return self.processor is Processor.Z80 and self.view[43] != 0

    def pass_time(self, ticks: int) -> None:
        """Let the clock go on without an instruction, as where a disk is waited for; less than a frame."""
        tick = int.from_bytes(self.view[_FRAME_TICK], "little") + ticks
        # The library ends the frame, where it is over, with the next instruction.
        self.view[_FRAME_TICK] = tick.to_bytes(4, "little")

    def state(self) -> tuple[bytes, ...]:
        """What decides how the program goes on: registers and memory, without tick counters and R."""
        view = self.view
        return (bytes(view[0:12]), *(bytes(view[part]) for part in self._rest), bytes(self.memory))

    def has_registers(self, state: tuple[bytes, ...]) -> bool:
        """Whether the main registers equal those of ``state``: a cheap test before the whole one."""
        return bytes(self.view[0:12]) == state[0]

    def freeze(self) -> Frozen:
        """Copy everything, to come back to it."""
        return Frozen(bytes(self.view), self.frames)

    def thaw(self, frozen: Frozen) -> None:
        """Come back to a frozen state. Breakpoints and watched addresses stay as they are."""
        self.view[:] = frozen.state
        self.frames = frozen.frames

    def break_at(self, address: int, size: int = 1) -> None:
        """Stop before any instruction in the range is executed."""
        self._machine.mark_addrs(address, size, _BREAK_MARK)

    def unbreak(self, address: int, size: int = 1) -> None:
        """Take breakpoints away."""
        self._machine.unmark_addrs(address, size, _BREAK_MARK)

    def watch_writes(self, address: int, size: int) -> None:
        """Report writes to the range to the function given to `on_write`."""
        self._machine.mark_addrs(address, size, _WRITE_MARK)

    def on_write(self, told: Callable[[int, int], bool]) -> None:
        """Call ``told(address, byte)`` after each watched write; true means: watch it no longer."""
        memory = self.memory
        reference = weakref.ref(self._machine)

        def written(address: int, byte: int) -> None:
            memory[address] = byte
            if told(address, byte):
                machine = reference()
                assert machine is not None
                machine.unmark_addrs(address, 1, _WRITE_MARK)

        self._machine.set_write_callback(written)

    def on_ports(self, read: Callable[[int, int], int], written: Callable[[int, int, int], None]) -> None:
        """Call ``read(port, pc)`` and ``written(port, byte, pc)``; pc is past the instruction's opcode.

        ``port`` is the low byte of the address: the 8080 knows no other.
        """
        words = self.words
        self._machine.set_input_callback(lambda port: read(port & 0xFF, words[PC]))
        self._machine.set_output_callback(lambda port, byte: written(port & 0xFF, byte, words[PC]))


def _ignore_write(_address: int, _byte: int) -> None:
    """Stand in for a listener that is gone."""


def _ignore_read(_port: int) -> int:
    """Stand in for a listener that is gone."""
    return 0xFF
