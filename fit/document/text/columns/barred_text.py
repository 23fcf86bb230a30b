"""Running text and a list with a vertical rule between them: entries begin beside the middle of sentences, no rows go across."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.barred_columns import barred_sides, read_sides
from fit.document.text.columns.newspaper import prose_columns
from fit.document.text.line import Line
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
    return [
        (start, end, read_sides(sides, read))
        for start, end, *sides in barred_sides(lines, taken, LEAST)
        if not _ruled(lines, start, end) and _beside(*sides)
    ]


def _ruled(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether a rule stands right above or below lines: they are a table."""
    above = start > 0 and not lines[start].apart and _RULE.fullmatch(lines[start - 1].text) is not None
    return above or (
        end < len(lines) and not lines[end].apart and _RULE.fullmatch(lines[end].text) is not None
    )


def _beside(text: Sequence[Line], other: Sequence[Line]) -> bool:
    """Whether the left side is running text, and entries or paragraphs of the right one begin beside the middle of its sentences."""
    begun = sum(
        starts_small(line.text)
        and bool(above.cells)
        and not closed(above.text)
        and bool(beside.cells)
        and (not before.cells or find_marker(beside.text) is not None)
        for (above, line), (before, beside) in zip(pairwise(text), pairwise(other), strict=True)
    )
    return begun >= BESIDE and prose_columns(text, [(0, max(line.end for line in text))])
