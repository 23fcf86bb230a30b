"""Program text that blank lines part: what stands deeper between two of its pieces keeps its indentation as one with them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Kind
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.placed import Placed

DEEPER = 2
"""Cells by which such a piece stands deeper, at least."""


def with_joined_code(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with one block of each run of program text in which a deeper piece is followed by one that is not."""
    found: list[Placed] = []
    index = 0
    while index < len(placed):
        end = _end(lines, placed, index) if _code(placed[index]) else index
        if end > index:
            first, last = placed[index], placed[end]
            kept = keep_lines(lines[first.start : last.end])
            found.append(Placed(replace(first.block, lines=kept), first.start, last.end))
        else:
            found.append(placed[index])
        index = end + 1
    return found


def _end(lines: Sequence[Line], placed: Sequence[Placed], first: int) -> int:
    """The last block of the piece of program text that begins with the block ``first``."""
    left = _left(lines, placed[first])
    last, deeper = first, False
    for index in range(first + 1, len(placed)):
        one = placed[index]
        column = _left(lines, one) if _follows(lines, placed[index - 1], one) else -1
        if column == left:
            if not deeper:
                break
            last, deeper = index, False
        elif column >= left + DEEPER:
            deeper = True
        else:
            break
    return last


def _code(one: Placed) -> bool:
    """Whether a block is nothing but lines of program text."""
    return one.block.kind is Kind.PREFORMATTED and one.block.code


def _follows(lines: Sequence[Line], one: Placed, after: Placed) -> bool:
    """Whether program text stands a blank line below a block."""
    line = lines[after.start]
    return _code(after) and after.start == one.end and line.gap == 1 and not line.crossing


def _left(lines: Sequence[Line], one: Placed) -> int:
    """The left column of a block."""
    return min(line.indent for line in lines[one.start : one.end])
