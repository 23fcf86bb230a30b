"""Writing the files that a program changed into a folder that the user named: the only way out of the sandbox."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from fit.errors import OutputError
from fit.machine.drives import ChangedFile
from fit.output import write_file


def keep_changed(files: Iterable[ChangedFile], folder: Path, drives: Iterable[Path] = ()) -> list[Path]:
    """Write files as ``folder/A/NAME.TYP``, for user numbers ``folder/A/7/NAME.TYP``; returns their paths.

    Files kept there before are replaced. Raises OutputError where a file would come to lie outside the
    folder, by way of a link, or in a folder that is one of ``drives``: those are inputs.
    """
    roots = [drive.resolve() for drive in drives]
    return [_keep(file, folder, roots) for file in files]


def _keep(file: ChangedFile, folder: Path, drives: list[Path]) -> Path:
    target = folder / file.path
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(f"cannot be made: {error.strerror}", source=str(target.parent)) from None
    real = target.resolve()
    if not real.is_relative_to(folder.resolve()):
        raise OutputError("a link leads out of the folder", source=str(target), hint="name an empty folder")
    if any(real.is_relative_to(drive) for drive in drives):
        raise OutputError("lies in the folder of a drive", source=str(target), hint="name another folder")
    write_file(target, file.data)
    return target
