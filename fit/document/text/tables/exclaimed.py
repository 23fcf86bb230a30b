"""Tables whose bars are signs of exclamation, as a printer without a bar drew them: the rule under the head shows where."""

from __future__ import annotations

import re
from array import array
from collections.abc import Sequence
from dataclasses import replace

from fit.document.text.line import Line, Resolved, part_end

_RULE = re.compile(r"[!+][-=]{2,}(?:[!+][-=]{2,})+[!+]")


def with_bars(lines: Sequence[Line], taken: Sequence[object]) -> Sequence[Line]:
    """The lines, those of such tables with bars in their cells; their characters stay what they are."""
    if not any(line.text[:1] == "!" for line in lines):
        return lines
    found = list(lines)
    for index, line in enumerate(lines):
        if line.text[:1] in "!+" and taken[index] is None and _RULE.fullmatch(line.text):
            columns = [column for column, sign in enumerate(line.cells) if sign in "!+"]
            start = index
            while start and not lines[start].apart and _crossed(lines[start - 1], columns):
                start -= 1
            end = index + 1
            while end < part_end(lines, index) and _crossed(lines[end], columns):
                end += 1
            if end - start > 2:
                found[start:end] = [_barred(one, columns) for one in found[start:end]]
    return found


def _crossed(line: Line, columns: Sequence[int]) -> bool:
    """Whether a line begins and ends with a bar, has one at each column, or is a rule of the same length."""
    if (line.indent, line.end) != (columns[0], columns[-1] + 1):
        return False
    return all(line.cells[column] in "!+" for column in columns) or not line.text.strip("-=!+")


def _barred(line: Line, columns: Sequence[int]) -> Line:
    """A line with a bar for each sign at the columns."""
    cells = list(line.cells)
    for column in columns:
        cells[column] = "|" if cells[column] == "!" else cells[column]
    held = line.resolved or Resolved(
        line.cells,
        array("q", range(line.offset, line.offset + line.end)),
        bytes(line.end),
        range(line.end + 1),
    )
    return replace(line, cells="".join(cells), resolved=held)
