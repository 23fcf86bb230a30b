"""Parameters that are explained right below the head of a routine, each behind its name, however many blanks part the two."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line

TALLEST = 3
"""Lines of the head of a routine, at most."""
_HEAD = re.compile(r"\w[\w*: ]*\((?P<names>[^()]*)\);?")
_WORD = re.compile(r"[A-Za-z_]\w*")
_ROW = re.compile(r"(?P<name>[A-Za-z_]\w*) +(?=[A-Za-z\"'(<0-9])")


def find_parameters(lines: Sequence[Line], taken: Sequence[object]) -> dict[int, int]:
    """For each line that explains a parameter, the column of its text.

    All that stands as deep begins so, and what stands deeper still goes on with it.
    """
    found: dict[int, int] = {}
    for index in range(1, len(lines)):
        line, above = lines[index], lines[index - 1]
        if not above.text.endswith((")", ");")) or line.apart or line.indent <= above.indent:
            continue
        if taken[index] is None and (names := _names(lines, index)):
            found.update(_rows(lines, taken, index, names))
    return found


def _names(lines: Sequence[Line], index: int) -> set[str]:
    """The names in the brackets of the head that ends above a line; none where there is no head."""
    first = index - 1
    while first > max(0, index - TALLEST) and "(" not in lines[first].text and not lines[first].apart:
        first -= 1
    match = _HEAD.fullmatch(" ".join(line.text for line in lines[first:index]))
    return set(_WORD.findall(match["names"])) if match is not None else set()


def _rows(lines: Sequence[Line], taken: Sequence[object], first: int, names: set[str]) -> dict[int, int]:
    """The lines that begin with one of the names, each another, and the columns of what is said of it."""
    rows: dict[int, int] = {}
    said: set[str] = set()
    indent = lines[first].indent
    for index in range(first, len(lines)):
        line = lines[index]
        if (line.apart and index > first) or line.indent < indent or taken[index] is not None:
            break
        match = _ROW.match(line.text)
        if line.indent > indent:
            continue
        if match is None or match["name"] not in names - said:
            return {}
        said.add(match["name"])
        rows[index] = indent + match.end()
    return rows
