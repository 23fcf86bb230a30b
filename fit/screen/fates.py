"""The fate of each glyph on a screen, and the operation that ended it.

A glyph's *id* is the byte offset at which it starts. Glyphs that one operation makes many of (REP, DECALN,
DECFRA, DECCRA) have ids from the length of the output upwards; `Repeats` gives them out, the same to every screen.
"""

from __future__ import annotations

from array import array
from bisect import bisect_right
from collections import Counter
from enum import IntEnum

from fit.units import Size


class Fate(IntEnum):
    """What became of a glyph on one screen. Seen outranks the rest; of the rest the first counts."""

    NONE = 0
    """No glyph starts at this byte, or it still stands (until `Fates.finish`), or it is blank (after it)."""
    SEEN = 1
    """It stood on the visible page at a look or a hold."""
    SCROLLED = 2
    """It left at an edge of the scrolling region."""
    OVERWRITTEN = 3
    """Another glyph, or a blank, was drawn over it."""
    ERASED = 4
    """An erase, a deletion or a reset took it."""
    CLIPPED = 5
    """It was printed or pushed past the right edge, or a resize cut it off."""
    HIDDEN = 6
    """It stands on the page that is not shown."""
    STANDING = 7
    """It still stood at the end, and nobody looked."""


_LONGEST_RUN = 512
"""More glyphs than a row has cells; what is seen or lost together stands on one row."""
_RUNS = [[bytes([fate]) * count for count in range(_LONGEST_RUN + 1)] for fate in Fate]
"""By fate and count, made once: a line feed needs two or three of them."""
_COUNT_BITS = 10
"""Bits for the number of glyphs in a loss; a row has at most 500 cells."""
_REPEAT_BUDGET = 4_000_000
"""Repeated glyphs that one session may name one by one; a hostile one could ask for billions."""


class Repeats:
    """Gives out ids for repeated glyphs, the same ones to every screen that shares this object."""

    def __init__(self, length: int, size: Size | None = None) -> None:
        self.length = length
        """The first id that is no byte offset."""
        self.size = Size(25, 80) if size is None else size
        """The largest rows and columns of the screens that share these ids."""
        self.next = length
        self._blocks: dict[int, tuple[int, int]] = {}
        self._bases: list[int] = []
        self._origins: list[int] = []

    def block(self, offset: int, count: int) -> int | None:
        """The first of ``count`` ids for the operation at byte ``offset``; None where the budget is spent."""
        known = self._blocks.get(offset)
        if known is not None and known[1] >= count:
            return known[0]
        if self.next - self.length + count > _REPEAT_BUDGET:
            return None
        base = self.next
        self.next += count
        self._blocks[offset] = (base, count)
        self._bases.append(base)
        self._origins.append(offset)
        return base

    def origin(self, glyph: int) -> int:
        """The byte offset behind any glyph id."""
        if glyph < self.length:
            return glyph
        return self._origins[bisect_right(self._bases, glyph) - 1]


class Fates:
    """The fates of all glyphs on one screen.

    ``code`` holds one `Fate` a byte of output, then one a repeated glyph.
    """

    def __init__(self, length: int, repeats: Repeats | None = None) -> None:
        self.repeats = Repeats(length) if repeats is None else repeats
        self.code = bytearray(length)
        self._gone: array[int] = array("q")
        """For each loss the first glyph's id, shifted by `_COUNT_BITS`, and how many went with it."""
        self._at: array[int] = array("q")
        """For each loss the offset of the operation behind it."""
        self._order: list[int] = []
        self._length = length
        self._note_gone = self._gone.append
        self._note_at = self._at.append

    def see(self, glyph: int, count: int) -> None:
        """Mark ``count`` glyphs from ``glyph`` on as seen."""
        if glyph >= self._length:
            self._grow(glyph + count)
        self.code[glyph : glyph + count] = _RUNS[Fate.SEEN][count]

    def lose(self, glyph: int, count: int, fate: Fate, at: int) -> None:
        """Note that the operation at byte ``at`` ended ``count`` unseen glyphs, unless they have a fate."""
        code = self.code
        if glyph >= self._length:
            self._grow(glyph + count)
        if not code[glyph]:
            code[glyph : glyph + count] = _RUNS[fate][count]
            self._note_gone(glyph << _COUNT_BITS | count)
            self._note_at(at)

    def origin(self, glyph: int) -> int:
        """The byte offset behind any glyph id."""
        return self.repeats.origin(glyph)

    def loss_of(self, glyph: int) -> tuple[Fate, int] | None:
        """The fate of a glyph and the offset of the operation that ended it; None where nothing did."""
        if glyph >= len(self.code) or self.code[glyph] in (Fate.NONE, Fate.SEEN, Fate.STANDING):
            return None
        gone = self._gone
        if len(self._order) != len(gone):
            self._order = sorted(range(len(gone)), key=gone.__getitem__)
        # What was lost together is disjoint from everything else that was lost, so one look suffices.
        place = bisect_right(self._order, (glyph + 1) << _COUNT_BITS, key=gone.__getitem__) - 1
        return Fate(self.code[glyph]), self._at[self._order[place]]

    def clear_blanks(self, blanks: bytes, start: int = 0) -> None:
        """Give blank glyphs no fate: ``blanks`` is 0 at each byte of output from ``start`` on that is blank, else 255."""
        step = 1 << 20
        for low in range(0, len(blanks), step):
            part = blanks[low : low + step]
            place = slice(start + low, start + low + len(part))
            kept = int.from_bytes(part, "big") & int.from_bytes(self.code[place], "big")
            self.code[place] = kept.to_bytes(len(part), "big")

    def counts(self) -> Counter[Fate]:
        """How many glyphs met each fate. Call `clear_blanks` before, unless blanks are to count."""
        return Counter({fate: number for fate in Fate if fate and (number := self.code.count(fate))})

    def _grow(self, length: int) -> None:
        """Make room for repeated glyphs up to the id ``length``."""
        if length > len(self.code):
            self.code.extend(bytes(max(length, self.repeats.next) - len(self.code)))
