"""The sixteen drives of a run, which of them is current, and what may still be written.

A drive without a folder is an empty disk: programs that look at other drives go on, and the report
says which drives they wanted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from fit.errors import UsageError
from fit.machine.disk import Drive, DriveState, Key
from fit.machine.disk_file import BLOCK, RECORD, File
from fit.machine.names import drive_index, drive_letter, shown, to_host
from fit.machine.traces import Traces


@dataclass(frozen=True, slots=True)
class ChangedFile:
    """A file as the program left it."""

    drive: str
    user: int
    name: str
    """A plain name, safe to be used in a folder."""
    file: File

    @property
    def data(self) -> bytes:
        """What it holds; gaps that were never written are zeros."""
        return self.file.contents()

    @property
    def size(self) -> int:
        """In bytes, whole records."""
        return self.file.records * RECORD

    @property
    def path(self) -> Path:
        """Where it belongs below the folder that keeps changed files: drive, user number, name."""
        folder = Path(self.drive) if self.user == 0 else Path(self.drive) / str(self.user)
        return folder / self.name


@dataclass(frozen=True, slots=True)
class DrivesState:
    """A copy of all drives."""

    drives: dict[int, DriveState]
    current: int
    user: int
    read_only: int
    logged_in: int
    budget: int


class Drives:
    """Mounts a drive when it is first needed."""

    def __init__(self, folders: Mapping[str, Path], budget: int, traces: Traces) -> None:
        """``folders`` by drive letter; ``budget`` in bytes. Raises UsageError for a letter or folder."""
        self._folders = {_index(letter): _folder(letter, folder) for letter, folder in folders.items()}
        self._mounted: dict[int, Drive] = {}
        self._budget = budget // BLOCK
        self._traces = traces
        self.current = 0
        self.user = 0
        self.read_only = 0
        """A bit a drive."""
        self.logged_in = 0
        """A bit a drive that was used since the last reset."""

    def has_folder(self, index: int) -> bool:
        """Whether a folder of the host stands behind a drive."""
        return index in self._folders

    def drive(self, index: int) -> Drive:
        """A drive that the program uses, mounted."""
        self._traces.drives.add(drive_letter(index))
        self.logged_in |= 1 << index
        return self._mount(index)

    def names(self, index: int) -> tuple[str, ...]:
        """The files on a drive, without the program's having asked for them."""
        return tuple(shown(key.field) for key in self._mount(index).files)

    def _mount(self, index: int) -> Drive:
        drive = self._mounted.get(index)
        if drive is None:
            drive = self._mounted[index] = Drive(self._folders.get(index))
        return drive

    @property
    def hidden(self) -> tuple[str, ...]:
        """Host files that the program cannot see, on the drives that it used."""
        used = (
            drive
            for index, drive in sorted(self._mounted.items())
            if drive_letter(index) in self._traces.drives
        )
        return tuple(name for drive in used for name in drive.hidden)

    def raw_record(self, index: int, record: int) -> bytes:
        """A record by its place on the disk, whatever file it belongs to."""
        self._traces.sectors += 1
        return self.drive(index).raw_record(record)

    def write(self, index: int, key: Key, record: int, data: bytes) -> bool:
        """Write a record within the budget; false where the disk is full."""
        drive = self.drive(index)
        file = drive.files[key]
        before = len(file.changed)
        if self._budget <= 0 and record * len(data) // BLOCK not in file.changed:
            return False
        done = drive.write(key, record, data)
        self._budget -= len(drive.files[key].changed) - before
        return done

    def changed_files(self) -> tuple[ChangedFile, ...]:
        """What would be on the disks now, in order; only plain names are ever among them."""
        found = []
        for index, drive in sorted(self._mounted.items()):
            for key, file in sorted(drive.files.items()):
                name = to_host(key.field)
                if file.is_changed and name is not None:
                    found.append(ChangedFile(drive_letter(index), key.user, name, file.copy()))
        return tuple(found)

    def label(self, index: int, field: bytes) -> str:
        """A file for people."""
        return f"{drive_letter(index)}:{shown(field)}"

    def freeze(self) -> DrivesState:
        """Copy everything, to come back to it."""
        states = {index: drive.freeze() for index, drive in self._mounted.items()}
        return DrivesState(states, self.current, self.user, self.read_only, self.logged_in, self._budget)

    def thaw(self, state: DrivesState) -> None:
        """Come back to a copy; drives mounted since are mounted afresh when they are next needed."""
        self._mounted = {index: drive for index, drive in self._mounted.items() if index in state.drives}
        for index, drive in self._mounted.items():
            drive.thaw(state.drives[index])
        self.current, self.user, self.read_only = state.current, state.user, state.read_only
        self.logged_in, self._budget = state.logged_in, state.budget


def _index(letter: str) -> int:
    index = drive_index(letter)
    if index is None:
        raise UsageError(f"{letter!r} is no drive", hint="drives are the letters A to P")
    return index


def _folder(letter: str, folder: Path) -> Path:
    if not folder.is_dir():
        raise UsageError(f"drive {letter} is to be {folder}, which is no folder", hint="name a folder")
    return folder
