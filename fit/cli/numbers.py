"""Numbers that options take, or one sentence on what is wrong with them."""

from __future__ import annotations

from fit.errors import UsageError
from fit.machine import HIGHEST_TOP, LOWEST_TOP


def above_0(option: str, value: float) -> float:
    """The value. Raises UsageError where it is not above 0."""
    if not value > 0:
        raise UsageError(f"{option} {value:g} leaves nothing to do", hint="give a number above 0")
    return value


def address(option: str, text: str | None) -> int | None:
    """An address in hexadecimal, such as ``C000``, ``0xC000`` or ``C000h``. Raises UsageError where it is none."""
    if text is None:
        return None
    try:
        value = int(text.lower().removesuffix("h"), 16)
    except ValueError:
        value = -1
    if not LOWEST_TOP <= value <= 0xFFFF:
        raise UsageError(
            f"{option} {text[:20]} is no place where memory can end",
            hint=f"give it in hexadecimal, from {LOWEST_TOP:04X} to {HIGHEST_TOP:04X}",
        )
    return value
