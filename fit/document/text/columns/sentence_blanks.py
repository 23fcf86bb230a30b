"""Wide blanks between two sentences of running text, which part no columns."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import GUTTER, columns_of
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, prose

TALLEST = 60
"""Lines of a paragraph above and below one that are looked at, at most."""
NEAR = 4
"""Lines around one that show whether it has a column where a sentence starts."""
_SENTENCES = re.compile(r"(?:(?<=\S \S)\S*|^ *[a-z]{2,}[)\]\"']?)[.?!][\"')]?( {2,3})(?=\S)")


def between_sentences(lines: Sequence[Line], index: int) -> int:
    """The blanks between two sentences of a line, as a mask: those at whose end no text near it starts."""
    line = lines[index]
    if ".  " not in line.text and "?  " not in line.text and "!  " not in line.text:
        return 0
    near = [lines[other] for other in range(max(0, index - NEAR), min(len(lines), index + NEAR + 1))]
    blanks = 0
    for match in _SENTENCES.finditer(line.cells):
        start, end = match.span(1)
        beside = [other for other in near if other is not line and starts_at(other, end)]
        if not beside or _by_chance(lines, index, beside, end):
            blanks |= (1 << end) - (1 << start)
    return blanks


def _by_chance(lines: Sequence[Line], index: int, beside: Sequence[Line], column: int) -> bool:
    """Whether sentences of one paragraph begin at a column by chance: more of its lines run across it.

    Each of those that begin there has a sentence end before it, and the first of all lines goes on in the next.
    """
    first, last = index, index + 1
    least, most = max(0, index - TALLEST), min(len(lines), index + TALLEST)
    while first > least and not lines[first].apart and lines[first - 1].indent == lines[index].indent:
        first -= 1
    while last < most and not lines[last].apart and lines[last].indent == lines[index].indent:
        last += 1
    part = lines[first:last]
    if not all(any(one is other for one in part) for other in beside):
        return False
    if not all(column in _ends(one) for one in beside):
        return False
    across = sum(" " * 2 not in line.cells[column - 2 : column] and line.end > column for line in part)
    text = all(prose(line.text) for line in part[:-1]) and not closed(part[0].text)
    return text and across > len(beside) + 1


def _ends(line: Line) -> set[int]:
    return {match.end(1) for match in _SENTENCES.finditer(line.cells)}


def runs_through(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is running text in the middle of a paragraph, wide blanks in it only where sentences end."""
    line, above = lines[index], lines[index - 1]
    if not index or line.apart or above.indent != line.indent or not (prose(line.text) and prose(above.text)):
        return False
    return len(columns_of(mask(line.cells) | between_sentences(lines, index))) < 2


def starts_at(line: Line, column: int) -> bool:
    """Whether text starts at a column, after a gutter or as the first of the line."""
    return line.cells[column : column + 1].strip(" ") != "" and not line.cells[
        max(0, column - GUTTER) : column
    ].strip(" ")
