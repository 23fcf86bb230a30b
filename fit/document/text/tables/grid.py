"""The lines of a run with columns to a table: its head, its rows, their cells."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import (
    Run,
    to_fill_in,
)
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.measure import closed, starts_small
from fit.document.text.signs.pictures import ruled_off, segmented
from fit.document.text.tables.cell_text import cell_text
from fit.document.text.tables.heads import (
    counts_columns,
    is_shorter,
    names_columns,
    repeated_heads,
    tells,
    without,
)
from fit.document.text.tables.rows import group_rows
from fit.document.text.tables.shared_cells import columns_under, share
from fit.document.text.titles.headings import underlined

ROW_LINES = 5
"""Lines between two rules, on average, at most, where each rule parts two rows and the first of them need be no head."""
SEVERAL = 3
"""Columns of a table, at least, of which one may be a second column of keys."""
MOST_FIGURES = 0.6
"""The share of figures in the columns beside keys where a head has no name for the keys."""
_NUMBER = re.compile(r"[-+(]?[$\u00a3]?\d[\d.,:/%h)-]*\s?[%a-zA-Z\u00b0']{0,3}|[-\u2013.]+|n/a")


def _rule(line: Line, run: Run) -> bool:
    return (ruled_off(line.text) or segmented(line.text)) and not to_fill_in(line, run.columns)


def _under_figure(above: Line, line: Line, run: Run) -> bool:
    """Whether a line is a stroke of typed signs, and no more, under the figure at the end of the row above."""
    stroke = len(line.text) > 1 and line.text.strip(line.text[0]) == "" and line.text[0] in "-=_"
    start = run.columns[-1][0]
    level = line.indent >= start and abs(line.end - above.end) <= 1
    return stroke and level and _NUMBER.fullmatch(above.cells[start:].strip(" ")) is not None


def printed_again(lines: Sequence[Line], run: Run) -> list[tuple[int, int]]:
    """Where the run's head is printed again."""
    found = repeated_heads(lines[run.start : run.end], lambda line: _rule(line, run))
    return [(run.start + first, run.start + last) for first, last in found]


def printed_once(lines: Sequence[Line], start: int, run: Run) -> list[Line]:
    """The lines from ``start`` to the run's end, heads printed again left out."""
    again = [(first - start, last - start) for first, last in printed_again(lines, run)]
    return without(lines[start : run.end], again)


def _pieces(line: Line, run: Run) -> list[Text]:
    starts = [first for first, _ in run.columns]
    return [
        line.piece(0 if index == 0 else start, starts[index + 1] if index + 1 < len(starts) else line.end)
        for index, start in enumerate(starts)
    ]


def make_table(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> Block:
    """The table of a run's lines, those of heads printed again left out."""
    content: list[Line] = []
    fresh: list[bool] = []
    after_rule = False
    rule_after: list[int] = []
    for line in lines:
        if _rule(line, run) or (content and _under_figure(content[-1], line, run)):
            after_rule = True
            if _across(line, run):
                rule_after.append(len(content))
            continue
        content.append(line)
        fresh.append(after_rule or (line.gap > 0 and not line.crossing))
        after_rule = False
    starts = [first for first, _ in run.columns]
    strokes = [frozenset(columns_under(line, starts)) for line in content]
    pieces = [
        [Text() if column in ruled else piece for column, piece in enumerate(_pieces(line, run))]
        for line, ruled in zip(content, strokes, strict=True)
    ]
    shared = share(pieces, strokes, fresh, hyphens)
    pieces, fresh = shared.cells, shared.fresh
    grid = [[piece.chars.strip(" ") for piece in row] for row in pieces]
    head = _tall(grid, fresh, _head(grid, fresh, rule_after))
    head = 0 if tells(_joined(grid[:head])) else head
    groups: list[list[int]] = [list(range(head))] if head else []
    groups += [[head + index for index in group] for group in group_rows(grid[head:], fresh[head:])]
    headed = bool(head) or _headed_rows(grid, fresh, groups)
    rows = tuple(
        shared.named(
            group,
            tuple(
                cell_text([pieces[index][column] for index in group], hyphens)
                for column in range(len(starts))
            ),
        )
        for group in groups
    )
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=rows,
        header_rows=int(headed),
        note="table with blank gutters",
    )


def _joined(grid: Sequence[Sequence[str]]) -> list[str]:
    """The text of each column."""
    return [" ".join(filter(None, column)) for column in zip(*grid, strict=True)]


def _across(line: Line, run: Run) -> bool:
    """Whether a rule runs over most of the table's width: one under the head does."""
    return segmented(line.text) or line.end >= run.columns[-1][0]


def _head(grid: Sequence[Sequence[str]], fresh: Sequence[bool], rules: Sequence[int]) -> int:
    """How many lines are the head: those above the first inner rule, or a first line unlike the others."""
    inner = [place for place in rules if 0 < place < len(grid)]
    if inner and inner[0] <= 4 and not _summed(grid, inner[0]):
        top = _joined(grid[: inner[0]])
        parting = len(inner) >= 3 and len(inner) * ROW_LINES >= len(grid)
        return 0 if parting and not names_columns(top, grid[inner[0] :]) else inner[0]
    if len(grid) < 3 or not all(grid[0][_keys(grid) :]):
        return 0
    first, rest = grid[0], grid[1:]
    if any(_NUMBER.fullmatch(text) for text in first if text):
        return int(counts_columns(first, rest, apart=fresh[1]))
    for column in range(len(first)):
        below = [row[column] for row in rest if row[column]]
        figures = any(char.isdigit() for char in first[column])
        named = bool(first[column]) or len(below) >= 0.5 * len(rest)
        if (
            below
            and named
            and not figures
            and sum(_NUMBER.fullmatch(text) is not None for text in below) >= 0.8 * len(below)
        ):
            return 1
    loud = all(text.upper() == text for text in first if text) and any(char.isalpha() for char in first[-1])
    quiet = sum(row[-1].upper() != row[-1] for row in rest if row[-1]) >= 0.5 * len(rest)
    return _head_apart(grid, fresh) or (1 if _named(first, rest) or (loud and quiet) else 0)


def _keys(grid: Sequence[Sequence[str]]) -> int:
    """How many columns of keys need no name: two where the first row leaves both blank and each other row has both."""
    return 1 + (not any(grid[0][:2]) and len(grid[0]) > SEVERAL and all(all(row[:2]) for row in grid[1:]))


def _summed(grid: Sequence[Sequence[str]], place: int) -> bool:
    """Whether the two rows above a rule both have a key and a figure, as no head has them: it is drawn under a sum."""
    return place >= 2 and all(
        row[0] and _NUMBER.fullmatch(row[-1]) is not None for row in grid[place - 2 : place]
    )


def _tall(grid: Sequence[Sequence[str]], fresh: Sequence[bool], head: int) -> int:
    """The lines of the head with those right below, without a key, in which its names go on in small letters."""
    while (
        0 < head < len(grid) - 1
        and not fresh[head]
        and not grid[head][0]
        and all(
            not text or (starts_small(text) and above)
            for text, above in zip(grid[head], grid[head - 1], strict=True)
        )
        and not _above_key(grid, fresh, head)
    ):
        head += 1
    return head


def _above_key(grid: Sequence[Sequence[str]], fresh: Sequence[bool], index: int) -> bool:
    """Whether a text that begins in a line goes on beside the key right below it: that key stands in its middle."""
    text, key, below = grid[index][-1], grid[index + 1][0], grid[index + 1][-1]
    return bool(text and key) and not fresh[index + 1] and starts_small(below) and not closed(text)


def _head_apart(grid: Sequence[Sequence[str]], fresh: Sequence[bool]) -> int:
    """The lines above the only blank line of a table of three columns or more: at most three, without figures."""
    parted = [place for place, new in enumerate(fresh) if new and place]
    if len(parted) != 1 or parted[0] > 3 or parted[0] * 2 > len(grid) or len(grid[0]) < 3:
        return 0
    first = [text for row in grid[: parted[0]] for text in row if text]
    return 0 if any(_NUMBER.fullmatch(text) for text in first) else parted[0]


def _headed_rows(
    grid: Sequence[Sequence[str]], fresh: Sequence[bool], groups: Sequence[Sequence[int]]
) -> bool:
    """Whether blank lines part all rows, some of them wrapped, and the first names columns of longer cells."""
    if len(grid[0]) < 3 or len(groups) < 4 or len(groups[0]) > 1 or len(groups) == len(grid):
        return False
    rest = [
        [" ".join(grid[line][column] for line in group) for column in range(len(grid[0]))] for group in groups
    ]
    parted = all(fresh[group[0]] for group in groups[1:])
    return parted and is_shorter(grid[0], rest[1:]) and names_columns(grid[0], rest[1:])


def _alone(row: Sequence[str]) -> bool:
    """Whether one cell of a line is filled and no other: it goes on from the line above."""
    return sum(map(bool, row)) == 1


def _named(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first row names the columns: capitals first, where the others have figures or small letters."""
    if not first[0] and all(first[1:]) and len(first) > 2:
        if all(row[0] for row in rest):
            return True
        if rest[0][0] and names_columns(first, rest) and all(row[0] or _alone(row) for row in rest):
            return True
    if not all(text[:1].isupper() and len(text) <= 20 for text in first if text) or not all(first):
        return False
    plain = sum(any(text[:1].islower() or text[:1].isdigit() for text in row) for row in rest)
    return plain >= 0.8 * len(rest)


def with_head(
    lines: Sequence[Line],
    taken: Sequence[object],
    run: Run,
    blocks: list[Block],
    hyphens: Hyphens,
    floor: int,
) -> tuple[int, list[Block]]:
    """Take a head line just above whose words stand over the columns without keeping to the gutters."""
    above = run.start - 1
    if above < floor or taken[above] is not None or blocks[0].header_rows:
        return run.start, blocks
    line = lines[above]
    parts = [(m.start(), m.end()) for m in re.finditer(r"\S+(?: \S+)*", line.cells)]
    if lines[run.start].gap > 1 or (lines[run.start].gap and not _over_figures(line, parts, run, blocks[0])):
        return run.start, blocks
    if len(parts) == len(run.columns) - 1 and _over_figures(line, parts, run, blocks[0]):
        parts = [(0, 0), *parts]
    elif len(parts) != len(run.columns) or (run.start not in run.rules and not _over(line, parts, run)):
        return run.start, blocks
    head = tuple(flow([line.piece(first, last)], hyphens) for first, last in parts)
    if tells([text.chars for text in head]):
        return run.start, blocks
    kept = keep_lines(printed_once(lines, above, run))
    block = replace(blocks[0], lines=kept, rows=(head, *blocks[0].rows), header_rows=1)
    return above, [block, *blocks[1:]]


def _over_figures(line: Line, parts: Sequence[tuple[int, int]], run: Run, block: Block) -> bool:
    """Whether words stand over the columns, with or without one over the keys, and all other cells hold figures."""
    columns = run.columns[len(run.columns) - len(parts) :]
    names = [line.cells[first:last] for first, last in parts]
    rows = [[text.chars for text in row] for row in block.rows]
    keyed = len(parts) < len(run.columns)
    figures = [text for row in rows for text in (row[1:] if keyed else row[-1:]) if text]
    sure = MOST_FIGURES if keyed and all(row[0] for row in rows) else 1
    return (
        len(run.columns) - len(parts) in {0, 1}
        and len(parts) > 1
        and (not any(map(_NUMBER.fullmatch, names)) or counts_columns([""] * keyed + names, rows, apart=True))
        and all(
            first < column[1] and last > column[0]
            for (first, last), column in zip(parts, columns, strict=True)
        )
        and sum(_NUMBER.fullmatch(text) is not None for text in figures) >= sure * len(figures)
    )


def _over(line: Line, parts: Sequence[tuple[int, int]], run: Run) -> bool:
    """Whether words, none of them a number, stand each over its own column of at least three."""
    named = all(line.cells[first].isupper() for first, _ in parts)
    beside = all(
        first < column[1] and last > column[0]
        for (first, last), column in zip(parts, run.columns, strict=True)
    )
    return len(parts) > 2 and named and beside


def with_top_rule(
    lines: Sequence[Line], taken: Sequence[object], place: tuple[int, Run], blocks: list[Block], floor: int
) -> tuple[int, list[Block]]:
    """Take the rule just above a table that has others; one under a heading is the heading's."""
    start, run = place
    above = start - 1
    if above < floor or taken[above] is not None or lines[start].gap or not ruled_off(lines[above].text):
        return start, blocks
    if not run.rules or (above and underlined(lines, above - 1)):
        return start, blocks
    if lines[above].crossing and all(lines[above].cells != lines[rule].cells for rule in run.rules):
        return start, blocks
    return above, [replace(blocks[0], lines=keep_lines(printed_once(lines, above, run))), *blocks[1:]]
