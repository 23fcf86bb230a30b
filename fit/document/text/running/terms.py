"""Terms with what they mean on the lines below them, set deeper: as their company shows, none of them goes on there."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.lists.own_line_terms import bracketed
from fit.document.text.signs.joins import shortfall

STEP = 2
"""Cells by which a meaning is set deeper than its term, at least."""
ROOM = 10
"""Cells left free at the end of a term where its meaning would have gone on, at least: no margin is so ragged."""

_SIGN = re.compile(r"\(?\d{1,3}[.)]|--?[A-Za-z][\w-]*")
"""A number or an option with nothing behind it."""


def sign_alone(text: str) -> bool:
    """Whether a line is nothing but the number of an item or an option, which only the text below it can explain."""
    return _SIGN.fullmatch(text) is not None


def is_term(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether the line above is a term and this one its meaning: the entry before or after it is set alike."""
    if not _entry(lines, index - 1, right):
        return False
    column = lines[index].indent
    after, before = index + 1, index - 2
    while after < len(lines) and not parted_above(lines, after) and lines[after].indent == column:
        after += 1
    while before > 0 and not parted_above(lines, before) and lines[before].indent == column:
        before -= 1
    indent = lines[index - 1].indent
    return any(
        lines[first].indent == indent and lines[first + 1].indent == column
        for first in (after, before)
        if _entry(lines, first, right)
    )


def _entry(lines: Sequence[Line], first: int, right: int) -> bool:
    """Whether a line below a blank one stops far short of the margin or with its bracket, above one that is set deeper."""
    if not 0 <= first < len(lines) - 1 or not parted_above(lines, first) or parted_above(lines, first + 1):
        return False
    line, below = lines[first], lines[first + 1]
    ended = shortfall(line, below, right) >= ROOM or bracketed(line.text)
    return below.indent >= line.indent + STEP and ended
