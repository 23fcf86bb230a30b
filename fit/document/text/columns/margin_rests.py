"""Rows whose last text goes on at the margin, left of all keys, as a program or a screen has wrapped them."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import CELLS, GUTTER
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, starts_small

REACH = 40
"""Lines above and below within which the longest row shows how far rows reach."""
NARROWEST = 60
"""Cells of a full row, at least."""
KEY = 4
"""Words of a key, at most."""
WORDS = 2
"""Words of a text that is wrapped, at least."""


def margin_rest(
    lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]], after_rest: bool = False
) -> bool:
    """Whether a line is the rest of the last cell of the row above: in small letters, which found no room in that one.

    It stands left of the keys, or where keys without a letter do. ``after_rest`` says that the line above is such a rest.
    """
    line = lines[index]
    if not index or line.indent > columns[0][0] or line.apart or not starts_small(line.text):
        return False
    if line.text[-1] == "/" and " " not in line.text:
        return False  # a directory, whose files are the next rows
    above = lines[index - 1]
    start = columns[-1][0]
    cell = above.text if after_rest else above.cells[start:]
    if closed(above.text) or len(cell.split()) < WORDS or cell[0] == " ":
        return False
    if not after_rest:
        key = above.cells[: start - GUTTER + 1]
        if not key.strip() or above.cells[start - GUTTER : start].strip():
            return False
        if line.indent == columns[0][0] and any(map(str.isalpha, key)):
            return False
    if len(CELLS.findall(line.text)) > 1 and ".  " not in line.text:
        return False
    word = len(line.text.split(maxsplit=1)[0])
    rows = _rows(lines, index, columns)
    return len(rows) > 1 and above.end + 1 + word > max(NARROWEST, *(row.end for row in rows))


def _rows(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> list[Line]:
    """The rows around a line that no blank line parts from it: a few words at the place of the keys, and text at the last column."""
    first = index
    while first > max(0, index - REACH) and not lines[first].apart:
        first -= 1
    last = index + 1
    while last < min(len(lines), index + REACH) and not lines[last].apart:
        last += 1
    key, start = columns[0][0], columns[-1][0]
    return [
        line
        for line in lines[first:last]
        if line.indent == key
        and not line.cells[start - GUTTER : start].strip(" ")
        and line.cells[start : start + 1].strip(" ")
        and len(line.cells[key:start].split()) <= KEY
    ]


def margin_rests(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> set[int]:
    """The lines of a table by number that are such rests."""
    found: set[int] = set()
    for index in range(1, len(lines)):
        if margin_rest(lines, index, columns, index - 1 in found):
            found.add(index)
    return found
