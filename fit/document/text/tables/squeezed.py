"""Columns that a single blank parts in all rows: the rule under the head is parted there, or there are names and figures."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.line import Line
from fit.document.text.signs.rules import segmented
from fit.document.text.tables.heads import plain_names

ROWS = 3
"""Rows below a head, at least, that show a column behind a single blank."""
_FIGURE = re.compile(r"[-+]?\d[\d.,:]*%?")


def squeezed(content: Sequence[Line], columns: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The columns, those parted that one blank parts: under names with a capital each, figures stand on one side of it."""
    if len(content) <= ROWS or not plain_names(CELLS.findall(content[0].cells)):
        return columns
    parted: list[tuple[int, int]] = []
    for index, (first, last) in enumerate(columns):
        end = (
            columns[index + 1][0] if index + 1 < len(columns) else max(last, *(line.end for line in content))
        )
        cells = [line.cells[first:end].ljust(end - first) for line in content]
        blank = next((place for place in range(1, last - first) if _blank(cells, place)), 0)
        parted += [(first, first + blank), (first + blank + 1, last)] if blank else [(first, last)]
    return parted


def by_rule(lines: Sequence[Line], run: Run) -> list[tuple[int, int]]:
    """The columns of a run, those parted where the rule under its head is and no other line has anything."""
    rule = next((lines[index] for index in sorted(run.rules)[:2] if segmented(lines[index].text)), None)
    if rule is None or run.start in run.rules:
        return run.columns
    edges = [match.start() for match in re.finditer(r"(?<=\S )\S", rule.cells)]
    content = [lines[index].cells for index in range(run.start, run.end) if index not in run.rules]
    tight = [edge for edge in edges if not any(cells[edge - 1 : edge].strip(" ") for cells in content)]
    parted: list[tuple[int, int]] = []
    for first, last in run.columns:
        inner = [edge for edge in tight if first < edge < last]
        parted += zip([first, *inner], [*(edge - 1 for edge in inner), last], strict=True)
    return parted


def _blank(cells: Sequence[str], place: int) -> bool:
    """Whether all cells, the first of which is a head's, have a blank at a place, with figures on one side of it."""
    if any(text[place] != " " or not text[:place].strip() or not text[place:].strip() for text in cells):
        return False
    left, right = [text[:place] for text in cells], [text[place + 1 :] for text in cells]
    named = right[0].strip()[0].isupper()
    tight = all(text[-1] != " " for text in left[1:]) or all(text[0] != " " for text in right[1:])
    tight = tight or all("  " in text[max(0, place - 1) : place + 2] for text in cells)
    counted = any(all(_FIGURE.fullmatch(text.strip()) for text in side[1:]) for side in (left, right))
    return named and tight and counted
