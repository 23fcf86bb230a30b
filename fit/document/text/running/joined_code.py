"""Program text that blank lines part: what stands deeper between two of its pieces keeps its indentation as one with them.

So does a comment of several lines with what stands right below it, or above it at the same column.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Kind
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.running.placed import Placed

DEEPER = 2
"""Cells by which such a piece stands deeper, at least."""
FARTHEST = 12
"""Cells by which a comment does right over or below statements, at most: farther on it began beside one."""


def with_joined_code(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with one block of each run of program text in which a deeper piece is followed by one that is not."""
    placed = _with_comments(lines, placed)
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


def _with_comments(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, each comment that stands at the left column of program text beside it in one block with that."""
    found: list[Placed] = []
    for index, one in enumerate(placed):
        above = placed[index - 1] if index else None
        if above is not None and _comment(above) != _comment(one) and _one_listing(lines, found[-1], one):
            last = found[-1]
            text = one.block if _comment(last) else last.block
            kept = keep_lines(lines[last.start : one.end])
            found[-1] = Placed(replace(text, lines=kept), last.start, one.end)
        else:
            found.append(one)
    return found


def _one_listing(lines: Sequence[Line], above: Placed, below: Placed) -> bool:
    """Whether a comment stands right over program text, or a blank line below it, where its left column is."""
    line = lines[below.start]
    if not (_code(above) and _code(below)) or above.end != below.start or line.crossing:
        return False
    return line.gap <= _comment(below) and _left(lines, above) == _left(lines, below)


def _comment(one: Placed) -> bool:
    """Whether a block is a comment of several lines and no more."""
    return one.block.note.startswith("comment ")


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
    """Whether program text stands a blank line below a block, or right below a comment."""
    line = lines[after.start]
    near = line.gap == 1 or (line.gap == 0 and (_comment(one) or _comment(after)))
    beside = line.gap == 0 and abs(_left(lines, one) - _left(lines, after)) > FARTHEST
    return near and not beside and _code(after) and after.start == one.end and not line.crossing


def _left(lines: Sequence[Line], one: Placed) -> int:
    """The left column of a block."""
    return min(line.indent for line in lines[one.start : one.end])
