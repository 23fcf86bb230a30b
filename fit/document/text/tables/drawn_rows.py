"""The lines of a table with drawn columns to its head and its rows."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import keep_lines
from fit.document.text.tables.bars import CROSSES, rule
from fit.document.text.tables.cell_text import cell_text
from fit.document.text.tables.heads import names_and_years, names_columns, plain_names, tells
from fit.document.text.tables.row_groups import row_groups
from fit.document.text.tables.rows import group_rows, one_row, sections
from fit.document.text.tables.shared_cells import Shared, share

SEVERAL = 2
"""Rules below a head, at least, of which the first may be one of its own kind."""
_DIGITS = re.compile(r"\d+")
_FIGURES = re.compile(r"[-+]?(?:0x)?[\da-fA-F]*\d[\da-fA-F.,:]*%?")


def drawn_table(
    lines: Sequence[Line],
    cells: Sequence[Sequence[Text]],
    strokes: Sequence[frozenset[int]],
    hyphens: Hyphens,
    *,
    again: bool,
    parted: bool,
) -> Block:
    """The table of its lines, of which ``cells`` has the cells; ``strokes`` says which of them held a rule.

    ``again`` says that the head was printed again, so that there is one; ``parted``, that each rule parts two rows.
    """
    fresh: list[bool] = []
    after_rule = True
    inner: list[tuple[int, str]] = []
    for line in lines:
        if rule(line):
            inner.append((len(fresh), line.text))
            after_rule = True
        else:
            fresh.append(after_rule or (line.gap > 0 and not line.crossing))
            after_rule = False
    inner = [(place, text) for place, text in inner if 0 < place < len(fresh)]
    header_end = inner[0][0] if inner else 0
    parted = parted or _parts_rows(cells, fresh, inner)
    widths = [_room([row[column] for row in cells]) for column in range(len(cells[0]))]
    shared = share(cells, strokes, fresh, hyphens)
    rows = _rows(shared, header_end, hyphens, widths, parted=parted)
    alike = len(inner) > 1 and len({_sort_of(text) for _, text in inner}) == 1
    if header_end and not again:
        texts = [[cell.chars for cell in row] for row in rows]
        single = len(inner) == 1 and _two_rows(lines, cells, header_end, widths)
        named = plain_names(texts[0]) if single else not alike or _named(texts[0], texts[1:])
        named = named or _set_off(cells, header_end)
        if not named or tells(texts[0]):
            header_end = 0
            rows = _rows(shared, 0, hyphens, widths, parted=parted)
    return Block(
        Kind.TABLE,
        lines=keep_lines(lines),
        rows=tuple(rows),
        header_rows=1 if header_end else 0,
        note="table with drawn columns",
    )


def _parts_rows(
    cells: Sequence[Sequence[Text]], fresh: Sequence[bool], inner: Sequence[tuple[int, str]]
) -> bool:
    """Whether the head has a rule of its own kind, and all below it rows of several lines, most with empty cells."""
    kinds = [_sort_of(text) for _, text in inner]
    if len(kinds) < SEVERAL or kinds[0] not in {"=", "\u2550"}:
        return False
    tall = [
        index
        for index in range(inner[0][0], len(cells))
        if not fresh[index] or (index + 1 < len(cells) and not fresh[index + 1])
    ]
    whole = sum(all(cell.chars.strip() for cell in cells[index]) for index in tall)
    return 2 * whole < len(tall)


def _two_rows(
    lines: Sequence[Line], cells: Sequence[Sequence[Text]], header_end: int, widths: Sequence[int]
) -> bool:
    """Whether the only inner rule is like the outer ones, and all below it is one row: each line but the first leaves a cell empty."""
    rules = {_sort_of(line.text) for line in lines if rule(line)}
    below = [[cell.chars.strip() for cell in row] for row in cells[header_end:]]
    outer = rule(lines[0]) and rule(lines[-1]) and len(rules) == 1
    tall = len(below) > 1 and not any(all(row) for row in below[1:])
    return outer and tall and one_row(below, range(len(below)), widths)


def _counted(grid: Sequence[Sequence[str]], part: Sequence[int]) -> list[list[int]]:
    """The lines between two rules as rows: each by itself where keys begin them that differ by a number alone, F1 and F2."""
    keys = [grid[index][0] for index in part]
    forms = {_DIGITS.sub("0", key) for key in keys}
    counted = len(forms) == 1 and "0" in forms.pop()
    return [[index] for index in part] if counted and len(keys) > 1 else [list(part)]


def _named(first: Sequence[str], rest: Sequence[Sequence[str]]) -> bool:
    """Whether the first of rows that are all set alike names the columns: by its words, years among them, or by what stands below.

    Only keys have no name, and each row has one; or all cells below its words are figures, those of several columns at least.
    """
    if names_columns(first, rest) or names_and_years(first, rest):
        return True
    keyed = len(first) > SEVERAL and not first[0] and all(first[1:]) and all(row[0] for row in rest)
    words = all(text[:1].isalpha() for text in first)
    counted = [all(map(_FIGURES.fullmatch, column)) for column in zip(*rest, strict=True)]
    return keyed or (
        words and (all(counted) or (sum(counted) >= SEVERAL <= len(rest) - 1 and not counted[0]))
    )


def _sort_of(text: str) -> str:
    """What a rule is made of, its ends and crossings left out."""
    return "".join(sorted(set(text) - set(CROSSES + ":")))


def _set_off(cells: Sequence[Sequence[Text]], header_end: int) -> bool:
    """Whether the first row stands out: centred over cells that all begin at the left."""
    head, body = cells[:header_end], cells[header_end:]
    shift = max(_shift(cell) for row in head for cell in row)
    return shift > 2 and all(_shift(cell) <= 1 for row in body for cell in row)


def _shift(text: Text) -> int:
    """The blanks before a cell's text."""
    return len(text.chars) - len(text.chars.lstrip(" ")) if text.chars.strip(" ") else 0


def _room(cells: Sequence[Text]) -> int:
    """The width of a drawn column's text: what stands between the bars, less the blanks at both sides."""
    pad = min((_shift(cell) for cell in cells if cell.chars.strip(" ")), default=0)
    return max(len(cell.chars) for cell in cells) - 2 * pad


def _rows(
    shared: Shared, header_end: int, hyphens: Hyphens, widths: Sequence[int], *, parted: bool
) -> list[tuple[Text, ...]]:
    """The rows; the first ``header_end`` lines are one, and so are all between two rules where they are ``parted``."""
    cells, fresh = shared.cells, shared.fresh
    groups = [list(range(header_end))] if header_end else []
    grid = [[cell.chars.strip() for cell in row] for row in cells[header_end:]]
    rest = sections(fresh[header_end:])
    parts = None if parted or shared.spans else row_groups(grid, rest, widths)
    if parts is not None:
        shared = shared.with_labels(
            [[[header_end + i for i in row] for row in part] for part in parts], hyphens
        )
        cells = shared.cells
        rest = [row for part in parts for row in part]
    elif parted:
        rest = [row for part in rest for row in _counted(grid, part)]
    else:
        rest = group_rows(grid, fresh[header_end:], widths)
    groups += [[header_end + index for index in group] for group in rest]
    return [
        shared.named(
            group,
            tuple(
                cell_text([cells[index][column] for index in group], hyphens) for column in range(len(widths))
            ),
        )
        for group in groups
    ]
