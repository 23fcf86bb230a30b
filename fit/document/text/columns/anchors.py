"""Columns that the longest cell before them leaves only one blank: where most rows show a gutter, the others keep it.

A word starts somewhere in every line; that one starts at the same column in every line, after a blank that is
wide in most of them, is no chance.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.rules import ruled_off, segmented

LOOK_AHEAD = 40
"""Lines of one stretch that are looked at."""
LEAST = 3
"""Rows that show a column, at least."""
WIDE = 3
"""Cells of blank that justified text does not leave before the same column again and again."""
_TO_BITS = dict.fromkeys(range(33, 127), "1") | {32: "0"}


def mask(cells: str) -> int:
    """One bit for each cell that is not blank, bit 0 the first column."""
    bits = cells.translate(_TO_BITS) if cells.isascii() else "".join("0" if c == " " else "1" for c in cells)
    return int(bits[::-1], 2) if bits else 0


def anchors(lines: Sequence[Line], taken: Sequence[object], start: int) -> list[int]:
    """The columns that the stretch of lines from ``start`` on keeps, those of the first column left out."""
    columns = ~0
    rows: list[int] = []
    for index in range(start, min(len(lines), start + LOOK_AHEAD)):
        line = lines[index]
        if taken[index] is not None or (rows and line.apart):
            break
        if ruled_off(line.text) or segmented(line.text):
            continue
        bits = mask(line.cells)
        kept = columns & ~(bits << 1) if rows else bits & ~(bits << 1)
        if not kept:
            break
        columns = kept
        rows.append(bits)
    return [column for column in _places(columns) if _shown(rows, column)] if len(rows) >= LEAST else []


def _places(columns: int) -> list[int]:
    """The set bits."""
    return [place for place, bit in enumerate(bin(columns)[:1:-1]) if bit == "1"]


def _shown(rows: Sequence[int], column: int) -> bool:
    """Whether enough rows have a cell at the column, and most of them a gutter before it."""
    blanks: Counter[int] = Counter()
    for bits in rows:
        before = bits & ((1 << column) - 1)
        if bits >> column & 1 and before:
            blanks[min(WIDE, column - before.bit_length())] += 1
    total = blanks.total()
    wide = total - blanks[1]
    return total >= LEAST and blanks[WIDE] >= 2 and wide >= 0.4 * total
