"""Titles in spaced letters, `T H E   L A M P`: their words are what the wider gaps part, and stay whole."""

from __future__ import annotations

import re

from fit.document.blocks import Mark, Text

_SPACED = re.compile(
    r"[^\W_](?: [^\W_a-z]| [.,:;!?&'-])+(?: {2,}(?:[^\W_]|[&-])(?: [^\W_a-z]| [.,:;!?&'-])*)*"
)
_BEFORE_REST = re.compile(rf"(?:{_SPACED.pattern})(?= {{2,}}\S\S)")
_GAP = re.compile(r" {2,}")
LETTERS = 4
"""Letters of a title in spaced capitals, at least: three alone are as well answers, or columns."""
WORDS_GAP = 2
"""Blanks between words of a title, where it is set anew."""


def spaced(text: str) -> bool:
    """Whether a line is nothing but capitals parted by one blank, in words parted by more."""
    title = text.strip()
    if title[1:2] != " " or title != title.upper():
        return False
    return sum(char.isupper() for char in title) >= LETTERS and _SPACED.fullmatch(title) is not None


def spaced_part(text: str) -> int:
    """Where such a title ends at the start of a line that goes on behind a gap with other words; 0 where there is none."""
    start = len(text) - len(text.lstrip(" "))
    if text[start + 1 : start + 2] != " " or not text[start : start + 1].isupper():
        return 0
    match = _BEFORE_REST.match(text, start)
    return match.end() if match and spaced(match[0]) else 0


def hold_words(text: Text) -> Text:
    """A spaced title with no line break inside its words, and gaps of two blanks between them."""
    chars = text.chars
    start, end = len(chars) - len(chars.lstrip(" ")), len(chars.rstrip(" "))
    kept: list[int] = []
    marks = bytearray()
    place = start
    for gap in _GAP.finditer(chars, start, end):
        kept.extend(range(place, gap.start() + WORDS_GAP))
        place = gap.end()
    kept.extend(range(place, end))
    own = text.marks or bytes(len(text))
    for here, following in zip(kept, [*kept[1:], -1], strict=True):
        apart = following == -1 or "  " in chars[max(start, here - 1) : here + 3]
        marks.append(own[here] | (0 if apart else Mark.NO_BREAK))
    return Text(
        "".join(chars[at] for at in kept),
        type(text.sources)("q", (text.sources[at] for at in kept)),
        bytes(marks),
    )
