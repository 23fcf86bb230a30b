"""Text whose lines stay lines: program texts, transcripts, verse, addresses."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from fit.document.blocks import Block, Text
from fit.layout.cells import cells_before
from fit.layout.flowing import Setter
from fit.layout.inside import MARK_FROM
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, inserted, margin, part, spread_tabs
from fit.width import text_cells

_CODE_INDENT = 2
"""The margin that a block keeps of its own where its lines must be continued: enough to see that it is set off."""
_CONTINUED = 2
"""Cells by which a continued line stands to the right of its beginning."""

_APART = 2
"""Blanks between a formula and its number, at least."""
_NUMBER = re.compile(r"(?<=\S)( {4,})\(\w{1,3}(?:\.\d+)*\)$")


class Kept(NamedTuple):
    """Lines kept."""

    lines: list[Line]
    continued: int
    """How many of the source's lines take more than one."""


def keep_lines(block: Block, setter: Setter, indent: int) -> Kept:
    """The lines as they stand, moved to the left as far as they need; what is still too wide is continued."""
    texts = [spread_tabs(line) for line in block.lines]
    texts = [part(text, 0, len(text.chars.rstrip())) for text in texts]
    least = min((margin(text) for text in texts if text.chars), default=0)
    if not block.code:
        texts = [_nearer(text, setter.width + least) for text in texts]
    filled = [text for text in texts if text.chars]
    widest = max((text_cells(text.chars) for text in filled), default=0) - least
    fits = widest <= setter.width
    keep = max(least, indent)
    if len(filled) == 1 and not block.code:
        keep = indent  # one line shows no margin that a reader could see
    keep = min(keep, setter.width - widest) if fits else min(keep, _CODE_INDENT, setter.width // 8)
    lines: list[Line] = []
    continued = 0
    for text in texts:
        if not text.chars:
            lines.append(setter.blank())
            continue
        own = (
            add(inserted(" " * (keep - least)), text)
            if keep >= least
            else part(text, least - keep, len(text))
        )
        if text_cells(own.chars) <= setter.width:
            lines.append(setter.line(own, LineFlag.FIRST | LineFlag.LAST))
        elif block.code:
            lines += _continue_code(own, setter)
            continued += 1
        else:
            lines += _hang(own, setter)
            continued += 1
    return Kept(lines, continued)


def _nearer(text: Text, room: int) -> Text:
    """A line that its number at the right edge makes too wide, with the number nearer: that of a formula."""
    excess = text_cells(text.chars) - room
    number = _NUMBER.search(text.chars) if excess > 0 else None
    if number is None or len(number[1]) - excess < _APART:
        return text
    return add(part(text, 0, number.end(1) - excess), part(text, number.end(1), len(text)))


def _hang(text: Text, setter: Setter) -> list[Line]:
    """One line of verse or a transcript over several, the later ones further to the right."""
    first = min(margin(text), setter.width // 2)
    outdent = min(_CONTINUED, setter.width // 4)
    body = part(text, margin(text), len(text))
    return setter.flow(body, first + outdent, outdent=outdent)


def _continue_code(text: Text, setter: Setter) -> list[Line]:
    """One line of a program over several: each but the last ends in the mark, and what parts them is all blanks.

    Without the mark, and without the indentation of the lines after the first, the lines one after the other
    are the line as it was.
    """
    mark = inserted(setter.settings.mark if setter.width >= MARK_FROM else "")
    later = inserted(" " * min(margin(text) + _CONTINUED, setter.width // 3))
    cells = cells_before(text.chars)
    lines: list[Line] = []
    lead = Text()
    flags = LineFlag.FIRST
    start = 0
    while cells[-1] - cells[start] > setter.width - len(lead.chars):
        cut = _cut(text.chars, cells, start, setter.width - len(lead.chars) - len(mark.chars))
        if cut == len(text.chars):
            break  # a single character is wider than the screen
        if mark.chars:
            flags |= LineFlag.MARKED
        elif text.chars[cut - 1] != " " != text.chars[cut]:
            flags |= LineFlag.JOINED
        lines.append(setter.line(add(lead, part(text, start, cut), mark), flags))
        lead, flags, start = later, LineFlag.NONE, cut
    lines.append(setter.line(add(lead, part(text, start, len(text))), flags | LineFlag.LAST))
    return lines


def _cut(chars: str, cells: Sequence[int], start: int, room: int) -> int:
    """Where a line of a program is cut: after the last blanks in the later half of the room, else where it is full."""
    full = start + 1
    while full < len(chars) and cells[full + 1] - cells[start] <= room:
        full += 1
    indent = start
    while indent < full and chars[indent] == " ":
        indent += 1
    for at in range(full, max(indent, start + (full - start) // 2), -1):
        if at < len(chars) and chars[at - 1] == " " != chars[at]:
            return at
    return full
