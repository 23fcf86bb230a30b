"""Lists of keys whose meanings stand behind dashes at one column: a key that fills its column, and a title over the list."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import Run, cell, near
from fit.document.text.line import Line

_DASH = "- "


def title_over(lines: Sequence[Line], run: Run) -> bool:
    """Whether the first line of a run stands left of all others, which leave its column empty, and is no whole row itself."""
    columns = run.columns
    if len(columns) < 3 or run.end - run.start < 3 or run.start + 1 in run.rules:
        return False
    if lines[run.start + 1].apart or cell(lines[run.start], columns, len(columns) - 1):
        return False
    below = lines[run.start + 1 : run.end]
    return min(line.indent for line in below) >= columns[1][0] and all(
        line.cells[columns[2][0] :].startswith(_DASH) for line in below
    )


def with_full_keys(lines: Sequence[Line], taken: Sequence[object], run: Run) -> int:
    """The end of a run of keys with dashes before all meanings, and of the rows below it whose keys leave one blank."""
    end = run.end
    if len(run.columns) != 2:
        return end
    column, indent = run.columns[1][0], lines[run.start].indent
    if not all(_dashed(line, indent, column) for line in lines[run.start : end]):
        return end
    while end < len(lines) and near(lines, taken, end) and _dashed(lines[end], indent, column):
        end += 1
    return end


def _dashed(line: Line, indent: int, column: int) -> bool:
    """Whether a key begins a line, and a dash stands at the column, a blank on either side of it."""
    return line.indent == indent and line.cells[column - 1 : column + 2] == f" {_DASH}"
