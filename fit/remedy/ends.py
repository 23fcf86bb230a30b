"""Where paragraphs, sentences and lines end in what the big screen shows."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import zip_longest

from fit.loss.words import RowWords
from fit.remedy.findings import BreakEnd
from fit.screen.pieces import glyph_count

_SENTENCE = re.compile(r"[.!?][)\]\"'\u2019\u201d\u00bb]*$")


def find_ends(rows: Sequence[RowWords], origin: Callable[[int], int]) -> dict[int, BreakEnd]:
    """What ends at which place, a place being the byte after a word's last glyph. Ends of mere words are left out.

    A paragraph ends where the row below holds no word. No line ends where the terminal only cut it.
    """
    ends: dict[int, BreakEnd] = {}
    for row, below in zip_longest(rows, rows[1:]):
        for word in row.words:
            if not word.text[-1].isalnum() and _SENTENCE.search(word.text):
                ends[origin(word.last) + 1] = BreakEnd.SENTENCE
        place = origin(row.words[-1].last) + 1
        if below is None or below.row != row.row + 1:
            ends[place] = BreakEnd.PARAGRAPH
        elif not _goes_on(row, below):
            ends.setdefault(place, BreakEnd.LINE)
    return ends


def _goes_on(row: RowWords, below: RowWords) -> bool:
    """Whether the row below takes up the output where this one stops, so that the terminal cut the line."""
    last = row.pieces[-1]
    return last[2] + glyph_count(last) == below.pieces[0][2]
