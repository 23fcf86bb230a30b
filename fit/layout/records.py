"""A table too wide for its columns: as hanging text, or each row as a small record."""

from __future__ import annotations

from fit.document.blocks import Block, Mark, Text
from fit.document.text.signs.measure import prose
from fit.layout.flowing import Setter, bind
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, in_one_line, inserted, join, once
from fit.width import text_cells

GUTTER = 2
"""Blanks between a key and the text that hangs beside it."""
_HANG = 3
"""Cells by which the later cells of a record without headers stand to the right, and the later lines of a cell."""
_DASH = "-"
"""What stands for an empty cell."""


def longest_key(width: int) -> int:
    """The cells a key may have to stand beside its text: two fifths of a line."""
    return width * 2 // 5


def hanging(block: Block, setter: Setter, indent: int) -> list[Line] | None:
    """Two columns as keys with their text beside them; None where there are more, or a key is too long."""
    if len(block.rows[0]) != 2:
        return None
    widest = max(text_cells(in_one_line(row[0]).chars) for row in block.rows)
    hang = indent + widest + GUTTER
    if not 0 < widest <= longest_key(setter.width - indent) or hang >= setter.width:
        return None
    lines: list[Line] = []
    for number, (key, text) in enumerate(once(block.rows, block.header_rows)):
        label = add(inserted(" " * indent), in_one_line(key))
        field = _field(label, text, setter, indent, hang) or [
            setter.line(label, LineFlag.FIRST | LineFlag.LAST)
        ]
        lines += _header(field) if number < block.header_rows else field
    return lines


def fields(block: Block, setter: Setter, indent: int) -> list[Line] | None:
    """Two columns of which the first is `Header:` in each row, as records come back; None for other tables."""
    if len(block.rows[0]) != 2 or not all(row[0].chars.endswith(":") for row in block.rows):
        return None
    widest = max(text_cells(in_one_line(row[0]).chars) for row in block.rows)
    room = setter.width - indent
    if widest > room // 2 or widest + GUTTER >= room:
        return None
    lines: list[Line] = []
    record: list[tuple[Text, Text]] = []
    for key, cell in block.rows:
        if record and in_one_line(key).chars == record[0][0].chars:
            lines += [*_beside(record, setter, indent, widest), setter.blank()]
            record = []
        record.append((in_one_line(key), cell))
    return lines + _beside(record, setter, indent, widest)


def records(block: Block, setter: Setter, indent: int) -> list[Line]:
    """Each row as a record: `Header: cell` for each cell, the cells of all records under each other.

    A blank line parts two records. Where a header is too long to stand beside its cells, each cell follows its own.
    An empty cell has no line, but a header whose column is empty throughout stands in the first record. Without
    headers only its place tells of which column a value is: then a dash stands for an empty cell before others.
    """
    headers = [_name(column[: block.header_rows]) for column in zip(*block.rows, strict=True)]
    body = block.rows[block.header_rows :]
    used = [any(row[column].chars for row in body) for column in range(len(headers))]
    widest = max(text_cells(header.chars) for header in headers)
    beside = widest <= (setter.width - indent) // 2
    lines: list[Line] = []
    if widest == 0 and len(headers) > 2 and not any(prose(cell.chars) for row in body for cell in row[1:]):
        body = tuple(map(_with_dashes, body))
    for number, row in enumerate(body or [tuple(Text() for _ in headers)]):
        fields = [
            (header, cell)
            for column, (header, cell) in enumerate(zip(headers, row, strict=True))
            if cell.chars or (number == 0 and header.chars and not used[column])
        ]
        if lines and fields:
            lines.append(setter.blank())
        lines += _beside(fields, setter, indent, widest) if beside else _parted(fields, setter, indent)
    return lines


def _with_dashes(row: tuple[Text, ...]) -> tuple[Text, ...]:
    """A row with a key, dashes for its empty cells before the last that is not."""
    last = max((column for column, cell in enumerate(row) if cell.chars), default=0)
    dashed = [cell if cell.chars else inserted(_DASH) for cell in row[:last]]
    return (*dashed, *row[last:]) if row[0].chars else row


def _beside(fields: list[tuple[Text, Text]], setter: Setter, indent: int, widest: int) -> list[Line]:
    """One record, its cells beside their headers; without headers, the later cells further to the right."""
    margin = inserted(" " * indent)
    lines: list[Line] = []
    for number, (header, cell) in enumerate(fields):
        lines = bind(lines)
        if header.chars:
            label = add(margin, header)
            field = _field(label, cell, setter, indent, indent + widest + GUTTER)
            lines += field or [setter.line(label, LineFlag.FIRST | LineFlag.LAST | LineFlag.FLOWING)]
        else:
            lines += setter.flow(cell, indent + (min(_HANG, setter.width // 8) if number else 0))
    return lines


def _field(label: Text, cell: Text, setter: Setter, indent: int, hang: int) -> list[Line]:
    """A key with its text beside it, or below it where a word has room there alone; nothing where there is no text."""
    below = indent + min(_HANG, setter.width // 8)
    if setter.width - hang < longest_word(cell) <= setter.width - below:
        head = setter.line(label, LineFlag.FIRST | LineFlag.FLOWING)
        first, *later = setter.flow(cell, below)
        return [head, first._replace(flags=first.flags & ~LineFlag.FIRST), *later]
    return setter.flow(cell, hang, label=label)


def longest_word(text: Text) -> int:
    """The cells of the longest word."""
    return max(map(text_cells, text.chars.split()), default=0)


def _parted(fields: list[tuple[Text, Text]], setter: Setter, indent: int) -> list[Line]:
    """One record with long headers: each field begins at the margin, and goes on further to the right."""
    hang = min(_HANG, setter.width // 8)
    lines: list[Line] = []
    for header, cell in fields:
        lines = bind(lines)
        if header.chars and cell.marks and cell.marks[-1] & Mark.PROGRAM:
            lines += bind(setter.flow(header, indent + hang, outdent=hang))
            lines += setter.flow(cell, indent + hang)
        else:
            lines += setter.flow(join(header, cell), indent + hang, outdent=hang)
    return lines


def _name(cells: tuple[Text, ...]) -> Text:
    """A column's header, its rows one after the other, with the colon that parts it from a cell."""
    name = in_one_line(join(*cells))
    return add(name, inserted(":")) if name.chars and not name.chars.endswith(":") else name


def _header(lines: list[Line]) -> list[Line]:
    return [line._replace(flags=line.flags | LineFlag.HEADER) for line in lines]
