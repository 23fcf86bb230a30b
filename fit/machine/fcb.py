"""A file control block in memory: how a program names a file and says where it stands in it.

    0 drive   1-11 name   12 extent   13 -   14 module   15 records in the extent
    16-31 block numbers   32 current record   33-35 random record

Position in records: (module * 32 + extent) * 128 + current record.

Source: the operating system's manual, the file control block. The tests cite it.
"""

from __future__ import annotations

from fit.machine.memory_access import Memory

SIZE = 36
_EXTENT, _MODULE, _COUNT, _MAP, _CURRENT, _RANDOM = 12, 14, 15, 16, 32, 33
_MODULE_BITS = 0x3F
_UNWRITTEN = 0x80
_RECORDS = 128


class Fcb:
    """A copy of a control block; ``store`` writes it back."""

    def __init__(self, memory: Memory, address: int) -> None:
        self._memory = memory
        self._address = address
        self.raw = bytearray(memory.read(address, SIZE))

    @property
    def drive_code(self) -> int:
        """0 for the current drive, 1 to 16 for A to P."""
        return self.raw[0]

    @property
    def name(self) -> bytes:
        """Eleven bytes, bit 7 clear."""
        return bytes(byte & 0x7F for byte in self.raw[1:12])

    @property
    def attributes(self) -> bytes:
        """Bit 7 of each byte of the name."""
        return bytes(byte & 0x80 for byte in self.raw[1:12])

    @property
    def new_name(self) -> bytes:
        """The second name, for renaming."""
        return bytes(byte & 0x7F for byte in self.raw[17:28])

    @property
    def extent(self) -> int:
        """Counted through all modules."""
        return (self.raw[_MODULE] & _MODULE_BITS) * 32 + (self.raw[_EXTENT] & 0x1F)

    @property
    def position(self) -> int:
        """The next record to be read or written in sequence."""
        return self.extent * _RECORDS + self.raw[_CURRENT]

    @property
    def random(self) -> int:
        """The random record number, 24 bits."""
        return int.from_bytes(self.raw[_RANDOM:SIZE], "little")

    @random.setter
    def random(self, record: int) -> None:
        self.raw[_RANDOM:SIZE] = record.to_bytes(3, "little")

    def seek(self, record: int) -> None:
        """Stand before a record."""
        self.enter(record // _RECORDS)
        self.raw[_CURRENT] = record % _RECORDS

    def step(self, *, turn: bool) -> None:
        """Go one record on. ``turn``: past the last of an extent stand in the next at once."""
        current = self.raw[_CURRENT] + 1
        if turn and current >= _RECORDS:
            self.seek(self.position + 1)
        else:
            self.raw[_CURRENT] = current

    def enter(self, extent: int) -> None:
        """Stand in an extent."""
        self.raw[_EXTENT] = extent & 0x1F
        self.raw[_MODULE] = extent >> 5 & _MODULE_BITS | self.raw[_MODULE] & _UNWRITTEN

    def clear_module(self) -> None:
        """Opening, making and searching start in the first module."""
        self.raw[_MODULE] = 0

    def describe(self, records: int, blocks: bytes) -> None:
        """Fill in what the directory says of the extent."""
        self.raw[_COUNT] = records
        self.raw[_MAP:_CURRENT] = blocks

    def take_name(self, name: bytes) -> None:
        """The name as it stands in the directory, with its attributes."""
        self.raw[1:12] = name

    def store(self) -> None:
        """Write it back; the random record only where it was changed by the caller."""
        self._memory.write(self._address, bytes(self.raw[:_RANDOM]))

    def store_random(self) -> None:
        """Write the random record back."""
        self._memory.write(self._address + _RANDOM, bytes(self.raw[_RANDOM:]))
