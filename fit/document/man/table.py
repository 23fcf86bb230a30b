"""Tables of manual pages: the language of tbl(1) to rows of cells.

Its rules, boxes, column widths and alignments draw; what stays are the cells. A cell over several columns
or rows stands in its first place; its other places are empty. Above all others, one over all columns is the title.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import takewhile
from typing import Final

from fit.document.block_maker import joined
from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.characters import split_lines
from fit.document.man.roff_input import Input, request_of
from fit.document.man.roff_text import Line, join_lines, own_line

_TAB: Final = re.compile(r"\btab\s*\((.)\)", re.IGNORECASE)
_KEY: Final = re.compile(
    r"([lrcnasLRCNAS^])"
    r"((?:\s*(?:[wW]\([^)]*\)|[fF]\([^)]*\)|[fF]\S{1,2}|[pPvV][-+]?[0-9]+|[bBiIeEtTuUzZdDxX]|[0-9]+|\|))*)"
    r"|[|_=-]"
)
_RULES: Final = frozenset("_=")
_BOLD: Final = re.compile(r"[bB]|[fF]\(?B", re.ASCII)
_ITALIC: Final = re.compile(r"[iI]", re.ASCII)


class TableReader:
    """Reads one table, from behind ``.TS`` to ``.TE``."""

    def __init__(self, lines: Input, cell_text: Callable[[list[Line], int], Text]) -> None:
        self._lines = lines
        self._cell_text = cell_text
        self._tab = "\t"
        self._formats: list[list[tuple[str, int]]] = []
        self._row = 0
        self._rows: list[list[Text]] = []
        self._over_all: list[bool] = []
        """For each row whether its first cell stands over all columns."""
        self._set_off: list[bool] = []
        """For each row whether the format gives all its cells another font."""
        self._ruled: list[int] = []
        """For each rule the number of rows above it."""

    def read(self, level: int) -> list[Block]:
        """The title and the table; neither where no cell has text."""
        if not self._read_format(options=True):
            return []
        while (line := self._lines.next_line()) is not None:
            name, _ = request_of(line)
            if name == "TE":
                break
            if name == "T&":
                self._read_format(options=False)
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
            for part in chars.rstrip(".").split(","):
                columns = [(found[1].lower(), _font(found[2])) for found in _KEY.finditer(part) if found[1]]
                if columns:
                    self._formats.append(columns)
                elif part.strip() and set(part.strip()) <= set("_=-|"):
                    self._formats.append([])
            if ended:
                return True
        return False

    def _next_format(self) -> list[tuple[str, int]]:
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
            if key in "s^":
                if key == "^":
                    next(fields, None)
                row.append(Text())
                continue
            field = next(fields, None)
            row.append(Text() if field is None else self._cell(field, font))
        row += (self._cell(field, Mark.NONE) for field in fields)
        self._rows.append(row)
        self._over_all.append(len(columns) > 1 and all(key == "s" for key, _ in columns[1:]))
        self._set_off.append(bool(columns) and all(font for key, font in columns if key not in "s^"))

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
        if len(lines) == 1 and lines[0].chars.strip() in ("_", "=", "\\_", "\\=", "\\^"):
            return Text()
        if len(lines) == 1 and lines[0].chars.startswith("\\R") and len(lines[0].chars) == 3:
            return Text()
        return self._cell_text(lines, mark)

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
        rows = tuple(tuple(self._at(index, column) or Text() for column in used) for index in filled)
        # Rows in another font are the header, even where the first rule stands further down.
        headers = next((at for at in filled if not self._set_off[at]), 0)
        if headers <= filled[0]:
            headers = next((rows for rows in self._ruled if rows > filled[0]), 0)
        header_rows = sum(index < headers for index in filled)
        if header_rows >= len(rows) or header_rows > 3:
            header_rows = 0  # a rule far down parts groups of rows; it ends no header
        return [*blocks, Block(Kind.TABLE, level=level, rows=rows, header_rows=header_rows)]

    def _at(self, row: int, column: int) -> Text | None:
        cells = self._rows[row]
        return cells[column] if column < len(cells) and len(cells[column]) else None


def _font(options: str) -> int:
    if _BOLD.search(options):
        return Mark.BOLD
    return Mark.UNDERLINE if _ITALIC.search(options) else Mark.NONE


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
