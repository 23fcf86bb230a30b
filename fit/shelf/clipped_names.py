"""Names cut to fit a column, no two of them to the same letters."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Final

from fit.width import clusters, text_cells

_CUT: Final = ".."
_LEAST_START: Final = 4
"""Cells of the start that stay, whatever is kept of the end."""


def clipped_names(names: Iterable[str], cells: int) -> dict[str, str]:
    """Each name, its start where it is too long; its start and its end where another one starts alike.

    Where they can be told by neither, as those that differ in the middle alone, the names stay as they are.
    """
    cut = {name: _clipped(name, cells, 0) for name in names}
    for end in range(1, cells - _LEAST_START - len(_CUT) + 1):
        alike = _alike(cut)
        if not alike:
            break
        cut |= {name: _clipped(name, cells, end) for name in alike}
    return cut | {name: name for name in _alike(cut)}


def _alike(cut: dict[str, str]) -> list[str]:
    times = Counter(cut.values())
    return [name for name, short in cut.items() if times[short] > 1]


def _clipped(name: str, cells: int, end: int) -> str:
    """As much of the start as there is room for beside so many cells of the end; the end alone where it is asked for."""
    if text_cells(name) <= cells:
        return name
    pieces = list(clusters(name))
    after, used = len(name), 0
    for piece in reversed(pieces):
        if used + piece.cells > end:
            break
        after, used = piece.start, used + piece.cells
    room = cells - len(_CUT) - used
    before = used = 0
    for piece in pieces:
        used += piece.cells
        if used > room:
            break
        before = piece.end
    return f"{name[:before]}{_CUT}{name[after:]}"
