"""Lists side by side that are no table: items with their markers, or keys with their texts under a name over each."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.gutters import CELLS, GUTTER
from fit.document.text.line import Line, without_blanks
from fit.document.text.signs.markers import Marker, find_marker
from fit.document.text.signs.measure import prose

ROWS = 2
"""Lines with several items, at least, or items in each column."""
KEYS = 3
"""Keys in each of the lists, at least."""
_DASHES = frozenset(("bullet -", "bullet --", "bullet \u2013", "bullet \u2014"))
_WORD = re.compile(r"[^\W\d_]{2}")
_KEYED = re.compile(r"(\S+(?: \S+)?) {2,}(?=.*[^\W\d_]{2})")
Reader = Callable[[Sequence[Line]], list[Block]]


def find_side_lists(
    lines: Sequence[Line], taken: Sequence[object], read: Reader
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such lists, each with the blocks of one list after the other."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        parts: list[list[Line]] = []
        if taken[index] is None and "  " in lines[index].text:
            parts, end = _items(lines, taken, index)
            if not parts:
                parts, end = _named_keys(lines, taken, index)
        if parts:
            found.append((index, end, [block for part in parts for block in read(part)]))
            index = end
        else:
            index += 1
    return found


def _items(lines: Sequence[Line], taken: Sequence[object], start: int) -> tuple[list[list[Line]], int]:
    """The items from a line on, of which several stand in each line, in the order of their numbers; and their end."""
    marker = _marker(lines[start].text)
    parts = [*CELLS.finditer(lines[start].cells)] if marker else []
    kinds = {part.kind if (part := _marker(match[0])) else "" for match in parts}
    if len(parts) < 2 or len(kinds) > 1 or "" in kinds:
        return [], start
    firsts = [match.start() for match in parts]
    rows: list[list[Marker | None]] = []
    end = start
    while end < len(lines) and taken[end] is None and not (end > start and lines[end].apart):
        pieces = _pieces(lines[end], firsts)
        if not pieces:
            break
        markers = [_marker(piece.text) if piece.cells and not piece.indent else None for piece in pieces]
        if any(
            piece.cells and not piece.indent and (marker is None or {marker.kind} != kinds)
            for piece, marker in zip(pieces, markers, strict=True)
        ):
            break
        rows.append(markers)
        end += 1
    columns = [[marker.ordinal for row in rows if (marker := row[place])] for place in range(len(firsts))]
    several = sum(sum(marker is not None for marker in row) > 1 for row in rows)
    if several < ROWS and min(map(len, columns)) < ROWS:
        return [], start
    if kinds <= _DASHES and _explains(_columns(lines, start, end, firsts)):
        return [], start
    if _counts([number for column in columns for number in column]):
        return _columns(lines, start, end, firsts), end
    if _counts([marker.ordinal for row in rows for marker in row if marker]):
        tops = [*(start + place for place, row in enumerate(rows) if row[0]), end]
        return [
            [
                line
                for top, below in pairwise(tops)
                for part in _columns(lines, top, below, firsts)
                for line in part
            ]
        ], end
    return [], start


def _explains(columns: Sequence[Sequence[Line]]) -> bool:
    """Whether the last of columns is running text beside words: a dash before it is no bullet, but parts these from it."""
    first, *_, last = (sum(prose(line.text) for line in column) for column in columns)
    return last > first


def _marker(text: str) -> Marker | None:
    """The marker of an item that says something."""
    marker = find_marker(text)
    return marker if marker and _WORD.search(text, marker.text) else None


def _counts(numbers: Sequence[int]) -> bool:
    """Whether numbers follow one another; those of bullets are all 0."""
    return not any(numbers) or all(below == above + 1 for above, below in pairwise(numbers))


def _pieces(line: Line, firsts: Sequence[int]) -> list[Line]:
    """The parts of a line that begin at columns or right of them; none where it stands over a gutter before one."""
    if line.indent < firsts[0] or any(line.cells[first - GUTTER : first].strip(" ") for first in firsts[1:]):
        return []
    return [
        line.cut(first, last)
        for first, last in zip(firsts, [*firsts[1:], max(line.end, firsts[-1])], strict=True)
    ]


def _columns(lines: Sequence[Line], start: int, end: int, firsts: Sequence[int]) -> list[list[Line]]:
    """What stands in each column of lines that all have their gutters."""
    rows = [_pieces(line, firsts) for line in lines[start:end]]
    return [without_blanks([replace(row[place], gap=0) for row in rows]) for place in range(len(firsts))]


def _named_keys(lines: Sequence[Line], taken: Sequence[object], start: int) -> tuple[list[list[Line]], int]:
    """Lists of keys with their texts from the line of their names on, and their end.

    What stands side by side in such lists has nothing to do with one another; the same keys in both would be compared.
    """
    names = [*CELLS.finditer(lines[start].cells)] if lines[start].text.isupper() else []
    if len(names) != 2 or not all(name[0][0].isalpha() for name in names):
        return [], start
    firsts = [name.start() for name in names]
    end = start + 1
    while end < len(lines) and taken[end] is None and _pieces(lines[end], firsts):
        if lines[end].crossing or lines[end].gap > (end == start + 1):
            break
        end += 1
    columns = _columns(lines, start, end, firsts)
    keys = [_keys(column[1:]) for column in columns]
    if not all(len(part) >= KEYS for part in keys) or set(keys[0]) & set(keys[1]):
        return [], start
    return columns, end


def _keys(lines: Sequence[Line]) -> list[str]:
    """The keys of a list whose texts all begin at one column, wrapped ones too; none where it is no such list."""
    found: list[str] = []
    places: set[int] = set()
    for line in lines:
        key = _KEYED.match(line.cells)
        if key:
            found.append(key[1])
        places.add(key.end() if key else line.indent)
    return found if len(places) == 1 else []
