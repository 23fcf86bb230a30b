"""Verse that its hanging quotation mark shows."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.joins import shortfall

_QUOTES = "\"'`\u201c\u2018"


def hanging_quote(part: Sequence[Line], around: int) -> bool:
    """Whether the quotation mark of a first line hangs left of the others, and each line had room for more."""
    if len(part) < 2 or part[0].text[:1] not in _QUOTES or part[1].text[:1] in _QUOTES:
        return False
    hangs = part[0].indent > 0 and all(line.indent > part[0].indent for line in part[1:])
    room = all(shortfall(above, below, around) > 1 for above, below in pairwise(part))
    return hangs and part[1].indent == part[0].indent + 1 and part[1].text[:1].isupper() and room
