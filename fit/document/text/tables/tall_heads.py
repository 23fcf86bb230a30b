"""Heads of several lines that a blank line parts from their table, with no word over its keys."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.tables.heads import tells

TALLEST = 3
"""Lines of such a head, at most."""
FIGURES = 0.6
"""The share of cells beside the keys that have figures, at least: rows without a key may stand above others, too."""
Found = tuple[int, int, list[Block]]


def with_tall_head(
    lines: Sequence[Line], above: Found, run: Run, table: Block, hyphens: Hyphens
) -> Block | None:
    """The table with the small one right above it as its head; None where that one has no name for each column."""
    start, end, blocks = above
    if end != run.start or end - start > TALLEST or len(blocks) != 1 or blocks[0].kind is not Kind.TABLE:
        return None
    if table.header_rows or blocks[0].header_rows or lines[end].gap != 1 or lines[end].crossing:
        return None
    if len(run.columns) < 3 or not all(row[0].chars for row in table.rows):
        return None
    cells = [cell.chars for row in table.rows for cell in row[1:] if cell.chars]
    if sum(any(map(str.isdigit, text)) for text in cells) < FIGURES * len(cells):
        return None
    names: list[list[Text]] = [[] for _ in run.columns]
    for line in lines[start:end]:
        for match in CELLS.finditer(line.cells):
            over = [number for number, column in enumerate(run.columns) if _over(match.span(), column)]
            if len(over) != 1:
                return None
            names[over[0]].append(line.piece(*match.span()))
    if names[0] or not all(names[1:]):
        return None
    head = tuple(flow(pieces, hyphens) for pieces in names)
    if tells([text.chars for text in head]):
        return None
    return replace(table, lines=keep_lines(lines[start : run.end]), rows=(head, *table.rows), header_rows=1)


def _over(part: tuple[int, int], column: tuple[int, int]) -> bool:
    return part[0] < column[1] and part[1] > column[0]
