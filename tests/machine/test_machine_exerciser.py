"""A small exerciser of our own, run by the host as a program, beside a plain model of the manuals.

The program puts every operand of a table through one instruction after another, mixes accumulator and flags into
a running sum, and prints the sums by functions 2 and 9.

Source: Intel, 8080/8085 Assembly Language Programming Manual: condition flags, each instruction; Zilog, Z80 CPU
User Manual (UM0080): condition bits of each instruction. The half carry of ANA, the or of bits 3, is from memory.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from machine_assembler import call, program, text

from fit.machine.cpu import Processor
from fit.machine.ending import UNLIMITED, EndingKind
from fit.machine.run import run_program
from fit.machine.setting import Setting

VALUES = (0x00, 0x01, 0x07, 0x08, 0x0F, 0x10, 0x55, 0x66, 0x7F, 0x80, 0x81, 0x99, 0x9A, 0xAA, 0xF0, 0xFF)
STARTS = (0x00, 0x01, 0x10, 0x11, 0x12, 0x13, 0x40, 0x80, 0xD5, 0xD7)
"""Flags before each instruction."""
CARRY, SUBTRACTED, PARITY, HALF, ZERO, SIGN = 0x01, 0x02, 0x04, 0x10, 0x40, 0x80
SHOWN = {Processor.I8080: 0xD5, Processor.Z80: 0xD7}
"""The flags that the manuals define."""

Model = Callable[[int, int, int, bool], tuple[int, int]]
"""Accumulator, operand, flags, whether on a Z80: accumulator and flags after it."""


def parity(value: int) -> int:
    return 0 if value.bit_count() & 1 else PARITY


def signs(value: int) -> int:
    return value & SIGN | (0 if value else ZERO)


def add(a: int, b: int, carry: int, z80: bool) -> tuple[int, int]:
    total = a + b + carry
    value = total & 0xFF
    flags = signs(value) | (total >> 8) | (HALF if (a & 15) + (b & 15) + carry > 15 else 0)
    overflow = PARITY if ~(a ^ b) & (a ^ value) & 0x80 else 0
    return value, flags | (overflow if z80 else parity(value))


def subtract(a: int, b: int, borrow: int, z80: bool) -> tuple[int, int]:
    value = a - b - borrow & 0xFF
    flags = signs(value) | (a < b + borrow)
    borrows_half = (a & 15) < (b & 15) + borrow
    if z80:
        overflow = PARITY if (a ^ b) & (a ^ value) & 0x80 else 0
        return value, flags | SUBTRACTED | overflow | (HALF if borrows_half else 0)
    # The 8080 adds the complement: its half carry is no borrow.
    return value, flags | parity(value) | (0 if borrows_half else HALF)


def both(a: int, b: int, _: int, z80: bool) -> tuple[int, int]:
    half = HALF if z80 or (a | b) & 8 else 0
    return a & b, signs(a & b) | parity(a & b) | half


def either(a: int, b: int, _f: int, _z: bool) -> tuple[int, int]:
    return a | b, signs(a | b) | parity(a | b)


def differ(a: int, b: int, _f: int, _z: bool) -> tuple[int, int]:
    return a ^ b, signs(a ^ b) | parity(a ^ b)


def compare(a: int, b: int, _: int, z80: bool) -> tuple[int, int]:
    return a, subtract(a, b, 0, z80)[1]


def up(a: int, _b: int, flags: int, z80: bool) -> tuple[int, int]:
    value, changed = add(a, 1, 0, z80)
    return value, changed & ~CARRY | flags & CARRY


def down(a: int, _b: int, flags: int, z80: bool) -> tuple[int, int]:
    value, changed = subtract(a, 1, 0, z80)
    return value, changed & ~CARRY | flags & CARRY


def turned(value: int, carry: int, flags: int, z80: bool) -> tuple[int, int]:
    """The rotates of the accumulator change the carry alone; on the Z80 they clear half carry and N."""
    kept = flags & (SIGN | ZERO | PARITY | (0 if z80 else HALF))
    return value & 0xFF, kept | carry


def adjust(a: int, _b: int, flags: int, z80: bool) -> tuple[int, int]:
    """DAA, in both directions on the Z80."""
    low = 6 if a & 15 > 9 or flags & HALF else 0
    high = 0x60 if a > 0x99 or flags & CARRY else 0
    carry = CARRY if high else 0
    if z80 and flags & SUBTRACTED:
        value = a - low - high & 0xFF
        half = HALF if flags & HALF and a & 15 < 6 else 0
        return value, signs(value) | parity(value) | carry | half | SUBTRACTED
    value = a + low + high & 0xFF
    return value, signs(value) | parity(value) | carry | (HALF if (a & 15) + low > 15 else 0)


def pair_sum(a: int, b: int, flags: int, z80: bool) -> tuple[int, int]:
    """DAD of AB and BF: the carry alone changes; on the Z80 the half carry out of bit 11 and N as well."""
    left, right = a << 8 | b, b << 8 | flags
    half = HALF if (left & 0xFFF) + (right & 0xFFF) > 0xFFF else 0
    kept = flags & (SIGN | ZERO | PARITY) | (half if z80 else flags & HALF)
    return left + right >> 8 & 0xFF, kept | left + right >> 16


OPERATIONS: dict[str, Model] = {
    "add a, b": lambda a, b, _, z: add(a, b, 0, z),
    "adc a, b": lambda a, b, f, z: add(a, b, f & CARRY, z),
    "sub b": lambda a, b, _, z: subtract(a, b, 0, z),
    "sbc a, b": lambda a, b, f, z: subtract(a, b, f & CARRY, z),
    "and b": both,
    "or b": either,
    "xor b": differ,
    "cp b": compare,
    "inc a": up,
    "dec a": down,
    "rlca": lambda a, _, f, z: turned(a << 1 | a >> 7, a >> 7, f, z),
    "rrca": lambda a, _, f, z: turned(a >> 1 | a << 7, a & 1, f, z),
    "rla": lambda a, _, f, z: turned(a << 1 | f & CARRY, a >> 7, f, z),
    "rra": lambda a, _, f, z: turned(a >> 1 | (f & CARRY) << 7, a & 1, f, z),
    "cpl": lambda a, _, f, z: (a ^ 0xFF, f | (HALF | SUBTRACTED if z else 0)),
    "scf": lambda a, _, f, z: (a, f & ~(HALF | SUBTRACTED if z else 0) | CARRY),
    "daa": adjust,
    "ld h, a\nld l, b\nadd hl, bc\nld a, h": pair_sum,
}
FIELDS = ("c", "d", "e", "h", "l", "(hl)")
for _operation in [name for name in OPERATIONS if name.endswith(" b")]:
    for _field in FIELDS:
        _stem = _operation.removesuffix("b") + _field
        _cell = "ld hl, cell\n" if _field == "(hl)" else ""
        OPERATIONS[f"{_cell}ld {_field}, b\n{_stem}"] = OPERATIONS[_operation]


def shifted(carry: Callable[[int], int], value: Callable[[int, int], int]) -> Model:
    """A shift or rotate of the Z80 that sets all flags by its result."""

    def model(a: int, _b: int, flags: int, _z: bool) -> tuple[int, int]:
        result = value(a, flags & CARRY) & 0xFF
        return result, signs(result) | parity(result) | carry(a)

    return model


OF_Z80: dict[str, Model] = {
    "rlc a": shifted(lambda a: a >> 7, lambda a, _: a << 1 | a >> 7),
    "rrc a": shifted(lambda a: a & 1, lambda a, _: a >> 1 | a << 7),
    "rl a": shifted(lambda a: a >> 7, lambda a, c: a << 1 | c),
    "rr a": shifted(lambda a: a & 1, lambda a, c: a >> 1 | c << 7),
    "sla a": shifted(lambda a: a >> 7, lambda a, _: a << 1),
    "sra a": shifted(lambda a: a & 1, lambda a, _: a >> 1 | a & 0x80),
    "srl a": shifted(lambda a: a & 1, lambda a, _: a >> 1),
    "neg": lambda a, _b, _f, z: subtract(0, a, 0, z),
    "set 3, a": lambda a, _b, f, _z: (a | 8, f),
    "res 7, a": lambda a, _b, f, _z: (a & 0x7F, f),
}


def exerciser(operations: list[str], shown: int) -> str:
    """For each operation, flags, operand and accumulator: sum = 2 * sum + carry out of that + AF after it."""
    source = "".join(f"ld hl, try{number}\nld (instr), hl\ncall table\n" for number in range(len(operations)))
    source += call(9, "bye") + "jp 0\n"
    source += (
        "table: ld hl, 0\nld (sum), hl\nld hl, starts\nld (flag), hl\n"
        "flags: ld hl, values\nld (right), hl\n"
        "rights: ld hl, values\nld (left), hl\n"
        "lefts: ld hl, (right)\nld b, (hl)\nld hl, (flag)\nld c, (hl)\nld hl, (left)\nld d, (hl)\nld e, c\n"
        "ld hl, back\npush hl\nld hl, (instr)\npush de\npop af\njp (hl)\n"
        f"back: push af\npop de\nld a, e\nand {shown}\nld e, a\n"
        "ld hl, (sum)\nadd hl, hl\nld a, 0\nadc a, 0\nld c, a\nld b, 0\nadd hl, bc\nadd hl, de\nld (sum), hl\n"
    )
    for pointer, loop, size in (
        ("left", "lefts", VALUES),
        ("right", "rights", VALUES),
        ("flag", "flags", STARTS),
    ):
        source += f"ld hl, {pointer}\ninc (hl)\nld a, (hl)\ncp {len(size)}\njp nz, {loop}\n"
    source += "ld a, (high)\ncall hex\nld a, (sum)\ncall hex\n" + call(9, "line") + "ret\n"
    source += (
        "hex: push af\nrrca\nrrca\nrrca\nrrca\ncall digit\npop af\n"
        "digit: and 15\nadd a, 0x90\ndaa\nadc a, 0x40\ndaa\nld e, a\nld c, 2\njp bdos\n"
    )
    source += "".join(f"try{number}: {operation}\nret\n" for number, operation in enumerate(operations))
    source += text("line", "\r\n") + text("bye", "Exercised\r\n")
    source += "sum: db 0\nhigh: db 0\ninstr: dw 0\nleft: dw 0\nright: dw 0\nflag: dw 0\ncell: db 0\n"
    return source + f"org 0x3000\nvalues: db {_listed(VALUES)}\norg 0x3100\nstarts: db {_listed(STARTS)}\n"


def _listed(values: tuple[int, ...]) -> str:
    return ", ".join(str(value) for value in values)


def expected_sum(model: Model, shown: int, *, z80: bool) -> str:
    """The same sum from the model."""
    total = 0
    for flags in STARTS:
        for b in VALUES:
            for a in VALUES:
                value, after = model(a, b, flags, z80)
                total = 2 * total + (total >> 15) + (value << 8 | after & shown) & 0xFFFF
    return f"{total:04X}"


@pytest.mark.parametrize("processor", list(Processor))
def test_every_operation_gives_the_sum_of_the_model(processor: Processor) -> None:
    z80 = processor is Processor.Z80
    tried = OPERATIONS | OF_Z80 if z80 else OPERATIONS
    exercise = program(exerciser(list(tried), SHOWN[processor]))
    run = run_program(exercise, setting=Setting(processor, limits=UNLIMITED))
    *sums, bye = run.session.output.decode("ascii").splitlines()
    expected = {name: expected_sum(model, SHOWN[processor], z80=z80) for name, model in tried.items()}
    assert dict(zip(tried, sums, strict=True)) == expected
    assert (bye, run.ending.kind) == ("Exercised", EndingKind.WARM_START)
