"""What stands right above a table and belongs to it: a head whose names keep to no gutters, and a rule."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Text
from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.rules import ruled_off, segmented
from fit.document.text.tables.grid import NUMBER, SEVERAL, make_table, printed_once
from fit.document.text.tables.heads import counts_columns, plain_names, tells
from fit.document.text.titles.headings import underlined

Span = tuple[int, int]
"""Half-open cells."""
MANY = 4
"""Columns of a table, at least, whose names may stand like the words of a title."""
TIGHT = 4
"""Cells by which a rule that is as wide as a table is longer than the names above it, and no underline of a title, at least."""
MOST_FIGURES = 0.6
"""The share of figures in the columns beside keys where a head has no name for the keys."""


def with_head(
    lines: Sequence[Line],
    taken: Sequence[object],
    run: Run,
    blocks: list[Block],
    hyphens: Hyphens,
    floor: int,
) -> tuple[int, list[Block]]:
    """Take a head line just above whose words stand over the columns without keeping to the gutters."""
    above = run.start - 1
    if above < floor or taken[above] is not None or blocks[0].header_rows:
        return run.start, blocks
    if (
        above > floor
        and taken[above - 1] is None
        and (broad := _broad_names(lines, run) or _tight_names(lines, run))
    ):
        return above - 1, [_headed(lines, above - 1, run, blocks[0], broad), *blocks[1:]]
    line = lines[above]
    parts = [m.span() for m in CELLS.finditer(line.cells)]
    if names := _named_apart(lines, parts, run):
        run.columns = [column for column, _ in names]
        table = make_table(printed_once(lines, run.start, run), run, hyphens)
        named = tuple(flow([line.piece(*name)], hyphens) for _, name in names)
        return above, [_headed(lines, above, run, table, named), *blocks[1:]]
    loud = loud_names(lines, run) or _names_apart(lines, run)
    if lines[run.start].gap > 1 or (
        lines[run.start].gap and not loud and not _over_figures(line, parts, run, blocks[0])
    ):
        return run.start, blocks
    if loud:
        pass
    elif len(parts) == len(run.columns) - 1 and _over_figures(line, parts, run, blocks[0]):
        parts = [(0, 0), *parts]
    elif by_eye(lines, above) == len(run.columns):
        parts = (
            parts if len(parts) == len(run.columns) else [m.span() for m in re.finditer(r"\S+", line.cells)]
        )
    elif words := _single_words(line, run):
        parts = words
    elif _over_pair(lines, parts, run):
        pass
    elif len(parts) != len(run.columns) or run.start not in run.rules:
        return run.start, blocks
    head = tuple(flow([line.piece(first, last)], hyphens) for first, last in parts)
    if tells([text.chars for text in head]):
        return run.start, blocks
    return above, [_headed(lines, above, run, blocks[0], head), *blocks[1:]]


def _headed(lines: Sequence[Line], start: int, run: Run, block: Block, head: tuple[Text, ...]) -> Block:
    """The table with a head, which begins at line ``start``."""
    kept = keep_lines(printed_once(lines, start, run))
    return replace(block, lines=kept, rows=(head, *block.rows), header_rows=1)


def _broad_names(lines: Sequence[Line], run: Run) -> tuple[Text, ...]:
    """The name over each column, where a parted rule under fewer names shows which columns each of them is for; or nothing."""
    names, rule = lines[run.start - 2 : run.start]
    if not segmented(rule.text) or rule.gap:
        return ()
    spans = [match.span() for match in CELLS.finditer(names.cells)]
    parts = [match.span() for match in CELLS.finditer(rule.cells)]
    if (
        len(spans) != len(parts)
        or len(parts) >= len(run.columns)
        or not plain_names(CELLS.findall(names.cells))
    ):
        return ()
    over = [
        [place for place, part in enumerate(parts) if part[0] < last and part[1] > first]
        for first, last in run.columns
    ]
    if any(len(places) != 1 for places in over) or {places[0] for places in over} != set(range(len(parts))):
        return ()
    texts = [names.piece(*span) for span in spans]
    return tuple(
        texts[here[0]].again() if above == here else texts[here[0]]
        for above, here in zip([[], *over[:-1]], over, strict=True)
    )


def _tight_names(lines: Sequence[Line], run: Run) -> tuple[Text, ...]:
    """The names over a rule of the table's width, each right where its column begins, one blank between them; or nothing."""
    names, rule = lines[run.start - 2 : run.start]
    starts = [first for first, _ in run.columns]
    if rule.apart or lines[run.start].apart or not ruled_off(rule.text) or names.indent != starts[0]:
        return ()
    if rule.end - names.end <= TIGHT or any(
        not names.cells[first : first + 1].isupper() for first in starts[1:]
    ):
        return ()
    parts = pairwise([*starts, names.end])
    head = tuple(names.piece(first, len(names.cells[:last].rstrip(" "))) for first, last in parts)
    return head if plain_names([text.chars for text in head]) else ()


def by_eye(lines: Sequence[Line], index: int) -> int:
    """How many columns a line names that stands alone on top of a table, its names not over the columns; or 0.

    Names are parted by wide blanks; or each is one word, and there are more of them than a title is likely to have.
    """
    line = lines[index]
    if not parted_above(lines, index) or parted_above(lines, index + 1):
        return 0
    names = CELLS.findall(line.cells)
    if len(names) == 1:
        names = line.text.split()
        return len(names) if len(names) >= MANY and plain_names(names) else 0
    return len(names) if len(names) >= SEVERAL and plain_names(names) else 0


def loud_names(lines: Sequence[Line], run: Run) -> bool:
    """Whether names in capitals stand alone above a run, one over each column, a blank line above and below them."""
    parts = _alone_above(lines, run)
    if len(parts) < 2 or not lines[run.start - 1].text.isupper():
        return False
    return not any(map(str.isdigit, lines[run.start - 1].text)) and _stand_over(parts, run.columns)


def _alone_above(lines: Sequence[Line], run: Run) -> list[tuple[int, int]]:
    """The half-open cells of the words right above a run, as many as it has columns, a blank line above and below them; or none."""
    if not run.start or lines[run.start].gap != 1 or not lines[run.start - 1].apart:
        return []
    parts = [match.span() for match in CELLS.finditer(lines[run.start - 1].cells)]
    return parts if len(parts) == len(run.columns) else []


def _stand_over(parts: Sequence[tuple[int, int]], columns: Sequence[tuple[int, int]]) -> bool:
    """Whether each of the names stands over some of its own column."""
    return all(
        first < column[1] and last > column[0] for (first, last), column in zip(parts, columns, strict=True)
    )


def _over_pair(lines: Sequence[Line], parts: Sequence[tuple[int, int]], run: Run) -> bool:
    """Whether a table of two columns begins below its lead: with a name over one-word keys, and one over the middle of their texts."""
    above = run.start - 1
    line = lines[above]
    if len(parts) != 2 or len(run.columns) != 2 or lines[run.start].apart or run.rules:
        return False
    if not (parted_above(lines, above) or lines[above - 1].text.endswith(":")) or any(
        map(str.isdigit, line.text)
    ):
        return False
    (first, _), (start, _) = run.columns
    content = lines[run.start : run.end]
    keys = [row.cells[first:start].strip(" ") for row in content]
    middle = (start + max(row.end for row in content)) // 2
    named = all(len(line.cells[left:right].split()) <= SEVERAL for left, right in parts)
    over = parts[0][0] == first and parts[0][1] <= start < parts[1][0] <= middle <= parts[1][1] + TIGHT
    return named and over and len(keys) >= SEVERAL and all(key and " " not in key for key in keys)


def _names_apart(lines: Sequence[Line], run: Run) -> bool:
    """Whether names stand alone above a run of three columns or more, one over each, a blank line above and below them."""
    parts = _alone_above(lines, run)
    if len(parts) < SEVERAL or not _over(lines[run.start - 1], parts, run):
        return False
    return plain_names([lines[run.start - 1].cells[first:last] for first, last in parts])


def _over_figures(line: Line, parts: Sequence[tuple[int, int]], run: Run, block: Block) -> bool:
    """Whether words stand over the columns, with or without one over the keys, and all other cells hold figures."""
    columns = run.columns[len(run.columns) - len(parts) :]
    names = [line.cells[first:last] for first, last in parts]
    rows = [[text.chars for text in row] for row in block.rows]
    keyed = len(parts) < len(run.columns)
    figures = [text for row in rows for text in (row[1:] if keyed else row[-1:]) if text]
    sure = MOST_FIGURES if keyed and all(row[0] for row in rows) else 1
    return (
        len(run.columns) - len(parts) in {0, 1}
        and len(parts) > 1
        and (not any(map(NUMBER.fullmatch, names)) or counts_columns([""] * keyed + names, rows, apart=True))
        and _stand_over(parts, columns)
        and sum(NUMBER.fullmatch(text) is not None for text in figures) >= sure * len(figures)
    )


def _named_apart(lines: Sequence[Line], parts: Sequence[Span], run: Run) -> list[tuple[Span, Span]]:
    """Each column of the rows right below with the name over it, where words stand over columns that rows crowd; or none.

    What stands over two columns is two names, if its words stand each over its own; a column below two names is two
    columns, if the rows leave one cell blank between these, and most of them have text on both sides. Else it has both.
    """
    above, columns = run.start - 1, run.columns
    if lines[run.start].apart or len(parts) != len(columns) or len(parts) < SEVERAL:
        return []
    line = lines[above]
    if sum(_beside(part, column) for part in parts for column in columns) <= len(parts):
        return []
    names: list[Span] = []
    for first, last in parts:
        whole = sum(_beside((first, last), column) for column in columns) < 2
        words = [match.span() for match in re.finditer(r"\S+", line.cells[first:last])]
        names += [(first, last)] if whole else [(first + left, first + right) for left, right in words]
    if not plain_names([line.cells[first:last] for first, last in names]):
        return []
    rows = [lines[index] for index in range(run.start, run.end) if index not in run.rules | run.rests]
    over = [[name for name in names if _beside(name, column)] for column in columns]
    if not all(over) or [name for here in over for name in here] != names:
        return []
    found: list[tuple[Span, Span]] = []
    for column, here in zip(columns, over, strict=True):
        found_cuts = [_cut(rows, column, one[1], other[0]) for one, other in pairwise(here)]
        cuts = [cut for cut in found_cuts if cut]
        if len(cuts) < len(found_cuts):
            found.append((column, (here[0][0], here[-1][1])))
            continue
        edges = [(column[0], column[0]), *cuts, (column[1], column[1])]
        found += [
            ((one[1], other[0]), name) for (one, other), name in zip(pairwise(edges), here, strict=True)
        ]
    return found


def _cut(rows: Sequence[Line], column: Span, first: int, last: int) -> Span | None:
    """The blank cells that part a column in all rows, between two names over it; or nothing."""
    blank = [
        place
        for place in range(first, last)
        if not any(row.cells[place : place + 1].strip(" ") for row in rows)
    ]
    if not blank:
        return None
    left = blank[0]
    right = next(place for place in range(left, last + 1) if place not in blank)
    both = sum(
        bool(row.cells[column[0] : left].strip(" ") and row.cells[right : column[1]].strip(" "))
        for row in rows
    )
    return (left, right) if 2 * both > len(rows) else None


def _beside(part: Span, column: Span) -> bool:
    """Whether a name stands over some of a column."""
    return part[0] < column[1] and part[1] > column[0]


def _over(line: Line, parts: Sequence[tuple[int, int]], run: Run) -> bool:
    """Whether words, none of them a number, stand each over its own column of at least three."""
    named = all(line.cells[first].isupper() for first, _ in parts)
    return len(parts) > 2 and named and _stand_over(parts, run.columns)


def _single_words(line: Line, run: Run) -> list[tuple[int, int]]:
    """The words of a line of nothing but names of one word, one over each of three columns or more; or none."""
    words = line.text.split()
    if len(words) != len(run.columns) or not plain_names(words):
        return []
    parts = [match.span() for match in re.finditer(r"\S+", line.cells)]
    return parts if _over(line, parts, run) else []


def with_top_rule(
    lines: Sequence[Line], taken: Sequence[object], place: tuple[int, Run], blocks: list[Block], floor: int
) -> tuple[int, list[Block]]:
    """Take the rule just above a table that has others; one under a heading is the heading's."""
    start, run = place
    above = start - 1
    if above < floor or taken[above] is not None or lines[start].gap or not ruled_off(lines[above].text):
        return start, blocks
    if not run.rules or (above and underlined(lines, above - 1)):
        return start, blocks
    return above, [replace(blocks[0], lines=keep_lines(printed_once(lines, above, run))), *blocks[1:]]
