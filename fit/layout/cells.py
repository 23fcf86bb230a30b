"""How many cells lie before each character of a text."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.width import clusters

_SINGLE = re.compile("[ -~\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2190-\u21ff\u2500-\u25a0]*")
"""Characters of one cell that never combine with their neighbours (EastAsianWidth, GraphemeBreakProperty 15.0)."""


def cells_before(chars: str) -> Sequence[int]:
    """For each index from 0 to ``len(chars)`` the cells before it; inside a cluster, those before the cluster's end."""
    if _SINGLE.fullmatch(chars):
        return range(len(chars) + 1)
    before = [0]
    total = 0
    for cluster in clusters(chars):
        total += cluster.cells
        before.extend([total] * (cluster.end - cluster.start))
    return before


def columns_of(chars: str) -> Sequence[int]:
    """For each character the column at which its cluster begins, and after them all the column where the text ends."""
    if _SINGLE.fullmatch(chars):
        return range(len(chars) + 1)
    columns: list[int] = []
    total = 0
    for cluster in clusters(chars):
        columns.extend([total] * (cluster.end - cluster.start))
        total += cluster.cells
    return [*columns, total]
