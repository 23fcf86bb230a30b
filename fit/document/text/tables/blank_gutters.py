"""Tables without drawn columns: gutters of blanks, rules under the head, wrapped and empty cells."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.columns.aligned import aligned, aligned_apart
from fit.document.text.columns.gutters import CELLS, GUTTER, Run, cell, filled, has_gutter
from fit.document.text.columns.headed_lists import headed_lists
from fit.document.text.columns.newspaper import index_columns, prose_columns, tail, with_heads
from fit.document.text.columns.raised import centred, raise_run
from fit.document.text.columns.runs import grow
from fit.document.text.columns.sentence_blanks import runs_through, starts_at
from fit.document.text.columns.tight_rows import tight_rows
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.lists.key_columns import goes_on
from fit.document.text.make import keep_lines
from fit.document.text.signs.code import prompted
from fit.document.text.signs.formulas import spaced_formula
from fit.document.text.signs.measure import prose
from fit.document.text.signs.routines import behind_bracket
from fit.document.text.signs.rules import segmented
from fit.document.text.signs.underlines import numbered_title
from fit.document.text.tables.chances import (
    bullets,
    justified_text,
    keyed_list,
    one_key,
    parted_columns,
    text_above,
    text_beside_keys,
    widened_start,
    without_chance,
    without_labels,
)
from fit.document.text.tables.dashed_rows import title_over, with_full_keys
from fit.document.text.tables.grid import make_table, printed_again, printed_once
from fit.document.text.tables.heads import plain_names
from fit.document.text.tables.heads_above import by_eye, loud_names, with_head, with_top_rule
from fit.document.text.tables.long_labels import with_long_labels
from fit.document.text.tables.next_heads import name_by_company, next_head
from fit.document.text.tables.run_evidence import (
    coded_lines,
    even_pair,
    least_share,
    loud_head,
    unkeyed_lines,
)
from fit.document.text.tables.squeezed import by_rule, squeezed
from fit.document.text.tables.storeys import HEIGHT, upper_storey, with_upper_storey
from fit.document.text.tables.tall_heads import tall_head, with_tall_head

Columns = Callable[[Run], list[Block]]
BROAD = 16
"""Cells of blank that part the two sides of a page: two lines show that they are columns."""


def find_gutter_tables(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens, newspaper: Columns
) -> tuple[list[tuple[int, int, list[Block]]], dict[int, int]]:
    """The half-open runs of lines that are such tables or newspaper columns, each with its blocks.

    Beside them, of runs that are lists of hanging keys, the column of the text for each line with a key.
    """
    found: list[tuple[int, int, list[Block]]] = []
    shown = tight_rows(lines, taken)
    keyed = dict(shown)
    index = 0
    floor = 0
    while index < len(lines):
        if lines[index].text.endswith(",") and (end := behind_bracket(lines, index)):
            index = end
            continue
        if (
            taken[index] is not None
            or not (has_gutter(lines[index]) or index in shown)
            or runs_through(lines, index)
            or widened_start(lines, index)
            or numbered_title(lines, index)
            or spaced_formula(lines, index)
        ):
            index += 1
            continue
        if spans := upper_storey(lines, taken, index):
            run = _grow(lines, taken, index + HEIGHT, shown)
            below = _settle(lines, run, hyphens)
            tall = with_upper_storey(lines, index, run, spans, below[0], hyphens) if below else None
            if below and tall:
                found.append((index, run.end, [tall, *below[1:]]))
                index = floor = run.end
                continue
        run = _grow(lines, taken, index, shown)
        if _newspaper(lines, run):
            run = with_heads(lines, taken, run, floor)
            run.end = tail(lines, taken, run)
            found.append((run.start, run.end, newspaper(run)))
            index = floor = run.end
            continue
        run.end = with_full_keys(lines, taken, run)
        raise_run(lines, taken, run, floor)
        settled = run.end - run.start >= 2 and not _answer(lines, run.start)
        blocks = _settle(lines, run, hyphens) if settled else None
        if settled and blocks is None and (gap := _first_gap(lines, run)):
            part = grow(lines[:gap], taken, index, 1, shown)
            raise_run(lines, taken, part, floor)
            blocks = _settle(lines, part, hyphens) if part.end - part.start >= 2 else None
            run = part if blocks is not None else run
        if blocks == []:
            keyed |= _keyed(lines, run)
            index = run.end
            continue
        if blocks is None:
            index += max(1, (run.end - run.start) // 4) if run.end - run.start > 40 else 1
            continue
        start = run.start
        if blocks[0].kind is Kind.TABLE:
            over = tall_head(lines, taken, found, run)
            if tall := with_tall_head(lines, over, run, blocks[0], hyphens):
                if found and found[-1][1] == run.start:
                    found.pop()
                run.start, blocks, floor = over, [tall, *blocks[1:]], over
            start, blocks = with_head(lines, taken, run, blocks, hyphens, floor)
            start, blocks = with_top_rule(lines, taken, (start, run), blocks, floor)
            run.end, table = with_long_labels(lines, taken, run, blocks[0], hyphens)
            blocks = [table, *blocks[1:]]
        found.append((start, run.end, blocks))
        index = floor = run.end
    return name_by_company(found), keyed


def _grow(lines: Sequence[Line], taken: Sequence[object], start: int, shown: Mapping[int, int]) -> Run:
    """The run from a line on: up to the head of the next table, and without a head that leaves it fewer columns."""
    run = grow(lines, taken, start, 1, shown)
    if title_over(lines, run):
        return grow(lines, taken, start + 1, 1, shown)
    end = next_head(lines, run)
    if end < run.end:
        run = grow(lines[:end], taken, start, 1, shown)
    names = by_eye(lines, start)
    if names and not _under_names(lines[start], run, names):
        below = grow(lines[:end] if end < run.end else lines, taken, start + 1, 1, shown)
        if len(below.columns) == names and below.end >= run.end:
            return below
    return run


def _under_names(line: Line, run: Run, names: int) -> bool:
    """Whether each column of a run has one of the names in its first line."""
    cells = [cell(line, run.columns, index) for index in range(len(run.columns))]
    return len(cells) == names and all(text and "  " not in text for text in cells)


def _first_gap(lines: Sequence[Line], run: Run) -> int:
    """The first line below a blank one of a run that begins with names of columns, as one that has them anew may; or 0."""
    names = CELLS.findall(lines[run.start].cells)
    if len(names) < 2 or not plain_names(names):
        return 0
    inner = range(run.start + 1, run.end)
    return next((index for index in inner if lines[index].gap and not lines[index].crossing), 0)


def _answer(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is what came of a command typed at a prompt that stands over it, with no blank line between."""
    first = index
    while first and not lines[first].apart:
        first -= 1
    return first < index and prompted(lines[first].text) and lines[first].indent <= lines[index].indent


def _keyed(lines: Sequence[Line], run: Run) -> dict[int, int]:
    """The lines of a list of two columns that start with a key and its text."""
    if len(run.columns) != 2:
        return {}
    column = run.columns[1][0]
    both = [index for index in range(run.start, run.end) if filled(lines[index], run.columns) == 2]
    return {
        index: column
        for index in both
        if index not in run.rules | run.rests
        and not _stretched(lines[index], column)
        and not _across(lines, index, column)
    }


def _stretched(line: Line, column: int) -> bool:
    """Whether a line reads as justified text across the columns."""
    return prose(line.text) and "  " in re.sub(r"(?<=[.!?:])  ", " ", line.cells[column:])


def _across(lines: Sequence[Line], index: int, column: int) -> bool:
    """Whether a sentence of a paragraph runs through a line with one blank before the column, from above or into the next."""
    line = lines[index]
    if line.cells[column - GUTTER : column] == " " * GUTTER:
        return False
    pairs = ((place - 1, place) for place in (index, index + 1) if not parted_above(lines, place))
    return any(
        goes_on(lines[first], lines[second])
        and not any(starts_at(lines[place], column) for place in (first, second))
        and not all(_filled_up_to(lines[place], column) for place in (first, second))
        for first, second in pairs
    )


def _filled_up_to(line: Line, column: int) -> bool:
    """Whether a word at the start of a line ends one blank before a column at which another begins: a key that fills its column."""
    key = line.cells[line.indent : column - 1]
    return " " not in key and line.cells[column - 1 : column] == " " != line.cells[column : column + 1]


def _newspaper(lines: Sequence[Line], run: Run) -> bool:
    """Whether the columns are read one after the other: running text, an index, or lists."""
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules]
    return len(content) >= 5 and (
        prose_columns(content, run.columns) or index_columns(content, run.columns) or headed_lists(lines, run)
    )


def _settle(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> list[Block] | None:
    """The table of a run; None where it is none, and no block where all of it is a list."""
    content = [lines[index] for index in range(run.start, run.end) if index not in run.rules | run.rests]
    run.columns = without_chance(content, parted_columns(content, run.columns))
    if len(run.columns) < 2:
        return None
    run.columns = squeezed(content, by_rule(lines, run))
    beside = [line for line in content if filled(line, run.columns) >= 2]
    headed = any(segmented(lines[index].text) or run.start < index < run.end - 1 for index in run.rules)
    blank = sum(b[0] - a[1] for a, b in pairwise(run.columns))
    broad = (len(run.columns) > 2 and blank >= 8) or blank >= BROAD
    if headed and text_above(lines, run):
        return None
    labelled = centred(lines, run)
    if len(beside) < (2 if headed or broad or even_pair(lines, run) else 3) or len(beside) < (
        least_share(content, run, labelled or loud_names(lines, run) or loud_head(content, run))
        * len(content)
    ):
        return None
    if not (
        aligned(content, run.columns)
        or aligned(content[unkeyed_lines(content, run) :], run.columns)
        or aligned_apart(content, run.columns)
    ):
        return None
    if not headed and (justified_text(lines, run, content) or text_beside_keys(content, run)):
        return None
    if not headed and one_key(content, run):
        run.end = _to_gap(lines, run.end)
        part = lines[run.start : run.end]
        return [Block(Kind.PREFORMATTED, lines=keep_lines(part), code=True, note="output of a program")]
    if coded_lines(content, run) > 0.35 * len(content):
        return None
    texts = [cell(line, run.columns, index) for line in content for index in range(len(run.columns))]
    if not headed and (
        bullets(content, run) or (len(run.columns) == 2 and not labelled and keyed_list(content, run))
    ):
        return []
    if not any(any(char.isalnum() for char in text) for text in texts):
        return None
    run.columns = without_labels(content, run.columns)
    printed = [
        Block(Kind.FURNITURE, lines=keep_lines(lines[first:last]))
        for first, last in printed_again(lines, run)
    ]
    return [make_table(printed_once(lines, run.start, run), run, hyphens), *printed]


def _to_gap(lines: Sequence[Line], end: int) -> int:
    """The end of the lines right below a run that stand where its last one does."""
    while end < len(lines) and not lines[end].apart and lines[end].indent == lines[end - 1].indent:
        end += 1
    return end
