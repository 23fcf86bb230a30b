"""Tables in a box whose sides are their only bars: a rule below the head, and gutters of blanks between the columns."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import reduce
from operator import or_

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import CELLS, columns_of
from fit.document.text.line import Line
from fit.document.text.signs.strokes import ARROW, strength
from fit.document.text.tables.bars import bars_of, rule

SEVERAL = 3
"""Columns with names, at least, for which a single row is enough; and rows that show by themselves how they are set."""
_NAME = re.compile(r"[^\W\d_]{2}[^\d]*")
"""What a column is called: a word, and no figures."""


def boxed_columns(lines: Sequence[Line], sides: Sequence[int]) -> list[tuple[int, int]]:
    """The columns of a box with bars at its two ``sides`` alone, each up to the blank before the next one; or none.

    Rules of its width stand above, below and under one line of names. No row draws anything, no cell has a wide blank,
    and in each column all cells begin at one place or end at one.
    """
    rules = [index for index, line in enumerate(lines) if rule(line)]
    if rules[:2] != [0, 2] or rules[-1] != len(lines) - 1:
        return []
    left, right = sides[0] + 1, sides[-1]
    if any(abs(lines[index].end - 1 - right) > 1 for index in rules):
        return []
    content = [line for line in lines if not rule(line)]
    if any(bars_of(line) != list(sides) for line in content):
        return []
    inner = [line.cells[left:right] for line in content]
    columns = columns_of(reduce(or_, map(mask, inner)))
    body = len(inner) - 1
    if len(columns) < (2 if body > 1 else SEVERAL) or any(map(_draws, inner)):
        return []
    rows = [[text[first:last] for first, last in columns] for text in inner]
    names = [cell.strip(" ") for cell in rows[0]]
    whole = sum(all(cell.strip(" ") for cell in row) for row in rows[1:])
    if not all(map(_NAME.fullmatch, names)) or 2 * whole < body:
        return []
    shown = rows[1:] if body >= SEVERAL else rows
    if any(len(CELLS.findall(cell)) > 1 for row in rows for cell in row) or not all(
        map(_lined_up, zip(*shown, strict=True))
    ):
        return []
    ends = [*(left + first - 1 for first, _ in columns[1:]), right]
    return [(left + first, end) for (first, _), end in zip(columns, ends, strict=True)]


def _draws(text: str) -> bool:
    """Whether the line between two sides is more than words and figures."""
    text = text.strip(" ")
    return not text or strength(text) > 0 or ARROW.search(text) is not None


def _lined_up(cells: Sequence[str]) -> bool:
    """Whether all cells of a column begin at one place, or all end at one."""
    full = [cell for cell in cells if cell.strip(" ")]
    starts = {len(cell) - len(cell.lstrip(" ")) for cell in full}
    return len(starts) == 1 or len({len(cell.rstrip(" ")) for cell in full}) == 1
