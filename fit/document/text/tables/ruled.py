"""Tables with drawn columns: ``| a | b |`` with or without rules between, box characters included."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.tables.cell_text import cell_text
from fit.document.text.tables.heads import names_columns, repeated_heads, tells, without
from fit.document.text.tables.row_groups import row_groups
from fit.document.text.tables.rows import group_rows, sections
from fit.document.text.tables.shared_cells import Shared, share, spread, stroke

BARS = "|\u2502\u2551\u2503"
SEVERAL = 3
"""Rules of a table, at least, that show what they part."""
TALLEST_HEAD = 6
"""Lines of a head, at most, in which a rule over some columns parts two storeys."""
STRAYS = 0.1
"""Signs within the words of a table that look like bars, one a line, at most; a few always may."""
_BARS = frozenset(BARS)
_CROSSES = "+|\u250c\u252c\u2510\u251c\u253c\u2524\u2514\u2534\u2518\u2554\u2566\u2557\u2560\u256c\u2563\u255a\u2569\u255d\u256a\u256b\u255e\u2561\u255f\u2562\u2564\u2567\u2565\u2568\u2552\u2555\u2558\u255b\u2553\u2556\u2559\u255c\u2502\u2551"
_RULE = re.compile(
    rf"[{re.escape(_CROSSES)}:]?[-=\u2500\u2550_:]+(?:[{re.escape(_CROSSES)}:][-=\u2500\u2550_:]+)*[{re.escape(_CROSSES)}:]?"
)
_PLUS = re.compile(r"(?<=\w)\+(?=\w)")
"""A sign within a word, as U+2191 has it: no crossing of lines."""
_WORD = re.compile(r"[^\W\d_]{2,}")
_WALL = re.compile(r"[-=\u2500\u2550]{4,}")
_DRAWN = re.compile(r"[\u2500-\u259f]|[-=]{3,}|\+[-=]|\\__|__/|/__|__\\")


def rule(line: Line) -> bool:
    """Whether the line is one rule from side to side."""
    return len(line.text) >= 3 and _RULE.fullmatch(line.text) is not None


def _bars(line: Line, also: str = "") -> list[int]:
    if not also and _BARS.isdisjoint(line.cells):
        return []
    found = [column for column, char in enumerate(line.cells) if char in BARS or char in also]
    return [column for column in found if not _PLUS.match(line.cells, column)] if also else found


def find_ruled(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each with its block."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = index
        while end < len(lines) and taken[end] is None and (rule(lines[end]) or _bars(lines[end])):
            if end > index and lines[end].gap and not lines[end].crossing and not _same(lines, index, end):
                break
            end += 1
        start = index
        if end - start >= 2 and not _menus(lines, start, end):
            title = _title(lines[start:end])
            part = lines[start + title : end]
            again = repeated_heads(part, rule)
            blocks = _table(without(part, again), hyphens, bool(again))
            if blocks:
                over = [_title_text(line, hyphens) for line in lines[start : start + title] if not rule(line)]
                printed = [Block(Kind.FURNITURE, lines=keep_lines(part[first:last])) for first, last in again]
                found.append((start, end, [*over, *blocks, *printed]))
        index = max(end, index + 1)
    return found


def _menus(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the lines are menus side by side: names in the border above them, and a rule inside some of them alone."""
    if not start or lines[start].apart or not (top := lines[start - 1].text) or top[0] not in _CROSSES:
        return False
    named = len(_WORD.findall(top)) > 1 and _WALL.search(top) is not None and top[-1] in _CROSSES
    if not named or (lines[start - 1].indent, lines[start - 1].end) != (
        lines[start].indent,
        lines[start].end,
    ):
        return False
    return any(_WALL.search(line.text) for line in lines[start:end] if not rule(line))


def _title(lines: Sequence[Line]) -> int:
    """How many lines of a boxed table are its title: a row without inner bars between rules, columns below it."""
    if not rule(lines[0]):
        return 0
    end = next((index for index in range(1, len(lines)) if rule(lines[index])), 0)
    below = next((line for line in lines[end + 1 :] if not rule(line)), None)
    if end < 2 or below is None or len(_bars(below)) < 3:
        return 0
    boxed = all(_bars(line) == [line.indent, line.end - 1] and line.end == below.end for line in lines[1:end])
    return end if boxed else 0


def _title_text(line: Line, hyphens: Hyphens) -> Block:
    text = flow([line.piece(line.indent + 1, line.end - 1)], hyphens)
    return Block(Kind.PARAGRAPH, text, note="title of a table with drawn columns")


def _same(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a line after a blank one has the bars of the table that started above."""
    before = {column for line in lines[start:index] for column in _bars(line)}
    return lines[index].gap == 1 and bool(_bars(lines[index])) and set(_bars(lines[index])) == before


def _table(lines: Sequence[Line], hyphens: Hyphens, again: bool) -> list[Block]:
    """The table of the lines, what stands over all its columns first; nothing where they are none.

    ``again`` says that their head was printed again, so that they have one.
    """
    content = [line for line in lines if not rule(line)]
    rules = [line for line in lines if rule(line)]
    counts = Counter(column for line in content for column in _bars(line, "+"))
    grid = sorted(column for column, times in counts.items() if times >= 0.6 * len(content))
    if len(content) < 2 or not grid or len(content) + len(rules) < 3:
        return []
    outer = (
        grid[0] <= min(line.indent for line in content) and grid[-1] >= max(line.end for line in content) - 1
    )
    if len(grid) < (3 if outer else 1) or (not outer and not rules and len(content) < 3):
        return []
    crossed = [column for line in rules for column in range(line.end) if line.cells[column] == "+"]
    strays = sum(times for column, times in counts.items() if column not in grid)
    if any(column not in grid for column in crossed) or (
        len(counts) > len(grid) + 2 and strays > STRAYS * len(content)
    ):
        return []
    storeys = _storeys(lines) if outer else 0
    if _rooms(content[storeys:], grid) or (outer and _panes(lines, grid)):
        return []
    bounds = _bounds(grid, content, rules)
    cells = [_cells(line, bounds) for line in content]
    strokes = [frozenset(column for column, cell in enumerate(row) if stroke(cell.chars)) for row in cells]
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
    return [*title, _block(lines, cells, strokes, hyphens, again)]


def _storeys(lines: Sequence[Line]) -> int:
    """The lines of a head of two storeys or more: above the first inner rule, with a rule over some columns among them."""
    inner = [index for index, line in enumerate(lines) if rule(line)]
    if len(inner) < SEVERAL or inner[0] or inner[1] > TALLEST_HEAD:
        return 0
    head = lines[1 : inner[1]]
    return len(head) if any(_WALL.search(line.text) for line in head) else 0


def _rooms(content: Sequence[Line], grid: Sequence[int]) -> bool:
    """Whether the lines draw rooms: a wall between some of them goes part of the way, and another has an opening."""
    walls = any(_WALL.search(line.text) for line in content)
    return walls and any(line.cells[column : column + 1] == " " for line in content for column in grid)


def _panes(lines: Sequence[Line], grid: Sequence[int]) -> bool:
    """Whether the lines draw a screen or layers: one pane alone is parted by bars, and the lowest is as wide as all."""
    parted: list[bool] = []
    fresh = True
    for line in lines:
        if rule(line):
            fresh = True
            continue
        inner = any(line.cells[column : column + 1] in _BARS for column in grid[1:-1])
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
        over = last < line.end and line.cells[last] not in BARS + _CROSSES + " "
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
    return [(first + 1, last) for first, last in pairwise(edges)]


def _block(
    lines: Sequence[Line],
    cells: Sequence[Sequence[Text]],
    strokes: Sequence[frozenset[int]],
    hyphens: Hyphens,
    again: bool,
) -> Block:
    fresh: list[bool] = []
    after_rule = True
    inner: list[tuple[int, str]] = []
    for line in lines:
        if rule(line):
            inner.append((len(fresh), line.text))
            after_rule = True
        else:
            fresh.append(after_rule or (line.gap > 0 and not line.crossing))
            after_rule = False
    inner = [(place, text) for place, text in inner if 0 < place < len(fresh)]
    header_end = inner[0][0] if inner else 0
    parted = _parts_rows(cells, fresh, inner)
    widths = [_room([row[column] for row in cells]) for column in range(len(cells[0]))]
    shared = share(cells, strokes, fresh, hyphens)
    rows = _rows(shared, header_end, hyphens, widths, parted=parted)
    alike = len(inner) > 1 and len({_sort_of(text) for _, text in inner}) == 1
    if header_end and not again:
        texts = [[cell.chars for cell in row] for row in rows]
        named = not alike or names_columns(texts[0], texts[1:]) or _set_off(cells, header_end)
        if not named or tells(texts[0]):
            header_end = 0
            rows = _rows(shared, 0, hyphens, widths, parted=parted)
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple(rows),
        header_rows=1 if header_end else 0,
        note="table with drawn columns",
    )


def _parts_rows(
    cells: Sequence[Sequence[Text]], fresh: Sequence[bool], inner: Sequence[tuple[int, str]]
) -> bool:
    """Whether the head has a rule of its own kind, and all below it rows of several lines, most with empty cells."""
    kinds = [_sort_of(text) for _, text in inner]
    if len(kinds) < SEVERAL or kinds[0] not in {"=", "\u2550"} or kinds[0] in kinds[1:]:
        return False
    tall = [
        index
        for index in range(inner[0][0], len(cells))
        if not fresh[index] or (index + 1 < len(cells) and not fresh[index + 1])
    ]
    whole = sum(all(cell.chars.strip() for cell in cells[index]) for index in tall)
    return 2 * whole < len(tall)


def _sort_of(text: str) -> str:
    """What a rule is made of, its ends and crossings left out."""
    return "".join(sorted(set(text) - set(_CROSSES + ":")))


def _set_off(cells: Sequence[Sequence[Text]], header_end: int) -> bool:
    """Whether the first row stands out: centred over cells that all begin at the left, or bold as no other."""
    head, body = cells[:header_end], cells[header_end:]
    bold = all(_bold(cell) for row in head for cell in row) and not all(
        _bold(cell) for row in body for cell in row
    )
    shift = max(_shift(cell) for row in head for cell in row)
    return bold or (shift > 2 and all(_shift(cell) <= 1 for row in body for cell in row))


def _bold(text: Text) -> bool:
    return all(mark & Mark.BOLD for char, mark in zip(text.chars, text.marks, strict=True) if char != " ")


def _shift(text: Text) -> int:
    """The blanks before a cell's text."""
    return len(text.chars) - len(text.chars.lstrip(" ")) if text.chars.strip(" ") else 0


def _room(cells: Sequence[Text]) -> int:
    """The width of a drawn column's text: what stands between the bars, less the blanks at both sides."""
    pad = min((_shift(cell) for cell in cells if cell.chars.strip(" ")), default=0)
    return max(len(cell.chars) for cell in cells) - 2 * pad


def _rows(
    shared: Shared, header_end: int, hyphens: Hyphens, widths: Sequence[int], *, parted: bool
) -> list[tuple[Text, ...]]:
    """The rows; the first ``header_end`` lines are one, and so are all between two rules where they are ``parted``."""
    cells, fresh = shared.cells, shared.fresh
    groups = [list(range(header_end))] if header_end else []
    grid = [[cell.chars.strip() for cell in row] for row in cells[header_end:]]
    rest = sections(fresh[header_end:])
    parts = None if parted or shared.spans else row_groups(grid, rest, widths)
    if parts is not None:
        shared = shared.with_labels(
            [[[header_end + i for i in row] for row in part] for part in parts], hyphens
        )
        cells = shared.cells
        rest = [row for part in parts for row in part]
    elif not parted:
        rest = group_rows(grid, fresh[header_end:], widths)
    groups += [[header_end + index for index in group] for group in rest]
    return [
        shared.named(
            group,
            tuple(
                cell_text([cells[index][column] for index in group], hyphens) for column in range(len(widths))
            ),
        )
        for group in groups
    ]
