"""Tables without drawn columns: gutters of blanks, rules under the head, wrapped and empty cells."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.code import code
from fit.document.text.gutters import (
    GUTTER,
    Run,
    aligned,
    cell,
    filled,
    grow,
    has_gutter,
    segmented,
)
from fit.document.text.headings import underlined
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.markers import find_marker
from fit.document.text.measure import closed, prose, starts_small
from fit.document.text.newspaper import index_columns, prose_columns, with_heads
from fit.document.text.pictures import ruled_off
from fit.document.text.rows import group_rows

Columns = Callable[[Run], list[Block]]
BROAD = 16
"""Cells of blank that part the two sides of a page: two lines show that they are columns."""
_NUMBER = re.compile(r"[-+(]?[$\u00a3]?\d[\d.,:/%h)-]*\s?[%a-zA-Z\u00b0']{0,3}|[-\u2013.]+|n/a")


def find_gutter_tables(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens, newspaper: Columns
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables or newspaper columns, each with its blocks."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    floor = 0
    while index < len(lines):
        if taken[index] is not None or not has_gutter(lines[index]):
            index += 1
            continue
        run = grow(lines, taken, index, 1)
        if _newspaper(lines, run):
            run = with_heads(lines, taken, run, floor)
            found.append((run.start, run.end, newspaper(run)))
            index = floor = run.end
            continue
        blocks = _settle(lines, run, hyphens) if run.end - run.start >= 2 else None
        if blocks is None:
            index += max(1, (run.end - run.start) // 4) if run.end - run.start > 40 else 1
            continue
        start = run.start
        if blocks[0].kind is Kind.TABLE:
            start, blocks = _with_head(lines, taken, run, blocks, hyphens, floor)
            start, blocks = _with_top_rule(lines, taken, (start, run), blocks, floor)
        found.append((start, run.end, blocks))
        index = floor = run.end
    return found


def _newspaper(lines: Sequence[Line], run: Run) -> bool:
    """Whether the columns are read one after the other: running text, or an index."""
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules]
    return len(content) >= 5 and (prose_columns(content, run.columns) or index_columns(content, run.columns))


def _settle(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> list[Block] | None:
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules]
    run.columns = _without_chance(content, run.columns)
    beside = [line for line in content if filled(line, run.columns) >= 2]
    headed = any(segmented(lines[index].text) or run.start < index < run.end - 1 for index in run.rules)
    blank = sum(b[0] - a[1] for a, b in pairwise(run.columns))
    broad = (len(run.columns) > 2 and blank >= 8) or blank >= BROAD
    if len(beside) < (2 if headed or broad else 3) or len(beside) < 0.4 * len(content):
        return None
    if not aligned(content, run.columns):
        return None
    if not headed and (_justified(lines, run, content) or _text_beside_keys(content, run)):
        return None
    if sum(code(line.text) for line in content) > 0.35 * len(content):
        return None
    texts = [cell(line, run.columns, index) for line in content for index in range(len(run.columns))]
    if len(run.columns) == 2 and not headed and _list(content, run):
        return None
    if not any(any(char.isalnum() for char in text) for text in texts):
        return None
    return [_table(lines, run, hyphens)]


def _without_chance(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns, a last one left out that one line alone reaches: a blank of justified text made it."""
    if len(columns) < 3 or len(content) < 4:
        return columns
    last = len(columns) - 1
    held = [line for line in content if cell(line, columns, last)]
    narrow = columns[last][0] - columns[last - 1][1] == GUTTER
    if len(held) != 1 or held[0] is content[0] or not narrow:
        return columns
    texts = cell(held[0], columns, last - 1), cell(held[0], columns, last)
    if " " not in texts[0] or not starts_small(texts[1]):
        return columns
    return [*columns[: last - 1], (columns[last - 1][0], columns[last][1])]


def _justified(lines: Sequence[Line], run: Run, content: Sequence[Line]) -> bool:
    """Whether the gutter is a chance of justified text: blanks as wide stand elsewhere, sentences run across."""
    if len(content) > 6:
        return False
    widest = max(second[0] - first[1] for first, second in pairwise(run.columns))
    stray = sum(
        "  " in cell(line, run.columns, index) for line in content for index in range(len(run.columns))
    )
    if widest <= 3 and stray >= max(2, len(content) // 2):
        return True
    above = lines[run.start - 1] if run.start else None
    first = lines[run.start]
    runs_on = above is not None and not first.gap and above.indent == first.indent and prose(above.text)
    across = sum(prose(line.text) and not closed(line.text) for line in content)
    return runs_on and widest <= 4 and across >= 0.5 * len(content)


def _text_beside_keys(content: Sequence[Line], run: Run) -> bool:
    """Whether the columns after the first are one justified text, parted by chance, beside its keys."""
    if len(run.columns) < 3 or max(b[0] - a[1] for a, b in pairwise(run.columns[1:])) > 3:
        return False
    rest = [line.cells[run.columns[1][0] :] for line in content]
    return sum(prose(text) for text in rest) >= 0.6 * len(rest)


def _list(content: Sequence[Line], run: Run) -> bool:
    """Whether the two columns are list markers and hanging text, or a hanging key with long text."""
    firsts = [line for line in content if cell(line, run.columns, 0)]
    marked = sum(
        find_marker(line.text) is not None and len(cell(line, run.columns, 0).split()) == 1 for line in firsts
    )
    if marked >= 0.6 * len(firsts):
        return True
    long = sum(prose(cell(line, run.columns, 1)) for line in content)
    narrow = run.columns[1][0] - run.columns[0][0] <= 24
    return narrow and len(content) > len(firsts) and long >= 0.3 * len(content)


def _pieces(line: Line, run: Run) -> list[Text]:
    starts = [first for first, _ in run.columns]
    return [
        line.piece(0 if index == 0 else start, starts[index + 1] if index + 1 < len(starts) else line.end)
        for index, start in enumerate(starts)
    ]


def _table(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> Block:
    content: list[Line] = []
    fresh: list[bool] = []
    after_rule = False
    rule_after: list[int] = []
    for index in range(run.start, run.end):
        if index in run.rules:
            after_rule = True
            if _across(lines[index], run):
                rule_after.append(len(content))
            continue
        content.append(lines[index])
        fresh.append(after_rule or (lines[index].gap > 0 and not lines[index].crossing))
        after_rule = False
    grid = [[cell(line, run.columns, index) for index in range(len(run.columns))] for line in content]
    head = _head(grid, fresh, rule_after)
    groups: list[list[int]] = [list(range(head))] if head else []
    groups += [[head + index for index in group] for group in group_rows(grid[head:], fresh[head:])]
    pieces = [_pieces(line, run) for line in content]
    rows = tuple(
        tuple(flow([pieces[index][column] for index in group], hyphens) for column in range(len(run.columns)))
        for group in groups
    )
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines[run.start : run.end]),
        rows=rows,
        header_rows=1 if head else 0,
        note="table with blank gutters",
    )


def _across(line: Line, run: Run) -> bool:
    """Whether a rule runs over most of the table's width: one under the head does."""
    return segmented(line.text) or line.end >= run.columns[-1][0]


def _head(grid: Sequence[Sequence[str]], fresh: Sequence[bool], rules: Sequence[int]) -> int:
    """How many lines are the head: those above the first inner rule, or a first line unlike the others."""
    inner = [place for place in rules if 0 < place < len(grid)]
    if inner and inner[0] <= 4:
        return inner[0]
    if len(grid) < 3 or not all(grid[0][column] for column in range(1, len(grid[0]))):
        return 0
    first, rest = grid[0], grid[1:]
    if any(_NUMBER.fullmatch(text) for text in first if text):
        return 0
    for column in range(len(first)):
        below = [row[column] for row in rest if row[column]]
        if below and sum(_NUMBER.fullmatch(text) is not None for text in below) >= 0.8 * len(below):
            return 1
    loud = all(text.upper() == text for text in first if text) and any(char.isalpha() for char in first[-1])
    quiet = sum(row[-1].upper() != row[-1] for row in rest if row[-1]) >= 0.5 * len(rest)
    if _named(first, rest):
        return 1
    alone = fresh[1] and not any(fresh[2:]) and len(grid[0]) > 2
    return 1 if (loud and quiet) or alone else 0


def _named(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first row names the columns: capitals first, where the others have figures or small letters."""
    if not first[0] and all(first[1:]) and all(row[0] for row in rest) and len(first) > 2:
        return True
    if not all(text[:1].isupper() and len(text) <= 20 for text in first if text) or not all(first):
        return False
    plain = sum(any(text[:1].islower() or text[:1].isdigit() for text in row) for row in rest)
    return plain >= 0.8 * len(rest)


def _with_head(
    lines: Sequence[Line],
    taken: Sequence[object],
    run: Run,
    blocks: list[Block],
    hyphens: Hyphens,
    floor: int,
) -> tuple[int, list[Block]]:
    """Take a head line just above whose words stand over the columns without keeping to the gutters."""
    above = run.start - 1
    if above < floor or taken[above] is not None or lines[run.start].gap or blocks[0].header_rows:
        return run.start, blocks
    line = lines[above]
    parts = [(m.start(), m.end()) for m in re.finditer(r"\S+(?: \S+)*", line.cells)]
    if len(parts) != len(run.columns):
        return run.start, blocks
    if run.start not in run.rules and not _over(line, parts, run):
        return run.start, blocks
    head = tuple(flow([line.piece(first, last)], hyphens) for first, last in parts)
    block = blocks[0]
    kept = keep_lines(lines[above : run.end])
    return above, [Block(Kind.TABLE, lines=kept, rows=(head, *block.rows), header_rows=1, note=block.note)]


def _over(line: Line, parts: Sequence[tuple[int, int]], run: Run) -> bool:
    """Whether words, none of them a number, stand each over its own column of at least three."""
    named = all(line.cells[first].isupper() for first, _ in parts)
    beside = all(
        first < column[1] and last > column[0]
        for (first, last), column in zip(parts, run.columns, strict=True)
    )
    return len(parts) > 2 and named and beside


def _with_top_rule(
    lines: Sequence[Line], taken: Sequence[object], place: tuple[int, Run], blocks: list[Block], floor: int
) -> tuple[int, list[Block]]:
    """Take the rule just above a table that has others; one under a heading is the heading's."""
    start, run = place
    above = start - 1
    if above < floor or taken[above] is not None or lines[start].gap or not ruled_off(lines[above].text):
        return start, blocks
    if not run.rules or (above and underlined(lines, above - 1)) or lines[above].crossing:
        return start, blocks
    return above, [replace(blocks[0], lines=keep_lines(lines[above : run.end]))]
