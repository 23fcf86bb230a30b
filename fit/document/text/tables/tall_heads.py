"""Heads of several lines that a blank line parts from their table, with or without a word over its keys."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.tables.heads import plain_names, tells

TALLEST = 3
"""Lines of such a head, at most."""
FIGURES = 0.6
"""The share of cells beside the keys that have figures, at least: rows without a key may stand above others, too."""
Found = tuple[int, int, list[Block]]


def tall_head(lines: Sequence[Line], taken: Sequence[object], found: Sequence[Found], run: Run) -> int:
    """Where the lines begin, right above a run, that may be such a head: a small table by themselves, or free; or the run."""
    below = lines[run.start]
    if below.gap != 1 or below.crossing:
        return run.start
    if found and found[-1][1] == run.start:
        start, end, blocks = found[-1]
        small = end - start <= TALLEST and len(blocks) == 1 and blocks[0].kind is Kind.TABLE
        return start if small and not blocks[0].header_rows else end
    floor = max(found[-1][1] if found else 0, run.start - TALLEST)
    start = run.start - 1
    while start > floor and taken[start - 1] is None and not lines[start].apart:
        start -= 1
    free = start >= floor and taken[start] is None and lines[start].gap and run.start - start > 1
    return start if free else run.start


def with_tall_head(
    lines: Sequence[Line], start: int, run: Run, table: Block, hyphens: Hyphens
) -> Block | None:
    """The table with the lines from ``start`` on above it as its head; None where they do not name each column.

    A word over the keys too is a name where all the names look like some, and the rows below stand close.
    """
    if start == run.start or table.header_rows or len(run.columns) < 3:
        return None
    if not all(row[0].chars for row in table.rows):
        return None
    cells = [cell.chars for row in table.rows for cell in row[1:] if cell.chars]
    if sum(any(map(str.isdigit, text)) for text in cells) < FIGURES * len(cells):
        return None
    names: list[list[Text]] = [[] for _ in run.columns]
    for line in lines[start : run.start]:
        for match in CELLS.finditer(line.cells):
            over = [number for number, column in enumerate(run.columns) if _over(match.span(), column)]
            if len(over) != 1:
                return None
            names[over[0]].append(line.piece(*match.span()))
    head = tuple(flow(pieces, hyphens) for pieces in names)
    texts = [text.chars for text in head]
    if not all(texts[1:]) or tells(texts):
        return None
    if texts[0] and not (plain_names(texts) and _close(lines, run)):
        return None
    return replace(table, lines=keep_lines(lines[start : run.end]), rows=(head, *table.rows), header_rows=1)


def _close(lines: Sequence[Line], run: Run) -> bool:
    """Whether no blank line parts a row with a key from the one above it: one above them all parts something else."""
    keyed = (line for line in lines[run.start + 1 : run.end] if line.indent == run.columns[0][0])
    return not any(line.gap for line in keyed)


def _over(part: tuple[int, int], column: tuple[int, int]) -> bool:
    return part[0] < column[1] and part[1] > column[0]
