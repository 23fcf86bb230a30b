"""Tables between rules that are parted where the columns are: of few rows or wrapped ones, of which these leave no doubt."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block
from fit.document.text.columns.gutters import Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.signs.rules import ruled_off, segmented
from fit.document.text.tables.grid import make_table

LONGEST = 400
"""Lines of such a table, at most."""
HEAD = 3
"""Lines of a head between its two rules, at most."""
FEW = 2
"""Rows that show no gutter between them, at most: more of them, each with all its cells, do so whatever rules stand there."""
SHORTEST = 3
"""Signs of a part of a rule, at least, to be the width of a column."""
_GAP = re.compile(r"[^.:?!] {2,}")
_PART = re.compile(r"-+|=+")


def find_between_rules(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each with its block.

    The last rule is the first one again, or as long as it; names of the columns may stand above the first, below a whole one.
    """
    found: list[tuple[int, int, list[Block]]] = []
    floor = 0
    for index, line in enumerate(lines):
        if (
            index < floor
            or line.text[:1] not in {"-", "="}
            or taken[index] is not None
            or not segmented(line.text)
        ):
            continue
        columns = [match.span() for match in _PART.finditer(line.cells)]
        if min(last - first for first, last in columns) < SHORTEST:
            continue
        end = _end(lines, taken, index, columns)
        if not end or _parts_rows(lines, index):
            continue
        start = _start(lines, taken, index, floor)
        rules = {place for place in range(start, end) if _rule(lines[place])}
        found.append(
            (start, end, [make_table(lines[start:end], _shifted(start, end, columns, rules), hyphens)])
        )
        floor = end
    return found


def _shifted(start: int, end: int, columns: Sequence[tuple[int, int]], rules: set[int]) -> Run:
    """The run of a table whose lines are counted from its own first one."""
    return Run(0, end - start, list(columns), {place - start for place in rules})


def _rule(line: Line) -> bool:
    return ruled_off(line.text) or segmented(line.text)


def _closes(line: Line, first: Line) -> bool:
    """Whether a rule is the one that begins a table again, or a whole one of its width."""
    width = (line.indent, line.end) == (first.indent, first.end)
    return line.text == first.text or (width and ruled_off(line.text))


def _end(
    lines: Sequence[Line], taken: Sequence[object], first: int, columns: Sequence[tuple[int, int]]
) -> int:
    """The end of the table below a parted rule, whose rows all stand in the columns; 0 where there is none."""
    for index in range(first + 1, min(len(lines), first + LONGEST)):
        line = lines[index]
        if taken[index] is not None or line.gap > 1:
            return 0
        if _rule(line):
            whole = _closes(line, lines[first]) and not line.gap and parted_above(lines, index + 1)
            rows = [_filled(lines[row], columns) for row in range(first + 1, index)]
            shown = any(rows) and (len(rows) <= FEW or not all(rows))
            return index + 1 if whole and shown else 0
        if not _in_columns(line, columns, exact=lines[first].text[0] == "="):
            return 0
    return 0


def _parts_rows(lines: Sequence[Line], index: int) -> bool:
    """Whether a rule has two others above it with no blank line between: it parts the rows of a longer table."""
    same = 0
    while index and not lines[index].apart and same < FEW:
        index -= 1
        same += _rule(lines[index])
    return same >= FEW


def _start(lines: Sequence[Line], taken: Sequence[object], first: int, floor: int) -> int:
    """Where the names of the columns begin, below a whole rule, or else the parted rule itself."""
    for index in range(first - 1, max(floor, first - HEAD - 1) - 1, -1):
        line = lines[index]
        if taken[index] is not None or lines[index + 1].gap:
            break
        if _rule(line):
            return index if index < first - 1 and _closes(line, lines[first]) else first
    return first


def _in_columns(line: Line, columns: Sequence[tuple[int, int]], *, exact: bool) -> bool:
    """Whether a line begins where a column does, nothing of it stands between two columns, and no column of its own in one.

    Signs of equality make a rule whose parts are ``exact``, as reStructuredText has it: wide blanks in a cell part no column.
    """
    apart = all(not line.cells[one[1] : other[0]].strip(" ") for one, other in pairwise(columns))
    inner = not exact and any(_GAP.search(line.cells[first:last].strip(" ")) for first, last in columns)
    return apart and not inner and any(line.indent == first for first, _ in columns)


def _filled(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has text in its first column and in another."""
    return line.indent == columns[0][0] and line.end > columns[1][0]
