"""Titles left of all running text: each right over its text, or over a title that stands less far left, as in manual pages."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines
from fit.document.text.signs.measure import prose

SEVERAL = 4
"""Such titles, at least."""
LEAST = 10
"""Lines of running text, at least."""
MARGIN = 10
"""Lines of running text for one of which one stands at the left margin of it all, at most."""
SHARE = 0.9
"""The share of the lines left of the text that are such titles or go on in one: in a list they are much else."""
PARTS = 2
"""Paragraphs for each title, at least: a term has one."""
WRAPPED = 60
"""Cells of a title that goes on in the next line, at least."""
DEEPEST = 4
"""The lowest level of headings."""


def find_left_titles(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """Each such title as a heading, with the half-open run of its lines; the farther left, the higher."""
    indents = Counter(line.indent for line in lines if prose(line.text))
    many = sum(indents.values())
    if many < LEAST:
        return []
    margins = sorted(indent for indent, times in indents.items() if indent and times * MARGIN >= many)
    for margin in margins:
        titles = _titles(lines, taken, margin)
        if titles:
            levels = {
                column: at + 1 for at, column in enumerate(sorted({lines[i].indent for i, _ in titles}))
            }
            return [
                (start, end, [_heading(lines[start:end], levels[lines[start].indent], hyphens)])
                for start, end in titles
            ]
    return []


def _titles(lines: Sequence[Line], taken: Sequence[object], margin: int) -> list[tuple[int, int]]:
    """The half-open runs of lines that are titles left of a margin; nothing where those lines are much else."""
    found: list[tuple[int, int]] = []
    left = runs = index = 0
    parts = 0  # paragraphs that follow another one below the same titles
    while index < len(lines):
        if taken[index] is not None or lines[index].indent >= margin:
            parts += lines[index].apart
            index += 1
            continue
        end = index + 1
        while end < len(lines) and lines[end].indent < margin and not lines[end].apart and taken[end] is None:
            end += 1
        left += end - index
        if parted_above(lines, index) and not parted_above(lines, end) and taken[end] is None:
            found += _single(lines, index, end)
            runs += 1
        index = end
    covered = sum(end - start for start, end in found)
    return found if len(found) >= SEVERAL and covered >= SHARE * left and parts >= runs * (PARTS - 1) else []


def _single(lines: Sequence[Line], start: int, end: int) -> list[tuple[int, int]]:
    """The titles of which a run is made: one a line, but a long one may go on in the next line, farther left than it."""
    found: list[tuple[int, int]] = []
    for index in range(start, end):
        line = lines[index]
        if index > start and lines[index - 1].end >= WRAPPED and line.indent < lines[index - 1].indent:
            found[-1] = (found[-1][0], index + 1)
        else:
            found.append((index, index + 1))
    return found


def _heading(lines: Sequence[Line], level: int, hyphens: Hyphens) -> Block:
    return Block(
        Kind.HEADING, flow_lines(lines, hyphens), level=min(level, DEEPEST), note="title left of the text"
    )
