"""Tables as AsciiDoc has them in its source: `|===` above and below, and a bar before each cell, `| oil | 14`.

The bars need not stand below each other. A cell over several columns has their number before its bar, `4+| Stores`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.tables.heads import names_columns

LEAST = 2
"""Rows and columns, at least."""
TALLEST = 200
"""Lines of such a table, at most."""
_EDGE = re.compile(r"\|={3,}")
_BAR = re.compile(r"(?<!\S)([1-9]\d?)\+\||(?<!\\)\|")
_HEADED = re.compile(r"\[.*\bheader\b.*\]")


@dataclass(slots=True)
class _Cell:
    text: Text
    over: int
    """The columns that it goes over."""


def find_bar_led(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each with its blocks."""
    found: list[tuple[int, int, list[Block]]] = []
    start = 0
    while start < len(lines):
        end = _end(lines, taken, start) if lines[start].text[:2] == "|=" else 0
        blocks = _table(lines, start, end, hyphens) if end else []
        if blocks:
            found.append((start, end, blocks))
        start = end if blocks else start + 1
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The line after the lower edge of the table whose upper edge is the line at ``start``; 0 where it is none."""
    if not _EDGE.fullmatch(lines[start].text):
        return 0
    for index in range(start, min(len(lines), start + TALLEST)):
        line = lines[index]
        if taken[index] is not None or not _BAR.match(line.cells, line.indent):
            return 0
        if index > start and line.text == lines[start].text:
            return index + 1
    return 0


def _table(lines: Sequence[Line], start: int, end: int, hyphens: Hyphens) -> list[Block]:
    """The table, and the numbers of columns in it; nothing where its rows have not all as many cells."""
    content = lines[start + 1 : end - 1]
    grid = [_cells(line, hyphens) for line in content]
    widths = {sum(cell.over for cell in row) for row in grid}
    if len(grid) < LEAST or len(widths) != 1 or min(widths) < LEAST:
        return []
    headed = (start > 0 and _HEADED.fullmatch(lines[start - 1].text) is not None) or content[1].gap > 0
    rows = [_spread(row) for row in grid]
    if len(grid) > LEAST and any(cell.over > 1 for cell in grid[0]):
        rows = [_under(grid[0], rows[1], hyphens), *rows[2:]]
        headed = True
    texts = [[cell.chars for cell in row] for row in rows]
    table = Block(
        Kind.TABLE,
        lines=keep_lines([_without_numbers(line) for line in lines[start:end]]),
        rows=tuple(map(tuple, rows)),
        header_rows=1 if headed or names_columns(texts[0], texts[1:]) else 0,
        note="table with a bar before each cell",
    )
    numbers = tuple(line.piece(*bar.span(1)) for line in content for bar in _bars(line) if bar.group(1))
    return [table, Block(Kind.FURNITURE, lines=numbers)] if numbers else [table]


def _bars(line: Line) -> list[re.Match[str]]:
    return list(_BAR.finditer(line.cells))


def _cells(line: Line, hyphens: Hyphens) -> list[_Cell]:
    """The cells of a line."""
    bars = _bars(line)
    ends = [*(bar.start() for bar in bars[1:]), line.end]
    return [
        _Cell(flow([line.piece(bar.end(), end)], hyphens), int(bar.group(1) or 1))
        for bar, end in zip(bars, ends, strict=True)
    ]


def _spread(row: Sequence[_Cell]) -> list[Text]:
    """A cell for each column: those that one goes over are empty but for the first."""
    return [text for cell in row for text in (cell.text, *[Text()] * (cell.over - 1))]


def _under(upper: Sequence[_Cell], names: Sequence[Text], hyphens: Hyphens) -> list[Text]:
    """The names of the columns, each behind the one above it."""
    over = [
        cell.text.again() if place else cell.text for cell in upper for place in range(cell.over)
    ]  # a row says both, `Stores oil`
    return [flow([above, name], hyphens) for above, name in zip(over, names, strict=True)]


def _without_numbers(line: Line) -> Line:
    """The line with blanks for the numbers of columns before its bars."""
    held = line.resolved
    cells, chars = list(line.cells), list(held.chars if held else "")
    for bar in _bars(line):
        for column in range(*bar.span(1)) if bar.group(1) else ():
            cells[column : column + 2] = "  "
            if held:
                chars[held.starts[column]] = chars[held.starts[column + 1]] = " "
    return replace(line, cells="".join(cells), resolved=replace(held, chars="".join(chars)) if held else None)
