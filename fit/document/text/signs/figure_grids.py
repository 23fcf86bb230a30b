"""Figures and letters in rows that are read down as well as across: squares, boards, leaves of a calendar, codes in line."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line

_SHORT = r"(?:\d{3}|\S{1,2})"
_ROW = re.compile(rf"{_SHORT}(?: +{_SHORT})*")
"""A row of a grid, or a stroke between two of them: no cell is a word."""
_CELLS = re.compile(r"\S+(?: \S+)*")
_SIGNS = re.compile(r"\S+")
_CODED = re.compile(r"\S+ {2,}(?P<code>[A-Za-z\d.*-]{40,})")
"""A name, and behind it what is longer than any word."""
_DIGEST = re.compile(r"[\da-fA-F]+")
CELLS_OF_ROW = 3
"""Cells of most rows, at least."""
CHART = 12
"""Cells of each row, at least, of a chart whose cells are no figures."""
WIDE = 2
"""Rows with a wide blank between their cells, at least: in rows with single blanks nothing stands below anything."""


def find_figure_grids(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such grids."""
    found: list[tuple[int, int]] = []
    end = 0
    for index, line in enumerate(lines):
        if index < end or taken[index] is not None:
            continue
        if (" " in line.text[:4] or len(line.text) < 4) and _ROW.fullmatch(line.text):
            end = _end(lines, taken, index, _ROW)
            if _grid([row.text for row in lines[index:end]]) and not _in_table(lines, index, end):
                found.append((index, end))
        elif line.end > 40 and _CODED.fullmatch(line.text):
            end = _end(lines, taken, index, _CODED)
            if _in_line(lines[index:end]):
                found.append((index, end))
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, row: re.Pattern[str]) -> int:
    """The end of the lines that are such rows, no blank line between them."""
    end = start + 1
    while end < len(lines) and not lines[end].apart and taken[end] is None and row.fullmatch(lines[end].text):
        end += 1
    return end


def _grid(rows: Sequence[str]) -> bool:
    """Whether most rows have several cells, and half of all cells are figures; or all have many, evenly spaced: a chart of signs."""
    if len(rows) < WIDE or sum("  " in row for row in rows) < WIDE:
        return False
    if all(map(_evenly, rows)):
        return True
    cells = [row.split() for row in rows]
    several = sum(len(row) >= CELLS_OF_ROW for row in cells)
    figures = sum(cell.isdigit() for row in cells for cell in row)
    return 2 * several > len(rows) and 2 * figures >= sum(map(len, cells))


def _evenly(row: str) -> bool:
    """Whether a row has many cells, as far apart from each other as all others; before the first a label may stand."""
    places = [match.start() for match in _SIGNS.finditer(row)]
    return len(places) >= CHART and len({below - above for above, below in pairwise(places[1:])}) == 1


def _in_table(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the line above or below has words that begin where cells do: the head of a table, or another of its rows.

    Between the head and the rows a rule may stand, and dots between two rows for those left out.
    """
    columns = {match.start() for line in lines[start:end] for match in _CELLS.finditer(line.cells)}
    first, last = start, end
    while first > 1 and not lines[first].apart and _between(lines[first - 1].text):
        first -= 1
    while last < len(lines) - 1 and not lines[last].apart and _between(lines[last].text):
        last += 1
    above = [lines[first - 1]] if first else []
    below = [lines[last]] if last < len(lines) and not lines[last].apart else []
    for line in (*above, *below):
        words = [match.start() for match in _CELLS.finditer(line.cells)]
        if len(words) > 1 and 2 * sum(word in columns for word in words) >= len(words):
            return True
    return False


def _between(text: str) -> bool:
    """Whether a line is a rule, or dots for rows that are left out."""
    return text == "..."


def _in_line(part: Sequence[Line]) -> bool:
    """Whether codes as long as each other begin at one column, none of them the sum of a file."""
    codes = [_CODED.fullmatch(line.text) for line in part]
    places = {line.indent + code.start("code") for line, code in zip(part, codes, strict=True) if code}
    drawn = all(code is not None and not _DIGEST.fullmatch(code["code"]) for code in codes[:1])
    return len(part) > 1 and len(places) == 1 and len({line.end for line in part}) == 1 and drawn
