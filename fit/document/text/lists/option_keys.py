"""Keys whose own signs show them, wherever their text begins: options too long for their column, and names in quotation marks.

The options above and below `--oil=<tin>` in the same list, whose texts stand at one column, show what it is; for
`"wick":` others in quotation marks do, at the same place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from fit.document.text.line import Line

LEAST = 2
"""Options of a list with their texts at one column, at least."""
_LONG = re.compile(r"(?:--?\w[\w-]*|>)(?:[ =_]?(?:<[^<>]+>|\"[^\"]+\"|\[[^][]+\]))+ {1,2}(?=[A-Z][a-z]*\s)")
"""An option with what is to be put in, and one or two blanks before a sentence."""
_MARKS = frozenset(':"\u201c`')
QUOTED = 3
"""Names in quotation marks at one place, at least, that show one another as keys."""
_QUOTED = re.compile(
    r":?[\"\u201c][\w.+-]+[\"\u201d]: +(?=[A-Za-z(]\S* \S|[A-Z][a-z]+\.?$|(?:\"?\d+\"?|#) [a-z])"
    r"|`[\w.+-]+[`']  +(?=[A-Za-z(]\S* \S)"
)
"""A name in quotation marks, a colon, and words; or one in grave accents, a wide blank, and words."""
EXPLAINED = 4
"""Options with a colon in one list, at least, that show one another as keys."""
_EXPLAINED = re.compile(
    r"-{1,2}[A-Za-z][\w-]*(?:(?:[|/]-{0,2}|, --?)\w[\w-]*)*(?:[ =]?(?:[a-z]+|[A-Z]+|\[[^][]+\]|<[^<>]+>))?: +(?=[^\s:])"
)
"""An option, or several, perhaps with what is to be put in, a colon, and words."""
_OPTION = re.compile(r"-{1,2}\w|<\w")


def add_long_options(lines: Sequence[Line], taken: Sequence[object], keys: list[int]) -> None:
    """Set the columns of the texts behind such options in ``keys``, which has those of the others in their lists."""
    for index, line in enumerate(lines):
        if keys[index] or taken[index] is not None or line.text[:1] not in {"-", ">"}:
            continue
        match = _LONG.match(line.text)
        if match is not None and _among_options(lines, index, keys):
            keys[index] = line.indent + match.end()


def add_quoted_names(lines: Sequence[Line], taken: Sequence[object], keys: list[int]) -> None:
    """Set the columns of the texts behind names in quotation marks in ``keys``, where several begin lines at one place."""
    found: dict[int, list[tuple[int, int]]] = {}
    for index, line in enumerate(lines):
        if taken[index] is None and line.text[:1] in _MARKS and (match := _QUOTED.match(line.text)):
            found.setdefault(line.indent, []).append((index, line.indent + match.end()))
    _set_shown(found.values(), QUOTED, keys)


def add_explained_options(lines: Sequence[Line], taken: Sequence[object], keys: list[int]) -> None:
    """Set the columns of the texts behind options and a colon, `-l: Light`, of which several stand in one list."""
    found: dict[tuple[int, int], list[tuple[int, int]]] = {}
    part = 0
    for index, line in enumerate(lines):
        part += line.apart
        if line.text[:1] == "-" and taken[index] is None and (match := _EXPLAINED.match(line.text)):
            found.setdefault((part, line.indent), []).append((index, line.indent + match.end()))
    _set_shown(found.values(), EXPLAINED, keys)


def _set_shown(found: Iterable[Sequence[tuple[int, int]]], least: int, keys: list[int]) -> None:
    """Set the columns of the texts of those lists of lines that have enough keys alike to show one another as such."""
    for places in found:
        if len(places) >= least:
            for index, column in places:
                keys[index] = keys[index] or column


def _among_options(lines: Sequence[Line], index: int, keys: Sequence[int]) -> bool:
    """Whether enough options whose texts stand at one column are in the list of a line, with no blank line between."""
    indent = lines[index].indent
    start, end = index, index + 1
    while start and not lines[start].apart and lines[start - 1].indent >= indent:
        start -= 1
    while end < len(lines) and not lines[end].apart:
        end += 1
    columns = [keys[place] for place in range(start, end) if _is_option(lines[place], keys[place])]
    return _most(columns) >= LEAST


def _is_option(line: Line, key: int) -> bool:
    return key > 0 and _OPTION.match(line.text) is not None


def _most(columns: Iterable[int]) -> int:
    """How often the commonest of some columns comes."""
    found = list(columns)
    return max(map(found.count, found), default=0)
