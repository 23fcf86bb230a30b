"""The twelve opcodes that the 8080 does not define, noticed when they are executed.

A breakpoint stands on each byte that could be one; it goes when it is hit. Bytes come and go, so
memory is scanned again after file reads and now and then. A static search would mislead: most such
bytes are text and data.

Source: Intel, 8080/8085 Assembly Language Programming Manual: the instruction set leaves out these
codes; 20h and 30h are RIM and SIM on the 8085.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from fit.machine.cpu import Cpu

UNDEFINED: Final = (0x08, 0x10, 0x18, 0x20, 0x28, 0x30, 0x38, 0xCB, 0xD9, 0xDD, 0xED, 0xFD)
OTHER_ON_8085: Final = (0x20, 0x30)

_RUNS: Final = re.compile(b"[" + b"".join(re.escape(bytes((code,))) for code in UNDEFINED) + b"]+")


class Hit(NamedTuple):
    """An opcode that was executed."""

    address: int
    opcode: int


class OpcodeWatch:
    """Breakpoints on everything that could be an undefined opcode below ``top``."""

    def __init__(self, cpu: Cpu, start: int, top: int) -> None:
        self._cpu = cpu
        self._start = start
        self._top = top
        self._done: set[int] = set()
        self.hits: list[Hit] = []
        self.scan(start, top - start)

    def scan(self, address: int, size: int) -> None:
        """Look for candidates in a stretch of memory."""
        first, last = max(address, self._start), min(address + size, self._top)
        for run in _RUNS.finditer(bytes(self._cpu.memory[first:last])):
            self._cpu.break_at(first + run.start(), len(run.group()))
        for seen in self._done:
            if first <= seen < last:
                self._cpu.unbreak(seen)

    def rescan(self) -> None:
        """Look through all of it again."""
        self.scan(self._start, self._top - self._start)

    def reached(self, address: int) -> bool:
        """Whether the breakpoint at ``address`` was one of these; it is taken away, counted where it counts."""
        if not self._start <= address < self._top:
            return False
        opcode = self._cpu.memory[address]
        if opcode in UNDEFINED and not self._cpu.is_after_prefix:
            self.hits.append(Hit(address, opcode))
            self._done.add(address)
        self._cpu.unbreak(address)
        return True
