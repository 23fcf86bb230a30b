"""Refusing a file to write before the work starts, not after it; and recordings, which cannot be made again."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterable
from pathlib import Path

from fit.errors import OutputError
from fit.output import refuse_input
from fit.session import Session
from fit.source.session_file import write_session_file


def check_output(path: Path, inputs: Iterable[Path], *, replace: bool) -> None:
    """Raise OutputError where ``path`` is an input, a folder, there already, or cannot be written."""
    refuse_input(path, inputs)
    if path.is_dir():
        raise OutputError("is a folder", source=str(path), hint="name a file in it")
    if path.is_file() and not replace:
        raise OutputError("exists already", source=str(path), hint="name another file, or give --replace")
    if not os.access(path.parent, os.W_OK):
        raise OutputError(
            "cannot be written: its folder is missing or closed", source=str(path), hint="name another"
        )


def write_recording(path: Path, session: Session, inputs: Iterable[Path]) -> None:
    """Write a session to a file; where that fails, to a temporary one, which the error names."""
    try:
        write_session_file(path, session, inputs=inputs)
    except OutputError as error:
        saved = _saved(session)
        if saved is None:
            raise
        raise OutputError(error.what, source=str(path), hint=f"the recording is in {saved} instead") from None


def _saved(session: Session) -> Path | None:
    """A temporary file with a session; None where it cannot be written either."""
    try:
        number, name = tempfile.mkstemp(prefix="fit-", suffix=".jsonl")
        os.close(number)
    except OSError:
        return None
    path = Path(name)
    try:
        write_session_file(path, session)
    except OutputError:
        path.unlink(missing_ok=True)
        return None
    return path
