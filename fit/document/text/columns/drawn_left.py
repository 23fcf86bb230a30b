"""A drawing at the left of running text: it stays whole, and the text is read below it.

The lines of both stand in the same rows. Its labels are short, and the text goes on from row to row as no legend does.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.columns.gutters import GUTTER
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.rules import any_rule
from fit.document.text.signs.strokes import strength

ROWS = 5
"""Lines with a part of the drawing, at least."""
SHORT = 4
"""Letters and figures of its labels in one line, at most."""
PLACES = 2
"""Columns at which its lines begin, at least: a list of signs has one."""
SURE = 3
"""Such columns from which on it is no list of signs, however little is said beside it, and however often one comes again."""
STROKES = 0.6
"""The share of its lines that have strokes, at least."""
JOINTS = 2
"""Lines of the text that go on in the middle of a sentence, at least."""
_WORD = re.compile(r"[^\W\d_]{3}")


def find_drawn_left(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int, int]]:
    """The half-open runs of lines with such a drawing, and the column where the text begins."""
    found: list[tuple[int, int, int]] = []
    floor = 0
    none: dict[int, int] = {}  # by the column of a text, the end of the lines at which no drawing stands
    for index, line in enumerate(lines):
        if index < floor or taken[index] is not None or "  " not in line.text:
            continue
        column = _text_from(line)
        if not column or index < none.get(column, 0):
            continue
        told = column
        start, end = _reach(lines, taken, index, column, floor)
        if start > floor and (left := _left_of(lines[start - 1], column)):
            wider = _reach(lines, taken, index, left, floor)
            if wider[0] < start and wider[1] >= end:
                (start, end), column = wider, left
        while end - start >= ROWS and lines[start + 1].gap:
            if lines[start].indent < column and not any_rule(lines[start].text):
                break
            start += 1  # a paragraph of its own, or the rule under a title
        if end - start >= ROWS and _beside(lines[start:end], column):
            end = _drawn_on(lines, taken, end)
            found.append((start, end, column))
            floor = end
        else:
            none[told] = end
    return found


def _left_of(line: Line, column: int) -> int:
    """The column, left of another, at which a line has text behind a wide blank, or by itself; or 0."""
    gap = line.cells.rfind("  ", 0, column)
    at = gap + 2
    return at if gap > 0 and at < column and prose(line.cells[at:]) else 0


def _drawn_on(lines: Sequence[Line], taken: Sequence[object], end: int) -> int:
    """The end of the drawing, which may be wider below its text."""
    while end < len(lines) and taken[end] is None and not lines[end].apart and _drawn(lines[end].text):
        end += 1
    return end


def _text_from(line: Line) -> int:
    """The column of running text behind a wide blank, with nothing but signs and short labels before it; or 0."""
    gap = line.text.rfind("  ")
    text = line.text[gap + 2 :]
    drawn = line.text[:gap].rstrip(" ")
    return line.end - len(text) if prose(text) and _drawn(drawn) else 0


def _drawn(text: str) -> bool:
    """Whether a part of a line can belong to a drawing: no word, a few letters, and a sign."""
    letters = sum(map(str.isalnum, text))
    return letters <= SHORT and letters < len(text.replace(" ", "")) and _WORD.search(text) is None


def _reach(
    lines: Sequence[Line], taken: Sequence[object], index: int, column: int, floor: int
) -> tuple[int, int]:
    """The lines around one that have its gutter."""
    start, end = index, index + 1
    while start > floor and taken[start - 1] is None and _fits(lines, start - 1, start, column):
        start -= 1
    while end < len(lines) and taken[end] is None and _fits(lines, end, end, column):
        end += 1
    return start, end


def _fits(lines: Sequence[Line], index: int, joint: int, column: int) -> bool:
    """Whether a line has a blank before the column, a label or strokes at most left of it, or else text at it."""
    line = lines[index]
    if lines[joint].gap > 1 or lines[joint].crossing or line.cells[column - GUTTER : column].strip(" "):
        return False
    left = line.cells[:column].strip(" ")
    if not left:
        return line.indent == column or (line.indent > column and not lines[joint].gap)
    return _drawn(left) or (len(left) < ROWS and _WORD.search(left) is None)


def _beside(part: Sequence[Line], column: int) -> bool:
    """Whether strokes stand left of the column, at several places, and a text that goes on from line to line right of it."""
    drawn = [line for line in part if line.indent < column]
    places = len({line.indent for line in drawn})
    texts = [line.cells[column:].strip(" ") for line in part]
    told = 2 * sum(map(prose, texts)) >= sum(map(bool, texts))
    drawn_parts = Counter(line.cells[:column].strip(" ") for line in drawn)
    varied = 2 * max(drawn_parts.values(), default=0) <= len(drawn)
    if len(drawn) < ROWS or places < (PLACES if told and varied else SURE):
        return False
    on = sum(
        bool(above and below) and not closed(above) and starts_small(below)
        for above, below in pairwise(texts)
    )
    if on < JOINTS:
        return False
    strokes = sum(strength(line.cells[:column].strip(" ")) > 0 for line in drawn)
    return strokes >= STROKES * len(drawn)
