"""Entries without a sign, one below the other: what does not fit on the first line of one hangs deeper than it."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import typed
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.measure import closed

STEPS = range(2, 7)
"""Cells by which the rest of an entry hangs."""


def hung(part: Sequence[Line], right: int) -> bool:
    """Whether the rest of an entry hangs below its first line, and the next entry begins right below at its column."""
    for index in range(len(part) - 2):
        above, below = part[index : index + 2]
        if not hangs_below(above, below, right):
            continue
        end = index + 2
        while end < len(part) and part[end].indent == below.indent:
            end += 1
        if end < len(part) and part[end].indent == above.indent and next_entry(part[end - 1], part[end]):
            return True
    return False


def hangs_below(above: Line, below: Line, right: int) -> bool:
    """Whether a full line that ends no sentence stands over one that hangs, neither of them program text."""
    full = not closed(above.text) and shortfall(above, below, right) <= NEAR
    return full and below.indent - above.indent in STEPS and not (typed(above.text) or typed(below.text))


def next_entry(above: Line, below: Line) -> bool:
    """Whether a line begins with a capital, no deeper than the line above it, which ends a sentence."""
    begun = below.text[:1].isupper() or below.text[:1] == "["
    return begun and closed(above.text) and not above.text.endswith(":") and below.indent <= above.indent
