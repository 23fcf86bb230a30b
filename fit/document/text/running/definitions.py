"""Heads of definitions behind two dashes: ` -- Function: light (lamp, hour)`, the rest of a long one deeper than its text.

The dashes are no list mark: what stands below them is the text of the head, four cells in, and does not go on with it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines
from fit.document.text.running.placed import STEP, Placed

UNDER = 3
"""Cells from the dashes to the words behind them: what stands right under these goes on with them, as in a list."""
REST = 6
"""Cells by which the rest of a long head stands in from its dashes, at least; its text stands in by fewer."""
_HEAD = re.compile(r"-- [A-Z][\w'-]*(?: [\w'-]+){0,3}: \S")
NOTE = "head of a definition"
"""What an item is called whose text stands below it."""


def find_definitions(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such heads, each with an item that has a label and no text yet."""
    heads = [
        index
        for index, line in enumerate(lines)
        if line.text[:3] == "-- " and taken[index] is None and _HEAD.match(line.text)
    ]
    columns: dict[int, set[int]] = {}
    runs: list[tuple[int, int]] = []
    for index in heads:
        end = index + 1
        while end < len(lines) and _rest(lines[index], lines[end]):
            end += 1
        runs.append((index, end))
        if end < len(lines) and not lines[end].apart:
            indent = lines[index].indent
            columns.setdefault(indent, set()).add(lines[end].indent - indent)
    defining = {
        indent for indent, steps in columns.items() if UNDER not in steps and max(steps) in range(UNDER, REST)
    }
    return [
        (start, end, [Block(Kind.ITEM, label=flow_lines(lines[start:end], hyphens), note=NOTE)])
        for start, end in runs
        if lines[start].indent in defining
    ]


def _rest(head: Line, line: Line) -> bool:
    return not line.apart and line.indent >= head.indent + REST


def with_texts(lines: Sequence[Line], placed: Sequence[Placed], base: int) -> list[Placed]:
    """The blocks, the paragraph right below a head of a definition made its text; ``base`` is the usual left margin."""
    joined: list[Placed] = []
    for each in placed:
        head = joined[-1] if joined else None
        if each.block.note == NOTE:
            level = int(lines[each.start].indent - base >= STEP)
            joined.append(Placed(replace(each.block, level=level), each.start, each.end))
        elif head and head.block.note == NOTE and _text(lines, head, each):
            item = replace(head.block, text=each.block.text)
            joined[-1] = Placed(item, head.start, each.end)
        else:
            joined.append(each)
    return joined


def _text(lines: Sequence[Line], head: Placed, each: Placed) -> bool:
    right_below = head.end == each.start and not lines[each.start].apart and not head.block.text.chars
    deeper = lines[each.start].indent > lines[head.start].indent
    return right_below and deeper and each.block.kind is Kind.PARAGRAPH
