"""Small bars for shares, in characters that every terminal has."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import floor

FULL, EMPTY = "#", "."


def bar(share: float | None, cells: int) -> str:
    """A bar of ``cells`` cells for a share from 0 to 1; dashes where nothing was measured.

    A share that is not 0 shows at least one cell, one that is not 1 leaves at least one empty.
    """
    if share is None:
        return "-" * cells
    filled = floor(share * cells + 0.5)
    if 0 < share < 1 and cells > 1:
        filled = min(max(filled, 1), cells - 1)
    return FULL * filled + EMPTY * (cells - filled)


STEPS = ((0.95, "#"), (0.6, "+"), (1e-9, "-"))
"""The signs of a strip, each from its share on; below them all stands ``.``."""


def strip(shares: Sequence[float], cells: int) -> str:
    """One sign for each share, in order; where there are more than ``cells``, for the mean of neighbours."""
    width = min(len(shares), cells)
    edges = [index * len(shares) // width for index in range(width + 1)] if width else [0]
    means = [sum(shares[low:high]) / (high - low) for low, high in pairwise(edges)]
    return "".join(next((sign for least, sign in STEPS if mean >= least), EMPTY) for mean in means)
