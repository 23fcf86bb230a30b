"""Runs of lines with blank gutters: where the gutters are, and whether the text beside them stands in columns.

Masks are integers with one bit a cell, bit 0 the first column: the union of a run's masks shows its gutters.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.measure import prose
from fit.document.text.pictures import ruled_off

GUTTER = 2
"""Cells of blank that part two columns, at least."""
RECENT = 30
"""Lines of a run that show whether it is running text."""
LONGEST = 2000
"""Lines of one run at most: longer ones are tables cut in parts."""
_WIDE_BLANK = re.compile(r"(?<=\S) {2,}(?=\S)")
CELLS = re.compile(r"\S+(?: \S+)*")
_SEGMENTS = re.compile(r"(?:[-=_\u2500\u2550~]{2,}|\.{3,})(?: +(?:[-=_\u2500\u2550~]{2,}|\.{3,}))+")
_TO_BITS = dict.fromkeys(range(33, 127), "1") | {32: "0"}


@dataclass(slots=True)
class Run:
    """Lines ``start <= i < end`` with common gutters."""

    start: int
    end: int
    columns: list[tuple[int, int]]
    """Half-open cells of each column; the last one is open to the right."""
    rules: set[int] = field(default_factory=set)
    """Indices of its lines that are rules."""


def mask(cells: str) -> int:
    """One bit for each cell that is not blank."""
    bits = cells.translate(_TO_BITS) if cells.isascii() else "".join("0" if c == " " else "1" for c in cells)
    return int(bits[::-1], 2) if bits else 0


def segmented(text: str) -> bool:
    """Whether the line is a rule in parts, one a column."""
    return _SEGMENTS.fullmatch(text) is not None


def has_gutter(line: Line) -> bool:
    """Whether the line has a blank wide enough inside."""
    return _WIDE_BLANK.search(line.text) is not None


def columns_of(union: int) -> list[tuple[int, int]]:
    """The columns that the gutters of a union part, as half-open cells."""
    columns: list[tuple[int, int]] = []
    start = end = -1
    bits = bin(union)[:1:-1]
    for column, bit in enumerate(bits):
        if bit == "1":
            if start < 0:
                start = column
            elif column - end >= GUTTER:
                columns.append((start, end))
                start = column
            end = column + 1
    if start >= 0:
        columns.append((start, end))
    return columns


def grow(lines: Sequence[Line], taken: Sequence[object], start: int, widest_gap: int) -> Run:
    """The longest run from ``start`` that keeps its gutters; after a blank line only what stands in its columns."""
    union = 0
    rules: set[int] = set()
    end = start
    height = 0
    kept: list[tuple[int, int]] = []
    while end < len(lines) and end - start < LONGEST and taken[end] is None:
        line = lines[end]
        gap = line.gap if not line.crossing else 1
        if end > start and gap > widest_gap:
            break
        if ruled_off(line.text):
            rules.add(end)
            end += 1
            continue
        wider = union | (mask(line.cells) & ~_long_key(line, kept, height))
        columns = columns_of(wider)
        if len(columns) < 2 or (
            kept
            and (gap or height > 2)
            and not _suits(line, kept, columns, gap, lines[max(start, end - RECENT) : end] if gap else ())
        ):
            break
        if segmented(line.text):
            rules.add(end)
        union, kept = wider, columns
        end += 1
        height += 1
    while end > start + 1 and lines[end - 1].gap and end - 1 in rules:
        end -= 1
    return Run(start, end, kept, {index for index in rules if index < end})


def _long_key(line: Line, columns: Sequence[tuple[int, int]], height: int) -> int:
    """The last cell of a key so long that one blank alone parts it from the settled second column, as a mask."""
    if height < 2 or len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    tight = line.cells[start - 2 : start + 1]
    alone = " " not in line.cells[line.indent : start - 1]
    return 1 << (start - 2) if len(tight) == 3 and tight[1] == " " and alone and tight[2] != " " else 0


def _suits(
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
    if len(parts) == 1:
        return parts[0][0] in starts and parts[0][0] != before[0][0] and len(after) >= len(before)
    return placed >= max(2, len(parts) - 1)


def _wide(columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a gutter is wider than justified text leaves blank."""
    return max(second[0] - first[1] for first, second in pairwise(columns)) > GUTTER


def cell(line: Line, columns: Sequence[tuple[int, int]], index: int) -> str:
    """The text of one cell."""
    start = columns[index][0]
    end = columns[index + 1][0] if index + 1 < len(columns) else line.end
    return line.cells[start:end].strip(" ")


def filled(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """How many columns of the line hold text."""
    return sum(bool(cell(line, columns, index)) for index in range(len(columns)))


def aligned(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether each column after the first starts, ends, or is centred at one place in most lines."""
    return all(_stands(lines, columns, index) for index in range(1, len(columns)))


def _stands(lines: Sequence[Line], columns: Sequence[tuple[int, int]], index: int) -> bool:
    first, last = columns[index]
    starts: Counter[int] = Counter()
    ends: Counter[int] = Counter()
    middles: Counter[int] = Counter()
    total = 0
    for line in lines:
        text = line.cells[first : columns[index + 1][0] if index + 1 < len(columns) else line.end]
        if not text.strip():
            continue
        total += 1
        begin, end = len(text) - len(text.lstrip(" ")), len(text.rstrip(" "))
        starts[begin] += 1
        ends[end] += 1
        middles[(begin + end) // 2] += 1
    if total < 2:
        return total == 1 and len(columns) > 2
    share = max(*starts.values(), *ends.values()) / total
    near = max(middles[place] + middles[place + 1] for place in middles) / total
    return share >= 0.7 or (near >= 0.8 and last - first < 20)
