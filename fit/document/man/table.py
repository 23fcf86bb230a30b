"""Tables of manual pages: the language of tbl(1) to cells.

Its rules, boxes, column widths and alignments draw; what stays are the cells.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from fit.document.blocks import Block, Mark, Text
from fit.document.characters import TextBuilder, strip_end
from fit.document.man.roff_input import Input
from fit.document.man.roff_lines import request_of
from fit.document.man.roff_text import Line, Printer, join_lines, own_line
from fit.document.man.table_format import Column, columns_of, head_lines
from fit.document.man.table_rows import TableRows

_TAB: Final = re.compile(r"\btab\s*\((.)\)", re.IGNORECASE)
_GAP: Final = re.compile(r"\S {2,}\S")
_RULES: Final = frozenset("_=")


class TableReader:
    """Reads one table, from behind ``.TS`` to ``.TE``."""

    def __init__(self, lines: Input, printer: Printer, cell_text: Callable[[list[Line], int], Text]) -> None:
        self._lines = lines
        self._printer = printer
        self._cell_text = cell_text
        self._tab = "\t"
        self._formats: list[list[Column]] = []
        self._row = 0
        self._rows = TableRows()

    def read(self, level: int) -> list[Block]:
        """The title and the table; neither where no cell has text."""
        if not self._read_format(options=True):
            return []
        self._rows.heads = head_lines(self._formats)
        while (line := self._lines.next_line()) is not None:
            name, _ = request_of(line)
            if name == "TE":
                break
            if name == "T&":
                self._read_format(options=False)
            elif name == "TH":
                self._rows.rule()  # what stands above is the head of each page
            elif name is not None and line.chars[:1] == ".":
                continue  # spacing and fonts between rows
            elif line.chars.strip() in _RULES:
                self._rows.rule()
            else:
                self._read_row(line)
        return self._rows.blocks(level)

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
            self._rows.rule()
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
            place = len(self._rows.cells), len(row)
            if key == "s":
                self._rows.beside.add(place)
                row.append(Text())
                continue
            field = next(fields, None)
            if key == "^" or (field is not None and _is_from_above(field)):
                self._rows.below.add(place)
                row.append(Text())
                continue
            if field is not None and len(columns) == 1 and len(field) == 1 and _GAP.search(field[0].chars):
                self._rows.kept[place[0]] = self._printed(field[0], font)
            row.append(Text() if field is None else self._cell(field, font))
        row += (self._cell(field, Mark.NONE) for field in fields)
        self._printer.set_font("R")  # a font holds from cell to cell, to the end of the row
        over_all = len(columns) > 1 and all(each.key == "s" for each in columns[1:])
        set_off = bool(columns) and all(each.font for each in columns if each.key not in "s^")
        self._rows.add(row, over_all=over_all, set_off=set_off)

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
