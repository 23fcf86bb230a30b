"""Physical lines of a table to its rows: a cell may be wrapped over several lines, its label centred beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.measure import hangs, starts_small

WORD = 3
"""Letters below which a key is a sign and no word that could have been wrapped."""
BROAD = 24
"""Cells of a column of which a full one, and not just the longest phrase, goes on with a capital."""
UNWRAPPED = 10**6
Cells = Sequence[str]
_SENTENCES = re.compile(r"(?<=[.!?:])  (?=\S)")


def group_rows(grid: Sequence[Cells], fresh: Sequence[bool], drawn: Sequence[int] = ()) -> list[list[int]]:
    """The lines of each row. ``fresh`` says before which lines a rule or a blank line stands.

    ``drawn`` has the widths of the columns where the table was drawn with bars.
    """
    widths = drawn or [_width([cells[column] for cells in grid]) for column in range(len(grid[0]))]
    sections: list[list[int]] = []
    for index in range(len(grid)):
        if fresh[index] or not sections:
            sections.append([index])
        else:
            sections[-1].append(index)
    tall = [section for section in sections if len(section) > 1]
    if drawn and len(sections) > 1 and _keyed_once(grid, sections):
        return sections
    if len(sections) > 1 and tall and all(_one_row(grid, section, widths) for section in tall):
        return sections
    return [row for section in sections for row in _by_line(grid, section, widths)]


def _width(cells: Cells) -> int:
    """The width at which a column's text was wrapped; beyond any where none of its cells has two words."""
    return max(map(len, cells)) if any(" " in cell for cell in cells) else UNWRAPPED


def _keyed_once(grid: Sequence[Cells], sections: Sequence[Sequence[int]]) -> bool:
    """Whether half of the sections between rules have one key each: the rules part rows, not groups of them."""
    once = sum(sum(bool(grid[index][0]) for index in section) == 1 for section in sections)
    return 2 * once >= len(sections)


def _one_row(grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int]) -> bool:
    """Whether a section is one row: a column is filled once, and the others read as wrapped."""
    filled = [sum(bool(grid[index][column]) for index in section) for column in range(len(widths))]
    if max(filled) < 2:
        return True
    wrapped = sum(
        _wraps(grid, above, below, column, widths[column])
        for above, below in pairwise(section)
        for column in range(len(widths))
        if grid[above][column] and grid[below][column]
    )
    breaks = sum(
        bool(grid[above][column] and grid[below][column])
        for above, below in pairwise(section)
        for column in range(len(widths))
    )
    worded = all(len(grid[index][0]) >= WORD and grid[index][0][0].isalpha() for index in section)
    return (min(filled) <= 1 and wrapped >= 0.5 * breaks) or (worded and wrapped == breaks)


def _wraps(grid: Sequence[Cells], above: int, below: int, column: int, width: int) -> bool:
    """Whether a cell goes on below: the next word had no room, or a sentence goes on."""
    first, second = (_SENTENCES.sub(" ", grid[line][column]) for line in (above, below))
    if "   " in first or "   " in second or (first[0].isdigit() and second[0].isdigit()):
        return False
    full = len(first) + 1 + len(second.split()[0]) > width
    if not starts_small(second) and not hangs(first):
        full = full and width >= BROAD
    return full or first.endswith((",", "-")) or (starts_small(second) and len(first.split()) > 2)


def _by_line(grid: Sequence[Cells], section: Sequence[int], widths: Sequence[int]) -> list[list[int]]:
    rows: list[list[int]] = []
    for index in section:
        if rows and _continues(grid, rows[-1], index, widths):
            rows[-1].append(index)
        else:
            rows.append([index])
    return rows


def _continues(grid: Sequence[Cells], row: Sequence[int], index: int, widths: Sequence[int]) -> bool:
    cells = grid[index]
    if cells[0] and any(cells[1:]) and grid[row[-1]][0] and not any(any(grid[line][1:]) for line in row):
        return (
            cells[0][0].islower()
            and grid[row[0]][0][0].isalpha()
            and _wraps(grid, row[-1], index, 0, widths[0])
        )
    filled = [column for column, cell in enumerate(cells) if cell]
    if len(filled) == len(widths) and not _all_small(grid, row, index):
        return False
    above = row[-1]
    if any(not grid[above][column] for column in filled):
        return False
    if not all(_wraps(grid, above, index, column, widths[column]) for column in filled):
        return False
    if not cells[0]:
        return True
    if filled == [0] and _single_words(grid) and not (starts_small(cells[0]) and grid[above][0][0].isupper()):
        return False
    if _single_words(grid) and filled != [0] and not grid[above][0].endswith((",", "-")):
        return False
    if not cells[0][0].isalpha() or min(len(cells[0]), len(grid[above][0])) < WORD:
        return False
    return starts_small(cells[0]) or len(grid[above][0]) + 1 + len(cells[0].split()[0]) > widths[0]


def _all_small(grid: Sequence[Cells], row: Sequence[int], index: int) -> bool:
    """Whether each cell of a full line goes on in small letters below a row that starts with a capital."""
    return grid[row[0]][0][:1].isupper() and all(starts_small(cell) for cell in grid[index])


def _single_words(grid: Sequence[Cells]) -> bool:
    """Whether no key of the table has two words, so that its column's width says nothing about wrapping."""
    return all(" " not in cells[0] for cells in grid)
