"""Titles of units: by the rules at them, by their letters, their place on the page or their number."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines, fold
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.numbered import numbered_heading
from fit.document.text.running.placed import Levels, Placed
from fit.document.text.running.unit import Unit
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.titled_rules import titled_between, titled_rule
from fit.document.text.titles.headings import loud_lines, underlined
from fit.document.text.titles.over_rules import (
    between_rules,
    imprint,
    lines_over_rule,
    titles_over_rule,
    underlined_each,
    underlined_together,
)
from fit.document.text.titles.small_titles import (
    middle_title,
    over_first_line,
    part_title,
    title_under,
)


def ruled_titles(lines: Sequence[Line], unit: Unit, hyphens: Hyphens) -> list[Placed]:
    """The headings with rules beside, above or below them that a unit begins; mostly none."""
    start, line = unit.start, lines[unit.start]
    single, bare = unit.end - start == 1, unit.marker is None and not unit.key
    if single and ruled_off(line.text):
        end = between_rules(lines, start)
        return _titles_between(lines, start, end, hyphens) if end else []
    if single and (ruled := titled_rule(line.text))[2]:
        text = fold(line.piece(line.indent + ruled[0], line.indent + ruled[1]))
        return [Placed(Block(Kind.HEADING, text, level=ruled[2], note="rule left out"), start, unit.end)]
    if single and titled_between(lines, start):
        return [title_block([line], hyphens, start, unit.end, 2)]
    if single and underlined(lines, start) and not unit.key:
        level = _level(lines[start + 1])
        tall = underlined_each(lines, start)
        part = [line, lines[start + 2]] if tall else [line]
        return [title_block(part, hyphens, start, tall or unit.end + 1, level)]
    if bare and (end := titles_over_rule(lines, start)):
        titles = [
            title_block([lines[at]], hyphens, at, at + 1, 1 if at == start else 2) for at in range(start, end)
        ]
        return [*titles[:-1], replace(titles[-1], end=end + 1)]
    numbered = unit.marker is not None and unit.marker.kind.startswith("number") and not single
    if (bare or numbered) and underlined_together(lines, start, unit.end):
        return [title_block(lines[start : unit.end], hyphens, start, unit.end + 1, _level(lines[unit.end]))]
    if bare and single and (end := lines_over_rule(lines, start)):
        return [title_block(lines[start:end], hyphens, start, end + 1, _level(lines[end]))]
    return []


def _titles_between(lines: Sequence[Line], start: int, end: int, hyphens: Hyphens) -> list[Placed]:
    """The title between the rules at ``start`` and ``end``; lines that say whose it is, and of when, are headings below it."""
    firsts = [start + 1, *(index for index in range(start + 2, end) if imprint(lines[index].text))]
    titles = [
        title_block(lines[first:stop], hyphens, first, stop, 1 if first == start + 1 else 2)
        for first, stop in pairwise([*firsts, end])
    ]
    titles[0] = replace(titles[0], start=start)
    return [*titles[:-1], replace(titles[-1], end=end + 1)]


def _level(rule: Line) -> int:
    return 1 if rule.text[0] in "=*#\u2550" else 2


def bare_titles(
    lines: Sequence[Line],
    units: Sequence[Unit],
    place: int,
    chunks: dict[int, Chunk],
    placed: Sequence[Placed],
    levels: Levels,
    hyphens: Hyphens,
) -> list[Placed]:
    """The heading that a unit is by its letters, its place on the page or its number; the lists above it end there."""
    unit = units[place]
    start, end, level = unit.start, unit.end, 1
    bare = unit.marker is None and not unit.key and not ruled_off(lines[start].text)
    if bare and end == start + 1 and place + 1 < len(units) and _over_text(lines, start, units[place + 1]):
        level = 2
    elif not (bare and loud_lines(lines, start, end)):
        small = _small_title(lines, unit, chunks, levels.base, placed) if bare else 0
        level = 1 if small else numbered_heading(lines, units, place)
        end = small or end
    if not level:
        return []
    levels.columns.clear()
    return [title_block(lines[start:end], hyphens, start, end, level)]


def _over_text(lines: Sequence[Line], start: int, below: Unit) -> bool:
    text = below.marker is None and not below.key
    return text and over_first_line(lines, start, lines[below.start : below.end])


def title_block(part: Sequence[Line], hyphens: Hyphens, start: int, end: int, level: int = 1) -> Placed:
    return Placed(Block(Kind.HEADING, flow_lines(part, hyphens), level=level), start, end)


def _small_title(
    lines: Sequence[Line], unit: Unit, chunks: dict[int, Chunk], base: int, placed: Sequence[Placed]
) -> int:
    """The end of the title that a part's number shows, or its place in the middle of the page; or 0."""
    start = unit.start
    if end := part_title(lines, start):
        return end
    above = placed[-1] if placed else None
    if above and above.block.kind is Kind.HEADING and part_title(lines, above.start) == start:
        return title_under(lines, start)
    below = chunks.get(unit.end)
    return middle_title(lines, start, base, max(chunks[start].right, below.right if below else 0))
