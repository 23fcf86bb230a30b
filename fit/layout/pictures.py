"""Drawings wider than the screen, cut into panels."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from typing import NamedTuple

from fit.document.blocks import Block, Text
from fit.document.characters import cut
from fit.layout.cells import columns_of
from fit.layout.flowing import Setter
from fit.layout.lines import Line, LineFlag
from fit.layout.texts import add, inserted, margin, spread_tabs
from fit.units import Span
from fit.width import text_cells

_WORD = 8
"""A word parted, or a panel more, is as bad as so many strokes."""
_PHRASE = 2
"""So is one blank between two words."""


class Picture(NamedTuple):
    """A drawing set."""

    lines: list[Line]
    panels: int


def set_picture(block: Block, setter: Setter, indent: int) -> Picture:
    """The drawing as it is where it fits, else panels from left to right, parted by a rule.

    Nothing is squeezed, left out or drawn over; panels overlap only by the columns that the settings ask for.
    """
    texts = [spread_tabs(line) for line in block.lines]
    texts = [cut(text, 0, len(text.chars.rstrip())) for text in texts]
    least = min((margin(text) for text in texts if text.chars), default=0)
    widest = max((text_cells(text.chars) for text in texts), default=0) - least
    if widest <= setter.width:
        pad = inserted(" " * min(max(indent, least), setter.width - widest))
        whole = [add(pad, cut(text, least, len(text))) for text in texts]
        return Picture(_panel(whole, setter), 1)
    texts = [cut(text, least, len(text)) for text in texts]
    sheet = [_Row(text, columns_of(text.chars)) for text in texts]
    cuts = _cuts(sheet, setter.width, setter.settings.overlap)
    lines: list[Line] = []
    for number, (start, end) in enumerate(cuts, start=1):
        if lines:
            rule = inserted("-" * setter.width)
            lines.append(setter.line(rule, LineFlag.FIRST | LineFlag.LAST | LineFlag.RULE))
        if setter.settings.panel_labels:
            label = inserted(f"[{number} of {len(cuts)}]")
            lines.append(setter.line(label, LineFlag.FIRST | LineFlag.LAST | LineFlag.ADDED))
        lines += _panel([_between(row, start, end) for row in sheet], setter)
    return Picture(lines, len(cuts))


def _panel(texts: list[Text], setter: Setter) -> list[Line]:
    """One panel, a unit that is best not parted; blank rows below it show nothing."""
    lines = [setter.line(text, LineFlag.NONE) for text in texts]
    while lines and not lines[-1].text:
        lines.pop()
    if lines:
        lines[0] = lines[0]._replace(flags=LineFlag.FIRST)
        lines[-1] = lines[-1]._replace(flags=lines[-1].flags | LineFlag.LAST)
    return lines


class _Row(NamedTuple):
    text: Text
    columns: Sequence[int]
    """For each character the column at which it stands, and the column after the last."""


def _between(row: _Row, start: int, end: int) -> Text:
    """What begins in the columns ``start <= column < end``."""
    first = bisect_left(row.columns, start, 0, len(row.text.chars))
    last = bisect_left(row.columns, end, first, len(row.text.chars))
    if first == last:
        return Text()
    return add(inserted(" " * (row.columns[first] - start)), cut(row.text, first, last))


def _cost(chars: str, index: int) -> int:
    """How bad a cut before a character is: it parts a stroke, two words with one blank between, or a word."""
    before, after = chars[index - 1], chars[index]
    if before.isspace() and after.isspace():
        return 0
    if not before.isspace() and not after.isspace():
        return _WORD if before.isalnum() and after.isalnum() else 1
    left, right = (index - 2, index) if before.isspace() else (index - 1, index + 1)
    beside = left >= 0 and right < len(chars)
    return _PHRASE if beside and chars[left].isalpha() and chars[right].isalpha() else 0


def _cuts(sheet: list[_Row], width: int, overlap: int) -> list[Span]:
    """The columns of each panel.

    A cut is made where it parts the fewest words and strokes, as far to the right as the width allows, and not
    left of two thirds of it; or not left of half of it, where it would part words and a blank column stands there.
    It parts no wide character: where one stands across every such column, the panel is a
    cell narrower than the screen and the character whole at its edge.
    """
    total = max(row.columns[-1] for row in sheet)
    parted = [0] * (total + 1)
    worded = [False] * (total + 1)
    wides = [0] * (total + 1)
    for row in sheet:
        chars, columns = row.text.chars, row.columns
        for index in range(1, len(chars)):
            cost = _cost(chars, index)
            parted[columns[index]] += cost
            worded[columns[index]] |= cost > 1
        for index in range(len(chars)):
            if columns[index + 1] - columns[index] == 2:  # a cell that nothing begins in
                wides[columns[index] + 1] += 1
    panels: list[Span] = []
    start = 0
    while total - start > width:
        least = start + max(1, overlap + 1, width * 2 // 3)
        choices = range(max(least, start + 1), start + width + 1)
        clear = [at for at in choices if not wides[at]]
        clear = clear or [at for at in choices if at < start + width] or [start + width]
        last = total - width * ((total - start - 1) // width)  # a cut left of it needs a panel more
        at = min(clear, key=lambda at: (parted[at] + (_WORD if at < last else 0), -at))
        if worded[at]:
            farther = range(start + max(1, overlap + 1, width // 2), least)
            at = max((at for at in farther if not (parted[at] or wides[at])), default=at)
        panels.append(Span(start, at))
        start = max(at - overlap, start + 1)
    return [*panels, Span(start, total)]
