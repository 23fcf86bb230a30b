"""Pages set in columns: one gutter stays blank all the way down, whatever stands beside it.

Blank lines, headings and first-line indents in one column say nothing about the other, so that only the gutter counts.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.anchors import mask
from fit.document.text.gutters import CELLS, Run, cell
from fit.document.text.line import Line
from fit.document.text.measure import closed, prose

NARROWEST = 15
"""Cells of a column, at least."""
GUTTER = 3
"""Cells of the gutter, at least: justified text leaves two blank."""
SHORTEST = 8
"""Lines of such a page, at least."""
OFF_CENTRE = 6
"""Twice the cells by which a heading may miss the middle of its column."""
LARGEST_GAP = 3
"""Blank lines inside, at most, where no page ends."""


def find_columned_pages(lines: Sequence[Line], taken: Sequence[object]) -> list[Run]:
    """The runs of lines that are columns of running text."""
    found: list[Run] = []
    index = 0
    while index < len(lines):
        free = _inside(lines[index]) if taken[index] is None else 0
        if not _wide(free):
            index += 1
            continue
        end, free = _down(lines, taken, index, free)
        run = _run(lines, index, end, free)
        if run is not None:
            while run.start and taken[run.start - 1] is None and _tops(lines, run):
                run.start -= 1
            found.append(run)
            index = run.end
        else:
            index = end if end - index >= SHORTEST else index + 1
    return found


def _inside(line: Line) -> int:
    """One bit for each blank cell that leaves room for a column on both sides."""
    if "   " not in line.text or line.end < 2 * NARROWEST + GUTTER:
        return 0
    zone = (1 << (line.end - NARROWEST)) - (1 << (line.indent + NARROWEST))
    return zone & ~mask(line.cells) if zone > 0 else 0


def _wide(free: int) -> bool:
    """Whether blank cells stand side by side, as many as a gutter needs."""
    return free & (free >> 1) & (free >> 2) != 0


def _down(lines: Sequence[Line], taken: Sequence[object], start: int, free: int) -> tuple[int, int]:
    """How far down a gutter stays blank, and where it is blank all the way."""
    end = start + 1
    while end < len(lines) and taken[end] is None:
        line = lines[end]
        left = free & ~mask(line.cells)
        if not _wide(left) or (line.gap > LARGEST_GAP and not line.crossing):
            break
        free = left
        end += 1
    return end, free


def _run(lines: Sequence[Line], start: int, end: int, free: int) -> Run | None:
    columns = _columns(lines[start:end], free)
    both = [
        index
        for index in range(start, end)
        if sum(bool(cell(lines[index], columns, number)) for number in range(len(columns))) > 1
    ]
    if len(both) < SHORTEST:
        return None
    start, end = _below_title(lines, both[0], end, columns), _tail(lines, both[-1] + 1, end)
    if len(both) < 0.5 * (end - start) or not all(
        _reads(lines[start:end], columns, number) for number in range(len(columns))
    ):
        return None
    return Run(start, end, columns)


def _tops(lines: Sequence[Line], run: Run) -> bool:
    """Whether the line above a run is the top of a column on the right, which begins higher than the first one."""
    first, above = lines[run.start], lines[run.start - 1]
    if above.indent < run.columns[1][0] or first.crossing:
        return False
    return first.gap == 0 or (first.gap == 1 and prose(above.text) and not _centred(above, run))


def _centred(line: Line, run: Run) -> bool:
    """Whether a line stands in the middle over all columns: their title."""
    return abs(line.indent + line.end - run.columns[-1][1]) <= OFF_CENTRE


def _below_title(lines: Sequence[Line], start: int, end: int, columns: Sequence[tuple[int, int]]) -> int:
    """The first line below those that blank lines part from the columns and that are no heads of them."""
    while start + 1 < end and lines[start + 1].gap and not _heads(lines[start], columns):
        start += 1
    return start


def _heads(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has one part over each column, all of them flush with it or all in its middle."""
    parts = [match.span() for match in CELLS.finditer(line.cells)]
    if len(parts) != len(columns):
        return False
    beside = [*zip(parts, columns, strict=True)]
    flush = all(abs(part[0] - column[0]) <= 1 for part, column in beside)
    return flush or all(abs(sum(part) - sum(column)) <= OFF_CENTRE for part, column in beside)


def _tail(lines: Sequence[Line], last: int, end: int) -> int:
    """Where the longer column ends, right below the last line of the shorter one."""
    while last < end and lines[last].gap == 0 and not lines[last].crossing:
        last += 1
    return last


def _columns(lines: Sequence[Line], free: int) -> list[tuple[int, int]]:
    """The columns that the gutters part, as half-open cells."""
    bounds: list[int] = []
    for cells in range(free.bit_length()):
        if free >> cells & 0b111 == 0b111 and (not bounds or not _same_gutter(free, bounds[-1], cells)):
            bounds.append(cells)
    starts = [0]
    for bound in bounds:
        texts = [line.cells[bound:] for line in lines if line.end > bound and line.cells[bound:].strip()]
        starts.append(bound + min(len(text) - len(text.lstrip(" ")) for text in texts) if texts else bound)
    widest = max(line.end for line in lines)
    return [*zip(starts, [*bounds, widest], strict=True)]


def _same_gutter(free: int, first: int, second: int) -> bool:
    between = ((1 << second) - 1) >> first << first
    return free & between == between


def _reads(lines: Sequence[Line], columns: Sequence[tuple[int, int]], number: int) -> bool:
    """Whether a column is running text: most of its lines are full or end a sentence, half of them are sentences by themselves."""
    texts = [cell(line, columns, number) for line in lines]
    filled = [text for text in texts if text]
    if len(filled) < SHORTEST:
        return False
    lengths = sorted(map(len, filled))
    width = lengths[int(len(lengths) * 0.9)]
    pairs = [(above, below) for above, below in pairwise(texts) if above and below]
    full = sum(len(above) + 1 + len(below.split()[0]) > width for above, below in pairs)
    ended = sum(closed(above) for above, _ in pairs)
    words = sum(map(prose, filled))
    return (
        width >= NARROWEST
        and full >= 0.3 * len(pairs)
        and full + ended >= 0.5 * len(pairs)
        and words >= 0.5 * len(filled)
    )
