"""Newspaper columns with a vertical rule between them: the rule is a gutter, and no side of a table."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from fit.document.blocks import Block
from fit.document.text.columns.gutters import cell
from fit.document.text.columns.newspaper import prose_columns
from fit.document.text.columns.own_ways import own_ways
from fit.document.text.line import Line, without_blanks

_BAR = re.compile("[|\u2502\u2503\u2551]")
LEAST = 5
"""Lines with a bar under one another, at least."""
CROOKED = 1
"""Cells by which a bar typed by hand may miss the first one."""


def find_barred(lines: Sequence[Line]) -> dict[int, int]:
    """The column of the bar for each line of two columns of running text that bars part."""
    return {
        index: _bar_near(lines[index], column)
        for start, end, column in _runs(lines)
        if _reads(lines[start:end], column)
        for index in range(start, end)
    }


def _runs(lines: Sequence[Line]) -> list[tuple[int, int, int]]:
    """The half-open runs of lines with a bar under one another, and its column; a box may stand beside it further down."""
    found: list[tuple[int, int, int]] = []
    start = 0
    while start < len(lines):
        column = bar_of(lines[start])
        end = start + 1
        while column and end < len(lines) and _bar_near(lines[end], column):
            end += 1
        if end - start >= LEAST:
            found.append((start, end, column))
        start = end
    return found


def _bar_near(line: Line, column: int) -> int:
    """The column of the only bar of a line that is near another column; of several bars the one right there; 0 for none."""
    bar = bar_of(line)
    if bar:
        return bar if abs(bar - column) <= CROOKED else 0
    beside = line.cells[column - 1 : column] + line.cells[column + 1 : column + 2]
    return column if _BAR.match(line.cells, column) and not beside.strip(" ") else 0


def barred_sides(
    lines: Sequence[Line], taken: Sequence[object], least: int
) -> Iterator[tuple[int, int, list[Line], list[Line]]]:
    """The half-open runs of ``least`` lines and more between blank lines with a bar at one column, and their two sides."""
    index = 0
    while index < len(lines):
        column = bar_of(lines[index]) if taken[index] is None else 0
        end = index + 1
        while column and end < len(lines) and taken[end] is None and not lines[end].apart:
            if bar_of(lines[end]) != column:
                break
            end += 1
        if column and end - index >= least:
            part = lines[index:end]
            yield (
                index,
                end,
                [line.cut(0, column) for line in part],
                [line.cut(column + 1, line.end) for line in part],
            )
        index = end


def read_sides(sides: Sequence[Sequence[Line]], read: Callable[[Sequence[Line]], list[Block]]) -> list[Block]:
    """The blocks of the left side, then those of the right one."""
    return [block for side in sides for block in read(without_blanks(side))]


def open_bar(line: Line, column: int) -> tuple[Line, Line]:
    """The line with a blank for the bar at ``column``, and the bar, which stands aside."""
    bar = line.cut(column, column + 1)
    bare = Line(f"{line.cells[:column]} {line.cells[column + 1 :]}".rstrip(" "), line.offset, line.resolved)
    bare.page, bare.ending, bar.aside = line.page, line.ending, True
    return bare, bar


def bar_of(line: Line) -> int:
    """The column of the one bar of a line, with blanks beside it; 0 where there is none."""
    if line.cells.isascii() and "|" not in line.cells:
        return 0
    found = [match.start() for match in _BAR.finditer(line.cells)]
    if len(found) != 1 or not found[0]:
        return 0
    beside = line.cells[found[0] - 1] + line.cells[found[0] + 1 : found[0] + 2]
    return 0 if beside.strip(" ") else found[0]


def _reads(part: Sequence[Line], column: int) -> bool:
    """Whether running text stands on both sides of the bars."""
    bare = [open_bar(line, _bar_near(line, column))[0] for line in part]
    left = [line.cells[:column].rstrip(" ") for line in bare if line.cells[:column].strip(" ")]
    right = [line.cells[column:] for line in bare if line.cells[column:].strip(" ")]
    if not left or not right:
        return False
    begin = min(len(text) - len(text.lstrip(" ")) for text in left)
    middle = column + min(len(text) - len(text.lstrip(" ")) for text in right)
    columns = [(begin, max(map(len, left))), (middle, max(line.end for line in bare))]
    return prose_columns(bare, columns) or own_ways(
        [[cell(line, columns, number) for line in bare] for number in range(2)]
    )
