"""Tables that go on at their right, where the names of their columns stand again: each part has rows of its own height."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, zip_longest

from fit.document.text.tables.rows import group_rows
from fit.document.text.tables.wrapped_cells import Cells

MOST = 4
"""Parts of a table side by side, at most."""


def parts_beside(names: Cells) -> list[range]:
    """The columns of each part; none where the names of the columns, two or more, do not come again in their order."""
    for count in range(2, MOST + 1):
        size, rest = divmod(len(names), count)
        heads = [list(names[first : first + size]) for first in range(0, size * count, size or 1)]
        if (
            rest == 0
            and size > 1
            and all(heads[0])
            and len(set(heads[0])) == size
            and heads.count(heads[0]) == count
        ):
            return [range(first, first + size) for first in range(0, len(names), size)]
    return []


def rows_beside(
    grid: Sequence[Cells], fresh: Sequence[bool], parts: Sequence[range], start: int
) -> list[list[list[int]]]:
    """The rows from a line on: for each the lines of its cells, column by column; the rows of a part are counted by themselves."""
    found: list[list[list[int]]] = []
    for part in parts:
        held = [index for index in range(start, len(grid)) if any(grid[index][column] for column in part)]
        cells = [[grid[index][column] for column in part] for index in held]
        new = [any(fresh[above + 1 : index + 1]) for above, index in pairwise([start - 1, *held])]
        found.append([[held[place] for place in group] for group in group_rows(cells, new)])
    return [
        [list(lines) for part, lines in zip(parts, rows, strict=True) for _ in part]
        for rows in zip_longest(*found, fillvalue=())
    ]
