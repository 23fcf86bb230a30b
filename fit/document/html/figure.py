"""HTML tables that are drawings: words and strokes in cells, drawn side by side as a browser of text does.

A cell stands in the middle of the rows that it takes; a column is as wide as its widest cell, and one blank parts it
from the next. What reaches over several makes the last of them wider or higher.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate
from typing import Final

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import TextBuilder, split_lines, strip_end
from fit.document.html.table import WIDEST_SPAN, TableMaker
from fit.document.html.tree import LONGEST_KEY, PLACED, Node, rows_of
from fit.width import text_cells

_NOT_DRAWN: Final = (
    "th, caption, p, ul, ol, dl, pre, hr, h1, h2, h3, h4, h5, h6, img, form, input, textarea, select"
)
"""What does not stand in the cells of a drawing."""
_STROKES: Final = re.compile(r"(?:[-<>=|/\\^_~+\u2190-\u21ff\u2500-\u257f ]|\bv\b)+")
_ARROW: Final = re.compile(r"[-=]+>|<-+|<==+|[\\^\u2190-\u21ff]")
_ENDS: Final = re.compile(r"(?:-+>|<-+)(?=\w)|(?<=\w)(?:-+>|<-+)$|<?-{2,}\w+-{2,}>?")
"""An arrow between the words of a cell and those of the next."""
_PAIR: Final = 3
"""Cells of two words and the sign between them."""
_STROKED: Final = 4
"""At least one cell in so many of a drawing holds strokes."""
_SHARES: Final = {"center": 2, "middle": 2, "right": 1}
"""What part of the room that a cell leaves free stands left of it: a half, or all of it."""


def draws_with_cells(table: Node) -> bool:
    """Whether strokes of a drawing stand in cells of their own, and arrows among them: lines between words in others."""
    if "border" in table.attributes or table.css_first(_NOT_DRAWN) is not None:
        return False
    filled = [
        [text for text in (" ".join(PLACED.sub("", cell.text()).split()) for cell in row) if text]
        for row in rows_of(table)
    ]
    cells = [text for row in filled for text in row]
    strokes = [text for text in cells if _STROKES.fullmatch(text)]
    if len(set(strokes)) == 1 and all(len(row) == _PAIR and row[1] in strokes for row in filled if row):
        return False  # one sign between two columns draws nothing from row to row
    arrows = sum(_ARROW.search(stroke) is not None for stroke in strokes)
    drawn = len(strokes) + sum(_ENDS.search(text) is not None for text in cells)
    return (
        min(len(strokes), arrows + (sum(map(bool, filled)) > 1)) > 1
        and _STROKED * drawn >= len(cells)
        and max(map(len, cells)) <= LONGEST_KEY
    )


class FigureMaker(TableMaker):
    """Collects one drawing."""

    def __init__(self) -> None:
        super().__init__()
        self._aligned: dict[tuple[int, int], int] = {}
        self._inside: dict[tuple[int, int], list[Text]] = {}
        """For each cell with a drawing in it, that drawing."""

    def start_cell(self, header: bool, attributes: Mapping[str, str | None]) -> None:
        """A cell begins, in the next free column."""
        super().start_cell(header, attributes)
        self._aligned[self._place] = _SHARES.get((attributes.get("align") or "").lower(), 0)

    def put_in(self, lines: list[Text]) -> None:
        """A drawing in the open cell has ended."""
        self._inside[self._place] = lines

    def blocks(self, level: int) -> Iterable[Block]:
        """The drawing, below its caption."""
        for line in split_lines(self.caption()):
            if len(line):
                yield Block(Kind.PARAGRAPH, line, level=level)
        lines = self.drawn()
        if lines:
            yield Block(Kind.PICTURE, level=level, lines=tuple(lines))

    def drawn(self) -> list[Text]:
        """The lines of the drawing, without empty ones."""
        cells = {
            (row, column): self._inside.get((row, column)) or split_lines(text)
            for row, columns in enumerate(self._rows)
            for column, text in columns.items()
            if len(text) or (row, column) in self._inside
        }
        if not cells:
            return []
        spans = {
            place: (
                min(self._spans[place][0], WIDEST_SPAN),
                min(self._spans[place][1], len(self._rows) - place[0]),
            )
            for place in cells
        }
        wide = {place: max(text_cells(line.chars) for line in lines) for place, lines in cells.items()}
        widths = _sizes([(column, spans[row, column][0], wide[row, column]) for row, column in cells], 1)
        heights = _sizes([(row, spans[row, column][1], len(cells[row, column])) for row, column in cells], 0)
        lefts = [*accumulate((width + (width > 0) for width in widths), initial=0)]
        tops = [*accumulate(heights, initial=0)]
        pieces: list[list[tuple[int, Text]]] = [[] for _ in range(tops[-1])]
        for (row, column), lines in cells.items():
            columns, rows = spans[row, column]
            right = min(column + columns, len(widths))
            room = lefts[right] - lefts[column] - (lefts[right] > lefts[column])
            share = self._aligned[row, column]
            left = lefts[column] + ((room - wide[row, column]) // share if share else 0)
            top = tops[row] + (tops[row + rows] - tops[row] - len(lines)) // 2
            inner = 2 if share == 2 else 0
            for number, line in enumerate(lines):
                off = (wide[row, column] - text_cells(line.chars)) // inner if inner else 0
                pieces[top + number].append((left + off, line))
        return [_line(row) for row in pieces if row]


def _sizes(spans: Sequence[tuple[int, int, int]], gap: int) -> list[int]:
    """The sizes of columns, or rows, of cells that each begin in one, reach over some and need a size."""
    sizes = [0] * max(start + reach for start, reach, _ in spans)
    for start, reach, need in sorted(spans, key=lambda span: span[1]):
        own = sizes[start : start + reach]
        has = sum(own) + gap * max(0, sum(size > 0 for size in own) - 1)
        if need > has:
            last = next((at for at in range(start + reach - 1, start - 1, -1) if sizes[at]), start)
            sizes[last] += need - has
    return sizes


def _line(pieces: Sequence[tuple[int, Text]]) -> Text:
    """One line of the drawing: the pieces at their cells, at least a blank between two."""
    builder = TextBuilder()
    filled = 0
    for left, piece in sorted(pieces, key=lambda piece: piece[0]):
        blanks = max(left - filled, 1 if filled else 0)
        builder.add_own(" " * blanks)
        builder.add_text(piece)
        filled += blanks + text_cells(piece.chars)
    return strip_end(builder.build())
