"""Numbers with their nouns, for the remarks of the readers."""

from __future__ import annotations


def counted(number: int, one: str, many: str = "") -> str:
    """``1 picture``, ``2 pictures``; ``many`` is given where it is more than an s."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def stands(number: int) -> str:
    """The verb that goes with so many."""
    return "stands" if number == 1 else "stand"
