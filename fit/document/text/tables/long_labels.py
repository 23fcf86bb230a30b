"""Rows of a filled form whose label is too long for its column: it stands alone, and what was filled in under the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines

COLUMNS = 2
"""Columns of such a form: labels, and what stands behind them."""


def with_long_labels(
    lines: Sequence[Line], taken: Sequence[object], run: Run, table: Block, hyphens: Hyphens
) -> tuple[int, Block]:
    """Where the form ends that a table of labels with colons is, and the table with its last rows."""
    labels = [row[0].chars for row in table.rows]
    named = table.kind is Kind.TABLE and len(run.columns) == COLUMNS and not table.header_rows
    if not named or not all(label.endswith(":") for label in labels):
        return run.end, table
    rows: list[tuple[Text, ...]] = []
    end = run.end
    while end + 1 < len(lines) and taken[end] is None:
        line = lines[end]
        if line.apart or line.indent != run.columns[0][0] or not line.text.endswith(":"):
            break
        last = end + 1
        while last < len(lines) and not lines[last].apart and lines[last].indent == run.columns[1][0]:
            last += 1
        if last == end + 1:
            break
        rest = [below.piece(below.indent, below.end) for below in lines[end + 1 : last]]
        rows.append((flow([line.piece(line.indent, line.end)], hyphens), flow(rest, hyphens)))
        end = last
    kept = keep_lines(lines[run.start : end]) if rows else table.lines
    return end, replace(table, rows=(*table.rows, *rows), lines=kept)
