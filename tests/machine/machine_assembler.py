"""Programs for the tests, written in the assembly language of the ``z80`` library.

The library's assembler knows numbers and names only; here text may stand in ``db``, and ``equ`` names
that every program needs are there already.
"""

from __future__ import annotations

import re
from pathlib import Path

from z80 import Asm, SourceFile

from fit.machine.host import Host
from fit.machine.loader import Program
from fit.machine.run import run_program
from fit.machine.setting import Setting

_START = """
bdos equ 5
fcb equ 0x5c
dma equ 0x80
org 0x100
"""

Calls = list[str | tuple[int, str | int]]
"""Lines of assembly, or a BDOS function and its parameter."""

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
    return Program("TEST.COM", assemble(source), folder)


def call(function: int, parameter: str | int | None = None) -> str:
    """The lines that call a BDOS function."""
    load = "" if parameter is None else f"ld de, {parameter}\n"
    return f"{load}ld c, {function}\ncall bdos\n"


def text(name: str, string: str) -> str:
    """A text that function 9 prints."""
    data = ", ".join(str(byte) for byte in string.encode("latin-1") + b"$")
    return f"{name}: db {data}\n"


def fcb_data(label: str, name: str = "LOG.TXT", drive: int = 0) -> str:
    """A control block for a file, 36 bytes."""
    base, _, kind = name.partition(".")
    field = base.ljust(8) + kind.ljust(3)
    return (
        f"{label}: db {drive}\ndb {', '.join(str(ord(char)) for char in field)}\ndb {', '.join(['0'] * 24)}\n"
    )


class Probe:
    """A program made of BDOS calls; what each returned can be read after the run.

    ``calls`` holds lines of assembly, or pairs of a function and its parameter (a number or a label). Keys come
    all at once before it starts (``ahead``), or at waits (``keys``, ``steps``).
    """

    def __init__(
        self,
        calls: Calls,
        data: str = "",
        folder: Path | None = None,
        *,
        keys: bytes = b"",
        steps: list[bytes] | None = None,
        ahead: bytes = b"",
        before: str = "",
        setting: Setting | None = None,
    ) -> None:
        source, count = before, 0
        for item in calls:
            if isinstance(item, str):
                source += item + "\n"
                continue
            source += call(*item) + f"ld ({0x4000 + 4 * count}), hl\nld ({0x4002 + 4 * count}), a\n"
            count += 1
        self.host = Host(program(source + "jp 0\n" + data, folder), setting or Setting())
        self.host.console.keys.extend(ahead)
        self.run = run_program(self.host.program, steps or keys, host=self.host)
        self.hl = [self._word(0x4000 + 4 * index) for index in range(count)]
        """HL after each call."""
        self.a = [self.host.cpu.memory[0x4002 + 4 * index] for index in range(count)]
        """A after each call."""

    def _word(self, address: int) -> int:
        return int.from_bytes(self.peek(address, 2), "little")

    def peek(self, address: int, size: int) -> bytes:
        """Memory after the run."""
        return bytes(self.host.cpu.memory[address : address + size])

    @property
    def output(self) -> bytes:
        """What was printed."""
        return self.run.session.output
