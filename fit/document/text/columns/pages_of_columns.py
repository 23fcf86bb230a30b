"""Pages set in columns: one gutter stays blank all the way down, whatever stands beside it.

Blank lines, headings and first-line indents in one column say nothing about the other, so that only the gutter counts.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.column_texts import NARROWEST, SHORTEST, all_read, spaced, texts_of
from fit.document.text.columns.gutters import CELLS, Run, cell, filled
from fit.document.text.columns.newspaper import INDENTED, OFF_CENTRE, PARTED, over_columns, tail
from fit.document.text.columns.own_ways import WRAPPED, own_ways, wrapped
from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed, prose, starts_small

GUTTER = 3
"""Cells of the gutter, at least: justified text leaves two blank."""
NARROW_GUTTER = 2
"""Cells of the gutter where the columns are long and equally wide."""
LONG = 12
"""Lines over which two blank cells are no chance."""
UNLIKE = 3
"""Cells by which equally wide columns may differ: the text of the last one may fall short."""
LARGEST_GAP = 3
"""Blank lines inside, at most, where no page ends."""
AT_EDGE = 3
"""Cells by which a page number may miss the right edge of the columns seen so far."""
_APART = re.compile(r" {6,}")
_PAGE = re.compile(r"(?:[Pp]age|PAGE|[Pp]\.) ?\d{1,4}|[-\u2013[]? ?\d{1,3} ?[-\u2013\]]?")


def find_columned_pages(lines: Sequence[Line], taken: Sequence[object]) -> list[Run]:
    """The runs of lines that are columns of running text; with the running heads between their pages."""
    found = _find(lines, taken, NARROW_GUTTER)
    free = list(taken)
    for run in found:
        free[run.start : run.end] = [run] * (run.end - run.start)
    return sorted([*found, *_find(lines, free, GUTTER)], key=lambda run: run.start)


def _find(lines: Sequence[Line], taken: Sequence[object], gutter: int) -> list[Run]:
    found: list[Run] = []
    index = 0
    while index < len(lines):
        free = _inside(lines[index], gutter) if taken[index] is None else 0
        if not _wide(free, gutter):
            index += 1
            continue
        end, free, heads = _down(lines, taken, index, free, gutter)
        run = _run(lines, Run(index, end, _columns(lines[index:end], free, gutter), heads=heads), gutter)
        if run is not None:
            run.start = _top(lines, taken, run, found[-1].end if found else 0)
            run.end = tail(lines, taken, run)
            found.append(run)
            index = run.end
        else:
            index = end if end - index >= SHORTEST else index + 1
    return found


def _inside(line: Line, gutter: int) -> int:
    """One bit for each blank cell that leaves room for a column on both sides."""
    if " " * gutter not in line.text:
        return 0
    return _zone(line.indent, line.end, gutter) & ~mask(line.cells)


def _zone(first: int, last: int, gutter: int) -> int:
    """The cells between the first and the last one at which a gutter leaves room for a column on both sides."""
    if last - first < 2 * NARROWEST + gutter:
        return 0
    return (1 << (last - NARROWEST)) - (1 << (first + NARROWEST))


def _wide(free: int, gutter: int) -> bool:
    """Whether blank cells stand side by side, as many as a gutter needs."""
    for _ in range(gutter - 1):
        free &= free >> 1
    return free != 0


def _down(
    lines: Sequence[Line], taken: Sequence[object], start: int, free: int, gutter: int
) -> tuple[int, int, set[int]]:
    """How far down a gutter of the first line stays blank, which cells are blank all the way, and the running heads."""
    blank = ~mask(lines[start].cells)
    first, last = lines[start].indent, lines[start].end
    heads: set[int] = set()
    end = start + 1
    while end < len(lines) and taken[end] is None:
        line = lines[end]
        if _running_head(line, first, last):
            heads.add(end)
            end += 1
            continue
        left = free & ~mask(line.cells)
        apart = line.gap > LARGEST_GAP and not line.crossing and end - 1 not in heads
        if not _wide(left, gutter) or apart:
            break
        free = left
        blank &= ~mask(line.cells)
        first, last = min(first, line.indent), max(last, line.end)
        end += 1
    return end, blank & _zone(first, last, gutter), heads


def _running_head(line: Line, first: int, last: int) -> bool:
    """Whether a line has a page number at one edge of the columns, and much blank beside it."""
    if not (line.page or line.gap or "age " in line.text or line.crossing):
        return False
    parts = _APART.split(line.text)
    if len(parts) not in {2, 3} or line.indent > first + 1 or abs(line.end - last) > AT_EDGE:
        return False
    return any(_PAGE.fullmatch(part) for part in (parts[0], parts[-1]))


def _run(lines: Sequence[Line], run: Run, gutter: int) -> Run | None:
    """The part of a run that is columns of running text."""
    columns, heads = run.columns, run.heads
    both = [i for i in range(run.start, run.end) if i not in heads and filled(lines[i], columns) > 1]
    if len(both) < (LONG if gutter < GUTTER else SHORTEST):
        return _short(lines, run, both) if gutter == GUTTER and len(both) >= WRAPPED else None
    widths = [last - first for first, last in columns]
    if gutter < GUTTER and max(widths) - min(widths) > UNLIKE:
        return None
    while len(both) > 1 and _set_off(lines[both[-1]], columns):
        both.pop()
    both = [*_without_strange(lines, both, run)]
    start, end = _below_title(lines, both[0], run.end, columns), _tail(lines, both[-1] + 1, run.end)
    content = [lines[index] for index in range(start, end) if index not in heads]
    alone = sum(index > both[-1] for index in range(start, end))  # the longer column goes on by itself
    if len(both) < 0.5 * (len(content) - alone):
        return None
    texts = [texts_of(content, columns, number) for number in range(len(columns))]
    if not all_read(texts) and (gutter < GUTTER or not own_ways(spaced(content, texts))):
        return None
    return Run(start, end, columns, heads={index for index in heads if start < index < end})


def _short(lines: Sequence[Line], run: Run, both: Sequence[int]) -> Run | None:
    """The lines of a run in which few stand beside one another: sentences that go on, and the left one goes on alone below."""
    first, last = both[0], both[-1] + 1
    if (
        last - first != len(both)
        or last == run.end
        or any(lines[index].apart for index in range(first + 1, last + 1))
    ):
        return None
    above = cell(lines[last - 1], run.columns, 0)
    if closed(above) or not starts_small(lines[last].text) or _in_column(lines[last], run):
        return None
    texts = (texts_of(lines[first:last], run.columns, number) for number in range(len(run.columns)))
    return Run(first, _tail(lines, last, run.end), run.columns) if all(map(wrapped, texts)) else None


def _set_off(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether nothing on the right starts where a column does, as the figures of a list below the columns do not."""
    starts = [match.start() for match in CELLS.finditer(line.cells)]
    return not any(first <= start <= first + INDENTED for first, _ in columns[1:] for start in starts)


def _without_strange(lines: Sequence[Line], both: Sequence[int], run: Run) -> Sequence[int]:
    """The lines with text in several columns, without those below two blank lines that are no columns of running text.

    One of the columns reads as no text at all there.
    """
    while len(both) > 1:
        first = both[-1]
        while first > both[0] and (lines[first].gap < PARTED or lines[first].crossing):
            first -= 1
        held = [index for index in both if index >= first]
        read = all(
            any(prose(cell(lines[index], run.columns, number)) for index in held)
            for number in range(len(run.columns))
        )
        if first == both[0] or read:
            break
        both = both[: -len(held)]
    return both


def _top(lines: Sequence[Line], taken: Sequence[object], run: Run, floor: int) -> int:
    """Where a run starts with the lines above that stand in one of its columns alone, or over each of them.

    In the first column those right above belong to it, down from a blank line, and those beside what stands on the right.
    """
    top = start = run.start
    joined = True
    while start > floor and taken[start - 1] is None and not lines[start].crossing and lines[start].gap <= 1:
        right, left = _on_right(lines, start, run, start == top), _in_column(lines[start - 1], run) == 0
        beside = not lines[start].gap and _beside(lines[start - 1], run.columns)
        if not right and not left and not beside:
            break
        joined = joined and not lines[start].gap
        start -= 1
        if right or beside or (joined and parted_above(lines, start)):
            top, joined = start, True
    return top


def _beside(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has text in each column and none in the gutters, and begins each column on the right where it begins.

    There the first line of a paragraph may be set in.
    """
    texts = [line.cells[first:last].rstrip(" ") for first, last in columns]
    blank = all(not line.cells[last:first].strip(" ") for (_, last), (first, _) in pairwise(columns))
    begins = all(text[:1].strip() or prose(text.strip()) for text in texts[1:])
    return begins and blank and texts[0].strip() != ""


def _on_right(lines: Sequence[Line], index: int, run: Run, first: bool) -> bool:
    """Whether the line above ``index`` begins a column on the right, or stands over each column."""
    above = lines[index - 1]
    column = _in_column(above, run)
    if column <= 0:
        return over_columns(above, run.columns)
    begins = prose(above.text) or above.indent == run.columns[column][0]
    return (first and not lines[index].gap) or (begins and not _centred(above, run))


def _in_column(line: Line, run: Run) -> int:
    """The number of the column that the whole line stands in, -1 where it crosses a gutter."""
    spare = [0] * (len(run.columns) - 1) + [UNLIKE]
    places = [*zip(run.columns, spare, strict=True)]
    inside = (first <= line.indent and line.end <= last + more for (first, last), more in places)
    return next((number for number, within in enumerate(inside) if within), -1)


def _centred(line: Line, run: Run) -> bool:
    """Whether a line stands in the middle over all columns: their title."""
    return abs(line.indent + line.end - run.columns[-1][1]) <= OFF_CENTRE


def _below_title(lines: Sequence[Line], start: int, end: int, columns: Sequence[tuple[int, int]]) -> int:
    """The first line below those that blank lines part from the columns and that are no heads of them."""
    while start + 1 < end and lines[start + 1].gap and not over_columns(lines[start], columns):
        start += 1
    return start


def _tail(lines: Sequence[Line], last: int, end: int) -> int:
    """Where the longer column ends, right below the last line of the shorter one."""
    while last < end and lines[last].gap == 0 and not lines[last].crossing:
        last += 1
    return last


def _columns(lines: Sequence[Line], free: int, gutter: int) -> list[tuple[int, int]]:
    """The columns that the gutters part, as half-open cells."""
    bounds: list[int] = []
    full = (1 << gutter) - 1
    for cells in range(free.bit_length()):
        if free >> cells & full == full and (not bounds or not _same_gutter(free, bounds[-1], cells)):
            bounds.append(cells)
    starts = [min(line.indent for line in lines)]
    for bound in bounds:
        texts = [line.cells[bound:] for line in lines if line.end > bound and line.cells[bound:].strip()]
        starts.append(bound + min(len(text) - len(text.lstrip(" ")) for text in texts) if texts else bound)
    widest = max(line.end for line in lines)
    return [*zip(starts, [*bounds, widest], strict=True)]


def _same_gutter(free: int, first: int, second: int) -> bool:
    between = ((1 << second) - 1) >> first << first
    return free & between == between
