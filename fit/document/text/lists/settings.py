"""Settings with what they mean beside them, all at one column: `lamp="north"   which lamp is lit`, however long one is."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from fit.document.text.line import Line

LEAST = 3
"""Settings that wide blanks part from their texts at one column, at least."""
_SETTING = re.compile(
    r"[A-Za-z_][\w.-]*=(?:\"[^\"]*\"|'[^']*'|[^\s\"']+)(?: ?\\)?(?P<blank> +)(?=[A-Za-z]\S* \S)"
)
"""A name and its value, and words behind them."""


def find_settings(lines: Sequence[Line], taken: Sequence[object]) -> dict[int, int]:
    """For each line that begins with such a setting, the column of its text; all at its indent around it do so."""
    found: dict[int, int] = {}
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or "=" not in line.text or "  " not in line.text or taken[index] is not None:
            continue
        if _SETTING.match(line.text):
            rows, floor = _rows(lines, taken, index)
            found.update(rows)
    return found


def _rows(lines: Sequence[Line], taken: Sequence[object], first: int) -> tuple[dict[int, int], int]:
    """The settings from a line on, no blank line between, with the columns of their texts; and where they end."""
    indent = lines[first].indent
    rows: dict[int, int] = {}
    wide: Counter[int] = Counter()
    end = first
    while end < len(lines) and taken[end] is None and not (end > first and lines[end].apart):
        line = lines[end]
        match = _SETTING.match(line.text)
        if line.indent < indent or (line.indent == indent and match is None):
            return {}, end + 1
        if line.indent == indent and match is not None:
            rows[end] = indent + match.end()
            wide[rows[end]] += len(match["blank"]) > 1
        end += 1
    column, often = wide.most_common(1)[0]
    level = all(place == column or (place > column and end - 1 == index) for index, place in rows.items())
    under = all(line.indent in {indent, column} for line in lines[first:end])
    return (rows if often >= LEAST and level and under else {}), end
