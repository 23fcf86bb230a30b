"""Two lists of keys with a vertical rule between them: each is read by itself, for their entries are of different heights."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence

from fit.document.blocks import Block
from fit.document.text.columns.barred_columns import barred_sides, read_sides
from fit.document.text.line import Line

ENTRIES = 3
"""Entries of each list, at least."""
HEAD = 3
"""Lines above the first entry, at most."""
_ENTRY = re.compile(r" *(?P<key>\S+(?: \S+)?) {2,}(?=\S)")


def find_barred_lists(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are two such lists, each with the blocks of the left one and of the right one."""
    return [
        (start, end, read_sides(sides, read))
        for start, end, *sides in barred_sides(lines, taken, ENTRIES + 1)
        if _lists(*sides)
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
