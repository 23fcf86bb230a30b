"""Changes to a file as programs write them: two lines name its versions, then each piece says how many lines it has."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.rules import ruled_off

_OLD = "--- "
_STARRED = "***"
_NEW = "+++ "
_PIECE = re.compile(r"@@ -\d+(?:,(\d+))? \+\d+(?:,(\d+))? @@")
"""How a piece begins: where it stands in the old file and the new one, and how many of its lines each of them has."""
_WHICH = re.compile(r"(?:diff|Index:|index) \S.*|={60,}")
"""Lines right above that say how the changes were found, and where."""
_STARS = re.compile(r"\*{15,}")
"""What stands before each piece in the other form, which shows the old lines and the new ones one after the other."""
_OLD_LINES = re.compile(r"\*{3} (\d+)(?:,(\d+))? \*{4}")
_NEW_LINES = re.compile(r"-{3} (\d+)(?:,(\d+))? -{4}")
"""From where to where they stand in their file; those of a side on which nothing was changed are left out."""
_MARKS = ("! ", "- ", "+ ", "  ")
_BARE = frozenset("!-+")
"""The sign before a line that was changed, taken away or put in; behind it the line, which may be blank."""


def find_patches(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such changes, with the lines above that say of which file."""
    found: list[tuple[int, int]] = []
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or not line.text.startswith((_OLD, _STARRED)):
            continue
        start, end = index, (_starred_pieces if line.text.startswith(_STARRED) else _pieces)(lines, index)
        while start > floor and not lines[start].apart and _WHICH.fullmatch(lines[start - 1].text):
            start -= 1
        alone = _parted(lines, start) and _parted(lines, end)  # no piece of a longer session
        if end and alone and not any(one is not None for one in taken[start:end]):
            found.append((start, end))
            floor = end
    return found


def _parted(lines: Sequence[Line], index: int) -> bool:
    """Whether a blank line or a rule stands before a line, or nothing on one of its sides."""
    if parted_above(lines, index):
        return True
    return ruled_off(lines[index].text) or ruled_off(lines[index - 1].text)


def _named(lines: Sequence[Line], index: int) -> bool:
    """Whether the names of both versions stand right over a piece."""
    if index + 2 >= len(lines) or lines[index + 1].apart or lines[index + 2].apart:
        return False
    return lines[index + 1].text.startswith(_NEW) and _PIECE.match(lines[index + 2].text) is not None


def _pieces(lines: Sequence[Line], start: int) -> int:
    """The end of the pieces below the two names; 0 where one has not the lines that it says."""
    column, index = lines[start].indent, start + 2
    if not _named(lines, start):
        return 0
    while index < len(lines) and (piece := _PIECE.match(lines[index].text)):
        old, new = (int(count or 1) for count in piece.groups())
        index += 1
        while index < len(lines) and (old > 0 or new > 0):
            line = lines[index]
            sign = line.cells[column : column + 1]
            if line.indent < column or sign not in {" ", "+", "-"}:
                return 0
            old -= line.gap + (sign != "+")
            new -= line.gap + (sign != "-")
            index += 1
        if old > 0 or new > 0:
            return 0
    return index


def _starred_pieces(lines: Sequence[Line], start: int) -> int:
    """The end of the pieces in the other form, below the two names or without any; 0 where one has not the lines that it says."""
    index = start
    if (
        lines[index].text.startswith("*** ")
        and index + 1 < len(lines)
        and lines[index + 1].text.startswith(_OLD)
    ):
        index += 2
    first = index
    while index + 2 < len(lines) and _STARS.fullmatch(lines[index].text):
        old = _OLD_LINES.fullmatch(lines[index + 1].text)
        middle = 0 if old is None else _side(lines, index + 2, old, lines[start].indent)
        new = _NEW_LINES.fullmatch(lines[middle].text) if 0 < middle < len(lines) else None
        if new is None:
            return 0
        index = _side(lines, middle + 1, new, lines[start].indent)
    return index if index > first else 0


def _side(lines: Sequence[Line], start: int, said: re.Match[str], column: int) -> int:
    """The end of the lines of one side of a piece, as many as it says; where these are left out, the start."""
    count = int(said[2] or said[1]) - int(said[1]) + 1
    index = start
    while count > 0 and index < len(lines):
        cells = lines[index].cells[column:]
        if lines[index].indent < column or not (cells.startswith(_MARKS) or cells in _BARE):
            return start
        count -= 1 + lines[index].gap
        index += 1
    return index if count == 0 else start
