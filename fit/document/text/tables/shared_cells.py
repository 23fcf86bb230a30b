"""Rules over some columns only: the rows that they part share the cells beside them, which stand at any height there."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import takewhile

from fit.document.blocks import Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.signs.titled_rules import rule_behind
from fit.document.text.tables.cell_text import cell_text

SEVERAL = 2
"""Columns without bars that such a rule goes over, at least: under one alone a sum is drawn."""
_STROKE = re.compile(r"\s*[-=+\u2500\u2550\u253c\u256a]{3,}\s*")


def stroke(text: str) -> bool:
    """Whether a cell holds a rule and nothing else."""
    return _STROKE.fullmatch(text) is not None


def columns_under(line: Line, starts: Sequence[int]) -> range:
    """Of the columns that begin at ``starts`` those that a rule behind a label goes over, to the last of at least two."""
    first = len(starts)
    place = rule_behind(line)
    if place >= 0:
        first = next((column for column, start in enumerate(starts) if column and start >= place), first)
    return range(first, len(starts)) if len(starts) - first >= SEVERAL else range(0)


@dataclass(slots=True)
class Shared:
    """The lines of a table, the cells that several rows share moved to the first line of them."""

    cells: list[list[Text]]
    fresh: list[bool]
    """Before which lines a rule or a blank line stands; after rules over some columns, too."""
    spans: dict[int, tuple[int, frozenset[int]]] = field(default_factory=dict)
    """For each line below such a rule the first line with its columns, and those that the rows share."""

    def named(self, group: Sequence[int], row: tuple[Text, ...]) -> tuple[Text, ...]:
        """A row of the lines of ``group``, the cells that it shares said again."""
        if group[0] not in self.spans:
            return row
        top, columns = self.spans[group[0]]
        return tuple(
            self.cells[top][column].again() if column in columns and not cell.chars else cell
            for column, cell in enumerate(row)
        )

    def with_labels(self, groups: Sequence[Sequence[Sequence[int]]], hyphens: Hyphens) -> Shared:
        """The same lines, the label beside the rows of each group moved to the first line of them, to be said with each."""
        found = Shared([list(row) for row in self.cells], self.fresh, dict(self.spans))
        for rows in groups:
            held = [index for row in rows for index in row]
            label = cell_text([self.cells[index][0] for index in held], hyphens)
            for index in held:
                found.cells[index][0] = label if index == held[0] else Text()
            found.spans |= {row[0]: (held[0], frozenset({0})) for row in rows[1:]}
        return found


def spread(
    cells: Sequence[list[Text]], strokes: Sequence[frozenset[int]], index: int, joined: Sequence[bool]
) -> Text | None:
    """Say the names in a line of a head again over each column that they stand over; a rule below them parts those.

    ``joined`` says which columns no bar parts there from the one before. A name alone in its line, over all columns
    that have names of their own below, is that of the table; nothing is said again, and this gives it.
    """
    below = next((ruled for ruled in strokes[index + 1 :] if ruled), frozenset())
    row = cells[index]
    for column in sorted(below):
        others = list(takewhile(lambda other: joined[other] and other in below, range(column + 1, len(row))))
        if (
            not row[column].chars.strip(" ")
            or not others
            or any(row[other].chars.strip(" ") for other in others)
        ):
            continue
        name = row[column]
        if len(others) + 1 == len(below) >= len(row) - 1 and not any(
            cell.chars.strip(" ") for cell in row[:column]
        ):
            return name
        for other in others:
            row[other] = name.again()
    return None


def share(
    cells: Sequence[Sequence[Text]],
    strokes: Sequence[frozenset[int]],
    fresh: Sequence[bool],
    hyphens: Hyphens,
) -> Shared:
    """The lines of a table of which ``strokes`` says which cells hold a rule; those cells are empty already."""
    found = Shared([list(row) for row in cells], list(fresh))
    if not any(strokes):
        return found
    starts = [index for index, new in enumerate(fresh) if new or not index]
    for first, last in zip(starts, [*starts[1:], len(cells)], strict=True):
        ruled = [index for index in range(first, last) if strokes[index]]
        free = frozenset(range(len(cells[0]))).difference(*(strokes[index] for index in ruled))
        if not ruled or not free or ruled[0] == first:
            continue
        for column in free:
            whole = cell_text([cells[index][column] for index in range(first, last)], hyphens)
            for index in range(first, last):
                found.cells[index][column] = whole if index == first else Text()
        found.spans |= dict.fromkeys(range(ruled[0] + 1, last), (first, free))
        for index in ruled:
            if index + 1 < last:
                found.fresh[index + 1] = True
    return found
