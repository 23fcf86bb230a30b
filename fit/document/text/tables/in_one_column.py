"""Bars within one column of a page: they are a drawing in it, and part no cells from the text of the column beside it."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import Run, cell
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose
from fit.document.text.tables.bars import BARS, bars_of


def behind_text(part: Sequence[Line]) -> bool:
    """Whether running text, and then a wide blank, stand before all bars of some line."""
    return any(
        (bars := bars_of(line))
        and line.cells[: bars[0]].endswith("  ")
        and prose(line.cells[: bars[0]].strip())
        for line in part
    )


def in_one_column(lines: Sequence[Line], pages: Sequence[Run], start: int, end: int) -> bool:
    """Whether lines ``start <= i < end`` of a page of columns have bars in one column, and text in another, alone."""
    page = next((run for run in pages if run.start <= start and end <= run.end), None)
    if page is None:
        return False
    numbers = range(len(page.columns))
    drawn = {
        number
        for line in lines[start:end]
        for number in numbers
        if not set(BARS).isdisjoint(cell(line, page.columns, number))
    }
    return len(drawn) == 1 and any(
        prose(cell(line, page.columns, number))
        for line in lines[start:end]
        for number in numbers
        if number not in drawn
    )
