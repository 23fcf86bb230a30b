"""Whether a program printed more than the echo of what was typed: only then is there something to read."""

from __future__ import annotations

_BLANK = 0x20
_DEL = 0x7F


def shows_more_than_echo(printed: bytes, typed: bytes) -> bool:
    """Whether ``printed`` holds a visible character beside the typed ones, in order, in either case.

    Typed characters may be missing from the echo, as where a program takes only the first.
    """
    expected = iter(typed.lower())
    for byte in printed.lower():
        if byte <= _BLANK or byte == _DEL:
            continue
        if byte not in expected:
            return True
    return False
