"""Results to files: written beside, then renamed, so that no half file is ever left and no input is lost."""

from __future__ import annotations

import errno
import os
import secrets
from collections.abc import Iterable
from pathlib import Path

from fit.errors import OutputError


def write_file(path: str | Path, data: bytes, *, inputs: Iterable[str | Path] = ()) -> None:
    """Write ``data`` to ``path``: all of it, or nothing.

    A regular file is replaced in one step and keeps its permissions; a symbolic link stays one. What
    is no regular file (a terminal, a pipe) is written to as it is.

    Raises `OutputError` where ``path`` is one of ``inputs``, is a folder, or cannot be written.
    """
    target = Path(path)
    refuse_input(target, inputs)
    try:
        if target.is_dir():
            raise OutputError("is a folder", source=str(path), hint="name a file in it")
        if target.exists() and not target.is_file():
            target.write_bytes(data)
        else:
            _replace(_real(target), data)
    except OSError as error:
        raise OutputError(
            f"cannot be written: {error.strerror}", source=str(path), hint="no half file was left"
        ) from error


def refuse_input(path: str | Path, inputs: Iterable[str | Path]) -> None:
    """Raise `OutputError` where ``path`` is the same file as one of ``inputs``, under whatever name.

    As an input ``-`` is standard input; as an output it would be a file of that name, which nobody means.
    """
    if str(path) == "-":
        raise OutputError(
            "stands for standard input and is no file", source="-", hint="name a file to write to"
        )
    for name in inputs:
        if os.path.exists(path) and os.path.exists(name) and os.path.samefile(path, name):  # noqa: PTH110, PTH121  names may be str
            raise OutputError("is also the input", source=str(path), hint="name another file to write to")


def _real(target: Path) -> Path:
    """Where links lead. Raises OSError where they lead round in a circle."""
    real = Path(os.path.realpath(target))
    if real.is_symlink():
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP))
    return real


def _replace(target: Path, data: bytes) -> None:
    mode = target.stat().st_mode & 0o7777 if target.exists() else None
    beside = target.with_name(f".{target.name[:200]}.{secrets.token_hex(6)}")
    try:
        with beside.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        beside.replace(target)
    except BaseException:  # Ctrl-C too must leave nothing behind
        beside.unlink(missing_ok=True)
        raise
