"""Columns that are read one after the other: newspaper columns with their heads, and index pages."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import CELLS, GUTTER, Run, cell, columns_of, filled
from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.document.text.signs.underlines import underlines

INDENTED = 6
"""Cells by which a line in a column may be set in."""
OFF_CENTRE = 8
"""Twice the cells by which a heading may miss the middle of its column."""
SET_IN = 4
"""Cells by which a signature below a column is set in, at least."""
PARTED = 2
"""Blank lines across all columns, at least, that part them from the next ones."""
NAMES = 4
"""Words of a signature, at most."""
SIGNED = 2
"""Lines of a signature, at most: a name and a place."""
LISTED = 0.8
"""Share of the lines of a column that are entries with leaders, at least: some may be wrapped."""
TITLE = 5
"""Words of a title over a column, at most, that may be a sentence's."""
_LED = re.compile(r"\.{3,} ?\d+$|(?: \.){3,} ?\d+$")
_ENTRY = re.compile(r"[^\W\d].*, ?\d+(?:[-,; ]+\d+)*,?$")


def with_heads(lines: Sequence[Line], taken: Sequence[object], run: Run, floor: int) -> Run:
    """A run of newspaper columns with the lines of column heads just above it."""
    start = run.start
    while start > floor and taken[start - 1] is None and lines[start].gap <= 1 and not lines[start].crossing:
        parts = [match.start() for match in CELLS.finditer(lines[start - 1].cells)]
        near = [any(abs(part - first) <= 1 for first, _ in run.columns) for part in parts]
        if (
            len(parts) < 2
            or not all(near)
            or len(columns_of(mask(lines[start - 1].cells))) > len(run.columns)
        ) and not over_columns(lines[start - 1], run.columns):
            break
        start -= 1
    firsts = [min(first, *_starts_near(lines[start : run.start], first)) for first, _ in run.columns]
    columns = [(first, last) for first, (_, last) in zip(firsts, run.columns, strict=True)]
    return Run(start, run.end, columns, run.rules)


def over_columns(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line has one part over each column, all of them flush with it or all in its middle."""
    parts = [match.span() for match in CELLS.finditer(line.cells)]
    if len(parts) != len(columns):
        return False
    beside = [*zip(parts, columns, strict=True)]
    near = all(0 <= part[0] - column[0] <= INDENTED and part[1] <= column[1] for part, column in beside)
    near = near and parts[0][0] - columns[0][0] <= 1 and parts[-1][1] < columns[-1][1]
    flush = all(abs(part[0] - column[0]) <= 1 for part, column in beside)
    return near or flush or all(abs(sum(part) - sum(column)) <= OFF_CENTRE for part, column in beside)


def tail(lines: Sequence[Line], taken: Sequence[object], run: Run) -> int:
    """Where the first column of a run ends that goes on alone below it: paragraphs that were wrapped at its own margin.

    What stands below such lines in the room of the column belongs to it, too, and so does the rest of a sentence on the next page.
    """
    end = _own_paragraphs(lines, taken, run.columns, run.end)
    end = end if filled(lines[end - 1], run.columns) > 1 else _own_room(lines, taken, run, end)
    return _over_page(lines, taken, run, end)


def _over_page(lines: Sequence[Line], taken: Sequence[object], run: Run, end: int) -> int:
    """Where the rest of the last column's sentence ends that stands alone at the top of the next page, in the first column; or ``end``."""
    if end == len(lines) or not lines[end].crossing or not starts_small(lines[end].text):
        return end
    texts = (cell(line, run.columns, len(run.columns) - 1) for line in reversed(lines[run.start : end]))
    if closed(next(filter(None, texts))):
        return end
    first, last = run.columns[0]
    stop = end
    while (
        stop < len(lines) and taken[stop] is None and first <= lines[stop].indent and lines[stop].end <= last
    ):
        stop += 1
        if parted_above(lines, stop):
            return stop
    return end


def _own_room(lines: Sequence[Line], taken: Sequence[object], run: Run, end: int) -> int:
    """Where the lines end that stand in the first column below ``end``, without those over what crosses its gutter.

    There are none where the column stops in a sentence: that goes on in the next one. Lines that go on for longer than
    the columns are high are a text of its own.
    """
    if not closed(lines[end - 1].text):
        return end
    first, room = run.columns[0][0], run.columns[1][0] - GUTTER
    stop = end
    while stop < len(lines) and taken[stop] is None and not lines[stop].crossing and lines[stop].gap <= 1:
        if not (lines[stop].indent >= first and lines[stop].end <= room):
            break
        stop += 1
    if stop < len(lines) and not lines[stop].crossing and lines[stop].gap <= 1:
        while stop > end and not lines[stop].gap:
            stop -= 1
        while stop > end and (lines[stop - 1].gap or underlines(lines, stop - 1)):
            stop -= 1
    return stop if stop - end < end - run.start else end


def _own_paragraphs(
    lines: Sequence[Line], taken: Sequence[object], columns: Sequence[tuple[int, int]], end: int
) -> int:
    """Where the paragraphs, signatures and last words end that follow in the first column below ``end``."""
    first, last = columns[0]
    while end < len(lines):
        stop = end
        while stop < len(lines) and taken[stop] is None and not (stop > end and lines[stop].gap):
            line = lines[stop]
            if line.crossing or line.gap > 1 or line.indent < first or line.end + GUTTER > columns[1][0]:
                return end
            stop += 1
        if stop - end == 1 and (_signature(lines, end, columns) or _nearer(lines, end, columns)):
            return stop
        if stop > end and _below_title(lines, end, columns):
            end = stop
            continue
        part = [*pairwise(lines[end:stop])]
        full = sum(above.end + 1 + len(below.text.split()[0]) > last for above, below in part)
        words = sum(prose(above.text) for above, _ in part)
        short = not part or (len(part) == 1 and not closed(lines[stop - 1].text))
        if short or full < 0.6 * len(part) or words < 0.5 * len(part):
            return end
        end = stop
    return end


def _signature(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line alone below a column that goes on alone is the name of its writer, set in or behind a dash."""
    text = lines[index].text
    dashed = text.startswith(("--", "- ", "\u2013", "\u2014"))
    placed = lines[index].indent >= columns[0][0] + SET_IN and (dashed or text.upper() != text)
    return _named(text) and placed and bool(cell(lines[index - 1], columns, 0))


def _named(text: str) -> bool:
    """Whether a few words are a name."""
    bare = text.lstrip("-\u2013\u2014 (")
    return bare[:1].isupper() and not prose(bare) and len(text.split()) <= NAMES


def signed(part: Sequence[Line]) -> bool:
    """Whether the lines of a column end with a name set in below a blank line, and a place perhaps: its writer has ended."""
    first = len(part) - 1
    while first > 0 and not part[first].gap and part[first].indent >= SET_IN:
        first -= 1
    if first <= 0 or len(part) - first > SIGNED:
        return False
    return all(line.indent >= SET_IN and _named(line.text) for line in part[first:])


def _nearer(lines: Sequence[Line], index: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line alone below a column, flush with it, is nearer to the column than to what stands below: its last words."""
    near = lines[index].gap == 1 and index + 1 < len(lines) and lines[index + 1].gap >= PARTED
    return near and lines[index].indent == columns[0][0] and bool(cell(lines[index - 1], columns, 0))


def _below_title(lines: Sequence[Line], end: int, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether the first column, above lines that go on alone, ends with a title in capitals: it stands over them."""
    held = end - 1
    while held and not lines[held].gap and not cell(lines[held], columns, 0):
        held -= 1
    title = cell(lines[held], columns, 0)
    parted = lines[held].gap > 0 or not cell(lines[held - 1], columns, 0)
    return held > 0 and parted and title.isupper() and not closed(title) and filled(lines[held], columns) > 1


def _starts_near(lines: Sequence[Line], column: int) -> list[int]:
    """Where the parts of column heads start that stand at a column, give or take a cell; the column itself too."""
    return [column] + [
        match.start()
        for line in lines
        for match in CELLS.finditer(line.cells)
        if abs(match.start() - column) <= 1
    ]


def page_starts(lines: Sequence[Line], run: Run) -> list[int]:
    """The first lines of the parts of a run whose columns are read one after the other: pages, and what blank lines part."""
    later = range(run.start + 1, run.end)
    return [
        run.start,
        *(i for i in later if lines[i].crossing or i - 1 in run.heads or anew(lines, run, i)),
    ]


def anew(lines: Sequence[Line], run: Run, index: int) -> bool:
    """Whether two blank lines part columns that begin side by side from columns above them that have come to their ends."""
    if not run.start < index < run.end - 1 or lines[index].gap < PARTED or lines[index].crossing:
        return False
    columns = range(len(run.columns))
    if not all(cell(lines[index], run.columns, number) for number in columns):
        return False
    ends = [column_end(lines, run, number, run.start, index) for number in columns]
    return all(closed(cell(lines[end], run.columns, number)) for number, end in enumerate(ends))


def heads_over(lines: Sequence[Line], run: Run) -> bool:
    """Whether the first line of a run has a few words over each column and a blank line below it: titles of their own."""
    heads = [cell(lines[run.start], run.columns, number) for number in range(len(run.columns))]
    short = all(text[:1].isupper() and len(text.split()) <= TITLE and not closed(text) for text in heads)
    return short and lines[run.start + 1].gap > 0 and over_columns(lines[run.start], run.columns)


def column_end(lines: Sequence[Line], run: Run, number: int, first: int, last: int) -> int:
    """The last line of a page ``first <= i < last`` that has text in a column."""
    held = (
        i
        for i in range(last - 1, first - 1, -1)
        if i not in run.heads and cell(lines[i], run.columns, number)
    )
    return next(held, first)


def side_by_side(lines: Sequence[Line], run: Run, first: int, last: int) -> bool:
    """Whether on a page ``first <= i < last`` paragraphs begin beside one another alone: none goes on in the next column.

    They do where the blank lines above them run through all columns, as far down as the shortest one goes.
    """
    columns = range(len(run.columns))
    stop = min(column_end(lines, run, number, first, last) for number in columns)
    starts = [
        {
            index
            for index in range(first + 1, stop + 1)
            if cell(lines[index], run.columns, number)
            and (lines[index].gap or not cell(lines[index - 1], run.columns, number))
        }
        for number in columns
    ]
    return starts[0] != set() and all(one == starts[0] for one in starts)


def index_columns(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether every column holds index entries: words, a comma, page numbers; the lines above deeper ones have theirs there."""
    texts = [text for line in lines for index in range(len(columns)) if (text := cell(line, columns, index))]
    entries = sum(_ENTRY.search(text) is not None for text in texts)
    if len(texts) < 6 or 2 * entries < len(texts):
        return False
    over = sum(_over_deeper(lines, columns, number) for number in range(len(columns)))
    return entries >= 0.7 * (len(texts) - over)


def _over_deeper(lines: Sequence[Line], columns: Sequence[tuple[int, int]], number: int) -> int:
    """Lines of a column without page numbers that stand over a deeper one: it has the entries under a word, or goes on."""
    first = columns[number][0]
    last = columns[number + 1][0] if number + 1 < len(columns) else max(line.end for line in lines)
    held = [part for line in lines if (part := line.cut(first, last)).cells]
    return sum(
        below.indent > above.indent and _ENTRY.search(above.text) is None for above, below in pairwise(held)
    )


def prose_columns(lines: Sequence[Line], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether every column is running text of its own: newspaper columns. An index may stand beside such text."""
    listed = 0
    for index, (first, last) in enumerate(columns):
        texts = [text for line in lines if (text := cell(line, columns, index))]
        if last - first < 15 or len(texts) < 4 or len(texts) < 0.45 * len(lines):
            return False
        if sum(_LED.search(text) is not None for text in texts) >= LISTED * len(texts):
            listed += 1
            continue
        breaks = full = 0
        for above, below in pairwise(texts):
            breaks += 1
            full += len(above) + 1 + len(below.split()[0]) > last - first - 2
        if sum(map(starts_small, texts)) < 0.25 * len(texts):
            return False  # keys, or what they mean
        reads = sum(prose(text) or len(text.split()) >= 3 for text in texts)
        if full < 0.6 * breaks or reads < 0.6 * len(texts):
            return False
    return listed < len(columns)
