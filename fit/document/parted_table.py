"""A table that rows over all columns part: each part begins with the header, what stands in those rows stands between."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fit.document.blocks import Block, Kind, Text

Row = tuple[Text, ...]
"""A cell for each column."""


def part_table(heads: Sequence[Row], body: Sequence[Row | list[Block]], level: int) -> Iterator[Block]:
    """The parts of a table whose ``body`` has rows, and the blocks of each row that stands apart, in order.

    The header stands alone where no other row follows it.
    """
    if heads and not any(isinstance(one, tuple) for one in body):
        yield Block(Kind.TABLE, level=level, rows=tuple(heads), header_rows=len(heads))
    rows: list[Row] = []
    for one in [*body, []]:
        if isinstance(one, tuple):
            rows.append(one)
            continue
        if rows:
            yield Block(Kind.TABLE, level=level, rows=(*heads, *rows), header_rows=len(heads))
            heads = [tuple(map(Text.again, head)) for head in heads]
        rows = []
        yield from one
