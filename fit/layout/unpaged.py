"""A text whose lines are those of a layout already: they stay, which is what a second pass over an output must do.

Where an output has no page breaks, or is of one page, nothing but its lines shows where it comes from. They show it
well: a text laid out is laid out again with nearly the same lines, whatever reading it again gets wrong. A text that
another hand wrapped at another width comes out otherwise, and is laid out like any other. One wrapped at this very width
may stay too; its lines fit, are hardly more ragged, and it must be without running heads and page numbers.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from fit.document.blocks import Block, Document, Kind
from fit.document.characters import TextBuilder, split_lines, strip_end
from fit.layout.before import before_layout, rows_as_written
from fit.layout.figures import figures_of
from fit.layout.lines import Decision, Layout, Line, LineFlag
from fit.layout.nests import find_nests
from fit.layout.pages import paginate
from fit.layout.settings import LayoutSettings
from fit.width import text_cells

SAME: Final = 0.62
"""The share of lines that come out the same. Texts of ours, read again, had 0.65 and more (the narrowest the least), those
wrapped by others one cell or more below the width up to 0.62, mostly half of that, those at the width 0.3 to 0.9."""


def comes_out_the_same(document: Document, layout: Layout, settings: LayoutSettings) -> bool:
    """Whether a text fits the screen and, laid out, has nearly the lines that it has; ``layout`` is its own."""
    if document.format != "text" or any(block.kind is Kind.FURNITURE for block in document.blocks):
        return False
    lines = [match[0].rstrip() for match in re.finditer("[^\r\n\f]+", document.source)]
    if any(len(line) > settings.width and text_cells(line) > settings.width for line in lines):
        return False
    return _same(lines, (line.text for line in layout.lines)) >= SAME


def as_lines(document: Document, settings: LayoutSettings, *, paged: bool) -> Document | None:
    """A text that `comes_out_the_same` as one block of lines; None where it has other control characters.

    Where the output is to be ``paged``, only a text of one page is such a one.
    """
    if any(ord(char) < ord(" ") and char not in "\r\n" for char in document.source):
        return None
    builder = TextBuilder()
    builder.add_run(document.source, 0)
    lines = [strip_end(line) for line in split_lines(builder.build())]
    while lines and not lines[-1].chars:
        lines.pop()
    while lines and not lines[0].chars:
        lines.pop(0)
    if not lines or (paged and len(lines) > settings.page_rows):
        return None
    blocks = (Block(Kind.PREFORMATTED, lines=tuple(lines)),)
    remark = "its lines fit the screen already, and stay as they are"
    return replace(document, blocks=blocks, remarks=(*document.remarks, remark), left_out=None)


def lay_out_as_lines(kept: Document, read: Document, settings: LayoutSettings) -> Layout:
    """The layout of a text made by `as_lines`, on pages that follow what was ``read`` of it."""
    flags = LineFlag.FIRST | LineFlag.LAST
    lines = tuple(
        Line(text.chars, text.sources, 0, Kind.PREFORMATTED, flags if text.chars else LineFlag.BLANK)
        for text in kept.blocks[0].lines
    )
    rows = _as_read(read, lines, settings)
    paging = paginate(rows, settings.page_rows, {}, find_nests(read.blocks), closing=False)
    decision = Decision(
        0, Kind.PREFORMATTED, "the text was laid out for this screen before; nothing was changed"
    )
    return Layout(
        lines,
        tuple(paging.pages),
        tuple(paging.faults),
        (decision,),
        before_layout(read, settings),
        figures_of(lines, len(paging.pages), paging.faults, settings.width, paging.tall),
        paging.naive,
    )


def _as_read(read: Document, lines: Sequence[Line], settings: LayoutSettings) -> Sequence[Line]:
    """The lines in their units, as far as they were read; blank lines at the ends left out."""
    rows = rows_as_written(read, settings.width)
    first = next((number for number, row in enumerate(rows) if row.text.strip()), 0)
    return rows[first : first + len(lines)]


def _same(before: Iterable[str], after: Iterable[str]) -> float:
    """The share of lines that are the same, but for the width of their blanks."""
    left, right = (
        Counter(" ".join(line.split()) for line in lines if line.strip()) for lines in (before, after)
    )
    return 2 * (left & right).total() / max(1, left.total() + right.total())
