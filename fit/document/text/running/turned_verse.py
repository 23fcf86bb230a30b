"""Verse whose long lines are turned over: what found no room stands deeper than every line of the stanza."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import closed, starts_small

LEAST = 4
"""Printed lines of such a stanza, at least."""
ENDED = 0.6
"""The share of its lines of verse that end in a sign, at least."""
SPARE = 2
"""Cells by which a turned-over line may miss the longest one, though the next word had room."""
SIGN = re.compile(r"(?:[,.;:!?]|--)[\"')\u201d\u2019]*$")
"""The sign that ends a line of verse."""


def turned_verse(part: Sequence[Line]) -> bool:
    """Whether lines of verse start with capitals at two indents in turn, and each that is too long goes on deeper than both.

    Entries with hanging text have one indent for what begins and one for what goes on.
    """
    if len(part) < LEAST:
        return False
    deepest = max(line.indent for line in part)
    starts = [line.indent for line in part if line.indent < deepest]
    if part[0].indent == deepest or any(above == below for above, below in pairwise(starts)):
        return False
    widest = max(line.end for line in part)
    verses: list[str] = []
    for index, line in enumerate(part):
        if line.indent < deepest:
            if not line.text[:1].isupper():
                return False
            verses.append(line.text)
            continue
        above = part[index - 1]
        fills = shortfall(above, line, widest) <= SPARE
        if not (fills and starts_small(line.text) and not closed(above.text)) or above.indent == deepest:
            return False
        verses[-1] = line.text
    ended = sum(SIGN.search(text) is not None for text in verses)
    return len(verses) > 2 and SIGN.search(verses[-1]) is not None and ended >= ENDED * len(verses)
