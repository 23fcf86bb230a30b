"""Tables of manual pages: the language of tbl(1) to rows of cells.

Its rules, boxes, column widths and alignments draw; what stays are the cells. A cell over several columns or rows
has its words in its first place; its other places repeat them with no place in the document: beside it in a header
and below one, and below it where it is as short as a key and nothing else stands to its left. Above all others, one
over all columns is the title.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise, takewhile
from typing import Final

from fit.document.block_maker import joined
from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.characters import TextBuilder, split_lines, strip_end
from fit.document.man.roff_input import Input
from fit.document.man.roff_lines import request_of
from fit.document.man.roff_text import Line, Printer, join_lines, own_line
from fit.document.man.table_format import MOST_HEADERS, Column, columns_of, head_lines
from fit.document.preformatted import preformatted

_TAB: Final = re.compile(r"\btab\s*\((.)\)", re.IGNORECASE)
_GAP: Final = re.compile(r"\S {2,}\S")
_RULES: Final = frozenset("_=")
_LONGEST_KEY: Final = 40
"""Characters of a cell that can be the key of its row."""


class TableReader:
    """Reads one table, from behind ``.TS`` to ``.TE``."""

    def __init__(self, lines: Input, printer: Printer, cell_text: Callable[[list[Line], int], Text]) -> None:
        self._lines = lines
        self._printer = printer
        self._cell_text = cell_text
        self._tab = "\t"
        self._formats: list[list[Column]] = []
        self._row = 0
        self._heads = 0
        """The rows before those of the last line of the format, where that one alone is the body's."""
        self._rows: list[list[Text]] = []
        self._beside: set[tuple[int, int]] = set()
        """The places that the cell to the left reaches over."""
        self._below: set[tuple[int, int]] = set()
        """Those that the cell above reaches over."""
        self._over_all: list[bool] = []
        """For each row whether its first cell stands over all columns."""
        self._set_off: list[bool] = []
        """For each row whether the format gives all its cells another font."""
        self._kept: dict[int, Text] = {}
        """For each row that is one line with columns of blanks inside it, the line."""
        self._ruled: list[int] = []
        """For each rule the number of rows above it."""

    def read(self, level: int) -> list[Block]:
        """The title and the table; neither where no cell has text."""
        if not self._read_format(options=True):
            return []
        self._heads = head_lines(self._formats)
        while (line := self._lines.next_line()) is not None:
            name, _ = request_of(line)
            if name == "TE":
                break
            if name == "T&":
                self._read_format(options=False)
            elif name == "TH":
                self._ruled.append(len(self._rows))  # what stands above is the head of each page
            elif name is not None and line.chars[:1] == ".":
                continue  # spacing and fonts between rows
            elif line.chars.strip() in _RULES:
                self._ruled.append(len(self._rows))
            else:
                self._read_row(line)
        return self._blocks(level)

    # The format

    def _read_format(self, *, options: bool) -> bool:
        self._formats, self._row = [], 0
        while (line := self._lines.next_line()) is not None:
            chars = line.chars.strip()
            if request_of(line)[0] == "TE":
                return False
            if options and chars.endswith(";"):
                tab = _TAB.search(chars)
                self._tab = tab[1] if tab is not None else "\t"
                continue
            options = False
            ended = chars.endswith(".")
            self._formats += columns_of(chars)
            if ended:
                return True
        return False

    def _next_format(self) -> list[Column]:
        while self._row < len(self._formats) - 1 and not self._formats[self._row]:
            self._ruled.append(len(self._rows))
            self._row += 1
        found = self._formats[min(self._row, len(self._formats) - 1)] if self._formats else []
        self._row += 1
        return found

    # The data

    def _read_row(self, line: Line) -> None:
        columns = self._next_format()
        fields = iter(self._fields(line))
        row: list[Text] = []
        for key, font in columns:
            place = len(self._rows), len(row)
            if key == "s":
                self._beside.add(place)
                row.append(Text())
                continue
            field = next(fields, None)
            if key == "^" or (field is not None and _is_from_above(field)):
                self._below.add(place)
                row.append(Text())
                continue
            if field is not None and len(columns) == 1 and len(field) == 1 and _GAP.search(field[0].chars):
                self._kept[len(self._rows)] = self._printed(field[0], font)
            row.append(Text() if field is None else self._cell(field, font))
        row += (self._cell(field, Mark.NONE) for field in fields)
        self._printer.set_font("R")  # a font holds from cell to cell, to the end of the row
        self._rows.append(row)
        self._over_all.append(len(columns) > 1 and all(each.key == "s" for each in columns[1:]))
        self._set_off.append(bool(columns) and all(each.font for each in columns if each.key not in "s^"))

    def _fields(self, line: Line) -> list[list[Line]]:
        """The cells of a row, each of one line or, between ``T{`` and ``T}``, of many."""
        fields: list[list[Line]] = []
        while True:
            parts = _split(line, self._tab)
            if parts[-1].chars.strip() != "T{":
                return [*fields, *([_as_text(part)] for part in parts)]
            fields += ([_as_text(part)] for part in parts[:-1])
            block: list[Line] = []
            after: Line | None = None
            while (following := self._lines.next_line()) is not None:
                if following.chars.startswith("T}"):
                    after = following.part(2)
                    break
                if request_of(following)[0] == "TE":
                    self._lines.push([following])
                    break
                block.append(following)
            fields.append(block)
            if after is None or not after.chars.startswith(self._tab):
                return fields
            line = after.part(1)

    def _cell(self, lines: list[Line], mark: int) -> Text:
        if len(lines) == 1 and lines[0].chars.strip() in ("_", "=", "\\_", "\\="):
            return Text()
        if len(lines) == 1 and lines[0].chars.startswith("\\R") and len(lines[0].chars) == 3:
            return Text()
        text = self._cell_text(lines, mark)
        if len(lines) > 1:
            self._printer.set_font("R")
        return text

    def _printed(self, line: Line, mark: int) -> Text:
        """A line with its blanks; the font after it is that before it."""
        builder = TextBuilder()
        replace(self._printer).print(line, builder, mark)
        return strip_end(builder.build())

    def _blocks(self, level: int) -> list[Block]:
        filled = [index for index, row in enumerate(self._rows) if any(len(cell) for cell in row)]
        titles = list(takewhile(self._over_all.__getitem__, filled))
        filled = filled[len(titles) :]
        blocks = [
            Block(Kind.PARAGRAPH, line, level=level)
            for index in titles
            for line in split_lines(joined([cell for cell in self._rows[index] if len(cell)]))
        ]
        if not filled:
            return blocks
        width = max(len(self._rows[index]) for index in filled)
        used = [column for column in range(width) if any(self._at(index, column) for index in filled)]
        if len(used) == 1 and sum(index in self._kept for index in filled) > 1:
            return [*blocks, *self._kept_lines(filled, used[0], level)]
        header_rows = self._header_rows(filled)
        self._repeat(filled, used, header_rows)
        rows = tuple(tuple(self._at(index, column) or Text() for column in used) for index in filled)
        return [*blocks, Block(Kind.TABLE, level=level, rows=rows, header_rows=header_rows)]

    def _repeat(self, filled: Sequence[int], used: Sequence[int], header_rows: int) -> None:
        """Let cells over several columns or rows stand in each, as the words of the module say."""
        above: list[Text] = []
        for number, index in enumerate(filled):
            row = self._rows[index]
            row += [Text()] * (used[-1] + 1 - len(row))
            is_key = number > header_rows
            for left, column in pairwise([-1, *used]):
                place = index, column
                if (
                    place in self._beside
                    and header_rows
                    and (left > used[0] or (left >= 0 and number < header_rows))
                ):
                    row[column] = row[left].again()
                elif place in self._below and is_key and len(above[column]) <= _LONGEST_KEY:
                    row[column] = above[column].again()
                else:
                    is_key = is_key and not len(row[column])
            above = row

    def _kept_lines(self, filled: Sequence[int], column: int, level: int) -> list[Block]:
        """One column whose blanks make columns inside it: lines that stay lines."""
        lines = [self._kept.get(index) or self._rows[index][column] for index in filled]
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
        return next((at for at in filled if not self._set_off[at]), 0)

    def _rule(self, filled: Sequence[int]) -> int:
        """The first row below a rule."""
        return next((rows for rows in self._ruled if rows > filled[0]), 0)

    def _format_ends(self, filled: Sequence[int]) -> int:
        """The first row that is not set by a line of its own in the format, where others are set like it."""
        return self._heads if filled[-1] > self._heads else 0

    def _words_end(self, filled: Sequence[int]) -> int:
        """The first row below those whose words are all set off; none where others are."""
        off = [at for at in filled if self._is_set_off(at)]
        return off[-1] + 1 if off == list(filled[: len(off)]) and off else 0

    def _is_set_off(self, row: int) -> bool:
        cells = [cell for cell in self._rows[row] if len(cell)]
        return len(cells) > 1 and all(
            mark & (Mark.BOLD | Mark.UNDERLINE)
            for cell in cells
            for char, mark in zip(cell.chars, cell.marks, strict=True)
            if not char.isspace()
        )

    def _at(self, row: int, column: int) -> Text | None:
        cells = self._rows[row]
        return cells[column] if column < len(cells) and len(cells[column]) else None


def _is_from_above(field: Sequence[Line]) -> bool:
    return len(field) == 1 and field[0].chars.strip() == "\\^"


def _as_text(part: Line) -> Line:
    """A cell on the row's own line is text, even where it begins like a request."""
    return join_lines([own_line("\\&"), part]) if part.chars[:1] in (".", "'") else part


def _split(line: Line, tab: str) -> list[Line]:
    parts = []
    begin = 0
    while (found := line.chars.find(tab, begin)) >= 0:
        parts.append(line.part(begin, found))
        begin = found + len(tab)
    parts.append(line.part(begin))
    return parts
