"""Newspaper columns as running text, one read after the other; those of an index keep their lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import Run
from fit.document.text.columns.headed_lists import headed
from fit.document.text.columns.newspaper import (
    anew,
    column_end,
    heads_over,
    index_columns,
    page_starts,
    side_by_side,
    signed,
)
from fit.document.text.line import Line
from fit.document.text.make import concat, fold, keep_lines, space
from fit.document.text.signs.measure import closed


def read_columns(
    lines: Sequence[Line], run: Run, read: Callable[[Sequence[Line]], list[Block]]
) -> list[Block]:
    """The blocks of newspaper columns, page by page and column by column: ``read`` gives those of their lines."""
    part: list[Line] = []
    pages = page_starts(lines, run)
    edge = min(lines[index].indent for index in range(run.start, run.end) if index not in run.heads)
    for first, last in pairwise([*pages, run.end]):
        ends = [column_end(lines, run, number, first, last) for number in range(len(run.columns))]
        begun = first == run.start and heads_over(lines, run)
        for place, (left, _) in enumerate(run.columns):
            right = run.columns[place + 1][0] if place + 1 < len(run.columns) else 10**6
            start = edge if place == 0 else left
            gap = 0
            fresh = True
            for index in range(first, last):
                if index in run.heads:
                    continue
                gap += lines[index].gap
                piece = lines[index].cut(start, right)
                if index > first and headed(lines, run.columns, place, index - 1):
                    piece = piece.cut(0, part[-1].end)  # a rule as wide as the column underlines its title
                if not piece.cells:
                    gap += 1
                    continue
                ended = fresh and (
                    begun
                    or (
                        place
                        and closed(part[-1].text)
                        and (ends[place] - ends[place - 1] > 1 or side_by_side(lines, run, first, last))
                    )
                    or (headed(lines, run.columns, place, index) if place else anew(lines, run, first))
                    or (not piece.indent and signed(part))
                )
                piece.crossing = fresh and bool(part) and not ended
                piece.gap = int(ended) if fresh else gap
                part.append(piece)
                gap = 0
                fresh = False
    if index_columns([lines[index] for index in range(run.start, run.end)], run.columns):
        starts = [0, *(index for index, line in enumerate(part) if line.crossing), len(part)]
        return [_index_column(part[first:last]) for first, last in pairwise(starts)]
    blocks = read(part)
    note = f"{len(run.columns)} newspaper columns read one after the other"
    furniture = [Block(Kind.FURNITURE, lines=keep_lines([lines[index]])) for index in sorted(run.heads)]
    return [replace(blocks[0], note=note), *blocks[1:], *furniture]


def _index_column(lines: Sequence[Line]) -> Block:
    """The entries of a column, one a line: what hangs below the comma or semicolon at the end of one goes on with it."""
    kept: list[Text] = []
    for text in keep_lines(lines):
        if kept and text.chars.startswith(" ") and kept[-1].chars.endswith((",", ";")):
            kept[-1] = concat([kept[-1], space(), fold(text)])
        else:
            kept.append(text)
    return Block(Kind.PREFORMATTED, lines=tuple(kept), note="column of an index")
