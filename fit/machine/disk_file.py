"""A file of a drive: the host's bytes, and the blocks that a program changed, in memory."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final

RECORD: Final = 128
BLOCK: Final = 2048
BLOCK_RECORDS: Final = BLOCK // RECORD
EXTENT_RECORDS: Final = 128
EXTENT_BLOCKS: Final = EXTENT_RECORDS // BLOCK_RECORDS
MOST_RECORDS: Final = 65536
END_OF_TEXT: Final = 0x1A

_EMPTY_BLOCK: Final = bytes(BLOCK)


@dataclass
class File:
    """One file. Blocks not in ``changed`` are those of ``source``."""

    records: int = 0
    source: Path | None = None
    attributes: bytes = bytes(11)
    """Bit 7 of each byte of the name."""
    numbers: dict[int, int] = field(default_factory=dict)
    """Block numbers on the disk by the file's own block index."""
    changed: dict[int, bytes] = field(default_factory=dict)
    is_changed: bool = False
    base: bytes | None = None
    """The host file's bytes once they were read."""

    def block(self, index: int) -> bytes:
        """The 2,048 bytes of a block; zeros where nothing was written."""
        changed = self.changed.get(index)
        if changed is not None:
            return changed
        if self.base is None:
            self.base = _host_bytes(self.source)
        part = self.base[index * BLOCK : (index + 1) * BLOCK]
        return part + _EMPTY_BLOCK[len(part) :]

    def record(self, index: int) -> bytes | None:
        """The 128 bytes of a record; None where the disk holds none."""
        if index >= self.records or index // BLOCK_RECORDS not in self.numbers:
            return None
        start = index % BLOCK_RECORDS * RECORD
        return self.block(index // BLOCK_RECORDS)[start : start + RECORD]

    def contents(self) -> bytes:
        """All records in order."""
        count = -(-self.records // BLOCK_RECORDS)
        return b"".join(self.block(index) for index in range(count))[: self.records * RECORD]

    def has_extent(self, extent: int) -> bool:
        """Whether the directory has an entry for a stretch of 16 KiB."""
        if extent == 0:
            return True
        return any(extent * EXTENT_BLOCKS + i in self.numbers for i in range(EXTENT_BLOCKS))

    def extent_records(self, extent: int) -> int:
        """Records of one extent, 0 to 128."""
        return max(0, min(EXTENT_RECORDS, self.records - extent * EXTENT_RECORDS))

    def copy(self) -> File:
        """The same file, to be changed apart."""
        return replace(self, numbers=dict(self.numbers), changed=dict(self.changed))


def _host_bytes(source: Path | None) -> bytes:
    """A host file padded to whole records with 1Ah; empty where it can no longer be read."""
    if source is None:
        return b""
    try:
        with source.open("rb") as stream:
            data = stream.read(MOST_RECORDS * RECORD)
    except OSError:
        return b""
    return data + bytes((END_OF_TEXT,)) * (-len(data) % RECORD)
