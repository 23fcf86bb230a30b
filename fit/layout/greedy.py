"""Greedy line breaking: each line takes what fits. The reference is `textwrap`, without breaks at hyphens.

Departs from it in two ways: widths are cells, not characters, and what comes out are places, not copies.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from itertools import accumulate, chain

from fit.units import Span
from fit.width import clusters

_CHUNK = re.compile(r"[ \t]+|[^ \t]+")


def wrap_greedy(text: str, width: int) -> list[Span]:
    """Break one paragraph into lines of at most ``width`` cells.

    ``text`` has no line ends, ``width`` is at least 1. The spans are the characters of each line, ascending;
    blanks at line ends are on no line, blanks before the first word stay. A cluster wider than the line
    stands alone on a line that is too wide.
    """
    ruler = _Ruler(text)
    lines: list[Span] = []
    begin = end = 0  # the line at work
    for match in _CHUNK.finditer(text):
        at, stop = match.span()
        blank = text[at] in " \t"
        while at < stop:
            if begin == end and blank and lines:
                break  # blanks never begin a later line
            if begin == end:
                begin = end = at
            if ruler.cells(begin, stop) <= width:
                end = stop
                break
            if ruler.cells(at, stop) > width:
                cut = ruler.fit(begin, at, width)
                at = end = max(cut, at)
            if begin < end:
                _close(lines, text, begin, end)
            begin = end
    if begin < end:
        _close(lines, text, begin, end)
    return lines


def _close(lines: list[Span], text: str, begin: int, end: int) -> None:
    """Add a line, without the blanks at its end."""
    while end > begin and text[end - 1] in " \t":
        end -= 1
    if begin < end:
        lines.append(Span(begin, end))


class _Ruler:
    """Where the clusters of a text end, and how many cells lie before each."""

    def __init__(self, text: str) -> None:
        found = list(clusters(text))
        self._ends = [0, *(cluster.end for cluster in found)]
        self._cells = list(accumulate(chain((0,), (cluster.cells for cluster in found))))

    def cells(self, start: int, end: int) -> int:
        """The cells of ``start <= i < end``, both at cluster ends."""
        return self._before(end) - self._before(start)

    def fit(self, begin: int, at: int, width: int) -> int:
        """The last cluster end up to which a line from ``begin`` fits; at least one cluster after an empty line."""
        index = bisect_right(self._cells, self._before(begin) + width) - 1
        cut = self._ends[index]
        if begin == at and cut <= at:
            cut = self._ends[bisect_right(self._ends, at)]
        return cut

    def _before(self, index: int) -> int:
        return self._cells[bisect_right(self._ends, index) - 1]
