"""Accounts whose figures a leader carries to the right: a title that leaves it no room."""

from __future__ import annotations

import re

from fit.document.text.line import Line

OVER = 6
"""Cells by which a title may push its figure beyond the end of the others."""
_FIGURE = re.compile(r"[$\u00a3\u20ac]?[\d.,/-]*\d[\w.,/-]*%?")


def figure(text: str) -> bool:
    """Whether a text is a figure, with its currency or as a share."""
    return _FIGURE.fullmatch(text) is not None


def full_entry(line: Line, value: tuple[int, int]) -> bool:
    """Whether a title left no room for a leader: its figure ends where that of another entry does."""
    words = line.text.split()
    return 0 <= line.end - value[1] <= OVER and len(words) > 1 and figure(words[-1])
