"""Standard streams as they may be found: narrow, closed, full, or with a reader that has left."""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import sys
from textwrap import fill
from typing import Final

from fit.errors import FitError, OutputError

PLAIN_WIDTH: Final = 80
NARROWEST: Final = 20
_NAMES: Final = ("stdin", "stdout", "stderr")
_NO_ROOM: Final = (errno.ENOSPC, errno.EDQUOT)
_FAILS: Final = (*_NO_ROOM, errno.EIO, errno.EBADF, errno.EFBIG)
"""How writing to a stream fails: no room, a terminal that is gone, a stream that is closed, a limit on files."""


def columns() -> int:
    """The columns of the terminal; 80 where there is none."""
    return max(NARROWEST, shutil.get_terminal_size((PLAIN_WIDTH, 24)).columns)


def _columns_of_errors() -> int:
    """The same of the terminal that shows errors, where results go elsewhere."""
    if sys.stdout.isatty():
        return columns()
    return max(NARROWEST, os.get_terminal_size(sys.stderr.fileno()).columns or PLAIN_WIDTH)


def open_closed() -> None:
    """Put something in the place of each closed stream, so that no file that is opened later becomes one.

    A closed input is empty, complaints to a closed output vanish, and writing results to one fails as it would have.
    """
    for number, name in enumerate(_NAMES):
        if getattr(sys, name) is None:
            # Opened for reading, so that results do not vanish unnoticed.
            place = os.open(os.devnull, os.O_WRONLY if name == "stderr" else os.O_RDONLY)
            mode = "w" if number else "r"
            setattr(sys, name, os.fdopen(place, mode, encoding="utf-8", errors="backslashreplace"))


def complain(sentence: str) -> None:
    """Say on standard error, after the name of the command, what is wrong or to be known."""
    tell(f"fit: {sentence}")


def tell(sentence: str) -> None:
    """One sentence on standard error, broken between words on a terminal; where that fails, the exit code must do."""
    try:
        if sys.stderr.isatty():
            sentence = fill(sentence, _columns_of_errors(), break_long_words=False, break_on_hyphens=False)
        print(sentence, file=sys.stderr, flush=True)
    except OSError:
        abandon("stderr")


def abandon(name: str) -> None:
    """Send what a stream still holds to nowhere: at the exit it would raise again."""
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), getattr(sys, name).fileno())


def as_sentence(error: OSError) -> FitError | None:
    """What to say of an error of the system: of the file that it names, else of standard output; None for others."""
    reason = error.strerror or str(error)
    if error.filename is not None:
        return OutputError(
            reason,
            source=os.fsdecode(error.filename),
            hint="no half file was left; make room" if error.errno in _NO_ROOM else "check the name",
        )
    if error.errno not in _FAILS:
        return None
    abandon("stdout")
    if error.errno == errno.EBADF:
        return OutputError("is closed", source="standard output", hint="open it, such as with > /dev/null")
    return OutputError(
        reason,
        source="standard output",
        hint="what was printed there is not whole: make room, and print it again",
    )
