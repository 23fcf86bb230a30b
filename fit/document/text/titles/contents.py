"""Lines that a leader carries to their end: contents, price lists, settings; and contents whose leader is blank."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import GUTTER
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import concat, flow
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, starts_small
from fit.document.text.titles.blank_leaders import REACH, blank_leaders
from fit.document.text.titles.leaders import (
    Leader,
    among_keys,
    beside_floor,
    figure,
    full_entry,
    in_line,
    leader_of,
    under_figures,
    with_short,
    without_keys,
)

DOTS = 3
"""Signs of a leader that are kept: it was as long as the line was wide."""
INDENT = 3
"""Cells of indentation that make a level."""
_NAMED = re.compile(
    r"(?:appendix|chapter|part|annex) (?:\d{1,2}|[A-Z]|[IVX]+)(?:[.:](?=[ ])|(?=[ ]{2}))(?P<blank> +)",
    re.IGNORECASE,
)
"""An entry with a word before its number."""
_LETTERED = re.compile(r"[A-Z]\.?(?P<blank> {2,})")
"""An appendix by its letter alone, as it stands below chapters that have numbers."""


def find_contents(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of such lines, two at least, an item an entry."""
    leaders = [leader_of(line) if taken[index] is None else None for index, line in enumerate(lines)]
    leaders = [
        None if leader is not None and beside_floor(lines, index) else leader
        for index, leader in enumerate(leaders)
    ]
    leaders = in_line(with_short(lines, among_keys(lines, without_keys(lines, leaders))))
    blank = blank_leaders(lines, taken, leaders)
    return sorted(
        [
            (start, end, _entries(lines[start:end], found[start:end], hyphens))
            for found in (leaders, blank)
            for start, end in _runs(lines, taken, found)
            if not _under_column(lines, start, end)
        ],
        key=lambda run: run[0],
    )


def _runs(
    lines: Sequence[Line], taken: Sequence[object], leaders: Sequence[Leader | None]
) -> list[tuple[int, int]]:
    runs: list[tuple[int, int]] = []
    index = floor = 0
    while index < len(lines):
        if leaders[index] is None:
            index += 1
            continue
        last = reached = index
        start = _wrapped_start(lines, taken, index, floor)
        while index < len(lines) and taken[index] is None and index - reached <= REACH:
            if index > start and lines[index].gap > 2 and not lines[index].crossing:
                break
            held = leaders[last]
            if leaders[index] is not None:
                last = reached = index
            elif held and under_figures(lines[index], held.value):
                reached = index
            elif _parted(lines, leaders, index, last):
                break
            index += 1
        shown = sum(leader is not None for leader in leaders[start : last + 1]) >= 2
        index = floor = _below(lines, taken, leaders[last], last + 1) if shown else last + 1
        if shown:
            runs.append((start, index))
    return runs


def _under_column(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the line right above begins to the right of all of these: they are the end of a column beside another."""
    if not start or lines[start].apart:
        return False
    return lines[start - 1].indent >= max(line.end for line in lines[start:end]) + GUTTER


def _parted(lines: Sequence[Line], leaders: Sequence[Leader | None], index: int, last: int) -> bool:
    """Whether a line without a leader, after a blank one, is more than a title between entries."""
    line = lines[index]
    if not line.gap or line.crossing or index - last < 1:
        return False
    return index + 1 >= len(lines) or leaders[index + 1] is None


def _below(lines: Sequence[Line], taken: Sequence[object], leader: Leader | None, end: int) -> int:
    """The end of a list with the rule under its last figure and the sum below that, which has no title."""
    stop = end
    while leader and stop < len(lines) and taken[stop] is None and not lines[stop].gap:
        line = lines[stop]
        if not under_figures(line, leader.value):
            break
        stop += 1
    return stop


def _wrapped_start(lines: Sequence[Line], taken: Sequence[object], index: int, floor: int) -> int:
    """The line where the title of the first entry begins: the one above, if this one is its deeper rest."""
    line = lines[index]
    if index == floor or taken[index - 1] is not None or line.apart:
        return index
    above = lines[index - 1]
    wraps = above.indent < line.indent <= above.indent + 8 and not closed(above.text)
    return index - 1 if wraps and (starts_small(line.text) or find_marker(above.text)) else index


def _entries(lines: Sequence[Line], leaders: Sequence[Leader | None], hyphens: Hyphens) -> list[Block]:
    """One item an entry: its number, then the title, three signs of the leader and the page or value."""
    blocks: list[Block] = []
    waiting: list[Line] = []
    margin = min(line.indent for line in lines)
    levels: dict[int, int] = {}
    lettered = any(find_marker(line.text) for line in lines)

    def entry(leader: Leader | None) -> Block:
        first = waiting[0]
        marker = find_marker(first.text)
        level = 0 if figure(first.text) else (first.indent - margin + 1) // INDENT
        if marker is None:
            level = levels.get(first.indent, level)  # under the titles of numbered ones
        else:
            levels[first.indent + marker.text] = level
        return _entry(waiting, leader, hyphens, level, lettered=lettered)

    values = [leader.value for leader in leaders if leader is not None]
    for line, leader in zip(lines, leaders, strict=True):
        if any(under_figures(line, value) for value in values):
            continue
        if waiting and (line.gap or line.indent < waiting[-1].indent or find_marker(line.text)):
            blocks.append(entry(None))
            waiting = []
        waiting.append(line)
        if leader is not None or any(full_entry(line, value) for value in values):
            blocks.append(entry(leader))
            waiting = []
    if waiting:
        blocks.append(entry(None))
    blocks[0] = replace(blocks[0], note="lines with leaders, cut to three signs")
    return blocks


def _entry(
    lines: Sequence[Line], leader: Leader | None, hyphens: Hyphens, level: int, *, lettered: bool
) -> Block:
    first = lines[0]
    marker = find_marker(first.text)
    named = _NAMED.match(first.text) or (lettered and _LETTERED.match(first.text)) if marker is None else None
    sign, text = (len(marker.label), marker.text) if marker else named.span("blank") if named else (0, 0)
    start = first.indent + text
    pieces = [line.piece(start if line is first else 0, line.end) for line in lines]
    if leader is not None:
        last = lines[-1]
        pieces[-1] = last.piece(start if last is first else 0, leader.title)
        dots = [place for place in range(*leader.dots) if last.cells[place] != " "]
        pieces.append(concat(last.piece(place, place + 1) for place in dots[:DOTS]))
        pieces.append(last.piece(*leader.value))
    label = first.piece(first.indent, first.indent + sign) if sign else Text()
    return Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level)
