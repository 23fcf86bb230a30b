"""Runs that start higher or end lower than their gutters alone show: with rows whose cells one blank parts, or labels in the middle."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import GUTTER, Run, has_gutter, near
from fit.document.text.line import Line
from fit.document.text.signs.code import code, command
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.rules import segmented

FULL = 20
"""Cells of a key of several words that fills its column, at most: text is likely to have a word's end anywhere."""


def raise_run(lines: Sequence[Line], taken: Sequence[object], run: Run, floor: int) -> None:
    """Let a run start higher: with rows whose cells one blank parts, or with the text beside a label centred below.

    Let it end lower, too, with rows whose keys fill their column as another one does.
    """
    if len(run.columns) < 2:
        return
    start = run.start
    while start > floor and near(lines, taken, start):
        if _tight_row(lines[start - 1], run.columns):
            start -= 1
        elif _rest_of_tight_row(lines, taken, run, start, floor):
            start -= 2
        else:
            break
    if start == run.start and start > floor and near(lines, taken, start) and _wrapped_key(lines, run):
        start -= 1
    if start == run.start:
        while start > floor and near(lines, taken, start) and _beside_label(lines[start - 1], run.columns):
            start -= 1
        if start < run.start and not centred(lines, Run(start, run.end, run.columns)):
            return
    run.rules |= {index for index in range(start, run.start) if segmented(lines[index].text)}
    run.start = start
    while run.end < len(lines) and near(lines, taken, run.end) and _full_row(lines, run):
        run.end += 1


def _wrapped_key(lines: Sequence[Line], run: Run) -> bool:
    """Whether the line above is the beginning of the first row's key, which goes on in small letters beside its cells."""
    above, first = lines[run.start - 1], lines[run.start]
    fits = above.indent == run.columns[0][0] and above.end + GUTTER <= run.columns[1][0]
    fits = fits and " " in above.text and not closed(above.text)
    fits = fits and not (code(above.text) or command(above.text))
    return fits and first.indent == above.indent and starts_small(first.text) and not has_gutter(above)


def centred(lines: Sequence[Line], run: Run) -> bool:
    """Whether rows of a run start, after a blank line, with the text beside a label that stands lower: two at least."""
    first = run.start == 0 or _label_below(lines, run.start, run.columns)
    later = (_label_below(lines, index, run.columns) for index in range(run.start + 1, run.end))
    return first and _beside_label(lines[run.start], run.columns) and any(later)


def _tight_row(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line without gutters has a cell at the start of each column, and a single word before the second.

    Several words may stand there that fill the column of the keys up to its last cell but one.
    """
    if line.indent != columns[0][0] or has_gutter(line):
        return False
    begins = all(line.cells[start - 1 : start] == " " for start, _ in columns[1:])
    key = line.cells[line.indent : columns[1][0]].rstrip()
    if not begins or " " not in key:
        return begins
    full = len(key) == columns[1][0] - 1 - line.indent <= FULL and line.cells[columns[1][0]].isalnum()
    return full and not (prose(line.text) or closed(line.text))


def _rest_of_tight_row(
    lines: Sequence[Line], taken: Sequence[object], run: Run, start: int, floor: int
) -> bool:
    """Whether the text of a row that one blank parts goes on in the line above, and stands there at its column."""
    if len(run.columns) != 2 or start - 1 <= floor or lines[start - 1].indent != run.columns[1][0]:
        return False
    return near(lines, taken, start - 1) and _tight_row(lines[start - 2], run.columns)


def _full_row(lines: Sequence[Line], run: Run) -> bool:
    """Whether the line below a run is a row of cells that one blank parts, its key of several words as wide as another's."""
    return _wide_key(lines[run.end], run.columns) and any(
        _wide_key(line, run.columns) for line in lines[run.start : run.end]
    )


def _wide_key(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    return " " in line.cells[line.indent : columns[1][0] - 1].rstrip() and _tight_row(line, columns)


def _label_below(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a row starts with the text beside a label that stands lower."""
    return lines[index].gap > 0 and not lines[index].crossing and _beside_label(lines[index], columns)


def _beside_label(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has text in the second column, and none in the first."""
    return line.indent == columns[1][0]
