"""Groups of rows between two rules: each line with values of its own is a row, and the label beside them belongs to all."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.signs.measure import starts_small
from fit.document.text.tables.wrapped_cells import Cells, text_width, wraps

COLUMNS = 3
"""Columns of such a table, at least: a label, a key, what belongs to it."""
SEVERAL = 3
"""Lines below the first one of their group that begin a row, at least."""
FEW = 2
"""The same where each of them has a figure under a figure of the row above, which goes on in none."""
MOST = 0.6
"""The share of the cells beside the keys that have ended above the next row, at least."""


def row_groups(
    grid: Sequence[Cells], sections: Sequence[Sequence[int]], widths: Sequence[int]
) -> list[list[list[int]]] | None:
    """For each section the lines of each of its rows; None where the rules do not part groups of rows.

    They do where no key goes on in the one below, and most of what stands beside a key ended above the next one: the
    first word there would have had room.
    """
    if len(widths) < COLUMNS:
        return None
    groups = [_by_key(grid, section) for section in sections]
    starts = [row[0] for group in groups for row in group[1:]]
    if (
        len(starts) < (FEW if all(_figures(grid, group) for group in groups) else SEVERAL)
        or not _one_label_each(grid, sections)
        or any(_key_goes_on(grid, group, widths) for group in groups)
    ):
        return None
    if not all(any(grid[line][2:]) for group in groups for row in group for line in row if grid[line][1]):
        return None
    ended = [
        _ended(grid, start, column, widths)
        for start in starts
        for column in range(2, len(widths))
        if grid[start][column] and grid[start - 1][column]
    ]
    return groups if sum(ended) >= MOST * len(ended) else None


def centred_groups(grid: Sequence[Cells], sections: Sequence[Sequence[int]]) -> list[list[list[int]]] | None:
    """The same for a table without bars, where some labels stand below the first key of their group, or go on there."""
    if not any(_low(grid, section) or _goes_on(grid, section) for section in sections):
        return None
    widths = [text_width([cells[column] for cells in grid]) for column in range(len(grid[0]))]
    return row_groups(grid, sections, widths)


def _low(grid: Sequence[Cells], section: Sequence[int]) -> bool:
    """Whether the label of a group stands in none of its first and last lines, which have keys."""
    first, last = grid[section[0]], grid[section[-1]]
    ends = len(first) >= COLUMNS and not first[0] and not last[0] and bool(first[1] and last[1])
    return ends and any(grid[index][0] for index in section[1:-1])


def _goes_on(grid: Sequence[Cells], section: Sequence[int]) -> bool:
    """Whether the label of a group goes on in small letters beside its second key, which is none of the first's words."""
    if len(section) < 2 or len(grid[section[0]]) < COLUMNS:
        return False
    first, second = grid[section[0]], grid[section[1]]
    return bool(first[0]) and starts_small(second[0]) and first[1][:1].isupper() and second[1][:1].isupper()


def _by_key(grid: Sequence[Cells], section: Sequence[int]) -> list[list[int]]:
    """The lines of a section, parted before each one with a key but the first."""
    keyed = [index for index in section if grid[index][1]]
    bounds = [section[0], *keyed[1:], section[-1] + 1]
    return [list(range(first, last)) for first, last in pairwise(bounds)]


def _one_label_each(grid: Sequence[Cells], sections: Sequence[Sequence[int]]) -> bool:
    """Whether no section has a second label, and a key in some of them stands beside none."""
    labels = [[index for index in section if grid[index][0]] for section in sections]
    one = all(
        below == above + 1 and (starts_small(grid[below][0]) or grid[below][0][0] == "(")
        for lines in labels
        for above, below in pairwise(lines)
    )
    return one and any(row[1] and not row[0] for row in grid)


def _key_goes_on(grid: Sequence[Cells], group: Sequence[Sequence[int]], widths: Sequence[int]) -> bool:
    keyed = [index for row in group for index in row if grid[index][1]]
    return any(wraps(grid, above, below, 1, widths[1]) for above, below in pairwise(keyed))


def _ended(grid: Sequence[Cells], start: int, column: int, widths: Sequence[int]) -> bool:
    """Whether a cell ends above a line: what stands there would have had room beside it."""
    return _room(grid[start - 1][column], grid[start][column], widths[column])


def _figures(grid: Sequence[Cells], group: Sequence[Sequence[int]]) -> bool:
    """Whether each row of a group has figures in the columns in which the row above has them: two, at least."""
    columns = range(1, len(grid[0]))
    under = ([column for column in columns if grid[above[0]][column][:1].isdigit()] for above in group[:-1])
    return all(
        len(held) > 1 and all(grid[below[0]][column][:1].isdigit() for column in held)
        for held, below in zip(under, group[1:], strict=True)
    )


def _room(above: str, below: str, width: int) -> bool:
    """Whether the first word of the cell below had room; figures are never wrapped."""
    figures = above[0].isdigit() and below[0].isdigit()
    return figures or len(above) + 1 + len(below.split(maxsplit=1)[0]) <= width
