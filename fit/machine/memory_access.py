"""Reading and writing memory for the operating system, around the end of the address space."""

from __future__ import annotations

from fit.machine.cpu import MEMORY_SIZE, Cpu
from fit.machine.traces import Traces


class Memory:
    """Memory as the operating system uses it; its writes are watched like the program's own."""

    def __init__(self, cpu: Cpu, traces: Traces) -> None:
        self.bytes = cpu.memory
        self._traces = traces
        self.loaded: list[tuple[int, int]] = []
        """Address and size of what was read from files since somebody last looked."""

    def read(self, address: int, size: int) -> bytes:
        """``size`` bytes, going on at 0 after FFFFh. ``address`` is 16 bits."""
        part = bytes(self.bytes[address : address + size])
        return part if len(part) == size else part + self.read(0, size - len(part))

    def write(self, address: int, data: bytes) -> None:
        """Store bytes, going on at 0 after FFFFh."""
        address &= MEMORY_SIZE - 1
        part = data[: MEMORY_SIZE - address]
        end = address + len(part)
        self.bytes[address:end] = part
        for touched in range(max(address, self._traces.top), end):
            self._traces.wrote(touched, self.bytes[touched])
        if len(part) < len(data):
            self.write(0, data[len(part) :])

    def write_own(self, address: int, data: bytes) -> None:
        """Store bytes in the operating system's own memory, of which nobody need be told."""
        self.bytes[address : address + len(data)] = data

    def load(self, address: int, record: bytes) -> None:
        """Store what came from a file: it may be code."""
        self.write(address, record)
        self.loaded.append((address & MEMORY_SIZE - 1, len(record)))
