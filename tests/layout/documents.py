"""Documents for the tests of the layout, written as blocks."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from typing import Any

from fit.document.blocks import Block, Document, Kind, Mark, Text
from fit.layout.compose import lay_out
from fit.layout.lines import Layout
from fit.layout.settings import LayoutSettings


class Maker:
    """Makes texts whose sources follow each other in one document."""

    def __init__(self) -> None:
        self.source = ""
        self.blocks: list[Block] = []

    def text(self, chars: str, mark: int = Mark.NONE) -> Text:
        """The next characters of the source."""
        start = len(self.source)
        self.source += chars + "\n"
        return Text(chars, array("q", range(start, start + len(chars))), bytes([mark]) * len(chars))

    def heading(self, chars: str, level: int = 1) -> Maker:
        return self._add(Block(Kind.HEADING, self.text(chars), level=level))

    def paragraph(self, chars: str, level: int = 0) -> Maker:
        return self._add(Block(Kind.PARAGRAPH, self.text(chars), level=level))

    def item(self, label: str, chars: str, level: int = 0, kind: Kind = Kind.ITEM) -> Maker:
        return self._add(Block(kind, label=self.text(label), text=self.text(chars), level=level))

    def table(self, *rows: Sequence[str], header_rows: int = 0, drawn: Sequence[str] = ()) -> Maker:
        """A table; with ``drawn`` its cells are found in the drawn lines."""
        if not drawn:
            cells = tuple(tuple(self.text(cell) for cell in row) for row in rows)
            return self._add(Block(Kind.TABLE, rows=cells, header_rows=header_rows))
        lines = tuple(self.text(line) for line in drawn)
        found = []
        at = 0  # cells are looked for line by line, so that equal ones are told apart
        for row in rows:
            at = next(i for i in range(at, len(lines)) if all(cell in lines[i].chars for cell in row))
            column = 0
            cut = []
            for cell in row:
                column = lines[at].chars.index(cell, column)
                cut.append(Text(cell, lines[at].sources[column : column + len(cell)], bytes(len(cell))))
                column += len(cell)
            found.append(tuple(cut))
            at += 1
        return self._add(Block(Kind.TABLE, rows=tuple(found), lines=lines, header_rows=header_rows))

    def kept(self, *lines: str, kind: Kind = Kind.PREFORMATTED, code: bool = False, level: int = 0) -> Maker:
        return self._add(Block(kind, lines=tuple(map(self.text, lines)), code=code, level=level))

    def picture(self, *lines: str) -> Maker:
        return self.kept(*lines, kind=Kind.PICTURE)

    def document(self) -> Document:
        return Document(self.source, tuple(self.blocks), "text", "ascii", "skerry.txt")

    def lay_out(self, width: int = 40, rows: int = 7, **settings: Any) -> Layout:
        return lay_out(self.document(), LayoutSettings(width=width, page_rows=rows, **settings))

    def lines(self, width: int = 40, rows: int = 7, **settings: Any) -> list[str]:
        return [line.text for line in self.lay_out(width, rows, **settings).lines]

    def _add(self, block: Block) -> Maker:
        self.blocks.append(block)
        return self


def pages_of(layout: Layout) -> list[list[str]]:
    """The text of each page."""
    return [[line.text for line in layout.lines[page.start : page.end]] for page in layout.pages]
