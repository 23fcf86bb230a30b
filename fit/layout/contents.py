"""A contents page: the headings, each with its page."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.blocks import Document, Kind
from fit.layout.costs import Rules
from fit.layout.flowing import Setter
from fit.layout.lines import INSERTED, Line, LineFlag
from fit.layout.settings import LayoutSettings
from fit.layout.texts import inserted
from fit.width import text_cells

TITLE = "Contents"
_LEAST_LEADER = 3
"""A blank and two dots."""


def contents_lines(document: Document, settings: LayoutSettings, pages: Sequence[int]) -> list[Line]:
    """The lines of the contents page; ``pages`` has the page, from 1, of each heading in order."""
    digits = len(str(max(pages, default=0)))
    room = max(1, settings.width - digits - _LEAST_LEADER)
    narrow = LayoutSettings(width=room)
    headings = [block for block in document.blocks if block.kind is Kind.HEADING and block.text.chars.strip()]
    title = Setter(settings, Rules(""), INSERTED, Kind.HEADING)
    lines = [*title.flow(inserted(TITLE)), title.blank()]
    for heading, page in zip(headings, pages, strict=True):
        setter = Setter(narrow, Rules(""), INSERTED, Kind.ITEM, heading.level)
        indent = min(2 * (heading.level - 1), room // 3) if heading.level > 1 else 0
        entry = setter.flow(heading.text, indent)
        entry[-1] = _lead_to(entry[-1], page, settings.width)
        lines += entry
    return [line._replace(flags=line.flags & ~LineFlag.FLOWING | LineFlag.ADDED) for line in lines]


def _lead_to(line: Line, page: int, width: int) -> Line:
    """The line with a row of dots and the number at the right edge."""
    number = str(page)
    dots = width - text_cells(line.text) - len(number) - 2
    tail = inserted(f" {'.' * dots} {number}" if dots > 0 else f" {number}")
    return line._replace(text=line.text + tail.chars, sources=line.sources + tail.sources)
