"""Small bars for shares, in characters that every terminal has."""

from __future__ import annotations

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
