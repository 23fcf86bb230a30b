"""Whether what stands in each column of a run starts, ends or is centred at one place."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line

COUNTED = 2
"""Numbers whose last figures stand under one another, at least, below the name of their column: ` 3 tins`, `12 tins`."""
LEAST = 3
"""Rows with a key, and lines without one, at least, of which each stand in their own places."""
BROAD = 20
"""Cells of a column from which most of its cells must do more than stand about one middle."""
CENTRED = 6
"""Cells of such a column, at least, of which it is no chance that all of them, none with a wide blank in it, stand about one middle."""
EMPTY = ("-", "--", "\u2013", "\u2014")
"""What stands for an empty cell, below others, wherever it stands in its column."""
_FIGURE = re.compile(r" *\d+(?=\W)")


def aligned(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether each column after the first starts, ends, or is centred at one place in most lines."""
    last = columns[-1][0]
    if not all(_stands(lines, columns, index) for index in range(1, len(columns) - (len(columns) > 2))):
        return False
    if len(columns) < 3 or _stands(lines, columns, len(columns) - 1):
        return True
    rest = [
        line for line in lines if line.indent <= last
    ]  # what stands deeper, alone, is set in in its column
    return len(rest) < len(lines) and _stands(rest, columns, len(columns) - 1)


def aligned_apart(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether rows with a key stand so by themselves, and those without one do so elsewhere: a list inside a cell."""
    start = columns[1][0]
    keyed = [line for line in lines if line.cells[:start].strip(" ")]
    inner = [line for line in lines if not line.cells[:start].strip(" ")]
    if len(columns) < 4 or min(len(keyed), len(inner)) < LEAST or not aligned(keyed, columns):
        return False
    held = [
        index
        for index in range(1, len(columns))
        if any(line.cells[columns[index][0] : columns[index][1]].strip(" ") for line in inner)
    ]
    return len(held) > 1 and all(_stands(inner, columns, index) for index in held)


def _stands(lines: Sequence[Line], columns: Sequence[tuple[int, int]], index: int) -> bool:
    first, last = columns[index]
    starts: Counter[int] = Counter()
    ends: Counter[int] = Counter()
    middles: Counter[int] = Counter()
    units: Counter[int] = Counter()
    total = 0
    named = gaps = False
    for line in lines:
        text = line.cells[first : columns[index + 1][0] if index + 1 < len(columns) else line.end]
        if not text.strip() or (total and text.strip() in EMPTY):
            continue
        total += 1
        gaps = gaps or "  " in text.strip(" ")
        begin, end = len(text) - len(text.lstrip(" ")), len(text.rstrip(" "))
        starts[begin] += 1
        ends[end] += 1
        middles[(begin + end) // 2] += 1
        if figure := _FIGURE.match(text):
            units[figure.end()] += 1
        named = named or (total == 1 and figure is None)
    if total < 2:
        return total == 1
    share = max(*starts.values(), *ends.values()) / total
    near = max(middles[place] + middles[place + 1] for place in middles) / total
    if share >= 0.7 or (near >= 0.8 and last - first < BROAD):
        return True
    if near == 1 and total >= CENTRED and len(starts) > 2 and not gaps:
        return True
    return named and units.total() == total - 1 >= COUNTED and len(units) == 1
