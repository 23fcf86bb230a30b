"""The word beside a sum: it stands wherever its writer had room, over a gutter too."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.columns.anchors import mask
from fit.document.text.line import Line

_LABEL = re.compile(r"( *[^\W\d_](?:\S| (?=\S))*)  +(\S*\d\S*)")


def sum_label(above: Line, line: Line, columns: Sequence[tuple[int, int]]) -> int:
    """The cells of the words beside a sum, as a mask, under a stroke below the figures of the last column; or 0."""
    match = _LABEL.fullmatch(line.cells)
    under = above.indent >= columns[-1][0] - 1 and abs(above.end - line.end) <= 1
    return mask(match[1]) if under and match and not any(map(str.isalpha, match[2])) else 0
