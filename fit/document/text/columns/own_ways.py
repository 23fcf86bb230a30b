"""Columns whose parts begin and end without regard to one another: what stands in one goes on beside a break in the other.

The rows of a table begin together; so that these are read one after the other, whatever their parts are.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.signs.measure import closed, prose, starts_small

WRAPPED = 3
"""Lines of running text below one another in each column, at least."""
SHORT = 0.3
"""Share of the column's width by which a line of running text may fall short."""


def own_ways(columns: Sequence[Sequence[str]]) -> bool:
    """Whether of columns, line by line, each has running text, and parts begin beside the middle of one in the next.

    They do so on both sides: the label of a row in the middle of its height begins beside its text, too.
    """
    return all(map(wrapped, columns)) and all(
        _begins_beside(left, right) and _begins_beside(right, left) for left, right in pairwise(columns)
    )


def wrapped(texts: Sequence[str]) -> bool:
    """Whether a column has lines of running text below one another that fill it, and go on in the next one."""
    width = max(map(len, texts), default=0)
    run = 1
    for above, below in pairwise(texts):
        full = len(above) >= (1 - SHORT) * width and (prose(above) or prose(below))
        run = run + 1 if full and below and (starts_small(below) or not closed(above)) else 1
        if run >= WRAPPED and starts_small(below):
            return True
    return False


def _begins_beside(texts: Sequence[str], others: Sequence[str]) -> bool:
    """Whether a part of a column, below a blank line, begins beside a line of the other that goes on from the one above."""
    rows = zip(pairwise(texts), pairwise(others), strict=True)
    return any(below and not above and before and beside for (above, below), (before, beside) in rows)
