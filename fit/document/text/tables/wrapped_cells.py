"""Cells that go on in the line below: the next word had no room, or a sentence goes on."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.signs.measure import closed, hangs, prose, small_word, starts_small

Cells = Sequence[str]
BROAD = 24
"""Cells of a column of which a full one, and not just the longest phrase, goes on with a capital."""
UNWRAPPED = 10**6
_WORDED = re.compile(r"(?:[(\"'`]?[^\W\d_](?:[^\W\d_]|['-])*[,;:.!?)\"']*(?: +|$))+")
"""Plain words, however wide the blanks between them are: a justified line has wide ones."""
_GAP = re.compile(" {6}")
"""Blanks wider than those of a justified line with words that are not plain."""
_BLANKS = re.compile(" {2,}")
_TOLERANCES = (" +/-", " \u00b1")
"""After which a figure must follow."""
_ARROWS = ("<--", "-->")
"""Before what the other side answers: it goes on from nothing."""
_SENTENCES = re.compile(r"(?<=[.!?:])  (?=\S)")


def text_width(cells: Cells) -> int:
    """The width at which a column's text was wrapped; beyond any where none of its cells has two words."""
    return max(map(len, cells)) if any(" " in cell for cell in cells) else UNWRAPPED


def wraps(grid: Sequence[Cells], above: int, below: int, column: int, width: int) -> bool:
    """Whether a cell goes on below: the next word had no room, or a sentence goes on."""
    first, second = (_SENTENCES.sub(" ", grid[line][column]) for line in (above, below))
    if len(first) >= width - 1 and (_WORDED.fullmatch(first) or (prose(first) and not _GAP.search(first))):
        first = _BLANKS.sub(" ", first)
    if "   " in first or "   " in second or second.startswith(_ARROWS):
        return False
    if first[0].isdigit() and second[0].isdigit():
        return first.endswith(_TOLERANCES) or (first.endswith(",") and " " in first)
    if ")" in second and first.rfind("(") > first.rfind(")"):
        return True
    full = len(grid[above][column]) + 1 + len(second.split()[0]) > width
    if not starts_small(second) and not hangs(first):
        full = full and width >= BROAD
    open_ = first.endswith((",", "-")) and first.strip("-") != ""  # a dash alone is a value
    return full or open_ or links(first, second)


def links(first: str, second: str) -> bool:
    """Whether a phrase of some words goes on in small letters, or with a small word that begins no phrase of its own."""
    if not starts_small(second):
        return False
    linked = second.islower() and " " in second and first[0].isupper() and not closed(first)
    return len(first.split()) > 2 or (linked and small_word(second.split(maxsplit=1)[0]))


def full_above(above: str, below: str, width: int) -> bool:
    """Whether the first word of a cell had no room behind the one above it."""
    return len(above) + 1 + len(below.split(maxsplit=1)[0]) > width
