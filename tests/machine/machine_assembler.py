"""Programs for the tests, written in the assembly language of the ``z80`` library.

The library's assembler knows numbers and names only; here text may stand in ``db``, and ``equ`` names
that every program needs are there already.
"""

from __future__ import annotations

import re
from pathlib import Path

from z80 import Asm, SourceFile

from fit.machine.loader import Program

_START = """
bdos equ 5
fcb equ 0x5c
dma equ 0x80
org 0x100
"""

_STRING = re.compile(r'"([^"]*)"')


def assemble(source: str) -> bytes:
    """The bytes of a program that starts at 0100h."""
    plain = _STRING.sub(lambda text: ", ".join(str(ord(char)) for char in text.group(1)), source)
    code = Asm().assemble(SourceFile("test", _START + plain))
    code.resolve()
    image = bytearray()
    for address, data in code.encode():
        image[address - 0x100 :] = bytes(max(0, address - 0x100 - len(image)))
        image += data
    return bytes(image)


def program(source: str, folder: Path | None = None) -> Program:
    """The same as a program that was loaded; its folder is drive A."""
    return Program("TEST.COM", assemble(source), folder or Path("/nonexistent"))


def call(function: int, parameter: str | int | None = None) -> str:
    """The lines that call a BDOS function."""
    load = "" if parameter is None else f"ld de, {parameter}\n"
    return f"{load}ld c, {function}\ncall bdos\n"


def text(name: str, string: str) -> str:
    """A text that function 9 prints."""
    data = ", ".join(str(byte) for byte in string.encode("latin-1") + b"$")
    return f"{name}: db {data}\n"
