"""Files that no program printed: programs themselves, which are to be run and not to be measured as text."""

from __future__ import annotations

import re
from typing import Final

from fit.errors import SourceError

_BDOS_CALL: Final = re.compile(rb"[\xcd\xc3]\x05\x00")
"""CALL 0005h or JMP 0005h in 8080 code: ENQ and NUL behind such a byte are no terminal's, nor any encoding's."""
_MODERN: Final = (b"\x7fELF", b"MZ\x90\x00")
"""How programs of today's systems begin."""
_SUFFIX: Final = ".com"


def refuse_program(data: bytes, name: str) -> None:
    """Raise SourceError where bytes that no recorder wrote are a program's code."""
    if data.startswith(_MODERN):
        raise SourceError(
            "is a program and not what one prints",
            source=name,
            hint="record it: fit capture OUT -- COMMAND; or give --kind raw",
        )
    if _BDOS_CALL.search(data) or (name.lower().endswith(_SUFFIX) and b"\0" in data):
        raise SourceError(
            "is an 8-bit program and not what one prints",
            source=name,
            hint="run it: fit run PROGRAM -o OUT, then fit check OUT; or give --kind raw",
        )
