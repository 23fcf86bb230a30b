"""Where paragraphs, sentences, lines and words end in what the big screen shows."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from fit.loss.words import RowWords
from fit.remedy.findings import BreakEnd

_SENTENCE = re.compile(r"[.!?][)\]\"'\u2019\u201d\u00bb]*$")


def find_ends(rows: Sequence[RowWords], origin: Callable[[int], int]) -> dict[int, BreakEnd]:
    """What ends at which place, a place being the byte after a word's last glyph.

    A paragraph ends where the row below holds no word; the best of what ends at a place counts.
    """
    with_words = {row.row for row in rows}
    ends: dict[int, BreakEnd] = {}
    for row in rows:
        for index, word in enumerate(row.words):
            at_line_end = index == len(row.words) - 1
            if at_line_end and row.row + 1 not in with_words:
                end = BreakEnd.PARAGRAPH
            elif not word.text[-1].isalnum() and _SENTENCE.search(word.text):
                end = BreakEnd.SENTENCE
            else:
                end = BreakEnd.LINE if at_line_end else BreakEnd.WORD
            ends[origin(word.last) + 1] = end
    return ends
