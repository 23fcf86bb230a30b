"""Where everything of the operating system lies in memory, and what page zero holds at the start.

    0000  jump to the warm start          TOP   jump to the BDOS (the word at 0006h)
    0005  jump to TOP                     FC00  allocation vector
    005C  first parsed file name          FE00  BIOS table: 17 jumps
    006C  second parsed file name         FE40  stubs: two bytes each, a trap and a RET
    0080  command tail                    FE80  disk parameter block, header, buffers
    0100  the program                     FFFF

Memory for programs ends at TOP itself: programs set their stack there. The jumps are real, since
programs read addresses out of them and patch them; only the stubs they lead to stop the processor.

Source: the operating system's manual, the chapters on the BDOS and the BIOS. The tests cite it.
"""

from __future__ import annotations

from enum import IntEnum
from typing import Final

from fit.machine.cpu import MEMORY_SIZE, SP, Cpu
from fit.machine.names import parse_name

PROGRAM_START: Final = 0x0100
IO_BYTE: Final = 0x0003
DRIVE_BYTE: Final = 0x0004
BDOS_JUMP: Final = 0x0005
FIRST_FCB: Final = 0x005C
SECOND_FCB: Final = 0x006C
TAIL: Final = 0x0080
LONGEST_TAIL: Final = 127

ALLOCATION: Final = 0xFC00
BIOS_TABLE: Final = 0xFE00
STUBS: Final = 0xFE40
BDOS_STUB: Final = 0xFE70
RELAY_STUB: Final = 0xFE74
PARAMETERS: Final = 0xFE80
HEADER: Final = 0xFE90
SCRATCH: Final = 0xFEA0
RELAY_STACK: Final = 0xFF00
DIRECTORY_BUFFER: Final = 0xFF00

HIGHEST_TOP: Final = 0xFB06
LOWEST_TOP: Final = PROGRAM_START + 0x80
LARGEST_PROGRAM: Final = HIGHEST_TOP - PROGRAM_START

RESTARTS: Final = range(0x08, 0x5C)
"""Restart vectors and the empty bytes after them: running into one that nobody filled is a wild jump."""

RETURN_ADDRESS: Final = 2
"""Bytes of stack that every program finds used."""
_BELOW_TOP: Final = 88
"""How far the first stack lies below the top where there is room, about as in version 2.2 (from memory)."""

_JUMP: Final = 0xC3
_RETURN: Final = 0xC9


class Bios(IntEnum):
    """The entries of the BIOS table, in order."""

    BOOT = 0
    WBOOT = 1
    CONST = 2
    CONIN = 3
    CONOUT = 4
    LIST = 5
    PUNCH = 6
    READER = 7
    HOME = 8
    SELDSK = 9
    SETTRK = 10
    SETSEC = 11
    SETDMA = 12
    READ = 13
    WRITE = 14
    LISTST = 15
    SECTRAN = 16


DEVICE_ENTRIES: Final = slice(BIOS_TABLE + 3 * Bios.CONST, BIOS_TABLE + 3 * Bios.READER + 3)
"""The entries through which the BDOS speaks with console, printer, punch and reader."""


BIOS_TABLE_RANGE: Final = range(BIOS_TABLE, BIOS_TABLE + 3 * len(Bios))
"""What programs may patch without being said to overwrite the system."""


def entry(function: Bios) -> int:
    """The address of a BIOS function's jump in the table."""
    return BIOS_TABLE + 3 * function


def stub(function: Bios) -> int:
    """The address the jump leads to before anybody patches it."""
    return STUBS + 2 * function


def _jump(target: int) -> bytes:
    return bytes((_JUMP, target & 0xFF, target >> 8))


def first_stack(size: int, top: int) -> int:
    """Where the stack stands when a program of ``size`` bytes starts.

    The command processor's own lies some way below the BDOS: programs set theirs at the top, and in the end
    go back to the first and return.
    """
    free = top - RETURN_ADDRESS - PROGRAM_START - size
    return top - RETURN_ADDRESS - max(0, min(_BELOW_TOP, free))


def lay_out(cpu: Cpu, image: bytes, arguments: str, top: int) -> None:
    """Fill memory as the command processor leaves it, and set breakpoints where nothing may run."""
    memory = cpu.memory
    memory[0:3] = _jump(entry(Bios.WBOOT))
    memory[BDOS_JUMP : BDOS_JUMP + 3] = _jump(top)
    memory[top : top + 3] = _jump(BDOS_STUB)
    for function in Bios:
        memory[entry(function) : entry(function) + 3] = _jump(stub(function))
        memory[stub(function) + 1] = _RETURN
    memory[BDOS_STUB + 1] = memory[RELAY_STUB + 1] = _RETURN
    words = arguments.upper().split()
    for address, word in zip((FIRST_FCB, SECOND_FCB), [*words, "", ""], strict=False):
        memory[address : address + 16] = parse_name(word) + bytes(4)
    tail = (f" {arguments}" if arguments else "").upper().encode("latin-1", "replace")[:LONGEST_TAIL]
    memory[TAIL : TAIL + len(tail) + 1] = bytes((len(tail),)) + tail
    memory[PROGRAM_START : PROGRAM_START + len(image)] = image
    # The program may simply return: its stack holds the address 0.
    stack = first_stack(len(image), top)
    cpu.words[SP] = stack
    memory[stack : stack + 2] = bytes(2)
    _break(cpu, top)


def _break(cpu: Cpu, top: int) -> None:
    cpu.break_at(RESTARTS.start, len(RESTARTS))
    cpu.break_at(top, MEMORY_SIZE - top)
    cpu.unbreak(top, 3)
    cpu.unbreak(BIOS_TABLE, 3 * len(Bios))
    for function in Bios:
        cpu.unbreak(stub(function) + 1)
    cpu.unbreak(BDOS_STUB + 1)
    cpu.unbreak(RELAY_STUB + 1)
