"""What a program did beside printing: files, drives, ports, writes to memory that is not its own.

Each is evidence for a question of its own; "nothing was seen" is no proof that it never happens.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final, NamedTuple

from fit.machine.layout import BIOS_TABLE_RANGE, RELAY_STACK, SCRATCH

HIGH_MEMORY: Final = 0x8000
"""Where memory-mapped video was usually found (common practice, no source)."""
SMALLEST_BLOCK: Final = 128
LARGEST_BLOCK: Final = 0x2000
ISOLATION: Final = 1024
"""Bytes untouched on both sides that make a block an isolated one."""
_GAP: Final = 256
_PRINTABLE_SHARE: Final = 0.6
_PRINTABLE: Final = frozenset(byte for byte in range(256) if 0x20 <= byte & 0x7F <= 0x7E)
_FEWEST_SIGNS: Final = 4
"""Different printable bytes, at least: a buffer that was only filled has one."""


class PortUse(NamedTuple):
    """One port, read or written."""

    port: int
    is_read: bool
    times: int
    address: int
    """Of the first access; close to its instruction."""


class VideoMemory(NamedTuple):
    """A block of memory that was written like a screen: isolated, and full of text."""

    start: int
    end: int
    """Past the last byte."""
    printable: float
    """Share of its bytes that are printable."""


@dataclass(frozen=True, slots=True)
class FilesUsed:
    """Names as ``A:NAME.TYP``, sorted."""

    opened: tuple[str, ...] = ()
    missed: tuple[str, ...] = ()
    """Asked for by their whole name, and not there."""
    written: tuple[str, ...] = ()
    """Made or changed, in the sandbox alone."""
    deleted: tuple[str, ...] = ()
    """Files of the host's folder that were deleted in the sandbox, by the names they have there; not those that the
    program had made itself."""
    emptied: tuple[str, ...] = ()
    """Files of the host's folder in whose place a new one was made that nothing was written to."""
    renamed: tuple[tuple[str, str], ...] = ()
    """Old and new name, in the sandbox alone."""
    refused: tuple[str, ...] = ()
    """Names that cannot be names, such as paths."""


@dataclass
class Traces:
    """Collects evidence while a program runs."""

    top: int
    opened: set[str] = field(default_factory=set)
    missed: set[str] = field(default_factory=set)
    written: set[str] = field(default_factory=set)
    deleted: set[str] = field(default_factory=set)
    emptied: set[str] = field(default_factory=set)
    replaced: set[str] = field(default_factory=set)
    """Names of the host's files in whose place the program made others: who deletes these deletes those."""
    renamed: set[tuple[str, str]] = field(default_factory=set)
    refused: set[str] = field(default_factory=set)
    drives: set[str] = field(default_factory=set)
    """Drives the program asked for, whether or not there was a folder for them."""
    sectors: int = 0
    """Records that were read by track and sector, past the files."""
    unsupported: dict[int, int] = field(default_factory=dict)
    """BDOS functions of later versions, and how often; answered with 0, as version 2.2 does."""
    above: dict[int, int] = field(default_factory=dict)
    """Writes at or above the top: address and last byte seen."""
    touched: set[int] = field(default_factory=set)
    """Addresses of high memory that were written."""
    patched: set[int] = field(default_factory=set)
    """Addresses of the BIOS table that were written."""
    is_table_written: bool = False
    """Since somebody last looked."""
    _ports: dict[tuple[int, bool], list[int]] = field(default_factory=dict)

    def read_port(self, port: int, pc: int) -> int:
        """An open port reads as FFh."""
        self._port(port, is_read=True, pc=pc)
        return 0xFF

    def write_port(self, port: int, _byte: int, pc: int) -> None:
        """Nothing listens."""
        self._port(port, is_read=False, pc=pc)

    def _port(self, port: int, *, is_read: bool, pc: int) -> None:
        use = self._ports.setdefault((port, is_read), [0, pc])
        use[0] += 1

    def wrote(self, address: int, byte: int) -> bool:
        """A watched write; returns whether to watch the address no longer."""
        if address < self.top:
            self.touched.add(address)
            return True
        if address in BIOS_TABLE_RANGE:
            self.patched.add(address)
            self.is_table_written = True
        elif not SCRATCH <= address < RELAY_STACK:
            self.above[address] = byte
        return False

    @property
    def patches_bios(self) -> bool:
        """Whether routines were put into the BIOS table; who writes on across its start runs over it."""
        return bool(self.patched) and BIOS_TABLE_RANGE.start - 1 not in self.above

    @property
    def ports(self) -> tuple[PortUse, ...]:
        """Ports in order."""
        return tuple(
            PortUse(port, is_read, times, address)
            for (port, is_read), (times, address) in sorted(self._ports.items())
        )

    @property
    def files(self) -> FilesUsed:
        """Files in order."""
        return FilesUsed(
            tuple(sorted(self.opened)),
            tuple(sorted(self.missed)),
            tuple(sorted(self.written - self.emptied)),
            tuple(sorted(self.deleted)),
            tuple(sorted(self.emptied)),
            tuple(sorted(self.renamed)),
            tuple(sorted(self.refused)),
        )

    def video(self, memory: memoryview, program_end: int) -> tuple[VideoMemory, ...]:
        """Isolated blocks of high memory that hold text, and blocks above the top."""
        below = [block for block in _clusters(self.touched) if self._is_isolated(block, program_end)]
        above = [block for block in _clusters(set(self.above)) if block[1] - block[0] >= SMALLEST_BLOCK]
        found = (
            VideoMemory(start, end, _printable(memory[start:end]))
            for start, end in below + above
            if len(set(memory[start:end]) & _PRINTABLE) >= _FEWEST_SIGNS
        )
        return tuple(block for block in found if block.printable >= _PRINTABLE_SHARE)

    def _is_isolated(self, block: tuple[int, int], program_end: int) -> bool:
        start, end = block
        if not SMALLEST_BLOCK <= end - start <= LARGEST_BLOCK:
            return False
        return start - max(program_end, HIGH_MEMORY) >= ISOLATION and self.top - end >= ISOLATION


def _clusters(addresses: set[int]) -> list[tuple[int, int]]:
    """Runs of addresses with small gaps, as start and end."""
    blocks: list[tuple[int, int]] = []
    for address in sorted(addresses):
        if blocks and address - blocks[-1][1] <= _GAP:
            blocks[-1] = (blocks[-1][0], address + 1)
        else:
            blocks.append((address, address + 1))
    return blocks


def _printable(block: memoryview) -> float:
    data = bytes(block)
    return sum(byte in _PRINTABLE for byte in data) / len(data)
