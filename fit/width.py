"""Text to clusters and cells. The only door to wcwidth.

A *cell width* is 0 (combines with what stands before it), 1 or 2, after wcwidth's tables of Unicode's
EastAsianWidth. A *cluster* is a base character and what combines with it (Unicode Standard Annex 29).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import wcwidth

SOFT_HYPHEN = "\u00ad"
_SINGLE = re.compile("[ -~\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2190-\u21ff\u2500-\u25a0]*")
"""Characters of one cell that never combine with their neighbours (EastAsianWidth, GraphemeBreakProperty 15.0)."""


class Cluster(NamedTuple):
    """The characters ``start <= i < end`` of a text, and the cells they take together."""

    start: int
    end: int
    cells: int


@lru_cache(maxsize=4096)
def char_cells(char: str) -> int:
    """The cells of one character as terminals count them: 0, 1 or 2; control characters take none."""
    return max(0, wcwidth.wcwidth(char))


def single(text: str) -> bool:
    """Whether every character of a text takes one cell of its own, blanks among them but no-break spaces not."""
    return _SINGLE.fullmatch(text) is not None


def text_cells(text: str) -> int:
    """The cells of a text, cluster by cluster."""
    if single(text):
        return len(text)
    if text.isascii():
        return sum(map(char_cells, text))
    return sum(cluster.cells for cluster in clusters(text))


def clusters(text: str) -> Iterator[Cluster]:
    """Cut a text into clusters, in order, leaving nothing out."""
    if text.isascii():
        for index, char in enumerate(text):
            yield Cluster(index, index + 1, char_cells(char))
        return
    start = 0
    for grapheme in wcwidth.iter_graphemes(text):
        end = start + len(grapheme)
        yield Cluster(start, end, min(2, max(map(char_cells, grapheme))))
        start = end
