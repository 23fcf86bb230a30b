"""Tables with drawn columns: ``| a | b |`` with or without rules between, box characters included."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from functools import reduce
from itertools import pairwise, zip_longest
from operator import or_

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.anchors import mask
from fit.document.text.columns.gutters import columns_of
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.code import code
from fit.document.text.tables.bars import BARS, CROSSES, bars_of, rule
from fit.document.text.tables.boxed import boxed_columns
from fit.document.text.tables.drawn_rows import drawn_table
from fit.document.text.tables.filled import without_filling
from fit.document.text.tables.heads import repeated_heads, without
from fit.document.text.tables.shared_cells import spread, stroke

SEVERAL = 3
"""Rules of a table, at least, that show what they part."""
STRAYS = 0.1
"""Signs within the words of a table that look like bars, one a line, at most; a few always may."""
SIDES = 2
"""Bars of a box without inner ones."""
SHIFT = 2
"""Cells by which the bars of a single line may stand elsewhere, at most."""
APART = 3
"""Cells of blank that part two columns without a bar, at least."""
_WORD = re.compile(r"[^\W\d_]{2,}")
_WALL = re.compile(r"[-=\u2500\u2550]{4,}")
_BORDER = re.compile(rf"[{re.escape(CROSSES)}]+(?:[-=\u2500\u2550]+[{re.escape(CROSSES)}]+)+(?=  +\S)")
"""The lower side of a box with words behind it."""
_PIPED = re.compile(r"[a-z][\w.]* [^|]*\| [A-Za-z]\w+ [^|]*['\"-]")
"""A command that hands what it says on to another, with a string or an option behind that."""
_DRAWN = re.compile(r"[\u2500-\u259f]|[-=]{3,}|\+[-=]|\\__|__/|/__|__\\")


def find_ruled(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each with its block."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = index
        while end < len(lines) and taken[end] is None and (rule(lines[end]) or bars_of(lines[end])):
            if end > index and lines[end].gap and not lines[end].crossing and not _same(lines, index, end):
                break
            if end > index and lines[end].crossing and _another(lines, index, end):
                break
            end += 1
        start = index
        if end - start >= 2 and not (_menus(lines, start, end) or _noted(lines, start, end)):
            title = _title(lines[start:end])
            part = lines[start + title : end]
            again = repeated_heads(part, rule)
            part, whole = without(part, again), part
            filled = without_filling(part)
            blocks = _table(filled or part, hyphens, again=bool(again), parted=bool(filled))
            if blocks:
                blocks[-1] = replace(blocks[-1], lines=keep_lines(part)) if filled else blocks[-1]
                over = [_title_text(line, hyphens) for line in lines[start : start + title] if not rule(line)]
                printed = [
                    Block(Kind.FURNITURE, lines=keep_lines(whole[first:last])) for first, last in again
                ]
                found.append((start, end, [*over, *blocks, *printed]))
        index = max(end, index + 1)
    return found


def _menus(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the lines are menus side by side: names in the border above them, and a rule inside some of them alone."""
    if parted_above(lines, start) or not (top := lines[start - 1].text) or top[0] not in CROSSES:
        return False
    named = len(_WORD.findall(top)) > 1 and _WALL.search(top) is not None and top[-1] in CROSSES
    if not named or (lines[start - 1].indent, lines[start - 1].end) != (
        lines[start].indent,
        lines[start].end,
    ):
        return False
    return any(_WALL.search(line.text) for line in lines[start:end] if not rule(line))


def _noted(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the border right below the lines has words beside it: they are of a drawing, with notes at its right."""
    if parted_above(lines, end) or (border := _BORDER.match(lines[end].text)) is None:
        return False
    below = lines[end]
    right = below.indent + border.end() - 1
    return below.indent == lines[start].indent and right in bars_of(lines[end - 1])


def _title(lines: Sequence[Line]) -> int:
    """How many lines of a boxed table are its title: a row without inner bars between rules, columns below it."""
    if not rule(lines[0]):
        return 0
    end = next((index for index in range(1, len(lines)) if rule(lines[index])), 0)
    below = next((line for line in lines[end + 1 :] if not rule(line)), None)
    if end < 2 or below is None or len(bars_of(below)) < 3:
        return 0
    boxed = all(
        bars_of(line) == [line.indent, line.end - 1] and line.end == below.end for line in lines[1:end]
    )
    return end if boxed else 0


def _title_text(line: Line, hyphens: Hyphens) -> Block:
    text = flow([line.piece(line.indent + 1, line.end - 1)], hyphens)
    return Block(Kind.PARAGRAPH, text, note="title of a table with drawn columns")


def _another(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether the bars of a line on a new page mostly stand elsewhere than those before it: another table begins there."""
    before = {column for line in lines[start:index] for column in bars_of(line, "+")}
    here = set(bars_of(lines[index], "+"))
    return 2 * len(here - before) > len(here)


def _same(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a line after a blank one has the bars of the table that started above."""
    before = {column for line in lines[start:index] for column in bars_of(line)}
    return lines[index].gap == 1 and bool(bars_of(lines[index])) and set(bars_of(lines[index])) == before


def _table(lines: Sequence[Line], hyphens: Hyphens, *, again: bool, parted: bool) -> list[Block]:
    """The table of the lines, what stands over all its columns first; nothing where they are none.

    ``again`` says that their head was printed again, so that they have one; ``parted``, that each rule parts two rows.
    """
    content = [line for line in lines if not rule(line)]
    rules = [line for line in lines if rule(line)]
    bars = [bars_of(line, "+") for line in content]
    counts = Counter(column for found in bars for column in found)
    grid = sorted(column for column, times in counts.items() if times >= 0.6 * len(content))
    if len(content) < 2 or not grid or len(content) + len(rules) < 3:
        return []
    if not rules and all(_PIPED.match(line.text) and code(line.text) for line in content):
        return []
    outer = (
        grid[0] <= min(line.indent for line in content) and grid[-1] >= max(line.end for line in content) - 1
    )
    if outer:
        counts -= Counter(column for found in bars if _shifted(found, grid) for column in found)
    boxed = boxed_columns(lines, grid) if outer and len(grid) == SIDES else []
    if len(grid) < (3 if outer and not boxed else 1):
        return []
    if len(grid) == 1 and all(line.indent == grid[0] for line in content):
        return []  # a bar at the left of each line parts nothing
    crossed = [column for line in rules for column in range(line.end) if line.cells[column] == "+"]
    strays = sum(times for column, times in counts.items() if column not in grid)
    if any(column not in grid for column in crossed) or (
        len(counts) > len(grid) + 2 and strays > STRAYS * len(content)
    ):
        return []
    storeys = _storeys(lines) if outer else 0
    if _rooms(content[storeys:], grid) or (outer and _panes(lines, grid)):
        return []
    bounds = boxed or _bounds(grid, content, rules)
    bounds = bounds if outer or not rules else _by_blanks(bounds, content)
    cells = [
        _cells(line, _between(found) if outer and _shifted(found, grid) else bounds)
        for line, found in zip(content, bars, strict=True)
    ]
    strokes = [frozenset(column for column, cell in enumerate(row) if stroke(cell.chars)) for row in cells]
    if (outer and _shaded(cells, strokes, rules)) or _plotted(cells):
        return []
    for row, ruled in zip(cells, strokes, strict=True):
        for column in ruled:
            row[column] = Text()
    if sum(bool(_DRAWN.search(cell.chars)) for row in cells for cell in row) > 0:
        return []
    least = 0.4 * len(cells) if len(rules) < 3 or not outer else len(rules) // 2
    if crossed and not outer:
        least = min(2, len(cells))  # a rule that crosses the bars leaves no doubt, however long the cells are
    for edge in (0, -1):
        if sum(bool(row[edge].chars.strip()) for row in cells) < least:
            return []
    title: list[Block] = []
    for index in range(storeys - 1, -1, -1):
        joined = [content[index].cells[first - 1 : first] == " " for first, _ in bounds]
        name = spread(cells, strokes[:storeys], index, joined)
        if name is not None:
            title = [Block(Kind.PARAGRAPH, flow([name], hyphens), note="title over all columns"), *title]
            lines = [line for line in lines if line is not content[index]]
            del cells[index], strokes[index]
    return [*title, drawn_table(lines, cells, strokes, hyphens, again=again, parted=parted)]


def _storeys(lines: Sequence[Line]) -> int:
    """The lines of a head of two storeys or more: above the first inner rule, with a rule over some columns among them."""
    inner = [index for index, line in enumerate(lines) if rule(line)]
    if len(inner) < SEVERAL or inner[0]:
        return 0
    head = lines[1 : inner[1]]
    return len(head) if any(_WALL.search(line.text) for line in head) else 0


def _rooms(content: Sequence[Line], grid: Sequence[int]) -> bool:
    """Whether the lines draw rooms: a wall between some of them goes part of the way, and another has an opening."""
    walls = any(_WALL.search(line.text) for line in content)
    return walls and any(line.cells[column : column + 1] == " " for line in content for column in grid)


def _shaded(
    cells: Sequence[Sequence[Text]], strokes: Sequence[frozenset[int]], rules: Sequence[Line]
) -> bool:
    """Whether double strokes fill a cell from side to side beside text, though all rules are single: they draw what lies there."""
    signs = {char for line in rules for char in line.text}
    return (
        bool(signs)
        and signs.isdisjoint("=\u2550")
        and any(
            set(row[column].chars) <= {"=", "\u2550"}
            and any(map(str.isalnum, "".join(cell.chars for cell in row)))
            for row, ruled in zip(cells, strokes, strict=True)
            for column in ruled
        )
    )


def _plotted(cells: Sequence[Sequence[Text]]) -> bool:
    """Whether all that stands in a column is one sign, several of it with blanks between in some cells: a graph."""
    for column in zip_longest(*cells, fillvalue=Text()):
        texts = [text for cell in column if (text := cell.chars.strip(" "))]
        marks = {char for text in texts for char in text if char != " "}
        if len(marks) == 1 and not marks.pop().isalnum() and sum(" " in text for text in texts) >= SEVERAL:
            return True
    return False


def _panes(lines: Sequence[Line], grid: Sequence[int]) -> bool:
    """Whether the lines draw a screen or layers: one pane alone is parted by bars, and the lowest is as wide as all."""
    parted: list[bool] = []
    fresh = True
    for line in lines:
        if rule(line):
            fresh = True
            continue
        inner = any(line.cells[column : column + 1] in BARS for column in grid[1:-1])
        if fresh:
            parted.append(inner)
        parted[-1] |= inner
        fresh = False
    return sum(parted) == 1 and not parted[-1]


def _cells(line: Line, bounds: Sequence[tuple[int, int]]) -> list[Text]:
    """The cells of a line; text that runs over a bar's column is all in the left one."""
    cells: list[Text] = []
    start, joined = bounds[0][0], 0
    for first, last in bounds:
        start = first if joined == 0 else start
        over = last < line.end and line.cells[last] not in BARS + CROSSES + " "
        if over and last != bounds[-1][1]:
            joined += 1
            continue
        piece = line.piece(start, last)
        cells.append(piece)
        cells.extend([Text()] * joined)
        joined = 0
    return cells


def _bounds(grid: Sequence[int], content: Sequence[Line], rules: Sequence[Line]) -> list[tuple[int, int]]:
    left = min(line.indent for line in [*content, *rules])
    right = max(line.end for line in [*content, *rules])
    edges = [left - 1, *grid] if grid[0] > left else list(grid)
    if grid[-1] < right - 1:
        edges.append(right)
    return _between(edges)


def _by_blanks(bounds: Sequence[tuple[int, int]], content: Sequence[Line]) -> list[tuple[int, int]]:
    """The columns of a table with bars between some of them alone: wide blanks part others, in each row that has them."""
    found: list[tuple[int, int]] = []
    for first, last in bounds:
        cut = [line.cells[first:last] for line in content]
        parts = columns_of(reduce(or_, map(mask, cut), 0))
        full = [text for text in cut if text.strip(" ")]
        apart = len(full) >= SEVERAL and all(second[0] - one[1] >= APART for one, second in pairwise(parts))
        if apart and all(text[start:stop].strip(" ") for text in full for start, stop in parts):
            inner = [(first + start, first + stop) for start, stop in parts]
            found += [*inner[:-1], (inner[-1][0], last)]
        else:
            found.append((first, last))
    return found


def _between(edges: Sequence[int]) -> list[tuple[int, int]]:
    return [(first + 1, last) for first, last in pairwise(edges)]


def _shifted(bars: Sequence[int], grid: Sequence[int]) -> bool:
    """Whether a line has as many bars as the table, and some of them a cell or two beside their places."""
    return (
        len(bars) == len(grid)
        and bars != grid
        and all(abs(first - second) <= SHIFT for first, second in zip(bars, grid, strict=True))
    )
