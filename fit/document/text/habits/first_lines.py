"""Paragraphs of one line, set in as the first lines of the others are: they are no deeper than those."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Kind
from fit.document.text.line import Line
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import prose

LEAST = 4
"""Paragraphs whose first line is set in so, at least, to show what the document does."""
RARE = 4
"""So many of them, at least, for each paragraph of which all lines are set in as far."""


def with_first_lines(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, those paragraphs at the level of the others; not below an item, of which one may be a part."""
    levels: dict[int, Counter[int]] = {}
    flush: Counter[int] = Counter()
    for one in placed:
        if one.block.kind is Kind.PARAGRAPH and one.end - one.start > 1:
            indent = lines[one.start].indent
            if indent > min(line.indent for line in lines[one.start + 1 : one.end]):
                levels.setdefault(indent, Counter())[one.block.level] += 1
            else:
                flush[indent] += 1
    usual = {
        indent: count.most_common(1)[0][0]
        for indent, count in levels.items()
        if count.total() >= max(LEAST, RARE * flush[indent])
    }
    found: list[Placed] = []
    for one in placed:
        single = one.end - one.start == 1 and one.block.kind is Kind.PARAGRAPH
        level = usual.get(lines[one.start].indent, one.block.level) if single else one.block.level
        outer = not found or (found[-1].block.kind is not Kind.ITEM and found[-1].block.level <= level)
        moved = level < one.block.level and outer and prose(lines[one.start].text)
        found.append(replace(one, block=replace(one.block, level=level)) if moved else one)
    return found
