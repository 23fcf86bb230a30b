"""Running text and a list with a vertical rule between them: entries begin beside the middle of sentences, no rows go across."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.barred_columns import bar_of
from fit.document.text.columns.newspaper import prose_columns
from fit.document.text.line import Line, without_blanks
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, starts_small

LEAST = 8
"""Lines with a bar under one another, at least."""
_RULE = re.compile(r"[-=_+|\u2500-\u257f]{3,}")
BESIDE = 2
"""Entries that begin beside the middle of a sentence, at least."""


def find_barred_text(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such columns, each with the blocks of the left one and of the right one."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        column = bar_of(lines[index]) if taken[index] is None else 0
        end = index + 1
        while column and end < len(lines) and taken[end] is None and not lines[end].apart:
            if bar_of(lines[end]) != column:
                break
            end += 1
        if end - index >= LEAST and not _ruled(lines, index, end):
            sides = [
                [line.cut(0, column) for line in lines[index:end]],
                [line.cut(column + 1, line.end) for line in lines[index:end]],
            ]
            if _beside(*sides) or _beside(*reversed(sides)):
                found.append((index, end, [block for side in sides for block in read(without_blanks(side))]))
        index = end
    return found


def _ruled(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether a rule stands right above or below lines: they are a table."""
    above = start > 0 and not lines[start].apart and _RULE.fullmatch(lines[start - 1].text) is not None
    return above or (
        end < len(lines) and not lines[end].apart and _RULE.fullmatch(lines[end].text) is not None
    )


def _beside(text: Sequence[Line], other: Sequence[Line]) -> bool:
    """Whether one side is running text, and entries or paragraphs of the other begin beside the middle of its sentences."""
    begun = sum(
        starts_small(line.text)
        and bool(above.cells)
        and not closed(above.text)
        and bool(beside.cells)
        and (not before.cells or find_marker(beside.text) is not None)
        for (above, line), (before, beside) in zip(pairwise(text), pairwise(other), strict=True)
    )
    return begun >= BESIDE and prose_columns(text, [(0, max(line.end for line in text))])
