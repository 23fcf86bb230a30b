"""The figures of a layout, and the rules that it could not keep."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from fit.document.blocks import Document, Kind
from fit.layout.lines import Decision, Fault, Figures, Line, LineFlag
from fit.layout.settings import LayoutSettings
from fit.width import text_cells

_NOT_KEPT = {
    LineFlag.PARTED: "lines that end between words that belong together, too narrow for both: {}",
    LineFlag.MARKED: "lines that end in a cut word, longer than the screen is wide: {}",
}

RUNNING_TEXT = (Kind.PARAGRAPH, Kind.ITEM, Kind.NOTE)
"""What is measured for raggedness: headings, cells of tables and lines that stay lines are no running text."""


def figures_of(
    lines: Sequence[Line], pages: int, faults: Sequence[Fault], width: int, tall: int = 0
) -> Figures:
    """Measure lines laid out; ``tall`` items and records are higher than a page."""
    ragged = [
        line.slack
        for line in lines
        if line.flags & (LineFlag.FLOWING | LineFlag.LAST) == LineFlag.FLOWING and line.kind in RUNNING_TEXT
    ]
    return Figures(
        lines=len(lines),
        lines_over_width=sum(text_cells(line.text) > width for line in lines),
        raggedness=sum(slack * slack for slack in ragged) / len(ragged) if ragged else 0.0,
        hyphens=sum(bool(line.flags & LineFlag.HYPHEN) for line in lines),
        pages=pages,
        page_faults=len(faults),
        forced_faults=sum(fault.forced for fault in faults),
        tall_items=tall,
    )


def remarks_on(document: Document, lines: Sequence[Line], settings: LayoutSettings) -> list[Decision]:
    """The rules for lines that could not be kept, block by block."""
    counts: Counter[tuple[int, str]] = Counter()
    in_a_row = 0
    for line in lines:
        in_a_row = in_a_row + 1 if line.flags & LineFlag.HYPHEN else 0
        if in_a_row > settings.max_hyphens:
            counts[
                line.block, f"lines beyond {settings.max_hyphens} in a row that end in a hyphen: {{}}"
            ] += 1
        for flag, what in _NOT_KEPT.items():
            if line.flags & flag and line.kind is not Kind.PREFORMATTED:
                counts[line.block, what] += 1
        if text_cells(line.text) > settings.width:
            counts[
                line.block, "lines too wide, with a single character of more cells than the screen has: {}"
            ] += 1
    return [
        Decision(block, document.blocks[block].kind, what.format(count), degraded=True)
        for (block, what), count in sorted(counts.items())
    ]
