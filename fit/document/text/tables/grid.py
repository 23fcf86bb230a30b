"""The lines of a run with columns to a table: its head, its rows, their cells."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.columns.gutters import Run
from fit.document.text.columns.margin_rests import margin_rests
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.signs.measure import closed, starts_small
from fit.document.text.signs.rules import ruled_off, segmented
from fit.document.text.tables.cell_text import cell_text
from fit.document.text.tables.heads import (
    counts_columns,
    in_order,
    is_shorter,
    names_columns,
    numerals,
    plain_names,
    repeated_heads,
    tells,
    without,
)
from fit.document.text.tables.row_groups import centred_groups
from fit.document.text.tables.rows import group_rows, sections
from fit.document.text.tables.shared_cells import columns_under, share
from fit.document.text.tables.two_up import parts_beside, rows_beside

ROW_LINES = 5
"""Lines between two rules, on average, at most, where each rule parts two rows and the first of them need be no head."""
SEVERAL = 3
"""Columns of a table, at least, of which one may be a second column of keys."""
HUNG = 3
"""Cells by which the rest of a key may be set in below it, at most."""
TALLEST = 3
"""Lines of a head without a word over the keys, at most."""
DASHES = ("- ", "-- ", "\u2013 ", "\u2014 ")
"""Before what a key means."""
NUMBER = re.compile(r"[-+(]?[$\u00a3]?\d[\d.,:/%h)-]*\s?[%a-zA-Z\u00b0']{0,3}|[-\u2013.]+|n/a")
_SAYS = re.compile(r"[A-Z]\w*(?: \w+)*: \S.*")
"""A key that has its own name before it, as a memo has them at its head: no name of a column is missing above it."""
_SUM = re.compile(rf"{NUMBER.pattern}|(?:[$\u00a3]\s*)?(?:\d[\d.,]*|_{{3,}})")
"""A figure, or the blank for one, perhaps behind the sign of a currency that stands apart."""


def _rule(line: Line) -> bool:
    return ruled_off(line.text) or segmented(line.text)


def printed_again(lines: Sequence[Line], run: Run) -> list[tuple[int, int]]:
    """Where the run's head is printed again."""
    found = repeated_heads(lines[run.start : run.end], _rule)
    return [(run.start + first, run.start + last) for first, last in found]


def printed_once(lines: Sequence[Line], start: int, run: Run) -> list[Line]:
    """The lines from ``start`` to the run's end, heads printed again left out."""
    again = [(first - start, last - start) for first, last in printed_again(lines, run)]
    return without(lines[start : run.end], again)


def _pieces(line: Line, run: Run) -> list[Text]:
    starts = [first for first, _ in run.columns]
    if len(starts) >= SEVERAL:
        starts = [_whole(line, start) for start in starts]  # a key may run into the text of two columns
    return [
        line.piece(0 if index == 0 else start, starts[index + 1] if index + 1 < len(starts) else line.end)
        for index, start in enumerate(starts)
    ]


def _whole(line: Line, start: int) -> int:
    """Where a column starts in a line: behind a word that stands across its edge, the label of a sum."""
    if start and line.cells[start - 1 : start].strip(" ") and line.cells[start : start + 1].strip(" "):
        start += len(line.cells[start:].partition(" ")[0])
    return start


def make_table(lines: Sequence[Line], run: Run, hyphens: Hyphens) -> Block:
    """The table of a run's lines, those of heads printed again left out."""
    content: list[Line] = []
    fresh: list[bool] = []
    after_rule = False
    rule_after: list[int] = []
    for line in lines:
        if _rule(line):
            after_rule = True
            if _across(line, run):
                rule_after.append(len(content))
            continue
        content.append(line)
        fresh.append(after_rule or (line.gap > 0 and not line.crossing))
        after_rule = False
    starts = [first for first, _ in run.columns]
    strokes = [frozenset(columns_under(line, starts)) for line in content]
    pieces = [
        [Text() if column in ruled else piece for column, piece in enumerate(_pieces(line, run))]
        for line, ruled in zip(content, strokes, strict=True)
    ]
    for index in margin_rests(content, run.columns):
        line = content[index]
        pieces[index] = [Text()] * (len(starts) - 1) + [line.piece(line.indent, line.end)]
    shared = share(pieces, strokes, fresh, hyphens)
    pieces, fresh = shared.cells, shared.fresh
    grid = [[piece.chars.strip(" ") for piece in row] for row in pieces]
    head = _tall(grid, fresh, _head(grid, fresh, rule_after))
    head = 0 if tells(_joined(grid[:head])) or (head and in_order(grid[head:])) else head
    beside = parts_beside(_joined(grid[:head])) if head and not shared.spans else []
    if beside:
        lined = [[list(range(head))] * len(starts), *rows_beside(grid, fresh, beside, head)]
        cells = tuple(
            tuple(
                cell_text([pieces[index][column] for index in group], hyphens)
                for column, group in enumerate(row)
            )
            for row in lined
        )
        note = "table that goes on at its right"
        return Block(Kind.TABLE, lines=keep_lines(lines), rows=cells, header_rows=1, note=note)
    groups: list[list[int]] = [list(range(head))] if head else []
    parts = None if shared.spans else centred_groups(grid[head:], sections(fresh[head:]))
    if parts is not None:
        shared = shared.with_labels([[[head + i for i in row] for row in part] for part in parts], hyphens)
        pieces = shared.cells
    rest = group_rows(grid[head:], fresh[head:]) if parts is None else [row for part in parts for row in part]
    rest = _with_hung(grid, [[head + index for index in group] for group in rest], pieces, fresh)
    groups += rest
    headed = bool(head) or _headed_rows(grid, fresh, groups)
    rows = tuple(
        shared.named(
            group,
            tuple(
                cell_text([pieces[index][column] for index in group], hyphens)
                for column in range(len(starts))
            ),
        )
        for group in groups
    )
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=rows,
        header_rows=int(headed),
        note="table with blank gutters",
    )


def _with_hung(
    grid: Sequence[Sequence[str]],
    rows: Sequence[list[int]],
    pieces: Sequence[Sequence[Text]],
    fresh: Sequence[bool],
) -> list[list[int]]:
    """The rows, each with the line below it that has the rest of its key, set in where all keys stand flush.

    The key's rest stands alone there, or beside rests of cells: small letters under words, and not under each cell of the row.
    """
    shifts = [len(row[0].chars) - len(row[0].chars.lstrip(" ")) for row in pieces]
    hung = {row[0] for row in rows if _hung(grid, row[0], fresh)}
    keyed = [row[0] for row in rows if grid[row[0]][0] and any(grid[row[0]][1:])]
    flush = min((shifts[index] for index in keyed), default=0)
    found: list[list[int]] = []
    for row in rows:
        index = row[0]
        alone = len(row) == 1 and _alone(grid[index])
        rest = found and index in hung and (alone or len(found[-1]) == 1)
        if rest and found[-1][0] in keyed and 0 < shifts[index] - flush <= HUNG:
            found[-1] = [*found[-1], *row]
        else:
            found.append(row)
    level = all(shifts[index] == flush for index in keyed if index not in hung)
    return found if level and len(keyed) >= SEVERAL else list(rows)


def _hung(grid: Sequence[Sequence[str]], index: int, fresh: Sequence[bool]) -> bool:
    """Whether a line below another has a word of a key, and beside it at most what may go on from some cells of that one."""
    if not index or fresh[index] or not grid[index][0]:
        return False
    above = grid[index - 1]
    beside = [column for column, text in enumerate(grid[index]) if text and column]
    fewer = len(beside) + 1 < sum(map(bool, above))
    return not beside or (
        fewer
        and all(
            starts_small(grid[index][column])
            and any(map(str.isalpha, above[column]))
            and not closed(above[column])
            for column in beside
        )
    )


def _joined(grid: Sequence[Sequence[str]]) -> list[str]:
    """The text of each column."""
    return [" ".join(filter(None, column)) for column in zip(*grid, strict=True)]


def _across(line: Line, run: Run) -> bool:
    """Whether a rule runs over most of the table's width: one under the head does."""
    return segmented(line.text) or line.end >= run.columns[-1][0]


def _head(grid: Sequence[Sequence[str]], fresh: Sequence[bool], rules: Sequence[int]) -> int:
    """How many lines are the head: those above the first inner rule, or a first line unlike the others."""
    inner = [place for place in rules if 0 < place < len(grid)]
    if inner and inner[0] <= 4 and not _summed(grid, inner[0]):
        if any(row[0] and row[0] == other[0] for row in grid[: inner[0]] for other in grid[inner[0] :]):
            return 0  # a key that comes again
        top = _joined(grid[: inner[0]])
        parting = len(inner) >= 3 and len(inner) * ROW_LINES >= len(grid)
        return 0 if parting and not names_columns(top, grid[inner[0] :]) else inner[0]
    if len(grid) < 3 or not all(grid[0][_keys(grid) :]) or _dashed(grid):
        return 0
    height = _unkeyed(grid)
    first, rest = grid[0], grid[height:]
    if any(NUMBER.fullmatch(text) for text in first if text):
        return int(counts_columns(first, rest, apart=fresh[1]))
    for column in range(len(first)):
        below = [row[column] for row in rest if row[column]]
        figures = any(char.isdigit() for char in first[column])
        named = bool(first[column]) or len(below) >= 0.5 * len(rest)
        if (
            below
            and named
            and not figures
            and sum(NUMBER.fullmatch(text) is not None for text in below) >= 0.8 * len(below)
        ):
            return height
    loud = all(text.upper() == text for text in first if text) and any(char.isalpha() for char in first[-1])
    quiet = sum(row[-1].upper() != row[-1] for row in rest if row[-1]) >= 0.5 * len(rest)
    return _head_apart(grid, fresh) or (1 if _named(first, rest) or (loud and quiet) else 0)


def _dashed(grid: Sequence[Sequence[str]]) -> bool:
    """Whether a dash stands before the text of each row, the first one too: what its key means, and no name of a column."""
    return len(grid[0]) == 2 and all(row[1].startswith(DASHES) for row in grid if row[0])


def _unkeyed(grid: Sequence[Sequence[str]]) -> int:
    """The lines, at most three, that name columns above the first row with a key, none of them with a figure; or 1."""
    height = 1
    if grid[0][0]:
        return height
    while (
        height < min(TALLEST, len(grid) - 2)
        and not grid[height][0]
        and not any(NUMBER.fullmatch(text) for text in grid[height] if text)
    ):
        height += 1
    return height if grid[height][0] else 1


def _keys(grid: Sequence[Sequence[str]]) -> int:
    """How many columns of keys need no name: two where the first row leaves both blank and each other row has both."""
    return 1 + (not any(grid[0][:2]) and all(all(row[:2]) for row in grid[1:]))


def _summed(grid: Sequence[Sequence[str]], place: int) -> bool:
    """Whether the two rows above a rule both have a key and a figure, as no head has them: it is drawn under a sum.

    A figure may be left for the reader to fill in.
    """
    return place >= 2 and all(
        row[0] and _SUM.fullmatch(row[-1]) is not None for row in grid[place - 2 : place]
    )


def _tall(grid: Sequence[Sequence[str]], fresh: Sequence[bool], head: int) -> int:
    """The lines of the head with those right below, without a key, in which its names go on in small letters."""
    while (
        0 < head < len(grid) - 1
        and not fresh[head]
        and not grid[head][0]
        and all(
            not text or (starts_small(text) and above)
            for text, above in zip(grid[head], grid[head - 1], strict=True)
        )
        and not _above_key(grid, fresh, head)
    ):
        head += 1
    return head


def _above_key(grid: Sequence[Sequence[str]], fresh: Sequence[bool], index: int) -> bool:
    """Whether a text that begins in a line goes on beside the key right below it: that key stands in its middle."""
    text, key, below = grid[index][-1], grid[index + 1][0], grid[index + 1][-1]
    return bool(text and key) and not fresh[index + 1] and starts_small(below) and not closed(text)


def _head_apart(grid: Sequence[Sequence[str]], fresh: Sequence[bool]) -> int:
    """The lines above the only blank line of a table of three columns or more: at most three, without figures.

    What comes again in its column below the blank line is a value there, and no name of the column.
    """
    parted = [place for place, new in enumerate(fresh) if new and place]
    if len(parted) != 1 or parted[0] > 3 or parted[0] * 2 > len(grid) or len(grid[0]) < 3:
        return 0
    head, rest = grid[: parted[0]], grid[parted[0] :]
    first = [text for row in head for text in row if text]
    values = [set(texts) for texts in zip(*rest, strict=True)]
    again = any(text and text in values[column] for row in head for column, text in enumerate(row))
    return 0 if again or any(NUMBER.fullmatch(text) for text in first) else parted[0]


def _headed_rows(
    grid: Sequence[Sequence[str]], fresh: Sequence[bool], groups: Sequence[Sequence[int]]
) -> bool:
    """Whether blank lines part all rows, some of them wrapped, and the first, right above them perhaps, names columns of longer cells."""
    if len(grid[0]) < 3 or len(groups) < 4 or len(groups[0]) > 1 or len(groups) == len(grid):
        return False
    rest = [
        [" ".join(grid[line][column] for line in group) for column in range(len(grid[0]))] for group in groups
    ]
    parted = all(fresh[group[0]] for group in groups[2:])
    return parted and is_shorter(grid[0], rest[1:]) and names_columns(grid[0], rest[1:])


def _alone(row: Sequence[str]) -> bool:
    """Whether one cell of a line is filled and no other: it goes on from the line above."""
    return sum(map(bool, row)) == 1


def _named(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first row names the columns: capitals first, where the others have figures or small letters."""
    if not first[0] and len(first) > 2:
        if all(row[0] for row in rest):
            return True
        if rest[0][0] and names_columns(first, rest) and all(row[0] or _alone(row) for row in rest):
            return True
    if not all(text[:1].isupper() and len(text) <= 20 for text in first if text) or not all(first):
        return False
    keys = [row[0] for row in rest if row[0]]
    figures = len(keys) > 1 and all(any(map(str.isdigit, key)) for key in keys)
    if plain_names(first) and figures and not all(map(_SAYS.fullmatch, keys)):
        return True
    if numerals(keys):
        return True
    plain = sum(any(text[:1].islower() or text[:1].isdigit() for text in row) for row in rest)
    return plain >= 0.8 * len(rest)
