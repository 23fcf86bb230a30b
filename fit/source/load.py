"""The bytes of a file or of standard input, or one sentence why there are none."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from fit.errors import SourceError

STANDARD_INPUT = "-"


def load(source: str | Path, *, may_be_empty: bool = False) -> bytes:
    """Read all of ``source``; ``-`` is standard input, or a paste where that is a terminal.

    Raises `SourceError` where it is missing, a folder, not readable, or empty and may not be.
    """
    name = str(source)
    try:
        data = _standard_input() if name == STANDARD_INPUT else Path(source).read_bytes()
    except IsADirectoryError:
        raise SourceError("is a folder", source=name, hint="name a file in it") from None
    except FileNotFoundError:
        raise SourceError("does not exist", source=name, hint="check the name") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise SourceError(f"cannot be read: {reason}", source=name) from None
    if not data and not may_be_empty:
        raise SourceError("is empty", source=name, hint="record or paste what the program prints")
    return data


def _standard_input() -> bytes:
    if sys.stdin.isatty():
        end = "Ctrl-Z and Enter" if os.name == "nt" else "Ctrl-D"
        print(f"Paste what the program printed, then press Enter and {end}:", file=sys.stderr, flush=True)
    return sys.stdin.buffer.read()
