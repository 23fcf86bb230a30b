"""Keys too long for their column: the cells of a gutter that they fill, which are blank in the rows above.

Each answer is a mask: bit ``i`` stands for the cell ``i`` of the line, set for what the columns need not heed.
"""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import CELLS
from fit.document.text.line import Line

REACH = 3
"""Lines below a row within which another shows that its table goes on."""


def long_key(line: Line, columns: Sequence[tuple[int, int]], height: int) -> int:
    """The last cell of a key so long that one blank alone parts it from the settled second column, as a mask."""
    if height < 2 or len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    tight = line.cells[start - 2 : start + 1]
    alone = " " not in line.cells[line.indent : start - 1]
    return 1 << (start - 2) if len(tight) == 3 and tight[1] == " " and alone and tight[2] != " " else 0


def glued(part: Sequence[Line], columns: Sequence[tuple[int, int]]) -> int:
    """The last cells of a key that fills the room to a second column of texts behind a colon, as a mask.

    ``part`` is the line, and the two above it, which show the column.
    """
    line = part[-1]
    if len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    key = line.cells[line.indent : start]
    alike = all(row.cells[start : start + 1] == ":" for row in part)
    return 3 << (start - 2) if alike and " " not in key and len(key) > 2 else 0


def tight_cells(line: Line, columns: Sequence[int]) -> int:
    """The last cells before columns that one blank alone parts from what stands before them, as a mask."""
    bits = mask(line.cells)
    return sum(
        1 << (start - 2)
        for start in columns
        if start > 1 and bits >> (start - 2) & 7 == 5  # word, blank, word
    )


def beside_name(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """The last cell of a key that ends one blank before the name over the second of three columns or more, as a mask.

    Its own cell stands farther right under that name, so that wide blanks part both; or it begins right there, and
    all other cells of the row stand in their columns behind wide blanks.
    """
    if len(columns) < 3 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    if line.cells[start - 1 : start] != " " or line.cells[start - 2] == " ":
        return 0
    if line.cells[start : start + 1] == " ":
        beside = line.cells[start : columns[1][1]].strip(" ") != ""
    else:
        beside = " " not in line.cells[line.indent : start - 1] and _others_filled(line, columns)
    return 1 << (start - 2) if beside else 0


def _others_filled(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether each column after the second has a cell with wide blanks before it."""
    _, *parts = [match.span() for match in CELLS.finditer(line.cells)]
    spans = [*columns[2:-1], (columns[-1][0], line.end)]
    return all(any(first < end and last > start for first, last in parts) for start, end in spans)


def fills(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> int:
    """The two cells before the second of two settled columns that a key and one blank fill, as a mask; or 0."""
    line = lines[index]
    if len(columns) != 2 or line.indent != columns[0][0] or line.text.endswith(":"):
        return 0
    start = columns[1][0]
    key, text = line.cells[line.indent : start - 1], line.cells[start - 1 :]
    whole = key[-1:] not in {"", " "} and "  " not in key and text[:1] == " " != text[1:2]
    if not whole or "  " in text[1:] or (key[0].isupper() and text[1].islower()):
        return 0
    below = lines[index + 1 : index + 1 + REACH]
    if below and not below[0].gap and below[0].indent != start and not _beside(below[0], line.indent, start):
        return 0  # a paragraph
    return 3 << (start - 2) if any(_beside(other, line.indent, start) for other in below) else 0


def fills_alone(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> int:
    """The two cells before the second of two settled columns that a key fills which stands alone above a row; or 0."""
    line = lines[index]
    if len(columns) != 2 or line.indent != columns[0][0] or index + 1 == len(lines) or lines[index + 1].gap:
        return 0
    start = columns[1][0]
    whole = start - 1 <= line.end <= start and "  " not in line.text and line.text[-1] not in ".:"
    return 3 << (start - 2) if whole and _beside(lines[index + 1], line.indent, start) else 0


def _beside(line: Line, indent: int, start: int) -> bool:
    """Whether a line has a key and, after wide blanks, its text at the column."""
    gutter = line.cells[start - 2 : start + 1]
    return line.indent == indent and gutter[:2] == "  " and gutter[2:].strip(" ") != ""
