"""How a table is set: as it was drawn, in columns drawn anew, as a list of words, as hanging text, or as records."""

from __future__ import annotations

from typing import NamedTuple

from fit.document.blocks import Block
from fit.layout.columns import drawn, rebuilt
from fit.layout.flowing import Setter
from fit.layout.lines import Line
from fit.layout.pair_lists import pair_list
from fit.layout.records import fields, hanging, records
from fit.layout.word_lists import word_list


class Table(NamedTuple):
    """A table set."""

    lines: list[Line]
    header: list[Line]
    """Lines to repeat on each page that the table goes on to; none where it does not stand in columns."""
    what: str
    """What was done; empty where it stays as it was drawn."""


def is_whole(block: Block) -> bool:
    """Whether the cells hold every letter and digit of the rows as drawn, so that they can be set another way."""
    if not block.rows or not block.rows[0]:
        return False
    held = {source for row in block.rows for cell in row for source in cell.sources}
    return all(
        source in held
        for line in block.lines
        for char, source in zip(line.chars, line.sources, strict=True)
        if char.isalnum()
    )


def set_table(block: Block, setter: Setter, indent: int) -> Table:
    """The first way that fits the width, for a table that `is_whole`."""
    lines = fields(block, setter, indent)
    if lines:
        return Table(lines, [], "")
    found = drawn(block, setter, indent)
    if found:
        return Table(*found, "")
    found = rebuilt(block, setter, indent)
    if found:
        return Table(*found, "drawn anew in narrower columns" if block.lines else "")
    lines = word_list(block, setter, indent)
    if lines:
        return Table(lines, [], "words in order, set in fewer columns")
    if pairs := pair_list(block):
        found = rebuilt(pairs, setter, indent)
        lines = found[0] if found else hanging(pairs, setter, indent)
        if lines:
            return Table(lines, [], "keys with what they mean, a pair a line")
    lines = hanging(block, setter, indent)
    if lines:
        return Table(lines, [], "set as hanging text: too wide, and its first column is short")
    return Table(
        records(block, setter, indent), [], "set as records, one for each row: too wide for its columns"
    )
