"""Tables whose columns colons part: `Oil : 2s : A`, two of them or more at the same places of each line.

One colon alone parts keys from what they mean, and makes no table.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.gutters import Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.signs.rules import ruled_off
from fit.document.text.tables.grid import make_table

LEAST = 2
"""Colons of a row, and rows, at least."""
_COLON = re.compile(r"(?<!\S):(?!\S)")
_WIDE = re.compile(r"  :|:  ")


def find_colon_tables(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each as its block."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        if lines[index].text.count(" :") < LEAST or taken[index] is not None:
            index += 1
            continue
        end, grid = _grow(lines, taken, index)
        if grid:
            found.append((index, end, [_table(lines[index:end], grid, hyphens)]))
        index = max(end, index + 1)
    return found


def _colons(line: Line) -> list[int]:
    """The columns of the colons of a line that have blanks on both sides."""
    return [match.start() for match in _COLON.finditer(line.cells)] if ":" in line.cells else []


def _grow(lines: Sequence[Line], taken: Sequence[object], start: int) -> tuple[int, list[int]]:
    """The end of the table that may begin at a line, and the columns of its colons; none where it is no table."""
    grid = _colons(lines[start])
    if len(grid) < LEAST:
        return start + 1, []
    rows = [start]
    end = start
    for index in range(start + 1, len(lines)):
        line = lines[index]
        if taken[index] is not None or line.gap > 1:
            break
        if _colons(line) == grid or (_colons(line) and _partly(line, grid)):
            rows.append(index)
            end = index
        elif not (ruled_off(line.text) or (line.end <= grid[0] and not line.gap)):
            break
    ruled = any(ruled_off(line.text) for line in lines[start : end + 1])
    wide = Counter(bool(_WIDE.search(lines[index].cells)) for index in rows)[True]
    if len(rows) < LEAST + (not ruled) or wide * 2 < len(rows) or _pairs(lines, rows, grid):
        return start + 1, []
    return end + 1, grid


def _partly(line: Line, grid: Sequence[int]) -> bool:
    """Whether a line has colons at places of the table alone, and blanks at the others."""
    return all(column in grid for column in _colons(line)) and all(
        line.cells[column : column + 1] in {"", " ", ":"} for column in grid
    )


def _pairs(lines: Sequence[Line], rows: Sequence[int], grid: Sequence[int]) -> bool:
    """Whether wide blanks part what stands between two colons: the end of one entry and the name of the next.

    Or whether nothing stands there: the colons are drawn.
    """
    inner = [
        lines[index].cells[first + 1 : last].strip(" ") for index in rows for first, last in pairwise(grid)
    ]
    return not any(inner) or sum("  " in text for text in inner) * 2 >= len(rows)


def _table(lines: Sequence[Line], grid: Sequence[int], hyphens: Hyphens) -> Block:
    """The table, its colons left out but for a table that stays as it is drawn."""
    bare = [_open(line, grid) for line in lines]
    right = max(line.end for line in bare)
    edges = [-1, *grid, right]
    columns = [
        (first + 1, last)
        for first, last in pairwise(edges)
        if any(line.cells[first + 1 : last].strip(" ") for line in bare)
    ]
    rules = {index for index, line in enumerate(lines) if ruled_off(line.text)}
    table = make_table(bare, Run(0, len(bare), columns, rules), hyphens)
    return replace(table, lines=keep_lines(lines), note="table with colons between its columns")


def _open(line: Line, grid: Sequence[int]) -> Line:
    """The line with blanks for the colons of the table."""
    colons = [column for column in grid if line.cells[column : column + 1] == ":"]
    held = line.resolved
    cells, chars = list(line.cells), list(held.chars if held else "")
    for column in colons:
        cells[column] = " "
        if held:
            chars[held.starts[column]] = " "
    held = replace(held, chars="".join(chars)) if held else None
    return replace(line, cells="".join(cells).rstrip(" "), resolved=held)
