"""Rows whose key leaves but one blank before its text, in a list whose other rows show by wide blanks where all texts begin.

A word that begins at that column in each line of a part, after a key like those of the others, is no chance.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import chain

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.code import code

FARTHEST = 28
"""Cells to the text of a row, at most."""
WORDS = 4
"""Words of a key, at most."""
LEAST = 3
"""Rows with wide blanks before their text, at least."""
SIDE = 1
"""Cells by which the keys of one list may stand apart: a point before some of them hangs out."""
ALIKE = 0.8
"""Share of the texts of the other rows that begin with a letter of one case, at least, to show that all do."""
CODED = 0.3
"""Share of the rows that read as program text, at most."""
_ROW = re.compile(r"(?P<key>\S+(?: \S+){0,3}?)(?P<blank> {2,})(?=\S)")


def tight_rows(lines: Sequence[Line], taken: Sequence[object]) -> dict[int, int]:
    """For each row with such a key the column of its text."""
    found: dict[int, int] = {}
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or "   " not in line.text or taken[index] is not None:
            continue
        column = _column(line)
        if not column:
            continue
        rows, floor = _rows(lines, taken, index, floor, column)
        found.update(dict.fromkeys(rows, column))
    return found


def _column(line: Line) -> int:
    """The column of the text that three blanks at least part from the key before it; 0 where none do."""
    match = _ROW.match(line.text)
    wide = match is not None and len(match["blank"]) > 2 and match.end() <= FARTHEST
    return line.indent + match.end() if match is not None and wide else 0


def _rows(
    lines: Sequence[Line], taken: Sequence[object], index: int, floor: int, column: int
) -> tuple[list[int], int]:
    """The tight rows of the list around a line, if the others show that they are rows; and the list's end."""
    start, end = _part(lines, index)
    if not _all_rows(lines, taken, (start, end), column):
        return [], end
    parts = [(start, end)]
    while start > floor and lines[start].gap <= 1:
        above = _part(lines, start - 1)
        if above[0] < floor or not _all_rows(lines, taken, above, column):
            break
        parts.insert(0, above)
        start = above[0]
    while end < len(lines) and lines[end].gap <= 1:
        below = (end, part_end(lines, end))
        if not _all_rows(lines, taken, below, column):
            break
        parts.append(below)
        end = below[1]
    return _shown(lines, parts, column), end


def _part(lines: Sequence[Line], index: int) -> tuple[int, int]:
    """The lines around one that no blank line parts."""
    start = index
    while start and not lines[start].apart:
        start -= 1
    return start, part_end(lines, index)


def _all_rows(lines: Sequence[Line], taken: Sequence[object], part: tuple[int, int], column: int) -> bool:
    """Whether each line of a part is a row with its text at the column, or goes on with the text of one there."""
    first = lines[part[0]]
    for index in range(*part):
        line = lines[index]
        if taken[index] is not None:
            return False
        if line.indent >= column and index > part[0]:
            continue
        if abs(line.indent - first.indent) > SIDE or not _blank_before(line, column):
            return False
    return True


def _blank_before(line: Line, column: int) -> int:
    """The blanks between a key and the text at a column; 0 where the line is no such row."""
    key, text = line.cells[line.indent : column].rstrip(" "), line.cells[column:]
    whole = key != "" and "  " not in key and len(key.split(" ")) <= WORDS
    if not whole or text[:1] in {"", " "} or text[1:2] == " " or "   " in text:
        return 0
    return column - line.indent - len(key)


def _shown(lines: Sequence[Line], parts: Sequence[tuple[int, int]], column: int) -> list[int]:
    """The tight rows of the parts, from the first that has a wide blank to the last; none where they look unlike the others.

    A part before or after all of these may be a title of the list, or leads to what comes next.
    """
    rows = [[index for index in range(*part) if lines[index].indent < column] for part in parts]
    wide = [[index for index in part if _blank_before(lines[index], column) > 1] for part in rows]
    sure = [
        [*known, *(index for index in part if _hangs(lines, index, column))]
        for part, known in zip(rows, wide, strict=True)
    ]
    last = len(rows)
    while last and not sure[last - 1]:
        last -= 1
    first = next((place for place in range(last) if sure[place]), last)
    return _alike(lines, [*chain(*rows[first:last])], [*chain(*wide)], column)


def _hangs(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether the text of a row goes on in the next line, at its column."""
    return not parted_above(lines, index + 1) and lines[index + 1].indent == column


def _alike(lines: Sequence[Line], rows: list[int], wide: Sequence[int], column: int) -> list[int]:
    """The tight ones of the rows, where enough have wide blanks and the tight ones begin as those do."""
    tight = [index for index in rows if index not in set(wide)]
    broad = sum(_blank_before(lines[index], column) > 2 or _hangs(lines, index, column) for index in wide)
    if not tight or len(wide) < LEAST or broad < LEAST - 1:
        return []
    if sum(code(lines[index].text) for index in rows) > CODED * len(rows):
        return []
    capitals = sum(lines[index].cells[column].isupper() for index in wide) / len(wide)
    told = {True} if capitals >= ALIKE else {False} if capitals <= 1 - ALIKE else {True, False}
    alike = all(
        lines[index].cells[column].isupper() in told
        and lines[index].cells[column].isalpha()
        and lines[index].text[-1] != ":"
        for index in tight
    )
    return tight if alike else []
