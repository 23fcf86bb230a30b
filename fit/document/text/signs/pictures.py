"""Pictures: box drawings, maps and diagrams made of characters, with the words inside them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.drawing_captions import with_captions
from fit.document.text.signs.drawing_labels import (
    REACH,
    counts_figures,
    hangs,
    heads_strokes,
    is_label,
    is_root,
    names_sign,
    on_wall,
)
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import any_rule, ruled_off, segmented
from fit.document.text.signs.strokes import BOX, CROSSING, strength
from fit.document.text.signs.underlines import underlines

DRAWN = 2
"""Lines that surely are drawn, at least, in a drawing of strokes aslant."""
SLOPE = 3
"""Lines that start with a stroke aslant, at least, in a drawing of which only one line is sure."""
_EDGE = re.compile(r"\+(?:[-=]{3,}\+)+")
_ROW = re.compile(r"[|:][^|]+(?:\|[^|]+)*[|:]")
_FLOOR = re.compile(r"\|_+\|")
_WORD = re.compile(r"[^\W\d_]{2}")
_HEADS = {"v", "V"}
"""Heads of arrows, right under their stroke; elsewhere a letter or a numeral."""
_SIDES = set("|+'`.,:/\\!*#-=_~")
"""What a side goes on in, above or below, or the rule that it ends at."""


def find_pictures(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are pictures."""
    weights = [
        0
        if taken[index] is not None
        or (line.gap and line.text in _HEADS)
        or underlines(lines, index)
        or _between_bars(lines, index)
        else strength(line.text)
        for index, line in enumerate(lines)
    ]
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        if weights[index] < 2:
            index += 1
            continue
        start = _upwards(lines, weights, taken, index, found[-1][1] if found else 0)
        end = _downwards(lines, weights, taken, index)
        if _picture(lines, weights, start, end):
            found.append((start, end))
        index = end
    return with_captions(lines, taken, found)


def _between_bars(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is words between two bars of which the right one is no side: nothing goes on above or below it."""
    line = lines[index]
    text = line.text
    if text[:1] != "|" or text[-1] != "|" or text.count("|") != 2 or not any(map(str.isalnum, text)):
        return False
    above = index > 0 and not line.apart and _side(lines[index - 1], line.end - 1)
    below = index + 1 < len(lines) and not lines[index + 1].apart and _side(lines[index + 1], line.end - 1)
    return not (above or below)


def _side(line: Line, column: int) -> bool:
    """Whether a line has a stroke at a column or right beside it; a rule that runs on beyond it is none."""
    near = line.cells[max(0, column - 1) : column + 2]
    rest = line.cells[column + 2 :].lstrip("-=_~")
    return (
        not prose(line.text)
        and any(sign in _SIDES or BOX.match(sign) for sign in near)
        and not (len(near) == 3 and any_rule(near) and len(rest) < len(line.cells[column + 2 :]))
    )


def aslant(part: Sequence[Line]) -> bool:
    """Whether lines are a drawing of strokes aslant, most of which end in one: no lines that a sign at their end continues."""
    if sum(line.text[-1:] == "\\" for line in part) < max(SLOPE, len(part) // 2):
        return False
    weights = [strength(line.text) for line in part]
    falling = all(
        above.end <= below.end
        for above, below in pairwise(part)
        if above.text[-1:] == below.text[-1:] == "\\"
    )
    return falling and weights.count(2) >= DRAWN and sum(map(bool, weights)) >= 0.8 * len(part)


def boxes(part: Sequence[Line]) -> bool:
    """Whether lines are boxes and nothing else, edges and sides closed: a drawing, whatever the words in it look like."""
    edges = [bool(_EDGE.fullmatch(line.text)) for line in part]
    sides = (edge or _ROW.fullmatch(line.text) for edge, line in zip(edges, part, strict=True))
    return len(part) > 2 and edges[0] and edges[-1] and not all(edges) and all(sides)


def hollow(part: Sequence[Line]) -> bool:
    """Whether lines are an empty box with words beside it: each row has bars with blanks between them, and its words outside.

    A box whose bottom is drawn of underscores may have signs in it, but no words.
    """
    rows = [line for line in part if "|" in line.text]
    sides = [line for line in part if "|" not in line.text]
    floored = not sides and _FLOOR.fullmatch(part[-1].text) is not None
    if floored:
        sides, rows = [part[-1]], rows[:-1]
    elif len(sides) < 2 or not all(line.text[0] + line.text[-1] == "++" for line in sides):
        return False
    left, right = sides[0].indent, sides[0].end - 1
    return rows != [] and all(
        line.cells[left : left + 1] + line.cells[right : right + 1] == "||"
        and not (_WORD.search(line.cells[left:right]) if floored else line.cells[left:right].strip("| "))
        and line.end > right + 1
        for line in rows
    )


def drawn_on(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether a drawing goes on right above or below the lines ``start <= i < end``: they are a part of it."""
    above = all(_drawn_at(lines, start - step, start - step + 1) for step in (1, 2))
    below = all(_drawn_at(lines, end + step, end + step) for step in (0, 1))
    return above or below or _axis(lines, start - 1, start, start) or _axis(lines, end, end - 1, end)


def _axis(lines: Sequence[Line], index: int, beside: int, joint: int) -> bool:
    """Whether a line has a crossing of strokes, and more than these, right where the line ``beside`` it has a bar."""
    if not 0 <= index < len(lines) or lines[joint].apart or any_rule(lines[index].text):
        return False
    cells, near = lines[index].cells, lines[beside].cells
    return any(near[match.start() : match.start() + 1] == "|" for match in CROSSING.finditer(cells))


def _drawn_at(lines: Sequence[Line], index: int, joint: int) -> bool:
    """Whether a line is drawn, with no blank line above the one at ``joint``."""
    if not 0 <= index < len(lines) or joint >= len(lines):
        return False
    return strength(lines[index].text) == 2 and not lines[joint].apart


def _picture(lines: Sequence[Line], weights: Sequence[int], start: int, end: int) -> bool:
    drawn = sum(weight == 2 for weight in weights[start:end])
    marked = sum(weights[index] > 0 or (index > start and hangs(lines, index)) for index in range(start, end))
    coded = sum(code(line.text.rstrip(" \\")) for line in lines[start:end])  # a stroke may end a drawn line
    sloping = sum(line.text[:1] in "/\\" for line in lines[start:end])
    thin = drawn == 1 and sloping >= SLOPE and marked >= 0.8 * (end - start)
    if any(_boxed(lines, weights, index) for index in range(start + 1, end - 1)):
        return True
    sure = drawn >= 2 or thin or (drawn == 1 and _crossed(lines, weights, start, end))
    return sure and marked >= 0.3 * (end - start) and coded <= 0.4 * (end - start)


def _crossed(lines: Sequence[Line], weights: Sequence[int], start: int, end: int) -> bool:
    """Whether bars stand right above and below the crossing of the only line that is surely drawn."""
    index = next(index for index in range(start, end) if weights[index] == 2)
    return start < index < end - 1 and _axis(lines, index, index - 1, index)


def _boxed(lines: Sequence[Line], weights: Sequence[int], index: int) -> bool:
    """Whether a drawn line stands between two rules: a box of one row."""
    below = lines[index + 1]
    ruled = ruled_off(lines[index - 1].text) and ruled_off(below.text)
    return weights[index] == 2 and ruled and not lines[index].gap and not below.gap


def _downwards(lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], index: int) -> int:
    end = index + 1
    while end < len(lines) and taken[end] is None and not lines[end].crossing:
        gap = lines[end].gap
        if (weights[end] and gap <= 1) or (gap == 0 and any_rule(lines[end].text)):
            end += 1
        elif gap <= 1 and (reach := _next_drawn(lines, weights, taken, end)):
            end = reach
        elif gap == 0 and (
            is_label(lines, end)
            or hangs(lines, end)
            or _same_edge(lines[end - 1], lines[end])
            or on_wall(lines[end], lines[end - 1])
        ):
            end += 1
        else:
            break
    return end


def _same_edge(above: Line, below: Line) -> bool:
    """Whether two lines end in a bar at one column, far from their words: the right side of a drawing goes on."""
    return above.end == below.end and above.text[-1:] == below.text[-1:] == "|" and "   " in below.text


def _next_drawn(lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], start: int) -> int:
    """The end of the next drawn line that the one at ``start`` stands together with, or 0."""
    for index in range(start, min(start + REACH + 1, len(lines))):
        line = lines[index]
        if taken[index] is not None or line.crossing or line.gap > 1 or (prose(line.text) and line.gap):
            return 0
        if line.gap and _titled(lines, weights, index):
            return 0
        if index > start and line.gap and not weights[index]:
            return 0
        if weights[index]:
            return index + 1
    return 0


def _titled(lines: Sequence[Line], weights: Sequence[int], index: int) -> bool:
    """Whether words that draw nothing stand between a rule and the same one, with a blank line below them: a title."""
    if index + 3 >= len(lines) or not ruled_off(lines[index].text):
        return False
    near = lines[index + 1].apart or lines[index + 2].apart or weights[index + 1] > 0
    return not near and lines[index + 3].gap > 0 and _WORD.search(lines[index + 1].text) is not None


def _upwards(
    lines: Sequence[Line], weights: Sequence[int], taken: Sequence[object], index: int, floor: int
) -> int:
    start = index
    while start > floor and taken[start - 1] is None and not lines[start].crossing and lines[start].gap <= 1:
        above = lines[start - 1]
        near = weights[start - 1] > 0 or (
            (any_rule(above.text) or is_root(above, lines[start]))
            if lines[start].gap == 0
            else _under_strokes(lines, weights, start - 1)
        )
        near = near or heads_strokes(lines, start) or counts_figures(lines, start) or names_sign(lines, start)
        branch = above.indent == lines[start].indent and hangs(lines, start)
        if near or (
            lines[start].gap == 0 and (branch or is_label(lines, start - 1) or on_wall(above, lines[start]))
        ):
            start -= 1
        else:
            break
    return start


def _under_strokes(lines: Sequence[Line], weights: Sequence[int], index: int) -> bool:
    """Whether a parted rule stands right under strokes: it is no rule of a table, and a drawing goes on below it."""
    drawn = index > 0 and weights[index - 1] > 0 and not lines[index].apart
    return drawn and segmented(lines[index].text)
