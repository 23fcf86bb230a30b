"""Refusing a file to write before the work starts, not after it."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path

from fit.errors import OutputError
from fit.output import refuse_input


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
