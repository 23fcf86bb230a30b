"""A document to lines and pages: the whole of the layout."""

from __future__ import annotations

from array import array

from fit.document.blocks import Document, Kind
from fit.layout.greedy import wrap_greedy
from fit.layout.lines import Layout, Line, LineFlag
from fit.layout.settings import LayoutSettings
from fit.units import Span


def lay_out(document: Document, settings: LayoutSettings) -> Layout:
    """Lay a document out for a screen. Raises `UsageError` for a language without hyphenation patterns."""
    lines: list[Line] = []
    for number, block in enumerate(document.blocks):
        if block.kind is Kind.FURNITURE:
            continue
        texts = block.lines or tuple(cell for row in block.rows for cell in row) or (block.text,)
        for text in texts:
            for span in wrap_greedy(text.chars, settings.width):
                part = slice(span.start, span.end)
                lines.append(
                    Line(
                        text.chars[part],
                        text.sources[part],
                        number,
                        block.kind,
                        LineFlag.FIRST | LineFlag.LAST,
                    )
                )
        lines.append(Line("", array("q"), -1, None, LineFlag.BLANK))
    pages = [
        Span(start, min(start + settings.page_rows, len(lines)))
        for start in range(0, len(lines), settings.page_rows)
    ]
    return Layout(tuple(lines), tuple(pages))
