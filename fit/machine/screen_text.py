"""The words in a program's output, whatever terminal it was written for: enough to find a prompt.

This is no terminal: a cursor movement ends a line, and that is all.
"""

from __future__ import annotations

import re
from typing import Final

_CODES: Final = re.compile(rb"\x1b(?:\[[0-9;?]*[@-~]|[=Y]..|.)", re.DOTALL)
_LINE_ENDS: Final = re.compile(r"[\x00-\x07\x0a-\x1f\x7f]+")
_DIGITS: Final = re.compile(r"\d+")
_SEVEN_BITS: Final = bytes(byte & 0x7F for byte in range(256))


def lines_of(output: bytes) -> list[str]:
    """Lines that hold something, without codes; bit 7 is dropped, as terminals of the time did."""
    text = without_codes(output.translate(_SEVEN_BITS)).decode("ascii").replace("\b", "")
    return [line.strip() for line in _LINE_ENDS.split(text) if line.strip()]


def without_codes(output: bytes) -> bytes:
    """The output with an end of line for each control sequence."""
    return _CODES.sub(b"\n", output)


def masked_line(line: str) -> str:
    """A line in which only its numbers may change without its being new."""
    return _DIGITS.sub("#", line)
