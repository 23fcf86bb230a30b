"""HTML tables to rows of cells, after "Forming a table" of the HTML standard, without its overlapping cells.

A cell over several columns or rows stands in its first place; its other places are empty, but for those of a header.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from fit.document.block_maker import cell_text, paragraph
from fit.document.blocks import Block, Kind, Text
from fit.document.characters import TextBuilder, split_lines

WIDEST_SPAN: Final = 1000
"""Columns that a cell may take; the standard's own bound. Rows: bounded by those that are there."""
MOST_REACHING: Final = 200
"""Columns in which cells reach into the rows below: each row looks at all of them."""


class TableMaker:
    """Collects one table."""

    def __init__(self) -> None:
        self._rows: list[dict[int, Text]] = []
        self._heads: list[bool] = []
        self._feet: list[bool] = []
        self._spans: dict[tuple[int, int], int] = {}
        """For the place of each cell over several columns how many they are."""
        self._reaching: dict[int, int] = {}
        """For each column the row before which a cell from above ends."""
        self._column = 0
        self._in_head = False
        self._place = (0, 0)
        self._outside = TextBuilder()
        self.cell: TextBuilder = self._outside
        """Where text goes: the open cell, or what stands outside of cells (the caption)."""

    def start_row(self, section: str) -> None:
        """A row begins, in an element ``section``."""
        self._rows.append({})
        self._in_head = section == "thead"
        self._heads.append(self._in_head)
        self._feet.append(section == "tfoot")
        self._column = 0

    def start_cell(self, header: bool, attributes: Mapping[str, str | None]) -> None:
        """A cell begins, in the next free column."""
        if not self._rows:
            self.start_row("tbody")
        row = len(self._rows) - 1
        while self._reaching.get(self._column, 0) > row:
            self._column += 1
        columns = max(1, min(WIDEST_SPAN, _count(attributes.get("colspan"))))
        rows = _count(attributes.get("rowspan")) or 10**9  # 0: to the end of the table
        if rows > 1:
            for column in range(self._column, min(self._column + columns, MOST_REACHING)):
                self._reaching[column] = row + rows
        if not self._rows[row]:
            self._heads[row] |= header
        self._heads[row] &= header or self._in_head
        self.cell = TextBuilder()
        self._rows[row][self._column] = Text()
        self._place = (row, self._column)
        self._spans[self._place] = columns
        self._column += columns

    def end_cell(self) -> None:
        """The cell ends."""
        row, column = self._place
        self._rows[row][column] = Text() if self.cell.blank else cell_text(self.cell.build())
        self.cell = self._outside

    def blocks(self, level: int) -> Iterable[Block]:
        """The caption and the table; a table of one column or row is a run of paragraphs."""
        for line in split_lines(cell_text(self._outside.build())):
            if len(line):
                yield Block(Kind.PARAGRAPH, line, level=level)
        # A foot may stand before the bodies; its rows are the last of the table all the same.
        order = sorted(range(len(self._rows)), key=self._feet.__getitem__)
        order = [row for row in order if any(len(cell) for cell in self._rows[row].values())]
        rows = [self._rows[row] for row in order]
        used = sorted({column for row in rows for column, cell in row.items() if len(cell)})
        if len(rows) < 2 or len(used) < 2:
            for row in rows:
                for column in sorted(row):
                    yield from (paragraph(line, level) for line in split_lines(row[column]) if len(line))
            return
        header_rows = next((index for index, row in enumerate(order) if not self._heads[row]), 0)
        for head in order[:header_rows]:
            self._repeat(head, used)
        cells = tuple(tuple(row.get(column, Text()) for column in used) for row in rows)
        yield Block(Kind.TABLE, level=level, rows=cells, header_rows=header_rows)

    def _repeat(self, row: int, used: Sequence[int]) -> None:
        """Let each cell over several columns, not over all, stand in each, with no place but in the first."""
        cells = self._rows[row]
        for column, cell in list(cells.items()):
            others = [later for later in used if column < later < column + self._spans[row, column]]
            if others and len(others) < len(used) - 1:
                own = Text(cell.chars, array("q", [-1]) * len(cell), cell.marks)
                cells.update(dict.fromkeys(others, own))


def _count(text: str | None) -> int:
    plain = (text or "1").strip()
    return int(plain) if plain.isdecimal() and plain.isascii() and len(plain) < 6 else 1
