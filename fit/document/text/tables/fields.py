"""Fields of program text with their meanings beside them: `long wicks;   wicks in store`, one row a declaration.

Both sides can look like running text, so that they are taken for two newspaper columns or for a list.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import GUTTER
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose

ROWS = 2
"""Fields with their meanings beside them, at least."""
DEEPER = 4
"""Cells by which a meaning below its field stands deeper, at least."""
_FIELD = re.compile(r"[^\W\d][^;{}]*(?:;|\{)|\}[^;{}]*;")
_ROW = re.compile(rf"(?:{_FIELD.pattern}) +(?=[\w(\"'])")


def find_fields(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such lists, each as a table."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        column = _column(lines, index) if taken[index] is None and ";" in lines[index].text else 0
        end = _end(lines, taken, index, column) if column else index
        rows = _rows(lines[index:end], column)
        if _shown(lines[index:end], column) and _told(rows):
            found.append((index, end, [_table(lines[index:end], rows, hyphens)]))
            index = end
        else:
            index += 1
    return found


def _beside(line: Line) -> int:
    """Where the meaning beside a field starts; 0 where a line is no field with a meaning."""
    match = _ROW.match(line.text)
    return 0 if match is None else line.indent + match.end()


def _alone(line: Line) -> bool:
    return _FIELD.fullmatch(line.text) is not None


def _column(lines: Sequence[Line], index: int) -> int:
    """The column of the meanings, by the first field: beside it after a gutter, or below a field too long for it."""
    line = lines[index]
    column = _beside(line)
    if column:
        return column if line.cells[:column].endswith(" " * GUTTER) else 0
    below = lines[index + 1] if index + 1 < len(lines) else None
    if below is None or below.gap or not _alone(line) or below.indent < line.indent + DEEPER:
        return 0
    return below.indent


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, column: int) -> int:
    """The line before which the run ends: fields, with or without a meaning at the column, and the rest of meanings."""
    end = start
    while end < len(lines) and taken[end] is None and (end == start or not lines[end].gap):
        line = lines[end]
        if line.indent < column and not _alone(line) and _beside(line) < column:
            break
        end += 1
    return end


def _rows(lines: Sequence[Line], column: int) -> list[tuple[list[Text], list[Text]]]:
    """The pieces of each field and of its meaning."""
    rows: list[tuple[list[Text], list[Text]]] = []
    for line in lines:
        start = column if line.indent >= column else _beside(line) or line.end
        if line.indent < column:
            rows.append(([line.piece(0, start)], []))
        if line.end > start:
            rows[-1][1].append(line.piece(start, line.end))
    return rows


def _shown(lines: Sequence[Line], column: int) -> bool:
    """Whether fields enough have their meaning right at the column."""
    return sum(_beside(line) == column for line in lines) >= ROWS


def _told(rows: Sequence[tuple[list[Text], list[Text]]]) -> bool:
    """Whether the fields are no clauses of a sentence, and their meanings no program text."""
    clauses = sum(prose(piece.chars) for field, _ in rows for piece in field)
    return 2 * clauses < len(rows) and not any(code(piece.chars) for _, rest in rows for piece in rest)


def _table(lines: Sequence[Line], rows: Sequence[tuple[list[Text], list[Text]]], hyphens: Hyphens) -> Block:
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple((flow(field, hyphens), flow(meaning, hyphens)) for field, meaning in rows),
        note="fields of program text with their meanings",
    )
