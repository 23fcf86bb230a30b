"""Whether a line stands in the columns that the lines of a run above it have settled."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.columns.gutters import CELLS, GUTTER
from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

ALIKE = 4
"""Cells, at least, that begin where those of a row above do and show a row of the same table below a blank line."""
_SECTION = re.compile(r"(?:\d+\.|[A-Z]{1,2}\.)\d+(?:\.\d+)* ")


def suits(
    line: Line,
    before: Sequence[tuple[int, int]],
    after: Sequence[tuple[int, int]],
    gap: int,
    above: Sequence[Line],
) -> bool:
    """Whether a line stands in the columns of a settled run; after a gap ``above`` are the lines of the run."""
    parts = [(match.start(), match.end()) for match in CELLS.finditer(line.cells)]
    starts = {first for first, _ in before}
    ends = {last for _, last in before}
    placed = sum(first in starts or last in ends for first, last in parts)
    if gap and (parts[0][1] <= before[0][0] or _begins_section(line, above)):
        return False  # a title, or whatever stands to the left of all columns
    if gap and len(after) < len(before) and prose(line.text):
        return False  # a paragraph after the table, justified: its text runs across a gutter
    if len(after) >= len(before) and (
        not gap
        or (
            len(above) > 2
            and _wide(after)
            and sum(prose(one.text) for one in above) >= 0.5 * len(above)
            and any(first in starts and first != before[0][0] for first, _ in parts)
        )
    ):
        return True
    firsts = [first for first, _ in parts]
    if len(after) == len(before) > 2 and (_reaches(firsts, before) or _as_above(firsts, above)):
        return True
    if len(parts) == 1:
        return parts[0][0] in starts and parts[0][0] != before[0][0] and len(after) >= len(before)
    return placed >= max(2, len(parts) - 1)


def _begins_section(line: Line, above: Sequence[Line]) -> bool:
    """Whether the number of a section stands at the top of a page, below rows that have none."""
    numbered = line.crossing and _SECTION.match(line.text) is not None
    return numbered and not any(_SECTION.match(one.text) for one in above)


def _reaches(firsts: Sequence[int], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a row begins in the first column and in the last, with any blanks inside its cells between."""
    last = columns[-1][0]
    inside = [first for first in firsts if first < last]
    return last in firsts and inside != [] and inside[0] < columns[0][1]


def _as_above(firsts: Sequence[int], above: Sequence[Line]) -> bool:
    """Whether all cells of a row begin where those of a row above do, so many that no chance puts them there."""
    return len(firsts) >= ALIKE and any(
        [match.start() for match in CELLS.finditer(line.cells)] == firsts for line in above
    )


def _wide(columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a gutter is wider than justified text leaves blank."""
    return max(second[0] - first[1] for first, second in pairwise(columns)) > GUTTER
