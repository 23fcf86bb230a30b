"""What stands in the columns of a page, line by line, and whether it reads as running text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby, pairwise

from fit.document.text.columns.gutters import cell
from fit.document.text.line import Line
from fit.document.text.signs.measure import closed, prose

NARROWEST = 15
"""Cells of a column, at least."""
SHORTEST = 8
"""Lines of a page of columns, at least."""
ROWS = 3
"""Rows of a small table in a column of text, at least."""
_BETWEEN_CELLS = re.compile(r"(?<=\S) {3}")
"""Blanks that part the cells of a row; justified text has narrower ones."""


def texts_of(lines: Sequence[Line], columns: Sequence[tuple[int, int]], number: int) -> list[str]:
    """What stands in one column, line by line."""
    return [cell(line, columns, number) for line in lines]


def spaced(lines: Sequence[Line], columns: Sequence[Sequence[str]]) -> list[list[str]]:
    """The texts of each column, with the blank lines between."""
    return [
        [
            part
            for line, text in zip(lines, texts, strict=True)
            for part in ([""] if line.gap else []) + [text]
        ]
        for texts in columns
    ]


def all_read(columns: Sequence[Sequence[str]]) -> bool:
    """Whether all columns are running text; in some of them small tables may stand."""
    reads = [_reads(texts) for texts in columns]
    return any(reads) and all(
        read or _reads(_without_rows(texts)) for read, texts in zip(reads, columns, strict=True)
    )


def _without_rows(texts: Sequence[str]) -> list[str]:
    """A column with its rows of a small table left blank: several lines below one another with wide blanks inside."""
    left: list[str] = []
    for rows, part in groupby(texts, lambda text: _BETWEEN_CELLS.search(text) is not None):
        run = [*part]
        left += [""] * len(run) if rows and len(run) >= ROWS else run
    return left


def _reads(texts: Sequence[str]) -> bool:
    """Whether a column is running text: most of its lines are full or end a sentence, half of them are sentences by themselves."""
    filled = [text for text in texts if text]
    if len(filled) < SHORTEST:
        return False
    lengths = sorted(map(len, filled))
    width = lengths[int(len(lengths) * 0.9)]
    pairs = [(above, below) for above, below in pairwise(texts) if above and below]
    full = sum(len(above) + 1 + len(below.split()[0]) > width for above, below in pairs)
    ended = sum(closed(above) for above, _ in pairs)
    words = sum(map(prose, filled))
    return (
        width >= NARROWEST
        and full >= 0.3 * len(pairs)
        and full + ended >= 0.5 * len(pairs)
        and words >= 0.5 * len(filled)
    )
