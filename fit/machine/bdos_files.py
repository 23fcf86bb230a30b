"""BDOS functions on files: 15 to 23, 26, 30, 33 to 36, 40.

Each method is one function; it takes the parameter in DE and returns the value for HL, or None where
the call is not over (an error message waits for a key).

Source: the operating system's manual, BDOS functions. The tests cite it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from fit.machine.console import Console
from fit.machine.disk import READ_ONLY, Drive, Key
from fit.machine.disk_file import EXTENT_BLOCKS, EXTENT_RECORDS, MOST_RECORDS, RECORD, File
from fit.machine.drives import Drives
from fit.machine.fcb import Fcb
from fit.machine.memory_access import Memory
from fit.machine.names import ANY, drive_letter, from_host, matches, to_host
from fit.machine.traces import Traces

OK: Final = 0
NOT_FOUND: Final = 0xFF
END: Final = 1
DISK_FULL: Final = 2
UNWRITTEN: Final = 1
NO_EXTENT: Final = 4
DIRECTORY_FULL: Final = 5
PAST_END: Final = 6
DEFAULT_BUFFER: Final = 0x0080
_NAME_END: Final = 12
_MODULE_AT: Final = 14


class DiskError(Exception):
    """An error that the BDOS tells the user of, such as a write to a read-only file."""

    def __init__(self, drive: int, what: str) -> None:
        super().__init__(f"Bdos Err On {drive_letter(drive)}: {what}")


@dataclass(frozen=True, slots=True)
class FilesState:
    """A copy of what the file functions remember."""

    buffer: int
    search_fcb: int
    search_next: int
    search_drive: int


class FileFunctions:
    """The file functions on a set of drives."""

    def __init__(self, drives: Drives, memory: Memory, console: Console, traces: Traces) -> None:
        self._drives = drives
        self._memory = memory
        self._console = console
        self._traces = traces
        self.buffer = DEFAULT_BUFFER
        self._search_fcb = 0
        self._search_next = 0
        self._search_drive = 0
        self.table: dict[int, Callable[[int], int]] = {
            15: self.open,
            16: self.close,
            17: self.search_first,
            18: self.search_next,
            19: self.delete,
            20: self.read_next,
            21: self.write_next,
            22: self.make,
            23: self.rename,
            26: self.set_buffer,
            30: self.set_attributes,
            33: self.read_random,
            34: self.write_random,
            35: self.size,
            36: self.set_random,
            40: self.write_random,
        }

    def freeze(self) -> FilesState:
        """Copy everything, to come back to it."""
        return FilesState(self.buffer, self._search_fcb, self._search_next, self._search_drive)

    def thaw(self, state: FilesState) -> None:
        """Come back to a copy."""
        self.buffer, self._search_fcb = state.buffer, state.search_fcb
        self._search_next, self._search_drive = state.search_next, state.search_drive

    # Files

    def set_buffer(self, parameter: int) -> int:
        """26: where records go and come from."""
        self.buffer = parameter
        return OK

    def open(self, parameter: int) -> int:
        """15: find a file and fill the control block in."""
        fcb, index, drive = self._fcb(parameter)
        fcb.clear_module()
        slot = self._find(drive, fcb)
        if slot is None:
            self._missed(index, fcb)
            return NOT_FOUND
        key = self._key_at(drive, slot)
        self._traces.opened.add(self._drives.label(index, key.field))
        self._describe(fcb, drive, key)
        fcb.take_name(drive.entry(slot)[1:_NAME_END])
        fcb.store()
        return slot % 4

    def close(self, parameter: int) -> int:
        """16: the directory is always up to date here; only the name is looked for."""
        fcb, _, drive = self._fcb(parameter)
        key = Key(self._drives.user, fcb.name)
        return self._slot_of(drive, key) % 4 if key in drive.files else NOT_FOUND

    def search_first(self, parameter: int) -> int:
        """17: the first directory entry that matches goes into the buffer."""
        fcb = Fcb(self._memory, parameter)
        self._search_fcb = parameter
        self._search_next = 0
        if fcb.drive_code == ANY:
            self._search_drive = self._drives.current
        else:
            self._search_drive = self._drive_of(fcb)
        found = self._search()
        if found == NOT_FOUND and ANY not in fcb.name:
            self._missed(self._search_drive, fcb)
        return found

    def search_next(self, _: int) -> int:
        """18: the next one, for whatever the control block of function 17 holds now."""
        return self._search()

    def _search(self) -> int:
        fcb = Fcb(self._memory, self._search_fcb)
        if fcb.raw[12] != ANY:
            fcb.clear_module()
        drive = self._drives.drive(self._search_drive)
        takes_all = fcb.drive_code == ANY
        while self._search_next < len(drive.slots):
            slot = self._search_next
            self._search_next += 1
            if takes_all or self._entry_matches(drive, slot, fcb):
                self._memory.write(self.buffer, drive.directory_record(slot))
                return slot % 4
        return NOT_FOUND

    def _entry_matches(self, drive: Drive, slot: int, fcb: Fcb) -> bool:
        held = drive.slots[slot]
        if held is None or held[0].user != self._drives.user:
            return False
        key, extent = held
        if not matches(fcb.name, key.field):
            return False
        want_extent, want_module = fcb.raw[12], fcb.raw[_MODULE_AT] & 0x3F
        return want_extent in (ANY, extent & 0x1F) and want_module in (ANY, extent >> 5)

    def delete(self, parameter: int) -> int:
        """19: delete every file that matches."""
        fcb, index, drive = self._fcb(parameter)
        keys = [key for key in drive.files if key.user == self._drives.user and matches(fcb.name, key.field)]
        if not keys:
            self._missed(index, fcb)
            return NOT_FOUND
        first = self._slot_of(drive, keys[0])
        for key in keys:
            self._check_writable(index, drive.files[key])
        for key in keys:
            self._is_deleted(index, key, drive.files[key])
            drive.delete(key)
        return first % 4

    def _is_deleted(self, index: int, key: Key, file: File) -> None:
        """A file goes: what was there before the program came is gone, under whatever name that was."""
        label, traces = self._drives.label(index, key.field), self._traces
        was = from_host(file.source.name) if file.source is not None else None
        if file.source is not None or label in traces.replaced:
            there = label if was is None else self._drives.label(index, was)
            traces.deleted.add(there)
            traces.replaced.add(there)
            traces.written.discard(there)
            traces.renamed.discard((there, label))
        traces.emptied.discard(label)

    def read_next(self, parameter: int) -> int:
        """20: the next record in sequence."""
        fcb, _, drive = self._fcb(parameter)
        file = drive.files.get(self._key(fcb, drive))
        if file is None:
            return END
        record = file.record(fcb.position)
        if record is None:
            return END
        self._turn(fcb, drive, file)
        self._memory.load(self.buffer, record)
        fcb.step(turn=False)
        fcb.store()
        return OK

    def _turn(self, fcb: Fcb, drive: Drive, file: File) -> None:
        """Leave an extent that was read or written to its end."""
        if fcb.position // EXTENT_RECORDS != fcb.extent:
            fcb.seek(fcb.position)
            fcb.describe(file.extent_records(fcb.extent), drive.map_of(file, fcb.extent))

    def write_next(self, parameter: int) -> int:
        """21: write the next record in sequence."""
        fcb, index, drive = self._fcb(parameter)
        key = self._key(fcb, drive)
        if key not in drive.files:
            return NOT_FOUND
        self._check_writable(index, drive.files[key])
        if fcb.position >= MOST_RECORDS or not self._put(index, key, fcb.position):
            return DISK_FULL
        self._turn(fcb, drive, drive.files[key])
        fcb.describe(drive.files[key].extent_records(fcb.extent), drive.map_of(drive.files[key], fcb.extent))
        fcb.step(turn=True)
        if fcb.raw[32] == 0:
            self._describe(fcb, drive, key)
        fcb.store()
        return OK

    def _put(self, index: int, key: Key, record: int) -> bool:
        done = self._drives.write(index, key, record, self._memory.read(self.buffer, RECORD))
        if done:
            label = self._drives.label(index, key.field)
            self._traces.written.add(label)
            self._traces.emptied.discard(label)
        return done

    def make(self, parameter: int) -> int:
        """22: a new file."""
        fcb, index, drive = self._fcb(parameter)
        fcb.clear_module()
        label = self._drives.label(index, fcb.name)
        if to_host(fcb.name) is None:
            self._traces.refused.add(label)
            return NOT_FOUND
        key = Key(self._drives.user, fcb.name)
        self._check_drive(index)
        # A later extent of a file that is there continues it.
        old = drive.files.get(key)
        continues = fcb.extent > 0 and old is not None
        if not continues and not drive.make(key):
            return NOT_FOUND
        if not continues and old is not None and old.source is not None:
            self._traces.replaced.add(label)
        if not continues and label in self._traces.replaced:
            self._traces.emptied.add(label)
        self._is_written(label)
        self._describe(fcb, drive, key)
        fcb.store()
        return self._slot_of(drive, key) % 4

    def rename(self, parameter: int) -> int:
        """23: give a file the second name."""
        fcb, index, drive = self._fcb(parameter)
        old, new = Key(self._drives.user, fcb.name), Key(self._drives.user, fcb.new_name)
        if to_host(fcb.new_name) is None:
            self._traces.refused.add(self._drives.label(index, fcb.new_name))
            return NOT_FOUND
        if old not in drive.files or new in drive.files:
            return NOT_FOUND
        self._check_writable(index, drive.files[old])
        slot = self._slot_of(drive, old)
        drive.rename(old, new)
        target = self._drives.label(index, new.field)
        self._traces.renamed.add((self._drives.label(index, old.field), target))
        if target in self._traces.deleted:
            self._is_written(target)
        return slot % 4

    def _is_written(self, label: str) -> None:
        """A file is there anew: if one of that name was deleted before, then to be replaced, as a safe save does it."""
        self._traces.written.add(label)
        self._traces.deleted.discard(label)

    def set_attributes(self, parameter: int) -> int:
        """30: bit 7 of the name's bytes."""
        fcb, index, drive = self._fcb(parameter)
        key = Key(self._drives.user, fcb.name)
        if key not in drive.files:
            return NOT_FOUND
        self._check_drive(index)
        drive.own(key).attributes = fcb.attributes
        return self._slot_of(drive, key) % 4

    def read_random(self, parameter: int) -> int:
        """33: the record with the random number; the sequence goes on at the same record."""
        fcb, _, drive = self._fcb(parameter)
        if fcb.random >= MOST_RECORDS:
            return PAST_END
        file = drive.files.get(self._key(fcb, drive))
        if file is None:
            return UNWRITTEN
        extent = fcb.random // EXTENT_RECORDS
        if not file.has_extent(extent):
            return NO_EXTENT
        self._stand(fcb, drive, file)
        record = file.record(fcb.random)
        if record is None:
            return UNWRITTEN
        self._memory.load(self.buffer, record)
        return OK

    def write_random(self, parameter: int) -> int:
        """34, and 40: new blocks are filled with zeros here in either case."""
        fcb, index, drive = self._fcb(parameter)
        key = self._key(fcb, drive)
        if key not in drive.files:
            return NOT_FOUND
        if fcb.random >= MOST_RECORDS:
            return PAST_END
        self._check_writable(index, drive.files[key])
        if not self._put(index, key, fcb.random):
            return DIRECTORY_FULL if drive.is_directory_full else DISK_FULL
        self._stand(fcb, drive, drive.files[key])
        return OK

    def _stand(self, fcb: Fcb, drive: Drive, file: File) -> None:
        fcb.seek(fcb.random)
        fcb.describe(file.extent_records(fcb.extent), drive.map_of(file, fcb.extent))
        fcb.store()

    def size(self, parameter: int) -> int:
        """35: one past the last record, as the random number."""
        fcb, index, drive = self._fcb(parameter)
        file = drive.files.get(Key(self._drives.user, fcb.name))
        if file is None:
            self._missed(index, fcb)
        fcb.random = file.records if file else 0
        fcb.store_random()
        return OK if file else NOT_FOUND

    def set_random(self, parameter: int) -> int:
        """36: the sequential position as the random number."""
        fcb = Fcb(self._memory, parameter)
        fcb.random = fcb.position
        fcb.store_random()
        return OK

    # Helpers

    def _drive_of(self, fcb: Fcb) -> int:
        code = fcb.drive_code & 0x1F
        return self._drives.current if code == 0 else code - 1 & 0x0F

    def _fcb(self, parameter: int) -> tuple[Fcb, int, Drive]:
        fcb = Fcb(self._memory, parameter)
        index = self._drive_of(fcb)
        return fcb, index, self._drives.drive(index)

    def _key(self, fcb: Fcb, drive: Drive) -> Key:
        """The file that a control block stands for, also where it was renamed or the user number changed since.

        The operating system reads by the block numbers in the control block alone; here they tell which it is.
        """
        key = Key(self._drives.user, fcb.name)
        first = int.from_bytes(fcb.raw[16:18], "little")
        if key in drive.files or not first:
            return key
        block = fcb.extent * EXTENT_BLOCKS
        opened = (other for other, file in drive.files.items() if file.numbers.get(block) == first)
        return next(opened, key)

    def _find(self, drive: Drive, fcb: Fcb) -> int | None:
        """The slot of the extent that a control block names; its name may hold ``?``."""
        for slot, held in enumerate(drive.slots):
            if (
                held is not None
                and held[1] == fcb.extent
                and held[0].user == self._drives.user
                and matches(fcb.name, held[0].field)
            ):
                return slot
        return None

    def _key_at(self, drive: Drive, slot: int) -> Key:
        held = drive.slots[slot]
        assert held is not None
        return held[0]

    def _slot_of(self, drive: Drive, key: Key) -> int:
        return next((slot for slot, held in enumerate(drive.slots) if held is not None and held[0] == key), 0)

    def _describe(self, fcb: Fcb, drive: Drive, key: Key) -> None:
        file = drive.files[key]
        fcb.describe(file.extent_records(fcb.extent), drive.map_of(file, fcb.extent))

    def _missed(self, index: int, fcb: Fcb) -> None:
        target = self._traces.missed if to_host(fcb.name) or ANY in fcb.name else self._traces.refused
        target.add(self._drives.label(index, fcb.name))

    def _check_drive(self, index: int) -> None:
        if self._drives.read_only >> index & 1:
            raise DiskError(index, "R/O")

    def _check_writable(self, index: int, file: File) -> None:
        self._check_drive(index)
        if file.attributes[8] & READ_ONLY:
            raise DiskError(index, "File R/O")
