"""Text whose lines stay lines: program texts, transcripts, verse, addresses."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import cut
from fit.layout.flowing import CONTINUED, Setter
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, inserted, margin, spread_tabs
from fit.width import text_cells

_CODE_INDENT = 2
"""The margin that a block keeps of its own where its lines must be continued: enough to see that it is set off."""
_APART = 2
"""Blanks between a formula and its number, at least."""
_NUMBER = re.compile(r"(?<=\S)( {4,})\(\w{1,3}(?:\.\d+)*\)$")


def stanzas(blocks: Sequence[Block], width: int) -> dict[int, int]:
    """For each block of lines that stands together with others of its depth, the cells of the widest line of them all.

    They are the stanzas of one verse, and have one margin. What is wider than ``width`` goes its own way.
    """
    found: dict[int, int] = {}
    group: list[int] = []
    for number, block in enumerate(blocks):
        if block.kind is Kind.FURNITURE:
            continue
        stands = block.kind is Kind.PREFORMATTED and not block.code
        if not stands or block.apart or (group and blocks[group[-1]].level != block.level):
            group = []
        if not stands:
            continue
        group.append(number)
        if len(group) > 1:
            widest = max(_widest(blocks[one]) for one in group)
            verse = widest <= width and any(len(blocks[one].lines) > 1 for one in group)
            found |= dict.fromkeys(group, widest if verse else 0)
    return found


def _widest(block: Block) -> int:
    """The cells of the widest line, without the margin that all lines share."""
    texts = [spread_tabs(line) for line in block.lines]
    filled = [cut(text, 0, len(text.chars.rstrip())) for text in texts if text.chars.strip()]
    least = min((margin(text) for text in filled), default=0)
    return max((text_cells(text.chars) for text in filled), default=0) - least


def keep_lines(block: Block, setter: Setter, indent: int, together: int = 0) -> list[Line]:
    """The lines as they stand, moved to the left as far as they need; what is still too wide is continued.

    ``together`` are the cells of the widest line of those that are moved alike.
    """
    texts = [spread_tabs(line) for line in block.lines]
    texts = [cut(text, 0, len(text.chars.rstrip())) for text in texts]
    least = min((margin(text) for text in texts if text.chars), default=0)
    if not block.code:
        texts = [_nearer(text, setter.width + least) for text in texts]
    filled = [text for text in texts if text.chars]
    widest = max((text_cells(text.chars) for text in filled), default=0) - least
    fits = widest <= setter.width
    keep = max(least, indent)
    if len(filled) == 1 and not block.code and not together:
        keep = indent  # one line shows no margin that a reader could see
    keep = (
        min(keep, setter.width - max(widest, together))
        if fits
        else min(keep, _CODE_INDENT, setter.width // 8)
    )
    lines: list[Line] = []
    for text in texts:
        if not text.chars:
            lines.append(setter.blank())
            continue
        own = (
            add(inserted(" " * (keep - least)), text) if keep >= least else cut(text, least - keep, len(text))
        )
        if block.code and text_cells(own.chars) > setter.width:
            own = _to_the_left(own, setter.width)
        if text_cells(own.chars) <= setter.width:
            lines.append(setter.line(own, LineFlag.FIRST | LineFlag.LAST))
        elif block.code:
            later = inserted(" " * min(margin(own) + CONTINUED, setter.width // 3))
            lines += setter.program(own, Text(), later)
        else:
            lines += _hang(own, setter)
    return lines


def _to_the_left(text: Text, width: int) -> Text:
    """A line that is set in by half a screen, further to the left where its first word has no room there.

    The whole line may fit, and ends at the right edge then; otherwise it begins where a continued line does at most.
    """
    deep = margin(text)
    body = text_cells(text.chars) - deep
    word = text_cells(text.chars.split(None, 1)[0])
    if 2 * deep < width or word < width - deep:
        return text
    return cut(text, deep - max(width - body, 0 if body <= width else width // 3), len(text))


def _nearer(text: Text, room: int) -> Text:
    """A line that its number at the right edge makes too wide, with the number nearer: that of a formula."""
    excess = text_cells(text.chars) - room
    number = _NUMBER.search(text.chars) if excess > 0 else None
    if number is None or len(number[1]) - excess < _APART:
        return text
    return add(cut(text, 0, number.end(1) - excess), cut(text, number.end(1), len(text)))


def _hang(text: Text, setter: Setter) -> list[Line]:
    """One line of verse or a transcript over several, the later ones further to the right."""
    first = min(margin(text), setter.width // 2)
    outdent = min(CONTINUED, setter.width // 4)
    body = cut(text, margin(text), len(text))
    return setter.flow(body, first + outdent, outdent=outdent)
