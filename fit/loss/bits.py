"""Flags of glyphs: one byte a glyph id, several flags in each, set and counted over stretches at once."""

from __future__ import annotations

from functools import cache

SHOWN = 1
"""The glyph stood on the big screen at a look, and was neither echo nor decoration."""
ECHO = 2
DECORATION = 4
"""The glyph was decoration at a look."""
PLACED = 8
SEEN_WRAPPED = 16
"""The glyph stood at a look on the small screen that wraps at words; it keeps no fates."""

STRETCH = 1 << 20
"""Long stretches are changed piece by piece, so that no copy of a whole session is made."""


@cache
def or_table(mask: int) -> bytes:
    """The table that sets the flags in ``mask``."""
    return bytes(value | mask for value in range(256))


@cache
def and_table(mask: int) -> bytes:
    """The table that keeps the flags in ``mask`` alone."""
    return bytes(value & mask for value in range(256))


class Flags:
    """A byte of flags for each glyph id; grows where ids of repeated glyphs come."""

    __slots__ = ("data",)

    def __init__(self, length: int) -> None:
        self.data = bytearray(length)

    def set(self, start: int, end: int, mask: int) -> None:
        """Set the flags in ``mask`` for the ids ``start <= id < end``."""
        data, table = self.data, or_table(mask)
        if end > len(data):
            self.reach(end)
        if end - start <= STRETCH:
            data[start:end] = data[start:end].translate(table)
            return
        for low in range(start, end, STRETCH):
            high = min(end, low + STRETCH)
            data[low:high] = data[low:high].translate(table)

    def count_without(self, start: int, end: int, mask: int) -> int:
        """How many of the ids ``start <= id < end`` have none of the flags in ``mask``."""
        if end > len(self.data):
            self.reach(end)
        return self.data[start:end].translate(and_table(mask)).count(0)

    def has(self, glyph: int, mask: int) -> bool:
        """Whether a glyph has any of the flags in ``mask``."""
        return glyph < len(self.data) and bool(self.data[glyph] & mask)

    def reach(self, end: int) -> None:
        """Make room for the ids below ``end``."""
        if end > len(self.data):
            self.data.extend(bytes(end - len(self.data)))
