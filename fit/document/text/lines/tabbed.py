"""Rows of cells that tabs part: where stops of eight do not align them, each column is as wide as its longest cell.

Word processors have their stops where the writer puts them; in a plain text only the tabs are left of them.
"""

from __future__ import annotations

import re
from array import array
from collections.abc import Mapping, Sequence
from itertools import groupby

from fit.document.blocks import Text
from fit.document.text.line import Line, Resolved
from fit.document.text.signs.code import code

LEAST = 3
"""Rows of such a table that have all its cells, at least."""
COLUMNS = 3
"""Its columns, at least: two are a key and its text, which need not be aligned."""
BLANK = 2
"""Cells of blank between two columns."""
_CELL = re.compile(r"[^\t]+")
Row = list[Text]
"""The cells of a line."""


def cells_of(text: Text) -> Row:
    """The cells of a line that has tabs."""
    return [
        Text(match.group(), text.sources[slice(*match.span())], text.marks[slice(*match.span())])
        for match in _CELL.finditer(text.chars)
    ]


def align_tabs(tabbed: Mapping[int, Row], lines: list[Line]) -> None:
    """Set the rows of such tables anew. ``tabbed`` has the cells of each line with tabs."""
    for _, run in groupby(enumerate(tabbed), lambda pair: pair[1] - pair[0]):
        places = [place for _, place in run]
        rows = [tabbed[place] for place in places]
        if _misaligned(rows, [lines[place] for place in places]):
            widths = [max(map(len, column)) for column in _columns(rows)]
            for place, row in zip(places, rows, strict=True):
                line = _set(row, widths)
                line.page, line.ending = lines[place].page, lines[place].ending
                lines[place] = line


def _columns(rows: Sequence[Row]) -> list[list[str]]:
    """The cells of each column; short rows have none in the last ones."""
    most = max(map(len, rows))
    return [[row[column].chars for row in rows if column < len(row)] for column in range(most)]


def _misaligned(rows: Sequence[Row], lines: Sequence[Line]) -> bool:
    """Whether these are rows of a table with cells of one column that start at several places."""
    most = max(map(len, rows))
    full = [(row, line) for row, line in zip(rows, lines, strict=True) if len(row) == most]
    if most < COLUMNS or len(full) < LEAST or any(line.indent for line in lines):
        return False
    if any(code(line.text) for line in lines) or 2 * len(full) < len(rows):
        return False
    starts = [_starts(row, line) for row, line in full]
    return any(len(set(column)) > 1 for column in zip(*starts, strict=True))


def _starts(row: Row, line: Line) -> list[int]:
    """The cells of the screen at which the cells of a row start."""
    places = list(line.resolved.sources) if line.resolved else []
    return [places.index(cell.sources[0]) for cell in row]


def _set(row: Row, widths: Sequence[int]) -> Line:
    """A line whose cells stand in columns; the blanks between them stand for their tabs."""
    chars = ""
    sources = array("q")
    marks = b""
    for cell, width in zip(row, widths, strict=False):
        blank = width + BLANK - len(cell.chars)
        chars += cell.chars + " " * blank
        sources.extend(cell.sources)
        sources.extend([cell.sources[-1] + 1] * blank)
        marks += cell.marks + bytes(blank)
    end = len(chars.rstrip(" "))
    resolved = Resolved(chars[:end], sources[:end], marks[:end], range(end + 1))
    return Line(chars[:end], row[0].sources[0], resolved)
