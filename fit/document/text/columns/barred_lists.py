"""Two lists of keys, or running text and a list, with a vertical rule between them: no rows go across, each is read by itself.

Entries of different heights show it, or some that begin beside the middle of sentences.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.barred_columns import barred_sides, read_sides
from fit.document.text.columns.newspaper import prose_columns
from fit.document.text.line import Line
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, starts_small

LEAST = 8
"""Lines of running text beside a bar, at least."""
BESIDE = 2
"""Entries that begin beside the middle of a sentence, at least."""
ENTRIES = 3
"""Entries of each list, at least."""
HEAD = 3
"""Lines above the first entry, at most."""
_RULE = re.compile(r"[-=_+|\u2500-\u257f]{3,}")
_ENTRY = re.compile(r" *(?P<key>\S+(?: \S+)?) {2,}(?=\S)")


def find_barred_lists(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are two such sides, each with the blocks of the left one and of the right one."""
    return [
        (start, end, read_sides(sides, read))
        for start, end, *sides in barred_sides(lines, taken, ENTRIES + 1)
        if _lists(*sides) or (end - start >= LEAST and not _ruled(lines, start, end) and _beside(*sides))
    ]


def _lists(left: Sequence[Line], right: Sequence[Line]) -> bool:
    """Whether both sides are lists, and an entry of one begins beside the middle of one of the other: no rows go across."""
    sides = [_begins(left), _begins(right)]
    return all(sides) and any({first, second} == {True, False} for first, second in zip(*sides, strict=True))


def _begins(side: Sequence[Line]) -> list[bool | None]:
    """For each line of a list whether an entry begins with it, or goes on; None above the first one, and where it is blank.

    Nothing where the lines are no list of keys with their texts at one column.
    """
    matches = [_ENTRY.match(line.cells) for line in side]
    places = Counter((line.indent, match.end()) for line, match in zip(side, matches, strict=True) if match)
    if not places:
        return []
    (key, text), count = places.most_common(1)[0]
    begins = [
        None if not line.cells else match is not None and (line.indent, match.end()) == (key, text)
        for line, match in zip(side, matches, strict=True)
    ]
    first = begins.index(True)
    body = range(first, len(side))
    if count < ENTRIES or first > HEAD or any(begins[i] is False and side[i].indent != text for i in body):
        return []
    return [None] * first + begins[first:]


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
        and find_marker(beside.text) is not None
        for (above, line), beside in zip(pairwise(text), other[1:], strict=True)
    )
    return begun >= BESIDE and prose_columns(text, [(0, max(line.end for line in text))])
