"""Tables one right after the other that a blank line alone parts: the next one begins with a head of its own."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.line import Line
from fit.document.text.tables.heads import plain_names

LEAST = 3
"""Lines of a table with its head, at least."""
Found = tuple[int, int, list[Block]]


def next_head(lines: Sequence[Line], run: Run) -> int:
    """The line of a run that is the head of another table, below a blank one; the end of the run where none is.

    Each stretch between blank lines begins with the name of the keys.
    """
    tops = [
        index
        for index in range(run.start + 1, run.end)
        if lines[index].gap and not lines[index].crossing and index not in run.rules
    ]
    if not tops or run.start in run.rules:
        return run.end
    first = _names(lines[run.start])
    if not plain_names(first) or len(first) < 2:
        return run.end
    ends = [*tops, run.end]
    tall = all(end - start >= LEAST for start, end in zip([run.start, *tops], ends, strict=True))
    heads = [_names(lines[top]) for top in tops]
    keyed = all(head[:1] == first[:1] and plain_names(head) for head in heads)
    named = sum(_names(lines[index])[:1] == first[:1] for index in range(run.start, run.end))
    return tops[0] if tall and keyed and named == 1 + len(tops) else run.end


def _names(line: Line) -> list[str]:
    return CELLS.findall(line.cells)


def name_by_company(found: Sequence[Found]) -> list[Found]:
    """The tables, a first row that other tables have too, or whose word for the keys the next table has, as their head."""
    tables = [
        (place, blocks[0]) for place, (_, _, blocks) in enumerate(found) if blocks[0].kind is Kind.TABLE
    ]
    tops = {place: tuple(cell.chars for cell in block.rows[0]) for place, block in tables}
    counts = Counter(tops.values())
    named = list(found)
    for place, block in tables:
        top = tops[place]
        if block.header_rows or len(block.rows) < LEAST or not all(top) or not plain_names(top):
            continue
        beside = [
            other
            for other in (place - 1, place + 1)
            if other in tops and found[max(other, place)][0] == found[min(other, place)][1]
        ]
        if counts[top] > 1 or any(tops[other][0] == top[0] for other in beside):
            start, end, blocks = found[place]
            named[place] = (start, end, [replace(block, header_rows=1), *blocks[1:]])
    return named
