"""Heads of two storeys: names over rules that go over several columns each, and under every rule the names of these.

The upper name belongs to each of the lower ones, `Summer: oil` and `Summer: wick`: a row says both. Beside them may stand
names of single columns, with nothing under them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Text
from fit.document.text.columns.gutters import CELLS, Run
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow, keep_lines
from fit.document.text.signs.rules import segmented

HEIGHT = 2
"""Lines of the upper storey: names and their rules."""
SHARED = 2
"""Columns under a name of the upper storey, at least."""
_BEGINS = frozenset("-=_+\u250c\u251c\u256d")
_BRACES = re.compile(
    r"(?:\+-+\+|[\u250c\u251c\u256d]\u2500+[\u2510\u2524\u256e])(?: +(?:\+-+\+|[\u250c\u251c\u256d]\u2500+[\u2510\u2524\u256e]))+"
)
"""Rules with a corner or a cross at both ends, as little brackets over the columns."""
Span = tuple[int, int]


def upper_storey(lines: Sequence[Line], taken: Sequence[object], index: int) -> list[Span]:
    """The half-open cells of the rules or brackets right under the names in a line, one a name; or none."""
    if index + HEIGHT + 1 >= len(lines) or lines[index + 1].text[0] not in _BEGINS or lines[index + 1].apart:
        return []
    line, rule, below = lines[index : index + HEIGHT + 1]
    if (
        not (segmented(rule.text) or _BRACES.fullmatch(rule.text))
        or below.apart
        or any(one is not None for one in taken[index : index + 3])
    ):
        return []
    spans = [match.span() for match in CELLS.finditer(rule.cells)]
    names = [match.span() for match in CELLS.finditer(line.cells)]
    lower = [match.span() for match in CELLS.finditer(below.cells)]
    alone = [name for name in names if not any(_under(name, span) for span in (*spans, *lower))]
    upper = [name for name in names if name not in alone]
    over = len(upper) == len(spans) and all(
        rule[0] <= name[0] and name[1] <= rule[1] for name, rule in zip(upper, spans, strict=True)
    )
    shared = all(len([1 for name in lower if _under(name, span)]) >= SHARED for span in spans)
    return spans if over and shared and parted_above(lines, index) else []


def with_upper_storey(
    lines: Sequence[Line], index: int, run: Run, spans: Sequence[Span], table: Block, hyphens: Hyphens
) -> Block | None:
    """The table below the upper storey of its head, its names with those above them; None where it has no such head."""
    if table.header_rows != 1:
        return None
    names = [match.span() for match in CELLS.finditer(lines[index].cells)]
    head: list[Text] = []
    said: set[int] = set()
    for column, name in zip(run.columns, table.rows[0], strict=True):
        over = next((span for span in spans if _under(column, span)), column)
        place = next((place for place, upper in enumerate(names) if _under(upper, over)), -1)
        if place < 0 or (name.chars and over == column):
            head.append(name)
            continue
        upper = flow([lines[index].piece(*names[place])], hyphens)
        head.append(flow([upper.again() if place in said else upper, name], hyphens))
        said.add(place)
    blank = [name for place, name in enumerate(names) if place not in said]
    if any(name[0] <= run.columns[-1][0] for name in blank):
        return None
    head += [
        flow([lines[index].piece(*name)], hyphens) for name in blank
    ]  # of columns that have nothing in them
    rows = [(*row, *(Text() for _ in blank)) for row in table.rows[1:]]
    kept = keep_lines(lines[index : run.end])
    return replace(table, rows=(tuple(head), *rows), lines=kept, note="head of two storeys")


def _under(name: Span, rule: Span) -> bool:
    return name[0] < rule[1] and name[1] > rule[0]
