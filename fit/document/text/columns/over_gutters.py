"""What stands over a gutter and does not close it: a key that runs into its text, the word beside a sum."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.anchors import mask
from fit.document.text.line import Line

_LABEL = re.compile(r"( *[^\W\d_](?:\S| (?=\S))*)  +(\S*\d\S*)")


def run_in(line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """The two cells before the second of two settled columns that a key at the margin runs into, as a mask; or 0."""
    if len(columns) != 2 or line.indent != columns[0][0]:
        return 0
    start = columns[1][0]
    key, text = line.cells[line.indent : start], line.cells[start:]
    meets = " " not in key and key[-1:].islower() and text[:1].isupper() and text[1:2].islower()
    return 3 << (start - 2) if meets and " " in text else 0


def sum_label(above: Line, line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """The cells of the words beside a sum, as a mask, under a stroke below the figures of the last column; or 0."""
    match = _LABEL.fullmatch(line.cells)
    under = above.indent >= columns[-1][0] - 1 and abs(above.end - line.end) <= 1
    return mask(match[1]) if under and match and not any(map(str.isalpha, match[2])) else 0


def to_fill_in(line: Line, columns: Sequence[tuple[int, int]]) -> bool:
    """Whether a line is an empty line of a form: underscores alone, where a column after the first begins."""
    return set(line.text) == {"_"} and any(line.indent == first for first, _ in columns[1:])
