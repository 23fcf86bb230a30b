"""A line whose parts are marked, and what each of them means at the end of a stroke: one drawing, line and all."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.gutters import CELLS
from fit.document.text.line import Line, part_end

REACH = 20
"""Lines below the marks, at most."""
_MARKS = re.compile(r"(?:[\^|]|\\_+/|\^-*\^)(?: +(?:[\^|]|\\_+/|\^-*\^))*")
"""Carets, strokes and braces alone."""
_POINTERS = re.compile(r"\|(?: +\|)+")


def find_callouts(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such drawings: the line, the marks, the strokes and the labels."""
    found: list[tuple[int, int]] = []
    for index in range(1, len(lines) - 1):
        text = lines[index].text
        if text[0] == "|" and _POINTERS.fullmatch(text) and (part := _pointed(lines, taken, index)):
            if not found or found[-1][1] <= part[0]:
                found.append(part)
            continue
        if (
            "^" not in text
            or taken[index] is not None
            or taken[index - 1] is not None
            or lines[index].apart
            or _MARKS.fullmatch(text) is None
            or not _marks(lines[index - 1], lines[index])
        ):
            continue
        end = _end(lines, taken, index)
        if end > index + 2:
            found.append((index - 1, end))
    return found


def _pointed(lines: Sequence[Line], taken: Sequence[object], index: int) -> tuple[int, int] | None:
    """The lines between blank ones of which strokes alone join parts of one with labels right above or below; or nothing.

    Each stroke ends at a label of its own, and the other end of all of them at one line.
    """
    line = lines[index]
    if lines[index + 1].apart:
        return None
    start, end = index, part_end(lines, index)
    while start and not lines[start].apart:
        start -= 1
    if end - start > REACH or any(one is not None for one in taken[start:end]):
        return None
    strokes = [column for column, sign in enumerate(line.cells) if sign == "|"]
    for labels, other in (
        (lines[index - 1], lines[index + 1]),
        (lines[index + 1], lines[index - 1]),
    ):
        spans = [match.span() for match in CELLS.finditer(labels.cells)]
        own = [[span for span in spans if span[0] <= stroke < span[1]] for stroke in strokes]
        named = len(spans) == len(strokes) and all(own) and len({one[0] for one in own}) == len(strokes)
        held = all(other.indent <= stroke < other.end for stroke in strokes)
        if named and held and _worded(labels) and any(map(str.isalnum, other.text)):
            return start, end
    return None


def _worded(line: Line) -> bool:
    """Whether a line has words alone."""
    return all(map(str.isalpha, line.text.replace(" ", "")))


def _marks(line: Line, marks: Line) -> bool:
    """Whether a line has words or figures, and something over each caret."""
    carets = [column for column, sign in enumerate(marks.cells) if sign == "^"]
    return any(map(str.isalnum, line.text)) and all(line.cells[at : at + 1].strip(" ") for at in carets)


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the lines below marks that go on with strokes under them, the label of the last stroke with them.

    A label of several lines is a text of its own, which stands below the drawing.
    """
    held = {column for column, sign in enumerate(lines[start].cells) if sign != " "}
    strokes = held
    index = start + 1
    while index < min(len(lines), start + REACH) and taken[index] is None and not lines[index].apart:
        line = lines[index]
        strokes = {column for column, sign in enumerate(line.cells) if sign == "|"}
        if not strokes <= held or (
            not strokes and not any(line.indent <= column < line.end for column in held)
        ):
            return 0
        index += 1
        if not strokes:
            break
        held = strokes
    below = lines[index] if index < len(lines) and not lines[index].apart else None
    if strokes or (below and not below.text.strip("| ")):
        return 0  # a drawing that goes on below the label
    return index - (below is not None and below.indent == lines[index - 1].indent)
