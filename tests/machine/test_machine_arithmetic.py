"""The 8080's arithmetic against the manual's description, for all operands; and where the Z80 differs.

Source: Intel, 8080/8085 Assembly Language Programming Manual: condition flags, and each instruction. The
value of the auxiliary carry after ANA, the or of bits 3, is from memory.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fit.machine.cpu import AF, BC, PC, Cpu, Processor

CARRY, PARITY, HALF, ZERO, SIGN = 0x01, 0x04, 0x10, 0x40, 0x80
FLAGS = CARRY | PARITY | HALF | ZERO | SIGN


def result_flags(value: int, *, carry: int, half: int) -> int:
    """S, Z and P follow from the result."""
    value &= 0xFF
    parity = PARITY if value.bit_count() % 2 == 0 else 0
    return (
        (value & SIGN)
        | (ZERO if value == 0 else 0)
        | parity
        | (CARRY if carry else 0)
        | (HALF if half else 0)
    )


def add(a: int, b: int, carry: int) -> tuple[int, int]:
    """ADD and ADC."""
    total = a + b + carry
    return total & 0xFF, result_flags(total, carry=total >> 8, half=(a & 15) + (b & 15) + carry >> 4)


def subtract(a: int, b: int, borrow: int) -> tuple[int, int]:
    """SUB and SBB: the complement is added, and the carry is a borrow."""
    total = a - b - borrow
    half = (a & 15) + (~b & 15) + 1 - borrow >> 4
    return total & 0xFF, result_flags(total, carry=total < 0, half=half)


def both(a: int, b: int, _: int) -> tuple[int, int]:
    """ANA."""
    return a & b, result_flags(a & b, carry=0, half=(a | b) & 8)


def either(a: int, b: int, _: int) -> tuple[int, int]:
    """ORA."""
    return a | b, result_flags(a | b, carry=0, half=0)


def differ(a: int, b: int, _: int) -> tuple[int, int]:
    """XRA."""
    return a ^ b, result_flags(a ^ b, carry=0, half=0)


def compare(a: int, b: int, _: int) -> tuple[int, int]:
    """CMP: SUB, and A stays."""
    return a, subtract(a, b, 0)[1]


def run_all(opcode: int, carry: int) -> list[tuple[int, int]]:
    """A and the flags after one instruction with B, for every A and B."""
    cpu = Cpu(Processor.I8080)
    cpu.memory[0x100:0x102] = bytes((opcode, 0x00))
    cpu.break_at(0x101)
    run, words, found = cpu.run, cpu.words, []
    for a in range(256):
        for b in range(256):
            words[PC], words[AF], words[BC] = 0x100, a << 8 | 2 | carry, b << 8
            while words[PC] != 0x101:
                run()
            found.append((words[AF] >> 8, words[AF] & FLAGS))
    return found


@pytest.mark.parametrize(
    ("opcode", "model", "carry"),
    [
        (0x80, add, 0),
        (0x88, add, 1),
        (0x90, subtract, 0),
        (0x98, subtract, 1),
        (0xA0, both, 1),
        (0xA8, differ, 1),
        (0xB0, either, 1),
        (0xB8, compare, 1),
    ],
)
def test_arithmetic(opcode: int, model: Callable[[int, int, int], tuple[int, int]], carry: int) -> None:
    expected = [model(a, b, carry) for a in range(256) for b in range(256)]
    assert run_all(opcode, carry) == expected


def test_decimal_adjust() -> None:
    """DAA: 6 to the low digit over 9 or after a half carry, then 6 to the high digit over 9 or after a carry."""
    cpu = Cpu(Processor.I8080)
    cpu.memory[0x100:0x102] = b"\x27\x00"
    cpu.break_at(0x101)
    for a in range(256):
        for flags in (0, CARRY, HALF, CARRY | HALF):
            cpu.words[PC], cpu.words[AF] = 0x100, a << 8 | 2 | flags
            while cpu.words[PC] != 0x101:
                cpu.run()
            low = 6 if a & 15 > 9 or flags & HALF else 0
            high = 0x60 if flags & CARRY or a > 0x99 else 0
            total = a + low + high
            carry = flags & CARRY or a > 0x99
            expected = total & 0xFF, result_flags(total, carry=carry, half=(a & 15) + low >> 4)
            assert (cpu.words[AF] >> 8, cpu.words[AF] & FLAGS) == expected, (a, flags)


@pytest.mark.parametrize(("processor", "tells"), [(Processor.I8080, 0), (Processor.Z80, PARITY)])
def test_the_z80_tells_overflow_where_the_8080_tells_parity(processor: Processor, tells: int) -> None:
    """7Fh + 1 overflows, and 80h has an odd number of ones."""
    cpu = Cpu(processor)
    cpu.memory[0x100:0x104] = b"\x3e\x7f\x3c\x00"
    cpu.break_at(0x103)
    cpu.words[PC] = 0x100
    cpu.run()
    assert cpu.words[AF] & PARITY == tells
