"""Change bars: `|` in the right margin beside the lines that a revision changed. They are no words of these lines."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

LEAST = 2
"""Lines with a bar in one column, at least."""
SHARE = 0.6
"""Share of them that are running text, at least: else the bar is the side of a drawing or a table."""

EDGE = 0.9
"""Share of the widest line at which they stand, at least."""


def bar_column(lines: Sequence[Line]) -> int:
    """The column of the change bars, at the right edge of the text; 0 where there are none."""
    barred = [line for line in lines if line.cells.endswith("  |") and line.cells.count("|") == 1]
    counts = Counter(line.end - 1 for line in barred)
    column, times = counts.most_common(1)[0] if counts else (0, 0)
    words = sum(line.end - 1 == column and prose(line.cells[:column]) for line in barred)
    if times < LEAST or words < SHARE * times:
        return 0
    widest = max(line.end for line in lines if prose(line.text))
    return column if column >= EDGE * widest else 0


def part_bar(line: Line, column: int) -> tuple[Line, Line]:
    """The line without the bar at ``column``, and the bar, which stands aside."""
    bare, bar = line.cut(0, column), line.cut(column, line.end)
    bare.page, bare.ending, bar.aside = line.page, line.ending, True
    return bare, bar
