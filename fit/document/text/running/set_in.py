"""Lines that a sentence leads to and that stand in from it: shown as a whole, though some of them read as text."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.lists.listing import Listing
from fit.document.text.running.runs_on import carries
from fit.document.text.signs.code import code, prompted
from fit.document.text.signs.joins import FAR, NEAR, cut_word, shortfall
from fit.document.text.signs.measure import closed, prose

DEEPER = 2
"""Cells by which such lines stand in, at least."""
FAR_IN = 12
"""Cells by which two lines stand in, at least, that are no paragraph, however many of its words would have had room."""
STEP = 4
"""Cells by which the rest of a text may hang; what stands deeper was not wrapped."""


class Shown:
    """The display that is open while chunks are read from top to bottom: after a blank line it may go on."""

    def __init__(self, lines: Sequence[Line], listing: Listing) -> None:
        self._lines = lines
        self._listing = listing
        self._left = -1
        self._far = False

    def takes(self, start: int, end: int, right: int) -> bool:
        """Whether the lines ``start <= i < end`` are one, or more of the last one; none of them is an item then."""
        part = self._lines[start:end]
        left = min(line.indent for line in part)
        on = left == self._left
        shown = (on or _leads(self._lines, start, left)) and not self._listed(start, end)
        if not on:
            self._far = start > 0 and left >= self._lines[start - 1].indent + FAR_IN
        if shown and _whole(part, right, couplet=self._far and len(part) == 2):
            self._left = left
            for index in range(start, end):
                self._listing.markers[index] = None
                self._listing.keys[index] = 0
            return True
        if not on:
            self._left = -1
        return False

    def _listed(self, start: int, end: int) -> bool:
        """Whether an item or a key with words starts in one of the lines; a prompt starts a transcript instead."""
        if prompted(self._lines[start].text):
            return False
        for index in range(start, end):
            marker = self._listing.markers[index]
            if self._listing.keys[index] or (
                marker is not None and any(map(str.isalpha, self._lines[index].text[marker.text :]))
            ):
                return True
        return False


def _leads(lines: Sequence[Line], start: int, left: int) -> bool:
    """Whether the text above leads to a display: by its colon, because it has no end, or by what starts below it."""
    if not start or lines[start].crossing:
        return False
    above, line = lines[start - 1], lines[start]
    led = above.text.endswith(":") or (prose(above.text) and not closed(above.text))
    return (led or code(line.text) or prompted(line.text)) and left >= above.indent + DEEPER


def _whole(part: Sequence[Line], right: int, *, couplet: bool) -> bool:
    """Whether no line was wrapped, and one is program text or all are far from the margin.

    A ``couplet`` stands too far in to be a paragraph that was set narrow, each line half as wide as the text at most.
    """
    pairs = [*pairwise(part)]
    couplet = couplet and all(2 * len(line.text) <= right for line in part)
    if (
        not pairs
        or any(_wrapped(above, below, right) for above, below in pairs)
        or (not couplet and _narrow(pairs))
    ):
        return False
    if any(code(line.text) for line in part):
        return True
    apart = all(shortfall(above, below, right) > FAR for above, below in pairs)
    short = max(line.end for line in part) < right - FAR
    return apart and short and not any(_explains(*pair) for pair in pairs)


def _explains(above: Line, below: Line) -> bool:
    """Whether a line that ends a sentence stands deeper below a term."""
    return below.indent >= above.indent + DEEPER and closed(below.text) and not closed(above.text)


def _wrapped(above: Line, below: Line, right: int) -> bool:
    """Whether a line was full, so that running text goes on in the next."""
    if code(above.text) or below.indent > above.indent + STEP:
        return False
    full = prose(above.text) and shortfall(above, below, right) <= NEAR and above.end <= right
    return full or cut_word(above.text, below.text)


def _narrow(pairs: Sequence[tuple[Line, Line]]) -> bool:
    """Whether half of the lines are full by the width of the longest one and go on in the next."""
    own = max(line.end for pair in pairs for line in pair)
    on = sum(
        carries(above.text, below.text) and shortfall(above, below, own) <= NEAR for above, below in pairs
    )
    return 2 * on >= len(pairs)
