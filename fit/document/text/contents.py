"""Tables of contents: a title, a leader of dots, a page number."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, keep_lines
from fit.document.text.markers import find_marker

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
    """The half-open runs of such lines, two at least, each as a table of titles and page numbers."""
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
            found.append((start, index, [_block(lines[start:index], hyphens)]))
    return found


def _block(lines: Sequence[Line], hyphens: Hyphens) -> Block:
    rows: list[tuple[Text, Text]] = []
    waiting: list[Text] = []
    waiting_indent = 0
    for line in lines:
        match = _leader(line)
        if match is None:
            if waiting and line.gap:
                rows.append((flow(waiting, hyphens), Text()))
                waiting = []
            waiting.append(line.piece(line.indent, line.end))
            waiting_indent = line.indent
            continue
        if waiting and (line.gap or line.indent < waiting_indent or find_marker(line.text)):
            rows.append((flow(waiting, hyphens), Text()))
            waiting = []
        title = line.piece(line.indent, match.end("title"))
        rows.append((flow([*waiting, title], hyphens), line.piece(match.start("page"), match.end("page"))))
        waiting = []
    if waiting:
        rows.append((flow(waiting, hyphens), Text()))
    return Block(Kind.TABLE, lines=keep_lines(lines), rows=tuple(rows), note="contents with leaders")
