"""Tables of contents: a title, a leader of dots, a page number."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import concat, flow
from fit.document.text.markers import find_marker

DOTS = 3
"""Dots of a leader that are kept: it was as long as the line was wide."""
INDENT = 3
"""Cells of indentation that make a level."""
_LEADER = re.compile(
    r"^(?P<title>\s*\S.*?)\s*(?P<dots>\.{3,}|(?:\s\.){3,}|_{4,}|(?:\. ){2,}\.?|\u2026{2,})\s*(?P<page>[\w.-]{0,8})$"
)


def _leader(line: Line) -> re.Match[str] | None:
    match = _LEADER.match(line.cells)
    if match is None:
        return None
    page = match["page"]
    return match if page and (any(char.isdigit() for char in page) or len(page) < 6) else None


def find_contents(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of such lines, two at least, an item an entry."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        match = _leader(lines[index]) if taken[index] is None else None
        if match is None:
            index += 1
            continue
        start = index
        last = index
        entries = 0
        while index < len(lines) and taken[index] is None and index - last <= 2:
            line = lines[index]
            if index > start and line.gap > 2 and not line.crossing:
                break
            if _leader(line):
                entries += 1
                last = index
            elif line.gap and not line.crossing and index - last >= 1:
                nearby = lines[index + 1 : index + 2]
                if not (nearby and _leader(nearby[0]) and len(line.text) < 40):
                    break
            index += 1
        index = last + 1
        if entries >= 2:
            found.append((start, index, _entries(lines[start:index], hyphens)))
    return found


def _entries(lines: Sequence[Line], hyphens: Hyphens) -> list[Block]:
    """One item an entry: its number, then the title, three dots of the leader and the page."""
    blocks: list[Block] = []
    waiting: list[Line] = []
    margin = min(line.indent for line in lines)
    for line in lines:
        match = _leader(line)
        if waiting and (line.gap or line.indent < waiting[-1].indent or find_marker(line.text)):
            blocks.append(_entry(waiting, None, hyphens, margin))
            waiting = []
        waiting.append(line)
        if match is not None:
            blocks.append(_entry(waiting, match, hyphens, margin))
            waiting = []
    if waiting:
        blocks.append(_entry(waiting, None, hyphens, margin))
    blocks[0] = replace(blocks[0], note="contents with leaders, cut to three dots")
    return blocks


def _entry(lines: Sequence[Line], match: re.Match[str] | None, hyphens: Hyphens, margin: int) -> Block:
    first = lines[0]
    marker = find_marker(first.text)
    start = first.indent + (marker.text if marker else 0)
    pieces = [line.piece(start if line is first else 0, line.end) for line in lines]
    if match is not None:
        last = lines[-1]
        pieces[-1] = last.piece(start if last is first else 0, match.end("title"))
        dots = [place for place in range(match.start("dots"), match.end("dots")) if last.cells[place] != " "]
        pieces.append(concat(last.piece(place, place + 1) for place in dots[:DOTS]))
        pieces.append(last.piece(match.start("page"), match.end("page")))
    label = first.piece(first.indent, first.indent + len(marker.label)) if marker else Text()
    level = (first.indent - margin + 1) // INDENT
    return Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level)
