"""Tables whose columns are so narrow that one blank parts the names over them: each cell begins or ends where its name does.

Such a table begins after a blank line or a page end and goes on to the next one; the first line names the columns. Where
a rule from side to side stands below it, it is surely a head, and a figure may stand anywhere under its name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import reduce
from itertools import pairwise
from operator import or_

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import columns_of
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.code import prompted
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off, segmented

CELLS = 5
"""Cells of a row, at least: so many words stand right under others by no chance."""
FIGURES = 0.4
"""The share of the cells that hold figures, at least: words under words may be verse."""
RULES = frozenset("-=_\u2500\u2550")
"""What a rule below a head is made of."""
LEAST = 2
"""Rows under a ruled head, at least."""
_TYPED = re.compile(r"[$%#>] \S")
"""The beginning of a line that was typed behind a prompt: what came of it stands below."""
_WORD = re.compile(r"\S+")
Span = tuple[int, int]


def find_narrow(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each as its block."""
    found: list[tuple[int, int, list[Block]]] = []
    for start in range(len(lines) - 1):
        line, below = lines[start], lines[start + 1]
        if below.apart or taken[start] is not None:
            continue
        if below.text[:1] in RULES and _over_all(line, below):
            found += _under_rule(lines, taken, start, hyphens)
            continue
        if not parted_above(lines, start):
            continue
        names = _spans(line)
        cells = _spans(below)
        if len(cells) < CELLS or len(names) < CELLS or prompted(line.text) or prose(line.text):
            continue
        columns = _columns(names, cells)
        end = _end(lines, taken, start + 1, columns) if columns else start
        if end > start + 1 and _figured(lines, start, end, columns):
            found.append((start, end, [_table(lines[start:end], columns, hyphens)]))
    return found


def _over_all(head: Line, below: Line) -> bool:
    """Whether a line is one rule that goes as far to the right as the names above it, or farther."""
    return ruled_off(below.text) and below.indent <= head.indent and below.end >= head.end


def _under_rule(
    lines: Sequence[Line], taken: Sequence[object], start: int, hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The table whose head is the line at ``start`` and has a rule below it; nothing where some cell's name is in doubt."""
    head = lines[start]
    led = parted_above(lines, start) or _TYPED.match(lines[start - 1].text) is not None
    if not led or any(map(str.isdigit, head.text)) or prose(head.text):
        return []
    end = part_end(lines, start)
    rows = lines[start + 2 : end]
    if (
        len(rows) < LEAST
        or any(one is not None for one in taken[start:end])
        or any(ruled_off(row.text) for row in rows)
    ):
        return []
    columns = _named_columns(_spans(head), columns_of(reduce(or_, (mask(row.cells) for row in rows), 0)))
    cells = [row.cells[first:last] for row in rows for _, (first, last) in columns]
    figures = sum(any(map(str.isdigit, text)) for text in cells)
    if len(columns) < CELLS or figures < FIGURES * len(cells) or not all(text.strip() for text in cells):
        return []
    texts = [tuple(flow([head.piece(*name)], hyphens) for name, _ in columns)]
    texts += [tuple(flow([row.piece(*cell)], hyphens) for _, cell in columns) for row in rows]
    return [(start, end, [_block(lines[start:end], texts)])]


def _named_columns(names: Sequence[Span], columns: Sequence[Span]) -> list[tuple[Span, Span]]:
    """Each name with the cells of its column, as blanks in all rows part these; nothing where one is in doubt.

    A word over no column belongs to the name before it, and a column under no word to the last one.
    """
    found: list[tuple[Span, Span]] = []
    over: list[list[int]] = [
        [place for place, column in enumerate(columns) if name[0] < column[1] and name[1] > column[0]]
        for name in names
    ]
    for name, places in zip(names, over, strict=True):
        if len(places) > 1 or not (places or found):
            return []
        if not places or (found and columns[places[0]] == found[-1][1]):
            if name[0] - found[-1][0][1] != 1:
                return []
            found[-1] = ((found[-1][0][0], name[1]), found[-1][1])
        elif places[0] != len(found):
            return []
        else:
            found.append((name, columns[places[0]]))
    tight = any(second[0][0] - first[0][1] == 1 for first, second in pairwise(found))
    if not tight or (len(found) < len(columns) and not over[-1]):
        return []
    return [*found[:-1], (found[-1][0], (found[-1][1][0], columns[-1][1]))]


def _spans(line: Line) -> list[Span]:
    """The half-open cells of each word."""
    return [match.span() for match in _WORD.finditer(line.cells)]


def _columns(names: Sequence[Span], cells: Sequence[Span]) -> list[Span]:
    """The cells of each name, several words where only the first stands over a cell; nothing where a cell has no name.

    A first name without cells, ``(0, 0)``, is that of keys that have none.
    """
    columns: list[Span] = []
    place = 0
    if cells[0][1] < names[0][0]:
        columns.append((0, 0))
        place = next(
            index for index, cell in enumerate(cells) if cell[1] >= names[0][0] or index == len(cells) - 1
        )
    for first, last in names:
        if place < len(cells) and _meets((first, last), cells[place]):
            columns.append((first, last))
            place += 1
        elif columns and columns[-1][1] == first - 1:
            columns[-1] = (columns[-1][0], last)
        else:
            return []
    tight = any(second[0] - first[1] == 1 for first, second in pairwise(columns) if first[1])
    return columns if place == len(cells) and tight else []


def _meets(name: Span, cell: Span) -> bool:
    """Whether a cell begins or ends where its name does."""
    return name[0] == cell[0] or name[1] == cell[1]


def _row(line: Line, columns: Sequence[Span]) -> list[Span]:
    """The cells of a row, one under each name; nothing where one of them stands elsewhere."""
    spans = _spans(line)
    keyed = columns[0] == (0, 0)
    count = len(columns) - keyed
    if len(spans) < len(columns) or (len(spans) > len(columns) and not keyed):
        return []
    rest = spans[len(spans) - count :]
    if not all(_meets(*pair) for pair in zip(columns[keyed:], rest, strict=True)):
        return []
    return [(spans[0][0], spans[-count - 1][1]), *rest] if keyed else rest


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, columns: Sequence[Span]) -> int:
    """The end of the rows from ``start`` on; 0 where a line that is none stands right below them."""
    end = start
    while end < len(lines) and not lines[end].apart:
        line = lines[end]
        if taken[end] is not None or ruled_off(line.text) or segmented(line.text) or not _row(line, columns):
            return 0
        end += 1
    return end


def _figured(lines: Sequence[Line], start: int, end: int, columns: Sequence[Span]) -> bool:
    """Whether many cells hold figures, and the head is no row of them itself: it has no key, or no figures."""
    cells = [line.cells[first:last] for line in lines[start + 1 : end] for first, last in _row(line, columns)]
    figures = sum(any(map(str.isdigit, text)) for text in cells)
    named = columns[0] == (0, 0) or not any(map(str.isdigit, lines[start].text))
    return named and figures >= FIGURES * len(cells)


def _table(lines: Sequence[Line], columns: Sequence[Span], hyphens: Hyphens) -> Block:
    head, *body = lines
    rows: list[tuple[Text, ...]] = [tuple(flow([head.piece(*span)], hyphens) for span in columns)]
    rows += [tuple(flow([line.piece(*span)], hyphens) for span in _row(line, columns)) for line in body]
    return _block(lines, rows)


def _block(lines: Sequence[Line], rows: Sequence[tuple[Text, ...]]) -> Block:
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple(rows),
        header_rows=1,
        note="table with narrow columns",
    )
