"""A drive: a folder of the host seen as a disk of the operating system, copy on write in memory.

The folder is only ever read. A file's blocks are kept where a program changed them; everything else
comes from the host's file. The directory is a list of slots, as on a real disk, so that searching
while deleting works as programs expect it to.

    block 2,048 bytes, 8 a directory entry (one extent, 16 KiB); 4,096 blocks, 8 MiB a drive;
    1,024 directory entries in the first 16 blocks; record 128 bytes; sub-folders 1 to 15 are user numbers

Source: the operating system's manual, directory entries, disk parameter block. The tests cite it.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from stat import S_ISREG
from typing import Final, NamedTuple

from fit.machine.disk_file import BLOCK_RECORDS, EXTENT_BLOCKS, MOST_RECORDS, RECORD, File
from fit.machine.names import from_host

BLOCKS: Final = 4096
DIRECTORY_BLOCKS: Final = 16
SLOTS: Final = 1024
USERS: Final = 16
DELETED: Final = 0xE5
TRACK_RECORDS: Final = 64

PARAMETERS: Final = bytes((TRACK_RECORDS, 0, 4, 15, 0, 0xFF, 0x0F, 0xFF, 0x03, 0xFF, 0xFF, 0, 0, 0, 0))
"""The disk parameter block: SPT, BSH, BLM, EXM, DSM, DRM, AL0, AL1, CKS, OFF."""

_BITS: Final = b"01" + bytes(254)
"""A block that is free or taken as a digit."""
_EMPTY_ENTRY: Final = bytes((DELETED,)) * 32

READ_ONLY: Final = 0x80


class Key(NamedTuple):
    """What names a file on a drive."""

    user: int
    field: bytes
    """Eleven bytes, bit 7 clear."""


@dataclass(frozen=True, slots=True)
class DriveState:
    """A copy of a drive; files are shared until one side changes them."""

    files: dict[Key, File]
    slots: list[tuple[Key, int] | None]
    taken: bytes


class Drive:
    """Files by name, their directory slots, and the blocks that are taken."""

    def __init__(self, folder: Path | None) -> None:
        self.folder = folder
        self.files: dict[Key, File] = {}
        self.slots: list[tuple[Key, int] | None] = []
        self.hidden: list[str] = []
        """Host files that cannot be seen: names of another form, links that lead out or nowhere, too many."""
        self._taken = bytearray(BLOCKS)
        self._taken[:DIRECTORY_BLOCKS] = b"\x01" * DIRECTORY_BLOCKS
        self._shared: set[int] = set()
        if folder is not None:
            self._mount(folder)

    def _mount(self, folder: Path) -> None:
        root = Path(os.path.realpath(folder))
        self._list(root, root, 0)
        for user in range(1, USERS):
            if (root / str(user)).is_dir():
                self._list(root, root / str(user), user)

    def _list(self, root: Path, folder: Path, user: int) -> None:
        try:
            paths = sorted(folder.iterdir())
        except OSError:
            self.hidden.append(str(folder))
            return
        for path in paths:
            self._offer(root, path, user)

    def _offer(self, root: Path, path: Path, user: int) -> None:
        name = from_host(path.name)
        try:
            real = Path(os.path.realpath(path, strict=True))  # links in a circle raise OSError, too
            status = real.stat()
        except OSError:
            self.hidden.append(path.name)
            return
        if not S_ISREG(status.st_mode):
            return
        if name is None or not real.is_relative_to(root) or Key(user, name) in self.files:
            self.hidden.append(path.name)
            return
        records = min(-(-status.st_size // RECORD), MOST_RECORDS)
        file = File(records, real)
        blocks = -(-records // BLOCK_RECORDS)
        if len(self.slots) + max(1, -(-blocks // EXTENT_BLOCKS)) > SLOTS:
            self.hidden.append(path.name)
            return
        # A folder larger than a disk still shows all its files: their last blocks share a number.
        for index in range(blocks):
            file.numbers[index] = self._take() or BLOCKS - 1
        key = Key(user, name)
        self.files[key] = file
        self.slots += [(key, extent) for extent in range(max(1, -(-blocks // EXTENT_BLOCKS)))]

    def _take(self) -> int:
        """A free block's number, marked as taken; 0 where there is none."""
        number = self._taken.find(0, DIRECTORY_BLOCKS)
        if number < 0:
            return 0
        self._taken[number] = 1
        return number

    def freeze(self) -> DriveState:
        """Copy everything, to come back to it."""
        self._shared = {id(file) for file in self.files.values()}
        return DriveState(dict(self.files), list(self.slots), bytes(self._taken))

    def thaw(self, state: DriveState) -> None:
        """Come back to a copy."""
        self.files, self.slots = dict(state.files), list(state.slots)
        self._taken[:] = state.taken
        self._shared = {id(file) for file in self.files.values()}

    def own(self, key: Key) -> File:
        """A file that may be changed without changing any copy of this drive."""
        file = self.files[key]
        if id(file) in self._shared:
            file = self.files[key] = file.copy()
        return file

    @property
    def is_directory_full(self) -> bool:
        """Whether no further extent finds a slot."""
        return len(self.slots) >= SLOTS and None not in self.slots

    def allocation(self) -> bytes:
        """The allocation vector: a bit a block, the first block in bit 7."""
        return int(self._taken.translate(_BITS), 2).to_bytes(BLOCKS // 8, "big")

    def make(self, key: Key) -> bool:
        """A new, empty file in the place of any old one; false where the directory is full."""
        self.delete(key)
        if not self._enter(key, 0):
            return False
        self.files[key] = File(is_changed=True)
        return True

    def _enter(self, key: Key, extent: int) -> bool:
        if None in self.slots:
            self.slots[self.slots.index(None)] = (key, extent)
        elif len(self.slots) < SLOTS:
            self.slots.append((key, extent))
        else:
            return False
        return True

    def delete(self, key: Key) -> None:
        """Forget a file, if it is there; its slots and blocks become free."""
        file = self.files.pop(key, None)
        if file is None:
            return
        for number in file.numbers.values():
            self._taken[number] = 0
        self.slots = [None if slot is not None and slot[0] == key else slot for slot in self.slots]

    def rename(self, old: Key, new: Key) -> None:
        """Give a file another name."""
        file = self.own(old)
        del self.files[old]
        file.is_changed = True
        self.files[new] = file
        self.slots = [(new, slot[1]) if slot is not None and slot[0] == old else slot for slot in self.slots]

    def write(self, key: Key, index: int, record: bytes) -> bool:
        """Write one record; false where disk or directory are full."""
        file = self.own(key)
        block = index // BLOCK_RECORDS
        if block not in file.numbers and not self._grow(key, file, block):
            return False
        old = file.block(block)
        start = index % BLOCK_RECORDS * RECORD
        file.changed[block] = old[:start] + record + old[start + RECORD :]
        file.records = max(file.records, index + 1)
        file.is_changed = True
        return True

    def _grow(self, key: Key, file: File, block: int) -> bool:
        extent = block // EXTENT_BLOCKS
        if not file.has_extent(extent) and not self._enter(key, extent):
            return False
        number = self._take()
        if not number:
            return False
        file.numbers[block] = number
        return True

    def entry(self, slot: int) -> bytes:
        """The 32 bytes of a directory entry; E5h where the slot is free."""
        held = self.slots[slot] if slot < len(self.slots) else None
        if held is None:
            return _EMPTY_ENTRY
        key, extent = held
        file = self.files[key]
        name = bytes(byte | mark for byte, mark in zip(key.field, file.attributes, strict=True))
        head = bytes((extent & 0x1F, 0, extent >> 5, file.extent_records(extent)))
        return bytes((key.user,)) + name + head + self.map_of(file, extent)

    def map_of(self, file: File, extent: int) -> bytes:
        """The sixteen bytes of block numbers of one extent."""
        first = extent * EXTENT_BLOCKS
        return b"".join(
            file.numbers.get(first + index, 0).to_bytes(2, "little") for index in range(EXTENT_BLOCKS)
        )

    def directory_record(self, slot: int) -> bytes:
        """The 128 bytes of the four entries among which a slot lies."""
        first = slot - slot % 4
        return b"".join(self.entry(index) for index in range(first, first + 4))

    def raw_record(self, index: int) -> bytes:
        """A record by its place on the disk, directory first."""
        if index < DIRECTORY_BLOCKS * BLOCK_RECORDS:
            return self.directory_record(index * 4)
        number, within = divmod(index, BLOCK_RECORDS)
        for file in self.files.values():
            for block, taken in file.numbers.items():
                if taken == number:
                    return file.block(block)[within * RECORD : (within + 1) * RECORD]
        return bytes((DELETED,)) * RECORD
