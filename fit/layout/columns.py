"""A table set in columns: as it was drawn, or drawn anew with narrow gutters."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import zip_longest

from fit.document.blocks import Block, Text
from fit.document.characters import cut, split_lines
from fit.layout.flowing import Setter
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, inserted, margin, once, spread_tabs
from fit.width import text_cells

_NO_FIGURE = frozenset(["-", "--", "\u2013", "\u2014"])
_NUMBER = re.compile(r"[-+\u2212]?[$\u00a3\u20ac]?(\d[\d,']*|(?=\.\d))(\.\d+)?\s?[%\u00b0]?")
_GUTTERS = (2, 1)
FIGURES = 0.6
"""The share of cells with digits above which columns of single words are columns of figures."""


def drawn(block: Block, setter: Setter, indent: int) -> tuple[list[Line], list[Line]] | None:
    """The rows as the source drew them, and those to repeat on a later page; None where they are too wide."""
    texts = [spread_tabs(line) for line in block.lines]
    texts = [cut(text, 0, len(text.chars.rstrip())) for text in texts]
    if not any(text.chars for text in texts):
        return None
    least = min(margin(text) for text in texts if text.chars)
    widest = max(text_cells(text.chars) for text in texts) - least
    if widest > setter.width:
        return None
    pad = inserted(" " * min(indent, setter.width - widest))
    row_of = {
        source: number
        for number, row in enumerate(block.rows)
        for cell in row
        for source, char in zip(cell.sources, cell.chars, strict=True)
        if char != " " and source >= 0
    }
    lines: list[Line] = []
    header: list[Line] = []
    rows: list[int] = []
    for text in texts:
        if not text.chars:
            lines.append(setter.blank())
            rows.append(rows[-1] if rows else 0)
            continue
        own = next((row_of[source] for source in text.sources if source in row_of), -1)
        row = own if own >= 0 else rows[-1] if rows else 0  # a rule belongs to the row above it
        rows.append(row)
        flags = LineFlag.HEADER if row < block.header_rows else LineFlag.NONE
        lines.append(setter.line(add(pad, cut(text, least, len(text))), flags))
        if flags and own >= 0:
            header.append(lines[-1])
    return _with_units(lines, rows), header


def _with_units(lines: list[Line], rows: list[int]) -> list[Line]:
    """The lines with the first and the last of each row marked."""
    filled = [index for index, line in enumerate(lines) if line.text]
    for before, index, after in zip([None, *filled], filled, [*filled[1:], None], strict=False):
        flags = lines[index].flags
        if before is None or rows[before] != rows[index]:
            flags |= LineFlag.FIRST
        if after is None or rows[after] != rows[index]:
            flags |= LineFlag.LAST
        lines[index] = lines[index]._replace(flags=flags)
    return lines


def rebuilt(block: Block, setter: Setter, indent: int) -> tuple[list[Line], list[Line]] | None:
    """The rows in columns drawn anew, and those to repeat; None where they are too wide with the least gutter."""
    columns = list(zip(*once(block.rows, block.header_rows), strict=True))
    numeric = [_is_numeric(column[block.header_rows :]) for column in columns]
    fractions = [
        _fraction(column[block.header_rows :]) if number else 0
        for column, number in zip(columns, numeric, strict=True)
    ]
    cells = [
        [
            _aligned(cell, fraction) if number and row >= block.header_rows else cell
            for row, cell in enumerate(column)
        ]
        for column, number, fraction in zip(columns, numeric, fractions, strict=True)
    ]
    written = [[split_lines(cell) for cell in column] for column in cells]
    widths = [max(1, *(text_cells(line.chars) for cell in column for line in cell)) for column in written]
    gutter = next((gap for gap in _GUTTERS if sum(widths) + gap * (len(widths) - 1) <= setter.width), None)
    if gutter is None or (gutter == 1 and not (block.header_rows or _are_figures(columns[1:]))):
        return None  # without a rule under a header, columns one blank apart would read as prose
    pad = min(indent, setter.width - sum(widths) - gutter * (len(widths) - 1))
    lines: list[Line] = []
    repeated = 0
    for number, row in enumerate(zip(*written, strict=True)):
        header = LineFlag.HEADER if number < block.header_rows else LineFlag.NONE
        begin = len(lines)
        for parts in zip_longest(*row, fillvalue=Text()):
            text = inserted(" " * pad)
            for column, (cell, width) in enumerate(zip(parts, widths, strict=True)):
                blank = inserted(" " * (width - text_cells(cell.chars)))
                gap = inserted(" " * (gutter if column else 0))
                text = add(text, gap, blank, cell) if numeric[column] else add(text, gap, cell, blank)
            lines.append(setter.line(text, header))
        lines[begin] = lines[begin]._replace(flags=lines[begin].flags | LineFlag.FIRST)
        lines[-1] = lines[-1]._replace(flags=lines[-1].flags | LineFlag.LAST)
        repeated = len(lines) if header else repeated
        if number == block.header_rows - 1:
            rule = " " * pad + (" " * gutter).join("-" * width for width in widths)
            lines.append(
                setter.line(inserted(rule), LineFlag.FIRST | LineFlag.LAST | LineFlag.RULE | LineFlag.HEADER)
            )
    return lines, lines[:repeated]


def _are_figures(columns: Sequence[Sequence[Text]]) -> bool:
    """Whether all cells are single words, and most have digits: they read as columns though one blank parts them."""
    cells = [cell.chars for column in columns for cell in column if cell.chars]
    return not any(" " in chars for chars in cells) and sum(
        any(map(str.isdigit, chars)) for chars in cells
    ) > FIGURES * len(cells)


def _is_numeric(cells: Sequence[Text]) -> bool:
    """Whether cells hold figures alone, or a dash where there is none; at least half of them are figures."""
    filled = [cell.chars for cell in cells if cell.chars]
    figures = [chars for chars in filled if chars not in _NO_FIGURE]
    return 2 * len(figures) >= max(1, len(filled)) and all(_NUMBER.fullmatch(chars) for chars in figures)


def _fraction(cells: Sequence[Text]) -> int:
    """The most characters that any cell has from its decimal point on."""
    return max((len(cell.chars) - _point(cell.chars) for cell in cells), default=0)


def _point(chars: str) -> int:
    at = chars.rfind(".")
    return len(chars) if at < 0 else at


def _aligned(cell: Text, fraction: int) -> Text:
    """The cell with blanks after it so that its point stands ``fraction`` characters before its end."""
    short = fraction - (len(cell.chars) - _point(cell.chars))
    return add(cell, inserted(" " * short)) if cell.chars and short > 0 else cell
