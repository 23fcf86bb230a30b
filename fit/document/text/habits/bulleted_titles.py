"""Titles behind a bullet, `* Stores`: each alone on its line, far below what comes before, its text at its own margin."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.markers import find_marker

LEAST = 5
"""Titles behind the same bullet, at least."""
APART = 2
"""Blank lines above such a title, at least."""
SHARE = 0.8
"""The share of the items behind the bullet, at least, that stand as titles do: it is no list."""
LONGEST = 60
"""Characters of a title, at most."""


def with_bulleted_titles(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with headings made of such items."""
    forms: dict[tuple[str, int], list[int]] = defaultdict(list)
    for number, one in enumerate(placed):
        if one.block.kind is Kind.ITEM and not one.block.label.chars.isalnum():
            marker = find_marker(lines[one.start].text)
            if marker is not None and marker.kind.startswith("bullet"):
                forms[marker.kind, lines[one.start].indent].append(number)
    titles: set[int] = set()
    for found in forms.values():
        alone = [number for number in found if len(found) >= LEAST and _over_text(lines, placed, number)]
        if len(alone) >= LEAST and len(alone) >= SHARE * len(found):
            titles.update(alone)
    if not titles:
        return list(placed)
    level = 2 if any(one.block.kind is Kind.HEADING and one.block.level == 1 for one in placed) else 1
    return [
        replace(one, block=Block(Kind.HEADING, fold(_whole(lines[one.start])), level=level))
        if number in titles
        else one
        for number, one in enumerate(placed)
    ]


def _whole(line: Line) -> Text:
    return line.piece(line.indent, line.end)


def _over_text(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether an item is one short line, far below the block before it and a blank line over one at its own margin."""
    one = placed[number]
    line = lines[one.start]
    if one.end - one.start != 1 or len(line.text) > LONGEST or number + 1 == len(placed):
        return False
    after = placed[number + 1]
    below = lines[after.start]
    far = one.start == 0 or line.gap >= APART or line.crossing
    return far and below.gap == 1 and below.indent <= line.indent
