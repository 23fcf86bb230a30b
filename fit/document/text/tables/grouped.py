"""Tables in groups: under the head a rule, and the same rule again under the name of each further group.

The names of the columns are printed once; whatever stands in the first of them is the name of the first group.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import CELLS
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.rules import ruled_off

NAMES = 4
"""Columns of such a table, at least."""
SHOWN = 3
"""Rows of the tallest group, at least: they show where the columns begin."""
NEAR = 1
"""Cells by which a column may begin elsewhere in a group whose words stand below each other by chance."""
_STROKES = frozenset("-=_")
_FIGURE = re.compile(r"\d{1,2}")
_WORDS = re.compile(r"(?<!\S)\S")
Group = tuple[int, int]
"""The line with the name of a group, and the end of its rows."""


def find_grouped(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such tables, each as one table a group."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index + 2 < len(lines):
        ruled = lines[index + 1].text[0] in _STROKES and _ruled(lines, index)
        names = CELLS.findall(lines[index].cells) if ruled else []
        groups = _groups(lines, taken, index) if len(names) >= NAMES else []
        starts = _starts(lines, groups, len(names)) if len(groups) > 1 else []
        if starts:
            found.append((index, groups[-1][1], _tables(lines, groups, starts, hyphens)))
            index = groups[-1][1]
        else:
            index += 1
    return found


def _ruled(lines: Sequence[Line], index: int) -> bool:
    """Whether an unbroken rule stands under a line, and goes as far as it at least."""
    line, rule = lines[index], lines[index + 1]
    if rule.apart or rule.indent != line.indent or rule.end < line.end:
        return False
    return ruled_off(rule.text) and not ruled_off(line.text)


def _groups(lines: Sequence[Line], taken: Sequence[object], start: int) -> list[Group]:
    """The groups from a line on that are parted by the same rule; each goes on to the next blank line."""
    found: list[Group] = []
    rule = lines[start + 1].cells
    while start + 2 < len(lines) and lines[start + 1].cells == rule and _ruled(lines, start):
        if found and (not lines[start].gap or len(CELLS.findall(lines[start].cells)) > 1):
            break
        end = start + 2
        while end < len(lines) and not lines[end].apart:
            end += 1
        free = end > start + 2 and all(taken[index] is None for index in range(start, end))
        if not free or any(lines[index].indent != lines[start].indent for index in range(start, end)):
            break
        found.append((start, end))
        start = end
    return found


def _starts(lines: Sequence[Line], groups: Sequence[Group], names: int) -> list[list[int]]:
    """Where the columns of each group begin, as many as there are names; nothing where they show it in no way."""
    found = [_common(lines[first + 2 : last]) for first, last in groups]
    tallest = max(range(len(groups)), key=lambda place: groups[place][1] - groups[place][0])
    if groups[tallest][1] - groups[tallest][0] - 2 < SHOWN:
        return []
    shown = found[tallest]
    for place, starts in enumerate(found):
        if len(starts) != len(shown):
            near = [[start for start in starts if abs(start - like) <= NEAR] for like in shown]
            if not all(near):
                return []
            found[place] = [start[0] for start in near]
    rows = [line for first, last in groups for line in lines[first + 2 : last]]
    figures = _figures(rows, found[0]) if len(found[0]) > names else 0
    held = len(found[0]) - (figures - 1 if figures else 0)
    return [starts[:held] for starts in found] if held == names else []


def _common(rows: Sequence[Line]) -> list[int]:
    """The columns at which a word begins in all rows."""
    starts = [{match.start() for match in _WORDS.finditer(line.cells)} for line in rows]
    return sorted(set.intersection(*starts))


def _figures(rows: Sequence[Line], starts: Sequence[int]) -> int:
    """How many of the last columns hold small figures at even steps: several values under one name."""
    steps = [second - first for first, second in pairwise(starts)]
    count = 0
    for place in range(len(starts) - 1, 0, -1):
        last = starts[place + 1] if place + 1 < len(starts) else None
        if not all(_FIGURE.fullmatch(line.cells[starts[place] : last].strip(" ")) for line in rows):
            break
        if count > 1 and steps[place] != steps[-1]:
            break
        count += 1
    return count


def _tables(
    lines: Sequence[Line], groups: Sequence[Group], starts: Sequence[Sequence[int]], hyphens: Hyphens
) -> list[Block]:
    first = groups[0][0]
    names = [lines[first].piece(*match.span()) for match in CELLS.finditer(lines[first].cells)]
    head = tuple(flow([name], hyphens) for name in names)
    blocks: list[Block] = []
    for (start, end), columns in zip(groups, starts, strict=True):
        if blocks:
            head = (
                flow([lines[start].piece(0, lines[start].end)], hyphens),
                *(name.again() for name in head[1:]),
            )
        rows = [_cells(line, columns, hyphens) for line in lines[start + 2 : end]]
        kept = keep_lines(lines[start:end])
        blocks.append(
            Block(Kind.TABLE, lines=kept, rows=(head, *rows), header_rows=1, note="table in groups")
        )
    return blocks


def _cells(line: Line, starts: Sequence[int], hyphens: Hyphens) -> tuple[Text, ...]:
    ends = [*starts[1:], line.end]
    return tuple(flow([line.piece(first, last)], hyphens) for first, last in zip(starts, ends, strict=True))
