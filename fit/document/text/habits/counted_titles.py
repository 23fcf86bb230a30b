"""Titles that one word and a number count, `Section 2.1: the lamp`: where some were read as headings, the others are ones too."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.rules import ruled_off

READ = 2
"""Such titles that were read as headings, at least."""
LEAST = 4
"""Such titles in all, at least."""
SHARE = 0.8
"""Share of them that count on from the one before, at least."""
LONGEST = 78
"""Characters of a title, at most."""
_COUNTED = re.compile(r"([A-Z][a-z]{2,}) (\d+(?:\.\d+)*)(?:[:.]? |[:.]?$)")
_SHOWN = frozenset(
    [
        "Figure",
        "Fig",
        "Table",
        "Example",
        "Listing",
        "Plate",
        "Map",
        "Chart",
        "Line",
        "Page",
        "Column",
        "Version",
        "Release",
    ]
)
"""Words that count what is shown, or what a text is the state of."""


@dataclass(slots=True)
class _Title:
    """A line alone that such a word and its number begin."""

    number: int
    """Its block by number: the last line of that one."""
    count: tuple[int, ...]


def with_counted(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, those made headings that are counted with others that were read as headings."""
    found: dict[str, list[_Title]] = defaultdict(list)
    for number, one in enumerate(placed):
        match = _COUNTED.match(lines[one.end - 1].text) if one.end > one.start else None
        if match and match[1] not in _SHOWN and _alone(lines, placed, number):
            found[match[1]].append(_Title(number, tuple(map(int, match[2].split(".")))))
    parts: dict[int, list[Placed]] = {}
    for titles in found.values():
        levels = _levels(placed, titles)
        if not levels:
            continue
        for title in titles:
            one = placed[title.number]
            if one.block.kind is not Kind.HEADING:
                deeper = min(abs(len(title.count) - depth) for depth in levels)
                near = next(depth for depth in levels if abs(len(title.count) - depth) == deeper)
                level = max(1, levels[near] + len(title.count) - near)
                parts[title.number] = _heading(lines, one, level)
    return [each for number, one in enumerate(placed) for each in parts.get(number, [one])]


def _levels(placed: Sequence[Placed], titles: Sequence[_Title]) -> dict[int, int]:
    """The level of titles by the parts of their number; none where too few were read as headings, or they count nothing."""
    read: dict[int, Counter[int]] = defaultdict(Counter)
    for title in titles:
        block = placed[title.number].block
        if block.kind is Kind.HEADING:
            read[len(title.count)][block.level] += 1
    on = sum(first.count < second.count for first, second in pairwise(titles))
    if len(titles) < LEAST or sum(map(Counter.total, read.values())) < READ or on < SHARE * (len(titles) - 1):
        return {}
    return {depth: levels.most_common(1)[0][0] for depth, levels in read.items()}


def _alone(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether the last line of a block stands alone: between blank lines."""
    one = placed[number]
    last = one.end - 1
    if one.end >= len(lines) or len(lines[last].text) > LONGEST or one.block.code:
        return False
    if last > one.start:
        return False
    below = lines[one.end]
    above = last == 0 or lines[last].apart or ruled_off(lines[last - 1].text)
    kinds = {Kind.HEADING, Kind.PARAGRAPH, Kind.PREFORMATTED}
    return above and one.block.kind in kinds and below.gap > 0 and below.indent >= lines[last].indent


def _heading(lines: Sequence[Line], one: Placed, level: int) -> list[Placed]:
    """The heading that the last line of a block is, below what else is in it."""
    last = one.end - 1
    line = lines[last]
    title = Placed(Block(Kind.HEADING, fold(line.piece(line.indent, line.end)), level=level), last, one.end)
    if last == one.start:
        return [title]
    return [
        replace(one, block=replace(one.block, lines=one.block.lines[:-1]), end=last),
        title,
    ]
