"""Tables whose cells are filled up with underscores, for a rule under each row: a blank in the last line of a row is one, too."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.text.line import Line

ROWS = 2
"""Rows that end in such a line, at least."""
_FILLED = re.compile(r"\|(?:[^\s|]+\|){2,}")


def filled_up(line: Line) -> bool:
    """Whether no cell between the bars of a line has a blank, and underscores fill up some of them, with words in one."""
    return "_|" in line.text and _FILLED.fullmatch(line.text) is not None and any(map(str.isalnum, line.text))


def without_filling(lines: Sequence[Line]) -> list[Line]:
    """The lines with blanks for the underscores, and a rule below each row; nothing where rows do not end so."""
    if not lines[-1].text.endswith("|") or sum(map(filled_up, lines)) < ROWS:
        return []
    if not (filled_up(lines[-1]) or set(lines[-1].text) == {"_", "|"}):
        return []
    found: list[Line] = []
    for line in lines:
        if not filled_up(line):
            found.append(line)
            continue
        held = line.resolved
        blank = held and replace(held, chars=held.chars.replace("_", " "))
        found += [
            replace(line, cells=line.cells.replace("_", " "), resolved=blank),
            Line(" " * line.indent + "_" * len(line.text), -1),
        ]
    return found
