"""The errors a user can meet. Each says what, where, and what to do, in one sentence.

    FitError
    ├── UsageError      an option or argument that cannot be used
    ├── SourceError     a session or recording that cannot be read
    ├── CaptureError    a program that could not be run and recorded
    ├── ScreenError     a named screen that is unknown or broken
    ├── DialectError    a terminal that is unknown or cannot be decoded
    ├── DocumentError   a document that cannot be read or laid out
    ├── ProgramError    an 8-bit program that cannot be loaded
    └── OutputError     a result that cannot be written

Damaged data inside a readable container is no error: it is replayed, counted and reported.
"""

from __future__ import annotations


class FitError(Exception):
    """What went wrong, where, and what to do.

    ``source`` is the file's name as the user wrote it; ``line`` and ``column`` count from 1; ``byte``
    is an offset from 0. ``str(error)`` is the whole sentence.
    """

    def __init__(
        self,
        what: str,
        *,
        source: str | None = None,
        line: int | None = None,
        column: int | None = None,
        byte: int | None = None,
        hint: str | None = None,
    ) -> None:
        self.what = what
        self.source = source
        self.line = line
        self.column = column
        self.byte = byte
        self.hint = hint
        super().__init__(self._sentence())

    def _sentence(self) -> str:
        place = [] if self.source is None else [self.source]
        if self.line is not None:
            place.append(f"line {self.line}")
        if self.column is not None:
            place.append(f"column {self.column}")
        if self.byte is not None:
            place.append(f"byte {self.byte}")
        head = f"{', '.join(place)}: " if place else ""
        tail = f"; {self.hint}" if self.hint else ""
        return f"{head}{self.what}{tail}"


class UsageError(FitError):
    """An option or argument that cannot be used."""


class SourceError(FitError):
    """A session or recording that cannot be read."""


class CaptureError(FitError):
    """A program that could not be run and recorded."""


class ScreenError(FitError):
    """A named screen that is unknown or broken."""


class DialectError(FitError):
    """A terminal that is unknown or cannot be decoded."""


class DocumentError(FitError):
    """A document that cannot be read or laid out."""


class ProgramError(FitError):
    """An 8-bit program that cannot be loaded."""


class OutputError(FitError):
    """A result that cannot be written."""
