"""HTML tables to rows of cells, after "Forming a table" of the HTML standard, without its overlapping cells.

A cell over several columns or rows has its words in its first place. Its other places repeat them with no place in
the document: beside it, and, where it is as short as a key, below it. A cell over all columns names or explains the
rows around it: the table ends there, and goes on behind it under the same header.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set as AbstractSet
from itertools import takewhile
from operator import itemgetter
from typing import Final

from fit.document.block_maker import cell_text, paragraph
from fit.document.blocks import Block, Kind, Text
from fit.document.characters import TextBuilder, split_lines
from fit.document.html.tree import LONGEST_KEY
from fit.document.parted_table import Row, part_table
from fit.document.text.tables.heads import names_without_saying

WIDEST_SPAN: Final = 1000
"""Columns that a cell may take; the standard's own bound. Rows: bounded by those that are there."""
MOST_REACHING: Final = 200
"""Columns in which cells reach into the rows below: each row looks at all of them."""
MOST_REPEATED: Final = 8
"""Columns in which a row of the body repeats cells, so that cells that reach far do not multiply."""


class TableMaker:
    """Collects one table."""

    def __init__(self) -> None:
        self._rows: list[dict[int, Text]] = []
        self._heads: list[bool] = []
        """For each row whether it stands in the head of the table."""
        self._names: set[tuple[int, int]] = set()
        """The places of the header cells."""
        self._feet: list[bool] = []
        self._spans: dict[tuple[int, int], tuple[int, int]] = {}
        """For the place of each cell over how many columns and rows it stands."""
        self._levels: dict[tuple[int, int], int] = {}
        """For the place of each cell with a heading in it the level of the heading."""
        self._reaching: dict[int, int] = {}
        """For each column the row before which a cell from above ends."""
        self._column = 0
        self._place = (0, 0)
        self._outside = TextBuilder()
        self.cell: TextBuilder = self._outside
        """Where text goes: the open cell, or what stands outside of cells (the caption)."""

    def start_row(self, section: str) -> None:
        """A row begins, in an element ``section``."""
        self._rows.append({})
        self._heads.append(section == "thead")
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
        if header:
            self._names.add((row, self._column))
        self.cell = TextBuilder()
        self._rows[row][self._column] = Text()
        self._place = (row, self._column)
        self._spans[self._place] = columns, rows
        self._column += columns

    def heading(self, level: int) -> None:
        """The open cell has a heading in it."""
        self._levels[self._place] = level

    def end_cell(self) -> None:
        """The cell ends."""
        row, column = self._place
        self._rows[row][column] = Text() if self.cell.blank else cell_text(self.cell.build())
        self.cell = self._outside

    def caption(self) -> Text:
        """What stands outside of cells."""
        return cell_text(self._outside.build())

    def blocks(self, level: int) -> Iterable[Block]:
        """The caption and the table; a table of one column or row is a run of paragraphs."""
        for line in split_lines(self.caption()):
            if len(line):
                yield Block(Kind.PARAGRAPH, line, level=level)
        # A foot may stand before the bodies; its rows are the last of the table all the same.
        order = sorted(range(len(self._rows)), key=self._feet.__getitem__)
        order = [row for row in order if any(len(cell) for cell in self._rows[row].values())]
        filled = {row: [column for column, cell in self._rows[row].items() if len(cell)] for row in order}
        used = sorted({column for columns in filled.values() if len(columns) > 1 for column in columns})
        over = {
            row for row in order if len(filled[row]) == 1 and self._is_over_all(row, filled[row][0], used)
        }
        if len(order) < 2 or len(used) < 2:
            for row in order:
                yield from self._apart(row, level)
            return
        while order[0] in over:
            yield from self._apart(order[0], level)
            del order[0]
        header = list(takewhile(lambda row: row not in over and self._is_header(row), order))
        header = [] if len(header) == len(order) else header
        if not self._names and over.isdisjoint(order[:2]):
            texts = [
                [self._rows[row].get(column, Text()).chars for column in used]
                for row in order
                if row not in over
            ]
            header = order[: names_without_saying(texts)]
        self._repeat(order, over, header, used)
        yield from self._parts(order, over, header, used, level)

    def _parts(
        self,
        order: Sequence[int],
        over: AbstractSet[int],
        header: Sequence[int],
        used: Sequence[int],
        level: int,
    ) -> Iterable[Block]:
        """The table in parts between the rows ``over`` all columns; each begins with the header."""
        heads = [tuple(self._rows[row].get(column, Text()) for column in used) for row in header]
        body: list[Row | list[Block]] = [
            [*self._apart(row, level)]
            if row in over
            else tuple(self._rows[row].get(column, Text()) for column in used)
            for row in order[len(header) :]
        ]
        return part_table(heads, body, level)

    def _is_header(self, row: int) -> bool:
        """Whether a row names the columns; an empty corner is no cell of data, an empty last cell is."""
        cells = self._rows[row]
        named = [(row, column) in self._names for column, cell in cells.items() if len(cell)]
        return self._heads[row] or ((row, max(cells)) in self._names and all(named))

    def _is_over_all(self, row: int, column: int, used: Sequence[int]) -> bool:
        """Whether a cell alone in its row is a heading, or stands over all columns that are used, or beside them."""
        columns, _ = self._spans[row, column]
        if (row, column) in self._levels or column not in used:
            return True
        return column <= used[0] and used[-1] < column + columns

    def _apart(self, row: int, level: int) -> Iterable[Block]:
        """The cells of a row as headings or paragraphs."""
        for column, cell in sorted(self._rows[row].items(), key=itemgetter(0)):
            for line in split_lines(cell):
                if len(line) and (row, column) in self._levels:
                    yield Block(Kind.HEADING, line, level=self._levels[row, column])
                elif len(line):
                    yield paragraph(line, level)

    def _repeat(
        self, order: Sequence[int], over: AbstractSet[int], header: Sequence[int], used: Sequence[int]
    ) -> None:
        """Let cells over several columns or rows stand in each, with no place but in the first."""
        reaching: dict[int, tuple[int, Text]] = {}
        for number, row in enumerate(order):
            if row in over:
                continue
            cells = self._rows[row]
            in_header = number < len(header)
            if in_header:
                self._repeat_beside(row, used)
            elif header:  # a cell in the first column is the row's key, and is of no column
                self._repeat_beside(row, used[1:], most=MOST_REPEATED)
            is_key = True
            for column in () if in_header else used[:MOST_REPEATED]:
                end, above = reaching.get(column, (0, Text()))
                if column in cells:
                    short = 0 < len(cells[column]) <= LONGEST_KEY
                    reaching[column] = (
                        row + self._spans[row, column][1] if short else 0,
                        cells[column].again(),
                    )
                    is_key = is_key and not len(cells[column])
                elif row < end and is_key:
                    cells[column] = above

    def _repeat_beside(self, row: int, used: Sequence[int], most: int | None = None) -> None:
        cells = self._rows[row]
        for column, cell in list(cells.items()):
            columns, rows = self._spans[row, column]
            if columns == 1 or not len(cell) or column < used[0]:
                continue
            for other in [later for later in used if column < later < column + columns][:most]:
                cells[other] = cell.again()
                self._spans[row, other] = 1, rows


def _count(text: str | None) -> int:
    plain = (text or "1").strip()
    return int(plain) if plain.isdecimal() and plain.isascii() and len(plain) < 6 else 1
