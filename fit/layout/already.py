"""A text that has its pages already: it stays as it is, which is what a second pass over an output must do.

Such a text has form feeds, no line wider than the screen, no page higher, and its running text is wrapped at the
screen's width, without the wide blanks of justified text or printed page numbers. To read it as running text and lay
it out again could only lose what is written in its lines: which of them end a paragraph.
"""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from typing import Final

from fit.document.blocks import Block, Document, Kind, Text
from fit.document.characters import TextBuilder, split_lines, strip_end
from fit.document.text.signs.measure import closed, prose, starts_small
from fit.layout.before import before_layout
from fit.layout.figures import figures_of
from fit.layout.lines import Decision, Layout, Line, LineFlag
from fit.layout.settings import LayoutSettings
from fit.units import Span
from fit.width import text_cells

FORM_FEED: Final = "\f"

WRAPPED: Final = 8
"""Wrapped lines that show at which width a text was wrapped."""
SHORT: Final = 3
"""Cells that the fullest of so many lines leaves free, at least, where they were wrapped at another width."""
_PAGE_NUMBER: Final = re.compile(r"\S {3,}\[?Page \d+\]?\s*$", re.MULTILINE | re.IGNORECASE)
_JUSTIFIED: Final = re.compile(r"[^\s.!?:] {2,}\S")
_NOT_PRINTED: Final = re.compile(r"[\x00-\x08\x0b\x0e-\x1f\x7f]")


def as_pages(
    document: Document, settings: LayoutSettings, page_break: str = FORM_FEED, *, sure: bool = False
) -> Document | None:
    """The text in its own pages, one block of lines a page; None where it is not of at least two pages that fit.

    ``page_break`` is a form feed, or a line that parts the pages. ``sure`` tells that its lines are those of a layout;
    a line of the user's own between pages tells so by itself.
    """
    if document.format != "text" or not page_break or page_break not in document.source:
        return None
    if _NOT_PRINTED.search(document.source):
        return None
    pages = _pages(document.source, page_break)
    if len(pages) < 2 or any(not _fits(page, settings) for page in pages):
        return None
    sure = sure or page_break != FORM_FEED
    if not sure and (_wrapped_elsewhere(pages, settings.width) or _PAGE_NUMBER.search(document.source)):
        return None
    blocks = tuple(Block(Kind.PREFORMATTED, lines=tuple(page)) for page in pages)
    remark = f"its {len(pages)} pages fit the screen already, and stay as they are"
    return replace(document, blocks=blocks, remarks=(*document.remarks, remark), left_out=None)


def lay_out_as_pages(document: Document, settings: LayoutSettings) -> Layout | None:
    """The layout of a text made by `as_pages`; None where it fits no longer, because its characters were changed."""
    lines: list[Line] = []
    pages: list[Span] = []
    for number, block in enumerate(document.blocks):
        if not _fits(block.lines, settings):
            return None
        start = len(lines)
        flags = LineFlag.FIRST | LineFlag.LAST
        lines += (Line(line.chars, line.sources, number, block.kind, flags) for line in block.lines)
        pages.append(Span(start, len(lines)))
    figures = figures_of(lines, len(pages), (), settings.width)
    decision = Decision(0, Kind.PREFORMATTED, "the text has pages of its own that fit; nothing was changed")
    return Layout(
        tuple(lines),
        tuple(pages),
        decisions=(decision,),
        before=before_layout(document, settings),
        after=figures,
        naive_pages=len(pages),
    )


def _pages(source: str, page_break: str) -> list[list[Text]]:
    """The lines of each page; what ends the last line of a page is no line of its own."""
    pages: list[list[Text]] = [[]]
    builder = TextBuilder()
    builder.add_run(source, 0)
    for line in split_lines(builder.build()):
        if page_break != FORM_FEED and line.chars.rstrip("\r") == page_break:
            pages.append([])
            continue
        begin = 0
        parts = line.chars.split(FORM_FEED) if page_break == FORM_FEED else [line.chars]
        for index, part in enumerate(parts):
            if index:
                pages.append([])
            piece = Text(part, line.sources[begin : begin + len(part)], line.marks[begin : begin + len(part)])
            if index == len(parts) - 1 or part:
                pages[-1].append(strip_end(piece))
            begin += len(part) + 1
    if pages[-1] and not pages[-1][-1].chars:
        pages[-1].pop()  # the end of the last line, not a line
    return [page for page in pages if page]


def _wrapped_elsewhere(pages: list[list[Text]], width: int) -> bool:
    """Whether the running text was wrapped at a width of its own, or justified: neither was done for the screen."""
    wrapped = [
        above.chars.rstrip()
        for page in pages
        for above, below in pairwise(page)
        if prose(above.chars) and starts_small(below.chars.strip()) and not closed(above.chars)
    ]
    if len(wrapped) < WRAPPED:
        return False
    justified = sum(_JUSTIFIED.search(line.strip()) is not None for line in wrapped)
    return max(map(text_cells, wrapped)) <= width - SHORT or justified >= 0.3 * len(wrapped)


def _fits(page: list[Text] | tuple[Text, ...], settings: LayoutSettings) -> bool:
    return len(page) <= settings.page_rows and all(text_cells(line.chars) <= settings.width for line in page)
