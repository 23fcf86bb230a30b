"""Tables of figures that end at the same columns, under a head with as many names as each row has figures.

A long name stands over the gutter beside its figures, and a long figure fills the one before it: the order tells whose it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow, keep_lines

COLUMNS = 3
"""Columns of such a table, at least."""
ROWS = 3
"""Rows of it, at least."""
_NAME = re.compile(r"\S+(?: \S+)*")
_WORD = re.compile(r"\S+")
_FIGURE = re.compile(r"[-+$]?\d[\d.,]*%?")
Span = tuple[int, int]


def find_right_columns(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each as its block."""
    found: list[tuple[int, int, list[Block]]] = []
    for start in range(len(lines) - ROWS):
        head, below = lines[start], lines[start + 1]
        if below.apart or not below.text[:1].isdigit() or "  " not in head.text or taken[start] is not None:
            continue
        names = [match.span() for match in _NAME.finditer(head.cells)]
        if len(names) < COLUMNS or any(map(str.isdigit, head.text)) or not parted_above(lines, start):
            continue
        rows = _rows(lines, taken, start + 1, names)
        if len(rows) >= ROWS:
            table = _table(lines[start : start + 1 + len(rows)], [names, *rows], hyphens)
            found.append((start, start + 1 + len(rows), [table]))
    return found


def _rows(
    lines: Sequence[Line], taken: Sequence[object], start: int, names: Sequence[Span]
) -> list[list[Span]]:
    """The cells of the rows from ``start`` on; nothing where a line is none, or a name stands over none of its figures."""
    rows: list[list[Span]] = []
    for index in range(start, len(lines)):
        line = lines[index]
        if line.apart:
            break
        cells = [match.span() for match in _WORD.finditer(line.cells)]
        figures = all(_FIGURE.fullmatch(line.cells[first:last]) for first, last in cells)
        level = not rows or [last for _, last in cells] == [last for _, last in rows[0]]
        if taken[index] is not None or len(cells) != len(names) or not (figures and level):
            return []
        rows.append(cells)
    columns = list(zip(names, *rows, strict=True))
    over = all(
        first < cells[0][1] and last > min(cell[0] for cell in cells) for (first, last), *cells in columns
    )
    return rows if over else []


def _table(lines: Sequence[Line], spans: Sequence[Sequence[Span]], hyphens: Hyphens) -> Block:
    rows: tuple[tuple[Text, ...], ...] = tuple(
        tuple(flow([line.piece(*span)], hyphens) for span in cells)
        for line, cells in zip(lines, spans, strict=True)
    )
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=rows,
        header_rows=1,
        note="table of figures that end at the same columns",
    )
