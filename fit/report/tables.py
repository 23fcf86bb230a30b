"""Tables of a text report: one column bends, the others are as wide as what they hold."""

from __future__ import annotations

from collections.abc import Sequence

from fit.report.plain import pad, wrap
from fit.width import text_cells

GAP = 2


def table(heads: Sequence[str], rows: Sequence[Sequence[str]], width: int, *, bends: int = 0) -> list[str]:
    """The lines of a table no wider than ``width``, where its narrow columns leave room for that.

    Column ``bends`` is aligned left and broken at words where it is too long; the others are aligned right.
    An empty head leaves no line of heads where all are empty.
    """
    cells = [list(heads), *map(list, rows)] if any(heads) else [list(row) for row in rows]
    widths = [max(map(text_cells, column)) for column in zip(*cells, strict=True)]
    others = sum(widths) - widths[bends] + GAP * (len(widths) - 1)
    widths[bends] = max(8, min(widths[bends], width - others))
    lines: list[str] = []
    for row in cells:
        lines += _row(row, widths, bends)
    return lines


def _row(row: list[str], widths: list[int], bends: int) -> list[str]:
    """One row: the figures stand beside the last line of the column that bends."""
    margin = row[bends][: len(row[bends]) - len(row[bends].lstrip())]
    bent = wrap(row[bends], widths[bends], first=margin, later=margin + "  ") or [""]
    lines = []
    for number, text in enumerate(bent, 1):
        shown = [text if index == bends else cell * (number == len(bent)) for index, cell in enumerate(row)]
        parts = [
            pad(cell, cells, right=index != bends)
            for index, (cell, cells) in enumerate(zip(shown, widths, strict=True))
        ]
        lines.append((" " * GAP).join(parts).rstrip())
    return lines
