"""Writing the files that a program changed into a folder that the user named: the only way out of the sandbox."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from fit.errors import OutputError
from fit.machine.disk import USERS
from fit.machine.drives import ChangedFile
from fit.machine.names import drive_letter
from fit.output import write_file

_DRIVES: Final = 16


def keep_changed(
    files: Iterable[ChangedFile], folder: Path, drives: Iterable[Path] = (), *, replace: bool = False
) -> list[Path]:
    """Write files as ``folder/A/NAME.TYP``, for user numbers ``folder/A/7/NAME.TYP``; returns their paths.

    Raises OutputError, before anything is written, where a file would come to lie outside the folder, by way of
    a link, where one of ``drives`` shows it, since those files are inputs, or where it is there already and
    nobody said to ``replace`` it.
    """
    shown = _folders_shown(drives)
    _refuse(folder, shown)
    targets = [(folder / file.path, file.data) for file in files]
    for target, _ in targets:
        if not _real(target).is_relative_to(_real(folder)):
            raise OutputError(
                "a link leads out of the folder", source=str(target), hint="name an empty folder"
            )
        _refuse(_real(target).parent, shown)
        if not replace and os.path.lexists(target):
            raise _is_kept(target)
    for target, data in targets:
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise OutputError(f"cannot be made: {error.strerror}", source=str(target.parent)) from None
        write_file(target, data)
    return [target for target, _ in targets]


def check_keeping(folder: Path, drives: Iterable[Path], *, replace: bool = False) -> None:
    """Raise OutputError before anything runs: what the program will write is not known, and must not be lost.

    Refused is the folder of a drive, or one whose kept files would be among a drive's; what is no folder, or
    cannot be written to; and one that holds kept files, where nobody said to ``replace`` them.
    """
    shown = _folders_shown(drives)
    _refuse(folder, shown)
    _refuse_unwritable(folder)
    for letter in map(drive_letter, range(_DRIVES)):
        _refuse(folder / letter, shown)
        if not replace:
            _refuse_kept(folder / letter)


def _folders_shown(drives: Iterable[Path]) -> set[Path]:
    """The folders whose files the drives show: their own, and those of user numbers."""
    return {
        _real(place)
        for drive in drives
        for place in (drive, *(drive / str(user) for user in range(1, USERS)))
    }


def _real(path: Path) -> Path:
    """Where links lead; links in a circle lead to themselves."""
    return Path(os.path.realpath(path))


def _refuse(folder: Path, shown: set[Path]) -> None:
    if _real(folder) in shown:
        raise OutputError("lies in the folder of a drive", source=str(folder), hint="name another folder")


def _refuse_unwritable(folder: Path) -> None:
    there = next(place for place in (folder, *folder.absolute().parents) if os.path.lexists(place))
    if not there.is_dir():
        raise OutputError("is no folder", source=str(there), hint="name another folder")
    if not os.access(there, os.W_OK):
        raise OutputError("cannot be written to", source=str(there), hint="name another folder")


def _refuse_kept(drive: Path) -> None:
    """Raise OutputError where files were kept of a drive before; hidden ones are the host's own."""
    for place in (drive, *(drive / str(user) for user in range(1, USERS))):
        inside = place.iterdir() if place.is_dir() else ()
        kept = [path for path in inside if not path.is_dir() and not path.name.startswith(".")]
        if kept:
            raise _is_kept(min(kept))


def _is_kept(path: Path) -> OutputError:
    return OutputError(
        "was kept there before", source=str(path), hint="name another folder, or give --replace"
    )
