"""Rows of a table of a manual page to blocks.

A cell over several columns or rows has its words in its first place; its other places repeat them with no place in the
document: beside it in a header and below one, and below it where it is as short as a key and nothing else stands to its
left. One over all columns stands apart: above all others it is the title, and further down the table goes on behind it
under the same header. A row of one cell, to the right of the keys, goes on with the row above it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise, takewhile
from typing import Final

from fit.document.block_maker import joined
from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.characters import split_lines
from fit.document.man.table_format import MOST_HEADERS
from fit.document.parted_table import Row, part_table
from fit.document.preformatted import preformatted

_LONGEST_KEY: Final = 40
"""Characters of a cell that can be the key of its row."""
_WORD: Final = re.compile(r"[^\W\d_]{2}")


@dataclass(slots=True)
class TableRows:
    """The rows of one table, as they were read."""

    cells: list[list[Text]] = field(default_factory=list)
    heads: int = 0
    """The rows before those of the last line of the format, where that one alone is the body's."""
    beside: set[tuple[int, int]] = field(default_factory=set)
    """The places that the cell to the left reaches over."""
    below: set[tuple[int, int]] = field(default_factory=set)
    """Those that the cell above reaches over."""
    over_all: list[bool] = field(default_factory=list)
    """For each row whether its first cell stands over all columns."""
    set_off: list[bool] = field(default_factory=list)
    """For each row whether the format gives all its cells another font."""
    kept: dict[int, Text] = field(default_factory=dict)
    """For each row that is one line with columns of blanks inside it, the line."""
    ruled: list[int] = field(default_factory=list)
    """For each rule the number of rows above it."""

    def add(self, row: list[Text], *, over_all: bool, set_off: bool) -> None:
        """The next row."""
        self.cells.append(row)
        self.over_all.append(over_all)
        self.set_off.append(set_off)

    def rule(self) -> None:
        """A rule stands below the rows so far."""
        self.ruled.append(len(self.cells))

    def blocks(self, level: int) -> list[Block]:
        """The title and the table; neither where no cell has text."""
        filled = [index for index, row in enumerate(self.cells) if any(len(cell) for cell in row)]
        titles = list(takewhile(self.over_all.__getitem__, filled))
        filled = filled[len(titles) :]
        blocks = [block for index in titles for block in self._apart(index, level)]
        if not filled:
            return blocks
        width = max(len(self.cells[index]) for index in filled)
        used = [column for column in range(width) if any(self._at(index, column) for index in filled)]
        if len(used) == 1 and sum(index in self.kept for index in filled) > 1:
            return [*blocks, *self._kept_lines(filled, used[0], level)]
        header_rows = self._header_rows(filled)
        self._repeat(filled, used, header_rows)
        return [*blocks, *self._parts(filled, used, header_rows, level)]

    def _apart(self, row: int, level: int) -> Iterator[Block]:
        """The cell over all columns of a row as paragraphs."""
        for line in split_lines(joined([cell for cell in self.cells[row] if len(cell)])):
            yield Block(Kind.PARAGRAPH, line, level=level)

    def _parts(
        self, filled: Sequence[int], used: Sequence[int], header_rows: int, level: int
    ) -> Iterator[Block]:
        """The table in parts between the rows that stand apart; each begins with the header."""
        own = {index: tuple(self._at(index, column) or Text() for column in used) for index in filled}
        heads = [own[index] for index in filled[:header_rows]]
        parts: list[Row | list[Block]] = []
        for index in filled[header_rows:]:
            if self.over_all[index]:
                parts.append([*self._apart(index, level)])
                continue
            above = parts[-1] if parts else None
            more = self._continued(above, index, own[index]) if isinstance(above, tuple) else None
            if more is not None:
                parts.pop()
            parts.append(more or own[index])
        return part_table(heads, parts, level)

    def _continued(
        self, above: tuple[Text, ...], index: int, row: tuple[Text, ...]
    ) -> tuple[Text, ...] | None:
        """The row above with a row of one cell of words right of all that it has, or below its last cell; else None."""
        column = next((number for number, cell in enumerate(row) if len(cell)), 0)
        alone = column and not any(map(len, (*row[column + 1 :], *above[column + 1 :])))
        if not alone or index in self.ruled or not _WORD.search(row[column].chars):
            return None
        if any((index, at) in self.below for at in range(len(self.cells[index]))):
            return None
        filled = [cell for cell in (above[column], row[column]) if len(cell)]
        return (*above[:column], joined(filled, "\n"), *above[column + 1 :])

    def _repeat(self, filled: Sequence[int], used: Sequence[int], header_rows: int) -> None:
        """Let cells over several columns or rows stand in each, as the words of the module say."""
        above: list[Text] = []
        for number, index in enumerate(filled):
            row = self.cells[index]
            row += [Text()] * (used[-1] + 1 - len(row))
            is_key = number > header_rows
            for left, column in pairwise([-1, *used]):
                place = index, column
                if (
                    place in self.beside
                    and header_rows
                    and (left > used[0] or (left >= 0 and number < header_rows))
                ):
                    row[column] = row[left].again()
                elif place in self.below and is_key and len(above[column]) <= _LONGEST_KEY:
                    row[column] = above[column].again()
                else:
                    is_key = is_key and not len(row[column])
            above = row

    def _kept_lines(self, filled: Sequence[int], column: int, level: int) -> list[Block]:
        """One column whose blanks make columns inside it: lines that stay lines."""
        lines = [self.kept.get(index) or self.cells[index][column] for index in filled]
        block = preformatted(joined(lines, "\n"), level=level, code=False)
        return [block] if block is not None else []

    def _header_rows(self, filled: Sequence[int]) -> int:
        """How many of the rows with text are the header: by their font, by a rule below, by the lines of the format."""
        for ends in (self._font_ends, self._rule, self._words_end, self._format_ends):
            found = sum(index < ends(filled) for index in filled)
            if 0 < found < min(len(filled), MOST_HEADERS + 1):  # a rule further down parts groups of rows
                return found
        return 0

    def _font_ends(self, filled: Sequence[int]) -> int:
        """The first row whose font is that of the body, even where the first rule stands further down."""
        return next((at for at in filled if not self.set_off[at]), 0)

    def _rule(self, filled: Sequence[int]) -> int:
        """The first row below a rule."""
        return next((rows for rows in self.ruled if rows > filled[0]), 0)

    def _format_ends(self, filled: Sequence[int]) -> int:
        """The first row that is not set by a line of its own in the format, where others are set like it."""
        return self.heads if filled[-1] > self.heads else 0

    def _words_end(self, filled: Sequence[int]) -> int:
        """The first row below those whose words are all set off; none where others are."""
        off = [at for at in filled if self._is_set_off(at)]
        return off[-1] + 1 if off == list(filled[: len(off)]) and off else 0

    def _is_set_off(self, row: int) -> bool:
        cells = [cell for cell in self.cells[row] if len(cell)]
        return len(cells) > 1 and all(
            mark & (Mark.BOLD | Mark.UNDERLINE)
            for cell in cells
            for char, mark in zip(cell.chars, cell.marks, strict=True)
            if not char.isspace()
        )

    def _at(self, row: int, column: int) -> Text | None:
        cells = self.cells[row]
        return cells[column] if column < len(cells) and len(cells[column]) else None
