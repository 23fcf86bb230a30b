"""What stands on a shelf, and where: programs, recorded sessions, documents."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Final

from fit.containers import find_container
from fit.errors import SourceError
from fit.source import SourceKind, find_kind

PROGRAM_SUFFIX: Final = ".com"
SESSION_SUFFIXES: Final = frozenset((".jsonl", ".cast", ".session", ".typescript"))
DOCUMENT_SUFFIXES: Final = frozenset(
    (
        ".txt",
        ".doc",
        ".asc",
        ".md",
        ".markdown",
        ".htm",
        ".html",
        ".man",
        *(f".{section}" for section in range(1, 10)),
    )
)
"""Names that documents have; a file that is named itself is looked at whatever its name."""
_HEAD: Final = 1 << 16
_ESCAPE: Final = 0x1B


class EntryKind(StrEnum):
    """What an entry is."""

    PROGRAM = "program"
    SESSION = "session"
    DOCUMENT = "document"


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing to score."""

    path: Path
    """As the user wrote it, or below a folder that they named."""
    kind: EntryKind

    @property
    def name(self) -> str:
        """For people."""
        return str(self.path)


@dataclass(frozen=True, slots=True)
class Shelf:
    """All entries in order, and the files that are none."""

    entries: tuple[Entry, ...]
    passed_over: tuple[Path, ...]
    """Files of the folders that are neither programs with their data nor sessions nor documents; and folders
    that cannot be read."""
    packed: tuple[Path, ...]
    """Those of them that hold other files or are compressed."""


def find_entries(paths: Iterable[Path]) -> Shelf:
    """Look through files and folders. Raises SourceError for a path that is not there.

    In a folder that holds programs everything but further programs, sessions, documents and archives is data of its
    programs: the folder is their disk. Hidden files and links to folders are left alone.
    """
    entries: dict[Path, Entry] = {}
    passed: list[Path] = []
    for path in paths:
        if path.is_dir():
            for folder in _folders(path):
                found, rest = _look_through(folder)
                entries |= {entry.path: entry for entry in found if entry.path not in entries}
                passed += rest
        elif path.is_file():
            entries.setdefault(path, Entry(path, _kind(path)))
        else:
            raise SourceError("is neither a file nor a folder", source=str(path), hint="check the name")
    return Shelf(tuple(entries.values()), tuple(passed), tuple(filter(_is_packed, passed)))


def _folders(root: Path) -> Iterator[Path]:
    for folder, below, _ in os.walk(root):
        below[:] = sorted(name for name in below if not name.startswith("."))
        yield Path(folder)


def _look_through(folder: Path) -> tuple[list[Entry], list[Path]]:
    """The entries of one folder, and the files that belong to none of them."""
    try:
        files = sorted(path for path in folder.iterdir() if path.is_file() and not path.name.startswith("."))
    except OSError:
        return [], [folder]
    entries, rest = [], []
    for path in files:
        suffix = path.suffix.lower()
        if suffix == PROGRAM_SUFFIX:
            entries.append(Entry(path, EntryKind.PROGRAM))
        elif suffix in SESSION_SUFFIXES and _is_recorded(path):
            entries.append(Entry(path, EntryKind.SESSION))
        elif suffix in DOCUMENT_SUFFIXES:
            entries.append(Entry(path, EntryKind.DOCUMENT))
        else:
            rest.append(path)
    if any(entry.kind is EntryKind.PROGRAM for entry in entries):
        rest = list(filter(_is_packed, rest))
    return entries, rest


def _kind(path: Path) -> EntryKind:
    """What a file is that was named itself."""
    if path.suffix.lower() == PROGRAM_SUFFIX:
        return EntryKind.PROGRAM
    return EntryKind.SESSION if _is_recorded(path) or _ESCAPE in _head(path) else EntryKind.DOCUMENT


def _is_recorded(path: Path) -> bool:
    return find_kind(_head(path)) is not SourceKind.RAW


def _is_packed(path: Path) -> bool:
    container = find_container(_head(path))
    return container is not None and container.is_packed


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(_HEAD)
    except OSError:
        return b""  # the reason is told where the entry is scored
