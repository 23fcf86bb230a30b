"""Writing the files that a program changed into a folder that the user named: the only way out of the sandbox."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from fit.errors import OutputError
from fit.machine.disk import USERS
from fit.machine.drives import ChangedFile
from fit.machine.names import drive_letter
from fit.output import write_file


def keep_changed(files: Iterable[ChangedFile], folder: Path, drives: Iterable[Path] = ()) -> list[Path]:
    """Write files as ``folder/A/NAME.TYP``, for user numbers ``folder/A/7/NAME.TYP``; returns their paths.

    Files kept there before are replaced. Raises OutputError where a file would come to lie outside the
    folder, by way of a link, or where one of ``drives`` shows it: those files are inputs.
    """
    shown = _folders_shown(drives)
    _refuse(folder, shown)
    return [_keep(file, folder, shown) for file in files]


def check_keeping(folder: Path, drives: Iterable[Path]) -> None:
    """Raise OutputError, before anything runs, where the folder is a drive's, or kept files would be among its own."""
    shown = _folders_shown(drives)
    _refuse(folder, shown)
    for letter in map(drive_letter, range(16)):
        _refuse(folder / letter, shown)


def _folders_shown(drives: Iterable[Path]) -> set[Path]:
    """The folders whose files the drives show: their own, and those of user numbers."""
    roots = [drive.resolve() for drive in drives]
    return {*roots, *((root / str(user)).resolve() for root in roots for user in range(1, USERS))}


def _refuse(folder: Path, shown: set[Path]) -> None:
    if folder.resolve() in shown:
        raise OutputError("lies in the folder of a drive", source=str(folder), hint="name another folder")


def _keep(file: ChangedFile, folder: Path, shown: set[Path]) -> Path:
    target = folder / file.path
    if not target.resolve().is_relative_to(folder.resolve()):
        raise OutputError("a link leads out of the folder", source=str(target), hint="name an empty folder")
    _refuse(target.resolve().parent, shown)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(f"cannot be made: {error.strerror}", source=str(target.parent)) from None
    write_file(target, file.data)
    return target
