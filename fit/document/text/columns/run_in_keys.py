"""Keys that one blank parts from the text beside them, which begins at the column of all others: they just fill their own."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line

REACH = 3
"""Lines below a row within which another shows that its table goes on."""


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
