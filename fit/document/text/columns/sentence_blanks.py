"""Wide blanks between two sentences of running text, which part no columns."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import GUTTER, columns_of
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

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
        if not any(_starts_at(other, end) for other in near if other is not line):
            blanks |= (1 << end) - (1 << start)
    return blanks


def runs_through(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is running text in the middle of a paragraph, wide blanks in it only where sentences end."""
    line, above = lines[index], lines[index - 1]
    if not index or line.apart or above.indent != line.indent or not (prose(line.text) and prose(above.text)):
        return False
    return len(columns_of(mask(line.cells) | between_sentences(lines, index))) < 2


def _starts_at(line: Line, column: int) -> bool:
    """Whether text starts at a column, after a gutter or as the first of the line."""
    return line.cells[column : column + 1].strip(" ") != "" and not line.cells[
        max(0, column - GUTTER) : column
    ].strip(" ")
