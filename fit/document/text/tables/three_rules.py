"""Tables between three rules of one width, with names over several columns each, or with lines over all columns.

The rows between the lower two rules show the columns; what runs over the gutters of them all names a group of rows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import reduce
from operator import or_

from fit.document.blocks import Block, Kind, Text
from fit.document.parted_table import Row, part_table
from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import CELLS, columns_of
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.rules import ruled_off

TALLEST = 3
"""Lines of the head, at most."""
LEAST = 3
"""Columns, and rows, of such a table, at least."""
LONGEST = 200
"""Lines of such a table, at most."""
GROUPS = 2
"""Lines over all columns that show groups, at least: a single one may be anything."""
_STROKES = frozenset("-=_\u2500\u2550")
Span = tuple[int, int]
"""Half-open cells."""


def find_three_rules(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each with its blocks."""
    found: list[tuple[int, int, list[Block]]] = []
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or line.text[0] not in _STROKES or not ruled_off(line.text):
            continue
        inner = _same_rule(lines, index, TALLEST + 1)
        last = _same_rule(lines, inner, LONGEST) if inner > index + 1 else 0
        if last and not any(one is not None for one in taken[index : last + 1]):
            blocks = _table(lines[index + 1 : inner], lines[inner + 1 : last], hyphens)
            if len(blocks) == 1:
                blocks = [replace(blocks[0], lines=keep_lines(lines[index : last + 1]))]
            if blocks:
                found.append((index, last + 1, blocks))
                floor = last + 1
    return found


def _same_rule(lines: Sequence[Line], index: int, reach: int) -> int:
    """Where the rule of a line stands again, with no blank line between, within so many lines; or 0."""
    for place in range(index + 1, min(len(lines), index + 1 + reach)):
        if lines[place].gap:
            return 0
        if lines[place].cells == lines[index].cells:
            return place
    return 0


def _table(head: Sequence[Line], body: Sequence[Line], hyphens: Hyphens) -> list[Block]:
    """The table of the lines between the rules, in parts where lines run over all its columns; or nothing."""
    rows = [line for line in body if len(CELLS.findall(line.cells)) > 1]
    columns = columns_of(reduce(or_, (mask(line.cells) for line in rows), 0))
    if min(len(rows), len(columns)) < LEAST or any(ruled_off(line.text) for line in body):
        return []
    over = [line for line in body if line not in rows]
    if len(over) == 1 or any(line.indent > columns[0][0] or line.end <= columns[0][1] for line in over):
        return []
    if not all(line.cells[first:last].strip(" ") for line in rows for first, last in columns[:1]):
        return []
    names = _names(head, columns, hyphens)
    shared = any(
        sum(_beside(match.span(), column) for column in columns) > 1
        for line in head
        for match in CELLS.finditer(line.cells)
    )
    if not names or not (shared or len(over) >= GROUPS):
        return []
    edges = [0, *(first for first, _ in columns[1:])]
    ends = [*edges[1:], max(line.end for line in rows)]
    cells: list[Row | list[Block]] = [
        tuple(
            flow([line.piece(first, min(last, line.end))], hyphens)
            for first, last in zip(edges, ends, strict=True)
        )
        if line in rows
        else [Block(Kind.PARAGRAPH, flow([line.piece(0, line.end)], hyphens), note="name of a group of rows")]
        for line in body
    ]
    return [
        replace(block, note="table between three rules") if block.rows else block
        for block in part_table([names], cells, 0)
    ]


def _names(head: Sequence[Line], columns: Sequence[Span], hyphens: Hyphens) -> Row:
    """The names over each column, those of the upper lines that it shares with others first; or nothing where one has none."""
    names: list[list[Text]] = [[] for _ in columns]
    for line in head:
        for match in CELLS.finditer(line.cells):
            over = [place for place, column in enumerate(columns) if _beside(match.span(), column)]
            if not over or (len(over) > 1 and line is head[-1]):
                return ()
            name = flow([line.piece(*match.span())], hyphens)
            for place in over:
                names[place].append(name if place == over[0] else name.again())
    return tuple(flow(parts, hyphens) for parts in names) if all(names) else ()


def _beside(name: Span, column: Span) -> bool:
    """Whether a name stands over some of a column."""
    return name[0] < column[1] and name[1] > column[0]
