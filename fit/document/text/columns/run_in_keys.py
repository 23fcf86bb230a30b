"""Keys that run into the text beside them, which begins at the column of all others: `SpareWicksThe wicks in store`."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line


def run_in(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """The two cells before the second of two settled columns that a key at the margin runs into, as a mask; or 0."""
    if len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    key, text = line.cells[line.indent : start], line.cells[start:]
    meets = " " not in key and key[-1:].islower() and text[:1].isupper() and text[1:2].islower()
    return 3 << (start - 2) if meets and " " in text else 0
