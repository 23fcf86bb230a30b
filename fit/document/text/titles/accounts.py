"""Accounts whose figures a leader carries to the right: a title that leaves it no room, the rule under a sum, the sum."""

from __future__ import annotations

import re

from fit.document.text.line import Line
from fit.document.text.signs.rules import ruled_off

NEAR = 1
"""Cells by which a rule may miss the end of the figures above it."""
OVER = 6
"""Cells by which a title may push its figure beyond the end of the others."""
WIDER = 3
"""Cells by which it may begin before them."""
_FIGURE = re.compile(r"[$\u00a3\u20ac]?[\d.,/-]*\d[\w.,/-]*%?")


def figure(text: str) -> bool:
    """Whether a text is a figure, with its currency or as a share."""
    return _FIGURE.fullmatch(text) is not None


def under_figures(line: Line, value: tuple[int, int]) -> bool:
    """Whether a line is a rule under a figure that stands at the half-open cells ``value``, and no wider."""
    level = abs(line.end - value[1]) <= NEAR and line.indent >= value[0] - WIDER
    return level and ruled_off(line.text)


def alone_at_end(line: Line, value: tuple[int, int]) -> bool:
    """Whether a line is a figure and nothing else, its end under that of another."""
    return line.end == value[1] and figure(line.text)


def full_entry(line: Line, value: tuple[int, int]) -> bool:
    """Whether a title left no room for a leader: its figure ends where that of another entry does."""
    words = line.text.split()
    return 0 <= line.end - value[1] <= OVER and len(words) > 1 and figure(words[-1])
