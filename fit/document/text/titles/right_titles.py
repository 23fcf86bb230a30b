"""Names of entries at the right margin, each right over the text of its entry at the left: a reference is leafed through so."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines
from fit.document.text.signs.measure import closed

SEVERAL = 5
"""Such names, at least: one date at the right of a letter is none."""
INDENTS = 3
"""Columns at which they begin, at least, though all end at one."""
RIGHT = 40
"""Cells of blank left of such a name, at least."""
WORDS = 4
"""Words of it, at most."""
LEVEL = 2


def find_right_titles(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """Each such name as a heading, with the half-open run of its one line."""
    ends: dict[int, list[int]] = defaultdict(list)
    for index in range(len(lines) - 1):
        if lines[index].indent >= RIGHT and taken[index] is None and _over_text(lines, index):
            ends[lines[index].end].append(index)
    return [
        (index, index + 1, [Block(Kind.HEADING, flow_lines(lines[index : index + 1], hyphens), level=LEVEL)])
        for end, indices in ends.items()
        if len(indices) >= SEVERAL and len({lines[index].indent for index in indices}) >= INDENTS
        for index in indices
    ]


def _over_text(lines: Sequence[Line], index: int) -> bool:
    """Whether a few words stand below a blank line and right over a line far left of them."""
    line, below = lines[index], lines[index + 1]
    few = len(line.text.split()) <= WORDS and "  " not in line.text and not closed(line.text)
    return few and (line.apart or not index) and not below.apart and below.indent <= line.indent // 4
