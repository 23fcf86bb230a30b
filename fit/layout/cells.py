"""How many cells lie before each character of a text."""

from __future__ import annotations

from collections.abc import Sequence

from fit.width import clusters, single


def cells_before(chars: str) -> Sequence[int]:
    """For each index from 0 to ``len(chars)`` the cells before it; inside a cluster, those before the cluster's end."""
    if single(chars):
        return range(len(chars) + 1)
    before = [0]
    total = 0
    for cluster in clusters(chars):
        total += cluster.cells
        before.extend([total] * (cluster.end - cluster.start))
    return before


def columns_of(chars: str) -> Sequence[int]:
    """For each character the column at which its cluster begins, and after them all the column where the text ends."""
    if single(chars):
        return range(len(chars) + 1)
    columns: list[int] = []
    total = 0
    for cluster in clusters(chars):
        columns.extend([total] * (cluster.end - cluster.start))
        total += cluster.cells
    return [*columns, total]
