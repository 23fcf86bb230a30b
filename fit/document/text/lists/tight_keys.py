"""Terms that just fill the room before their column: one blank is all that parts such a term from its text.

The term before or after it in the list shows the column: that one has its text on the next line, or wide blanks before it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import Measure, closed, prose

LONGEST = 24
"""Cells to the text, at most."""
WORDS = 3
"""Words of such a term, at most."""
LOOK = 40
"""Lines within which the next term stands."""
_KEY = re.compile(r"\S+(?: \S+){0,5}? {2,}(?=\S)")


def tight_key(lines: Sequence[Line], index: int, measure: Measure, keys: Sequence[int]) -> int:
    """The column of the text after such a term at the start of a line, or 0; ``keys`` has those of the lines above."""
    line = lines[index]
    if not _fresh(lines, index) or code(line.text):
        return 0
    below = lines[index + 1] if index + 1 < len(lines) else None
    if below is not None and not below.apart:
        column = below.indent
        if not _fills(line, column) or shortfall(line, below, measure.right(index)) >= 0:
            return 0
        near = _beside(lines, index)
        return column if any(column in {keys[place], _column(lines, place, measure)} for place in near) else 0
    for place in _beside(lines, index):
        column = keys[place] or _column(lines, place, measure)
        if _fills(line, column) and _said(line, column):
            return column
    return 0


def _fresh(lines: Sequence[Line], index: int) -> bool:
    return index == 0 or lines[index].gap > 0 or (lines[index].crossing and closed(lines[index - 1].text))


def _fills(line: Line, column: int) -> bool:
    """Whether a few words end one blank before the column, and others begin at it."""
    if not line.indent + 2 < column <= line.indent + LONGEST or column >= line.end:
        return False
    term = line.cells[line.indent : column - 1]
    whole = not term.endswith(" ") and line.cells[column - 1] == " " != line.cells[column]
    return whole and "  " not in term and len(term.split()) <= WORDS and not term.endswith(",")


def _said(line: Line, column: int) -> bool:
    """Whether a line alone is a term and a sentence about it, and no sentence from its first word on."""
    term, text = line.cells[line.indent : column - 1], line.cells[column:]
    words = term[:1].isupper() and not term.isupper() and term.replace(" ", "").isalpha()
    return not words and not text[:1].islower() and (closed(text) or prose(text))


def _beside(lines: Sequence[Line], index: int) -> list[int]:
    """The entries before and after one in its list: they stand at its indent, and what is between them is deeper."""
    found: list[int] = []
    for places in (
        range(index - 1, max(-1, index - LOOK), -1),
        range(index + 1, min(len(lines), index + LOOK)),
    ):
        for place in places:
            if lines[place].indent < lines[index].indent:
                break
            if lines[place].indent == lines[index].indent:
                found.append(place)
                break
    return found


def _column(lines: Sequence[Line], index: int, measure: Measure) -> int:
    """The column that an entry shows, or 0: of the text below a short line, or after wide blanks and below them."""
    line = lines[index]
    if parted_above(lines, index + 1):
        return 0
    below = lines[index + 1]
    if below.indent <= line.indent + 2 or not _fresh(lines, index):
        return 0
    match = _KEY.match(line.text)
    if match is not None and line.indent + match.end() == below.indent:
        return below.indent
    alone = not closed(line.text) or line.text.endswith(":")
    return below.indent if alone and shortfall(line, below, measure.right(index)) >= 0 else 0
