"""Program text whose deeper lines have gaps inside: `repeat 3` opens them, `end` closes them, and they are no table."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.columns.gutters import has_gutter, near
from fit.document.text.line import Line
from fit.document.text.signs.code import code, typed
from fit.document.text.signs.measure import closed, prose

GAPS = 2
"""Lines with a gap inside or a second statement, at least: fewer make no table."""

SHORT = 3
"""Words of a statement that reads as running text, at most: `while dark do`."""


def find_nested(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such program text, with all of it that stands right above and below."""
    found: list[tuple[int, int]] = []
    index = 1
    floor = 0
    while index < len(lines):
        end = _closing(lines, taken, index) if has_gutter(lines[index]) and index - 1 >= floor else 0
        if end:
            start, end = _whole(lines, taken, index - 1, end + 1, floor)
            found.append((start, end))
            floor = index = end
        index += 1
    return found


def _closing(lines: Sequence[Line], taken: Sequence[object], index: int) -> int:
    """The line that closes what the line above opens; 0 where that is no program text with gaps inside."""
    opening = lines[index - 1]
    if opening.indent >= lines[index].indent or _worded(opening) or has_gutter(opening):
        return 0
    if index > 1 and near(lines, taken, index - 1) and _beside(lines[index - 2], opening):
        return 0
    end = index
    while end < len(lines) and near(lines, taken, end) and lines[end].indent > opening.indent:
        if prose(lines[end].text) and ";" not in lines[end].text:
            return 0
        end += 1
    if end == len(lines) or not near(lines, taken, end) or lines[end].indent < opening.indent:
        return 0
    closing = lines[end]
    gaps = sum(has_gutter(line) or "; " in line.text for line in lines[index:end])
    shown = code(closing.text) or code(opening.text)
    return end if shown and gaps >= GAPS and not has_gutter(closing) else 0


def _beside(above: Line, opening: Line) -> bool:
    """Whether the line above is one of a list in columns, to which all of this belongs then."""
    return has_gutter(above) and above.indent == opening.indent and not code(above.text)


def _worded(line: Line) -> bool:
    """Whether a line says something."""
    return closed(line.text) or (prose(line.text) and len(line.text.split()) > SHORT)


def _whole(
    lines: Sequence[Line], taken: Sequence[object], start: int, end: int, floor: int
) -> tuple[int, int]:
    """The run with the lines above and below it, up to a blank line, that are no running text."""
    while start > floor and near(lines, taken, start) and _goes_with(lines[start - 1]):
        if start - 1 > floor and _last_word(lines[start - 2], lines[start - 1], lines[start]):
            break
        start -= 1
    while end < len(lines) and near(lines, taken, end) and _goes_with(lines[end]):
        end += 1
    return start, end


def _last_word(above: Line, line: Line, below: Line) -> bool:
    """Whether one word stands under a sentence and left of what comes below it: the end of the sentence."""
    level = " " not in line.text and above.indent == line.indent < below.indent
    return level and prose(above.text)


def _goes_with(line: Line) -> bool:
    return typed(line.text) or not _worded(line)
