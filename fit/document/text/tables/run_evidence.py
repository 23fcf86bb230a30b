"""What the lines of a run with gutters show of it: how many of them are program text, rows, or the head of a table."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.gutters import CELLS, Run, cell, filled
from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.tables.grid import TALLEST
from fit.document.text.tables.heads import plain_names

SIGN = 3
"""Characters of a sign, at most: alone at the start of a line some look like a prompt, a remark or a command."""


def coded_lines(content: Sequence[Line], run: Run) -> int:
    """How many lines are program text; in a list of signs, each of them another, not those with words beside a sign."""
    coded = [line for line in content if code(line.text)]
    start = run.columns[1][0]
    keys = [key for line in content if (key := line.cells[:start].strip(" "))]
    signs = {key for key in keys if len(key) <= SIGN and not key.isalnum()}
    if len(run.columns) != 2 or 2 * len(signs) < len(keys):
        return len(coded)
    texts = [line.cells[start:] for line in coded if line.cells[:start].strip(" ") in signs]
    return len(coded) - sum(text[:1].isalnum() and not code(text) for text in texts)


def unkeyed_lines(content: Sequence[Line], run: Run) -> int:
    """The lines at the top, a head's at most, that have no key, above two at least that have one."""
    height = next(
        (place for place, line in enumerate(content[: TALLEST + 1]) if cell(line, run.columns, 0)), 0
    )
    return height if len(run.columns) > 2 and len(content) > height + 1 else 0


def least_share(content: Sequence[Line], run: Run, labelled: bool) -> float:
    """The share of lines with several cells, at least: less where all others are the rest of one cell in its column."""
    starts = {first for first, _ in run.columns[1:]}
    rest = [line for line in content if filled(line, run.columns) < 2]
    last = run.columns[-1][0]
    under = len(run.columns) > 2 and all(line.indent in starts or line.indent > last for line in rest)
    return 0.15 if under else 0.25 if labelled else 0.4


def loud_head(content: Sequence[Line], run: Run) -> bool:
    """Whether names in capitals begin the columns, in the first line, and every other line begins where one of them does.

    A cell may have many lines then, and the lines beside no other cell be most of them.
    """
    starts = [first for first, _ in run.columns]
    names = [match.start() for match in CELLS.finditer(content[0].cells)]
    loud = content[0].text.isupper() and plain_names(CELLS.findall(content[0].cells))
    return loud and names == starts and all(line.indent in starts for line in content)


def even_pair(lines: Sequence[Line], run: Run) -> bool:
    """Whether two lines that stand by themselves have one blank each, wide and up to the same column."""
    if run.end - run.start != 2 or len(run.columns) != 2:
        return False
    first, last = lines[run.start], lines[run.end - 1]
    above = lines[run.start - 1] if run.start else None
    below = lines[run.end] if run.end < len(lines) else None
    apart = above is None or first.gap or above.indent < first.indent
    apart = apart and (below is None or below.gap or below.indent < first.indent)
    gaps = [re.findall(r"(?<=\S) {2,}(?=\S)", line.text) for line in (first, last)]
    starts = {
        line.cells[: run.columns[1][0]].rstrip() + gap[0]
        for line, gap in zip((first, last), gaps, strict=True)
        if gap
    }
    even = {len(text) for text in starts} == {run.columns[1][0]}
    return bool(apart) and even and all(len(gap) == 1 and len(gap[0]) >= 3 for gap in gaps)
