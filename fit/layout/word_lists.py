"""Words in alphabetical order that stand in columns, too wide for the screen: set in as many columns as there is room for.

Such a table has no rows: nothing but their order tells where a word stands. Those that are read down their columns
stand in panels of whole columns, from left to right; those that are read across go on in the next line.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Text
from fit.layout.flowing import Setter
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, in_one_line, inserted
from fit.width import text_cells

GUTTER = 2
"""Blanks between two columns."""
COLUMNS = 3
"""Columns of such a list, at least; with two, the one may explain the other."""
ROWS = 3
"""Rows, at least: fewer words are in order by chance."""


def word_list(block: Block, setter: Setter, indent: int) -> list[Line] | None:
    """The words of a table without a header whose words are in order; None for other tables."""
    rows = [[in_one_line(cell) for cell in row] for row in block.rows]
    if block.header_rows or len(rows) < ROWS or len(rows[0]) < COLUMNS:
        return None
    across = [cell for row in rows for cell in row if cell.chars]
    down = [cell for column in zip(*rows, strict=True) for cell in column if cell.chars]
    if not all(cell.chars[0].isalpha() and " " not in cell.chars for cell in across):
        return None
    widest = max(text_cells(cell.chars) for cell in across)
    room = setter.width - indent
    if widest > room:
        return None
    if _in_order(down):
        return _panels(list(zip(*rows, strict=True)), setter, indent)
    if _in_order(across):
        count = max(1, (room + GUTTER) // (widest + GUTTER))
        parts = [across[start : start + count] for start in range(0, len(across), count)]
        return [_row(part, [widest] * len(part), setter, indent) for part in parts]
    return None


def _in_order(words: Sequence[Text]) -> bool:
    """Whether words stand in alphabetical order, whatever their case."""
    keys = [word.chars.casefold() for word in words]
    return all(first <= second for first, second in pairwise(keys))


def _panels(columns: Sequence[Sequence[Text]], setter: Setter, indent: int) -> list[Line]:
    """As many columns at a time as the width allows, a blank line between them and the next ones."""
    lines: list[Line] = []
    widths = [max(text_cells(cell.chars) for cell in column) for column in columns]
    start = 0
    while start < len(columns):
        end = start + 1
        while (
            end < len(columns)
            and indent + sum(widths[start : end + 1]) + GUTTER * (end - start) <= setter.width
        ):
            end += 1
        lines += [setter.blank()] if lines else []
        rows = [list(row) for row in zip(*columns[start:end], strict=True)]
        lines += [
            _row(row, widths[start:end], setter, indent) for row in rows if any(cell.chars for cell in row)
        ]
        start = end
    return lines


def _row(cells: Sequence[Text], widths: Sequence[int], setter: Setter, indent: int) -> Line:
    text = inserted(" " * indent)
    for cell, width in zip(cells, widths, strict=True):
        text = add(text, cell, inserted(" " * (width - text_cells(cell.chars) + GUTTER)))
    return setter.line(text, LineFlag.FIRST | LineFlag.LAST)
