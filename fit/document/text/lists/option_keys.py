"""Options too long for the column of their list: one blank parts `--oil=<tin>` from what it does, wherever that begins.

The options above and below them in the same list, whose texts stand at one column, show what they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from fit.document.text.line import Line

LEAST = 2
"""Options of a list with their texts at one column, at least."""
_LONG = re.compile(r"(?:--?\w[\w-]*|>)(?:[ =_]?(?:<[^<>]+>|\"[^\"]+\"|\[[^][]+\]))+ {1,2}(?=[A-Z][a-z]*\s)")
"""An option with what is to be put in, and one or two blanks before a sentence."""
_OPTION = re.compile(r"-{1,2}\w|<\w")


def add_long_options(lines: Sequence[Line], taken: Sequence[object], keys: list[int]) -> None:
    """Set the columns of the texts behind such options in ``keys``, which has those of the others in their lists."""
    for index, line in enumerate(lines):
        if keys[index] or taken[index] is not None or line.text[:1] not in {"-", ">"}:
            continue
        match = _LONG.match(line.text)
        if match is not None and _among_options(lines, index, keys):
            keys[index] = line.indent + match.end()


def _among_options(lines: Sequence[Line], index: int, keys: Sequence[int]) -> bool:
    """Whether enough options whose texts stand at one column are in the list of a line, with no blank line between."""
    indent = lines[index].indent
    start, end = index, index + 1
    while start and not lines[start].apart and lines[start - 1].indent >= indent:
        start -= 1
    while end < len(lines) and not lines[end].apart and lines[end].indent >= indent:
        end += 1
    columns = [keys[place] for place in range(start, end) if _is_option(lines[place], indent, keys[place])]
    return _most(columns) >= LEAST


def _is_option(line: Line, indent: int, key: int) -> bool:
    return key > 0 and line.indent == indent and _OPTION.match(line.text) is not None


def _most(columns: Iterable[int]) -> int:
    """How often the commonest of some columns comes."""
    found = list(columns)
    return max(map(found.count, found), default=0)
