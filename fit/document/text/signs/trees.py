"""Trees whose branches have words beside them that say what each is: `|-lamp   - the lamp`, kept line by line.

Such a drawing is no picture to be cut into panels: what stands beside a branch would be parted from it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line

LEAST = 3
"""Branches, at least."""
NEAR = 12
"""Cells from the first stroke within which names stand, and no rest of the words beside them."""
_STROKES = frozenset("|+`\u2502\u251c\u2514")
_BRANCH = re.compile(r"[|\u2502 ]*(?:[|+`]-{1,3}|[\u251c\u2514]\u2500+) ?(?=[\w./])")
"""The strokes down to a branch, and the one before its name."""
_BESIDE = re.compile(r"\S+( {2,}(?:[-#] )?| - | # )(?=\S)")
"""A name, and what parts it from the words beside it."""
_BULLET = re.compile(r"(?:[-*+o] +)?")


def find_trees(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such trees, each with the name that it comes down from."""
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        if lines[index].text[0] not in _STROKES or taken[index] is not None or not _words(lines[index]):
            index += 1
            continue
        start, end = index, index + 1
        while end < len(lines) and taken[end] is None and not lines[end].apart and _on(lines, index, end):
            end += 1
        while start and not lines[start].apart and taken[start - 1] is None and _branch(lines[start - 1]):
            start -= 1
        start -= _rooted(lines, taken, start)
        words = [column for line in lines[start:end] if (column := _words(line))]
        branches = sum(map(_branch, lines[start:end]))
        if len(words) >= LEAST and 2 * len(words) >= branches and len(words) > len(set(words)):
            found.append((start, end))
        index = end
    return found


def _branch(line: Line) -> bool:
    return line.text[0] in _STROKES and _BRANCH.match(line.text) is not None


def _words(line: Line) -> int:
    """The column of the words beside a branch, or 0."""
    strokes = _BRANCH.match(line.text)
    beside = _BESIDE.match(line.text, strokes.end()) if strokes is not None else None
    return line.indent + beside.end() if beside is not None else 0


def _on(lines: Sequence[Line], first: int, index: int) -> bool:
    """Whether a line is a branch, or goes on with the words beside the one above it: far right of all names."""
    line = lines[index]
    below = _words(lines[index - 1]) > 0 and line.indent - lines[first].indent >= NEAR
    return _branch(line) or (below and line.text[0].isalnum())


def _rooted(lines: Sequence[Line], taken: Sequence[object], start: int) -> bool:
    """Whether the line above the branches begins with a name, maybe behind a bullet, right over the first stroke."""
    if not start or lines[start].apart or taken[start - 1] is not None:
        return False
    above = lines[start - 1]
    bullet = _BULLET.match(above.text)
    name = above.indent + (bullet.end() if bullet is not None else 0)
    alone = " " not in above.text or _BESIDE.match(above.cells, name) is not None
    return alone and name <= lines[start].indent < above.end
