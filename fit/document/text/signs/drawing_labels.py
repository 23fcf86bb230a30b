"""Words at the edges of a drawing: over its strokes, beside them, or the name that its branches come down from."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose
from fit.document.text.signs.strokes import ARROW, BOX

_APART = re.compile(r" {5,}")
"""Blanks between labels."""
_PARTS = re.compile(r"\S+(?: {1,4}\S+)*")
"""What stands between such blanks."""
LONGEST_LABEL = 3
"""Words of a label, at most, where several stand side by side."""
_TWICE = re.compile(r"([^\w\s]|o) +\1 ")
"""A sign twice, which is no bullet: two ends of a wire."""


def heads_strokes(lines: Sequence[Line], start: int) -> bool:
    """Whether the line above stands alone and has labels, far apart, over both ends of an arrow or each over strokes."""
    above, below = lines[start - 1], lines[start]
    labels = [match.span() for match in _PARTS.finditer(above.cells)]
    if not (start == 1 or above.gap) or len(labels) < 2 or above.indent < below.indent:
        return False
    if any(len(above.cells[first:last].split()) > LONGEST_LABEL for first, last in labels):
        return False
    drawn = [line.cells for line in lines[start : start + REACH] if not line.apart]
    over = all(any(cells[first:last].strip() for cells in drawn) for first, last in labels)
    return ARROW.search(below.text) is not None or (over and above.indent > 0)


def counts_figures(lines: Sequence[Line], start: int) -> bool:
    """Whether the line right above has a word or two that end over the first bar of a chart: what its figures count."""
    above, below = lines[start - 1], lines[start]
    bar = below.cells.find("|")
    few = above.apart and above.indent and len(above.text.split()) < LONGEST_LABEL
    return bool(few) and not below.gap and below.text[:1].isdigit() and abs(bar - above.end) <= LONGEST_LABEL


def names_sign(lines: Sequence[Line], start: int) -> bool:
    """Whether a few words stand apart right over the one sign that a drawing begins with: they name what it shows."""
    above, below = lines[start - 1], lines[start]
    over = below.gap == 0 and len(below.text) <= 1 and above.indent <= below.indent < above.end
    few = over and len(above.text.split()) <= LONGEST_LABEL and above.indent > 0
    return few and above.gap > 0


def is_root(line: Line, below: Line) -> bool:
    """Whether a line is the name that the branches of a tree come down from: a stroke stands under it."""
    stroke = below.text[:1] in {"|", "+", "`", "\u2502", "\u251c"} and below.indent < line.end
    return stroke and " " not in line.text and line.indent <= below.indent


def hangs(lines: Sequence[Line], index: int) -> bool:
    """Whether a line begins with a stroke right below one of the line above, and words well apart from it or at a branch."""
    line, above = lines[index], lines[index - 1].cells
    over = above[line.indent : line.indent + 1]
    both = (line.text[0] == "|" and over and over in "|+") or (BOX.match(line.text) and BOX.match(over))
    return bool(both) and line.text[1:3] in {"  ", "--", "\u2500\u2500"}


def on_wall(line: Line, beside: Line) -> bool:
    """Whether a line is signs without a blank that stand right above or below a floor and between its two walls: a third one."""
    walled = (
        beside.text[0] == beside.text[-1] == "|" and beside.indent < line.indent and line.end < beside.end
    )
    return walled and " " not in line.text


def is_label(lines: Sequence[Line], index: int) -> bool:
    """A line of words set apart by wide blanks or far in: labels at the edge of a drawing."""
    text = lines[index].text
    tokens = text.split()
    if text and len(text) <= 3 and lines[index].indent > 0:
        return True
    if len(tokens) > 5 and all(len(token) < 3 for token in tokens[:-1]):
        return True
    if _TWICE.match(text):
        return True
    apart = _APART.split(text)
    if len(apart) > 1 and all(len(label.split()) <= LONGEST_LABEL for label in apart):
        return True
    return not prose(text) and not text.endswith(":") and ("   " in text or lines[index].indent >= 12)


REACH = 3
"""Lines without any drawing that may stand between two drawn ones of one picture."""
