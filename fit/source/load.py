"""The bytes of a file or of standard input, or one sentence why there are none."""

from __future__ import annotations

import sys
from pathlib import Path

from fit.errors import SourceError

STANDARD_INPUT = "-"
STANDARD_INPUT_NAME = "standard input"


def load(source: str | Path, *, may_be_empty: bool = False) -> bytes:
    """Read all of ``source``; ``-`` is standard input.

    Raises `SourceError` where it is missing, a folder, not readable, or empty and may not be.
    """
    name = STANDARD_INPUT_NAME if str(source) == STANDARD_INPUT else str(source)
    if not name:
        raise SourceError("the name of the source is empty", hint="name a file, or - for standard input")
    try:
        data = sys.stdin.buffer.read() if str(source) == STANDARD_INPUT else Path(source).read_bytes()
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
