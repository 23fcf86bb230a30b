"""The bytes of a file or of standard input, or one sentence why there are none."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

from fit.errors import SourceError

LARGEST: Final = 100_000_000
"""Bytes that are read: a recording of a day's work has some megabytes, and measuring takes 8 s a megabyte."""
STANDARD_INPUT = "-"
STANDARD_INPUT_NAME = "standard input"
PRINTED: Final = "record or paste what the program prints"
KEYS: Final = "write a step a line, such as quiet 0.5 => look<enter>"


def load(source: str | Path, *, may_be_empty: bool = False, empty: str = PRINTED) -> bytes:
    """Read all of ``source``; ``-`` is standard input.

    Raises `SourceError` where it is missing, a folder, not readable, too large, or empty and may not be;
    ``empty`` says what to do then.
    """
    name = STANDARD_INPUT_NAME if str(source) == STANDARD_INPUT else str(source)
    if not name:
        raise SourceError("the name of the source is empty", hint="name a file, or - for standard input")
    try:
        if str(source) == STANDARD_INPUT:
            data = sys.stdin.buffer.read(LARGEST + 1)
        else:
            with Path(source).open("rb") as file:
                data = file.read(LARGEST + 1)
    except IsADirectoryError:
        raise SourceError("is a folder", source=name, hint="name a file in it") from None
    except FileNotFoundError:
        raise SourceError("does not exist", source=name, hint="check the name") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise SourceError(f"cannot be read: {reason}", source=name) from None
    if len(data) > LARGEST:
        raise SourceError(f"has more than {LARGEST:,} bytes", source=name, hint="give a part of it")
    if not data and not may_be_empty:
        raise SourceError("is empty", source=name, hint=empty)
    return data
