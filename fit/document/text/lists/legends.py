"""Legends: packed entries that begin with 1, 2, 3 or A, B, C and no point, as they stand under a map.

The bare sign is no proof. That the signs are in order from the first line on is, where all other lines hang.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import code

LEAST = 3
"""Entries of a legend, at least."""
FARTHER = 4
"""Cells by which other lines may hang farther right than a text whose blanks a word processor has put in and out."""
_ENTRY = re.compile(r"(?P<sign>\d{1,2}|[A-Z])(?: (?P<mark>[=:-]))? {1,4}(?=[\"'(]?[^\W\d_])")
_PROGRAM = re.compile(r"[=+*<>{}\\$\[]|\w\(")
"""What stands in the value of a variable and in no entry."""
_COLUMNS = re.compile(r"\S {3,}\S")


def find_legends(lines: Sequence[Line], taken: Sequence[object]) -> dict[int, int]:
    """For each line that starts an entry of a legend the column of its text."""
    found: dict[int, int] = {}
    start = 0
    while start < len(lines):
        end = start + 1
        while end < len(lines) and not lines[end].apart and taken[end] is None:
            end += 1
        if taken[start] is None and lines[start].text[:2].rstrip(" ") in {"1", "A"}:
            found.update(_legend(lines, start, end))
        start = end
    return found


def _legend(lines: Sequence[Line], start: int, end: int) -> dict[int, int]:
    """The same for the run ``start <= i < end``, which no blank line parts; empty where it is none."""
    found: dict[int, int] = {}
    column = 0
    hung = 0
    for index in range(start, end):
        line = lines[index]
        entry = _ENTRY.match(line.text)
        if _typed(line.text, entry) or _COLUMNS.search(line.text, entry.end() if entry else 0):
            return {}
        if (
            entry is not None
            and line.indent == lines[start].indent
            and entry["sign"] == _sign(found, start, lines)
        ):
            if found and abs(line.indent + entry.end() - column) > 1:
                return {}
            column = found[index] = line.indent + entry.end()
        elif not found or not (column <= line.indent <= column + FARTHER) or hung not in {0, line.indent}:
            return {}
        else:
            hung = line.indent
    return found if len(found) >= LEAST else {}


def _typed(text: str, entry: re.Match[str] | None) -> bool:
    """Whether a line is program text; `A = 2 * B` sets a variable, `A = the landing` may explain a sign."""
    if entry is not None and entry["mark"] == "=":
        return _PROGRAM.search(text, entry.end()) is not None
    return code(text)


def _sign(found: dict[int, int], start: int, lines: Sequence[Line]) -> str:
    """The sign that the next entry has."""
    return chr(ord("A") + len(found)) if lines[start].text.startswith("A") else str(1 + len(found))
