"""Headings that the contents list: a line alone between blank lines that is an entry of them, word for word."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines
from fit.document.text.running.placed import Placed
from fit.document.text.signs.markers import find_marker

_MAYBE = (Kind.PARAGRAPH, Kind.ITEM, Kind.PREFORMATTED)
Contents = Sequence[tuple[int, int, Sequence[Block]]]
"""Runs of lines with the entries that they are."""


def listed_titles(
    lines: Sequence[Line], placed: Sequence[Placed], contents: Contents, hyphens: Hyphens
) -> list[Placed]:
    """The blocks in order, with headings made of what stands in the contents above."""
    levels: dict[str, int] = {}
    waiting = list(contents)
    result = list(placed)
    for index, one in enumerate(placed):
        while waiting and waiting[0][1] <= one.start:
            levels |= {_plain(entry.text.chars): entry.level + 1 for entry in waiting.pop(0)[2]}
        if levels and one.block.kind in _MAYBE and _alone(lines, one):
            title = _title(lines[one.start])
            level = levels.get(title, 0) if title else 0
            if level:
                text = flow_lines(lines[one.start : one.end], hyphens)
                result[index] = replace(one, block=Block(Kind.HEADING, text, level=min(level, 4)))
    return result


def _plain(text: str) -> str:
    """A title without its leader and page, and without the signs around it."""
    return text.partition("...")[0].strip(" :_-=").casefold()


def _title(line: Line) -> str:
    """What a line says as a title, without its number; nothing where it is a label or has one."""
    marker = find_marker(line.text)
    labels = line.text.endswith(":") or (marker is not None and not marker.kind.startswith("number"))
    if labels:
        return ""
    return _plain(line.text[marker.text if marker else 0 :])


def _alone(lines: Sequence[Line], one: Placed) -> bool:
    line = lines[one.start]
    below = parted_above(lines, one.end)
    return one.end - one.start == 1 and line.apart and below
