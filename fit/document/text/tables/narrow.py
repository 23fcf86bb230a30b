"""Tables whose columns are so narrow that one blank parts the names over them: each cell begins or ends where its name does.

Such a table begins after a blank line or a page end and goes on to the next one; the first line names the columns.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.code import prompted
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off, segmented

CELLS = 5
"""Cells of a row, at least: so many words stand right under others by no chance."""
FIGURES = 0.4
"""The share of the cells that hold figures, at least: words under words may be verse."""
_WORD = re.compile(r"\S+")
Span = tuple[int, int]


def find_narrow(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each as its block."""
    found: list[tuple[int, int, list[Block]]] = []
    for start in range(len(lines) - 1):
        line, below = lines[start], lines[start + 1]
        if below.apart or not parted_above(lines, start) or taken[start] is not None:
            continue
        names = _spans(line)
        cells = _spans(below)
        if len(cells) < CELLS or len(names) < CELLS or prompted(line.text) or prose(line.text):
            continue
        columns = _columns(names, cells)
        end = _end(lines, taken, start + 1, columns) if columns else start
        if end > start + 1 and _figured(lines, start, end, columns):
            found.append((start, end, [_table(lines[start:end], columns, hyphens)]))
    return found


def _spans(line: Line) -> list[Span]:
    """The half-open cells of each word."""
    return [match.span() for match in _WORD.finditer(line.cells)]


def _columns(names: Sequence[Span], cells: Sequence[Span]) -> list[Span]:
    """The cells of each name, several words where only the first stands over a cell; nothing where a cell has no name.

    A first name without cells, ``(0, 0)``, is that of keys that have none.
    """
    columns: list[Span] = []
    place = 0
    if cells[0][1] < names[0][0]:
        columns.append((0, 0))
        place = next(
            index for index, cell in enumerate(cells) if cell[1] >= names[0][0] or index == len(cells) - 1
        )
    for first, last in names:
        if place < len(cells) and _meets((first, last), cells[place]):
            columns.append((first, last))
            place += 1
        elif columns and columns[-1][1] == first - 1:
            columns[-1] = (columns[-1][0], last)
        else:
            return []
    tight = any(second[0] - first[1] == 1 for first, second in pairwise(columns) if first[1])
    return columns if place == len(cells) and tight else []


def _meets(name: Span, cell: Span) -> bool:
    """Whether a cell begins or ends where its name does."""
    return name[0] == cell[0] or name[1] == cell[1]


def _row(line: Line, columns: Sequence[Span]) -> list[Span]:
    """The cells of a row, one under each name; nothing where one of them stands elsewhere."""
    spans = _spans(line)
    keyed = columns[0] == (0, 0)
    count = len(columns) - keyed
    if len(spans) < len(columns) or (len(spans) > len(columns) and not keyed):
        return []
    rest = spans[len(spans) - count :]
    if not all(_meets(*pair) for pair in zip(columns[keyed:], rest, strict=True)):
        return []
    return [(spans[0][0], spans[-count - 1][1]), *rest] if keyed else rest


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, columns: Sequence[Span]) -> int:
    """The end of the rows from ``start`` on; 0 where a line that is none stands right below them."""
    end = start
    while end < len(lines) and not lines[end].apart:
        line = lines[end]
        if taken[end] is not None or ruled_off(line.text) or segmented(line.text) or not _row(line, columns):
            return 0
        end += 1
    return end


def _figured(lines: Sequence[Line], start: int, end: int, columns: Sequence[Span]) -> bool:
    """Whether many cells hold figures, and the head is no row of them itself: it has no key, or no figures."""
    cells = [line.cells[first:last] for line in lines[start + 1 : end] for first, last in _row(line, columns)]
    figures = sum(any(map(str.isdigit, text)) for text in cells)
    named = columns[0] == (0, 0) or not any(map(str.isdigit, lines[start].text))
    return named and figures >= FIGURES * len(cells)


def _table(lines: Sequence[Line], columns: Sequence[Span], hyphens: Hyphens) -> Block:
    head, *body = lines
    rows: list[tuple[Text, ...]] = [tuple(flow([head.piece(*span)], hyphens) for span in columns)]
    rows += [tuple(flow([line.piece(*span)], hyphens) for span in _row(line, columns)) for line in body]
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple(rows),
        header_rows=1,
        note="table with narrow columns",
    )
