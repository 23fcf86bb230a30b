"""Files that no program printed: programs themselves, archives and other binary data, not to be measured as text."""

from __future__ import annotations

import re
from typing import Final

from fit.containers import ContainerKind, find_container
from fit.errors import SourceError

_BDOS_CALL: Final = re.compile(rb"[\xcd\xc3]\x05\x00")
"""CALL 0005h or JMP 0005h in 8080 code: ENQ and NUL behind such a byte are no terminal's, nor any encoding's."""
_SUFFIX: Final = ".com"
_LOOKED_AT: Final = 1 << 16
_FEWEST_BYTES: Final = 512
"""Fewer may be a table of all characters that a terminal has."""
_NO_TEXT: Final = bytes(code for code in range(0x20) if code not in b"\0\a\b\t\n\v\f\r\x0e\x0f\x1a\x1b\x1e")
"""Control codes that few terminals know; a screen may have signs in their places, such as suits of cards, some of them."""
_MOST_KINDS: Final = 11
_LOW_SHARE: Final = 0.04
_HIGH_SHARE: Final = 0.2
"""More kinds of such codes, with such shares of them and of bytes above 7Fh that are no UTF-8, has no output: compressed
data has 19 kinds, 7 and 42 %, code of programs 5 to 20 and 20 to 40 %; what is drawn in an 8-bit encoding has hardly
any of the first (measured)."""
_RAW: Final = "or give --kind raw"


def refuse_what_is_none(data: bytes, name: str) -> None:
    """Raise SourceError where bytes that no recorder wrote are a program's code, an archive or other binary data."""
    container = find_container(data)
    if container is not None and container.kind is ContainerKind.PROGRAM:
        raise SourceError(
            "is a program and not what one prints",
            source=name,
            hint=f"record it: fit capture OUT -- COMMAND; {_RAW}",
        )
    if container is not None:
        raise SourceError(
            f"is {container.what} and not what a program prints",
            source=name,
            hint=f"{container.todo}, {_RAW}",
        )
    if _BDOS_CALL.search(data) or (name.lower().endswith(_SUFFIX) and b"\0" in data):
        raise SourceError(
            "is an 8-bit program and not what one prints",
            source=name,
            hint=f"run it: fit run PROGRAM -o OUT, then fit check OUT; {_RAW}",
        )
    if _is_binary(data[:_LOOKED_AT]):
        raise SourceError(
            "holds binary data and not what a program prints", source=name, hint=f"give its output, {_RAW}"
        )


def _is_binary(sample: bytes) -> bool:
    """Whether control codes and bytes above 7Fh are mixed as in no output."""
    low = len(sample) - len(sample.translate(None, _NO_TEXT))
    kinds = len(set(sample) & set(_NO_TEXT))
    if len(sample) < _FEWEST_BYTES or kinds <= _MOST_KINDS or low < _LOW_SHARE * len(sample):
        return False
    strange = sum(0xDC80 <= ord(char) <= 0xDCFF for char in sample.decode("utf-8", "surrogateescape"))
    return strange >= _HIGH_SHARE * len(sample)
