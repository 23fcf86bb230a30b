"""A table too wide for its columns: as hanging text, or each row as a small record."""

from __future__ import annotations

from fit.document.blocks import Block, Text
from fit.layout.flowing import Setter
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, inserted, join
from fit.width import text_cells

GUTTER = 2
"""Blanks between a key and the text that hangs beside it."""
_HANG = 2
"""Cells by which the later lines of a record's field stand to the right."""


def longest_key(width: int) -> int:
    """The cells a key may have to stand beside its text: two fifths of a line."""
    return width * 2 // 5


def hanging(block: Block, setter: Setter, indent: int) -> list[Line] | None:
    """Two columns as keys with their text beside them; None where there are more, or a key is too long."""
    if len(block.rows[0]) != 2:
        return None
    widest = max(text_cells(row[0].chars) for row in block.rows)
    if not 0 < widest <= longest_key(setter.width - indent):
        return None
    hang = indent + widest + GUTTER
    lines: list[Line] = []
    for number, (key, text) in enumerate(block.rows):
        label = add(inserted(" " * indent), key)
        row = setter.flow(text, hang, label=label) or [setter.line(label, LineFlag.FIRST | LineFlag.LAST)]
        lines += _header(row) if number < block.header_rows else row
    return lines


def records(block: Block, setter: Setter, indent: int) -> list[Line]:
    """Each row as a record: a line for each cell, `Header: cell`, and a blank line between two records.

    An empty cell has no line, but a header whose column is empty throughout stands in the first record.
    """
    headers = [_name(column[: block.header_rows]) for column in zip(*block.rows, strict=True)]
    body = block.rows[block.header_rows :]
    used = [any(row[column].chars for row in body) for column in range(len(headers))]
    hang = min(_HANG, max(0, setter.width // 4))
    lines: list[Line] = []
    for number, row in enumerate(body or [tuple(Text() for _ in headers)]):
        record: list[Line] = []
        for column, (header, cell) in enumerate(zip(headers, row, strict=True)):
            if cell.chars or (number == 0 and header.chars and not used[column]):
                outdent = 0 if header.chars == "" and column and not block.header_rows else hang
                record += setter.flow(join(header, cell), indent + hang, outdent=outdent)
        if lines and record:
            lines.append(setter.blank())
        lines += record
    return lines


def _name(cells: tuple[Text, ...]) -> Text:
    """A column's header, its rows one after the other, with the colon that parts it from a cell."""
    name = join(*cells)
    return add(name, inserted(":")) if name.chars and not name.chars.endswith(":") else name


def _header(lines: list[Line]) -> list[Line]:
    return [line._replace(flags=line.flags | LineFlag.HEADER) for line in lines]
