"""What stands below a term that was found late: its level there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Kind
from fit.document.text.line import Line
from fit.document.text.running.placed import Levels, Placed


def below_term(
    lines: Sequence[Line], placed: Sequence[Placed], indent: int, column: int, level: int
) -> list[Placed]:
    """The blocks up to a heading or the next line as far left as a term, each at its level below it.

    The term stands at ``indent``, its text at ``column``; ``level`` is its own.
    """
    levels = Levels(0, [(indent, column)])
    found: list[Placed] = []
    for one in placed:
        if lines[one.start].indent <= indent or one.block.kind is Kind.HEADING:
            break
        found.append(_under(lines, one, levels, level))
    return found


def _under(lines: Sequence[Line], one: Placed, levels: Levels, level: int) -> Placed:
    """A block at its level; what was drawn has none."""
    if one.block.kind in {Kind.TABLE, Kind.PICTURE}:
        return one
    indent = min(line.indent for line in lines[one.start : one.end])
    column = text_column(lines, one) if one.block.kind is Kind.ITEM else None
    return replace(one, block=replace(one.block, level=level + levels.of(indent, column)))


def text_column(lines: Sequence[Line], item: Placed) -> int:
    """The column at which the text of an item begins."""
    line, text = lines[item.start], item.block.text
    place = text.sources[0] if text.chars else -1
    if item.end > item.start + 1 and place >= lines[item.start + 1].offset:
        return lines[item.start + 1].indent
    behind = place - line.offset
    return (
        behind if line.resolved is None and behind > line.indent else line.indent + len(item.block.label) + 1
    )
