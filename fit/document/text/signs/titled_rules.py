"""Titles that stand in a rule: `---- Stores --------------`, `----[ Stores ]----`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed

ACROSS = 40
"""Characters of a rule with a title at its left, at least: it goes across the text."""
_BRACKETED = re.compile(r"([-=*~_+#])\1{2,} ?\[ ?(?P<title>[^\[\]]*\w[^\[\]]*?) ?\] ?(?:\1{3,})?")
_AT_LEFT = re.compile(r"(?P<lead>([-=*~#])\2{2,7}) (?P<title>\S(?: {0,2}(?!\2\2)\S)*) (?P=lead)\2+")
"""A title near the left end of a rule: one in its middle may be a measure in a drawing."""

_TIGHT = re.compile(r"([-=*~])\1{0,2}(?P<title>[A-Z]{2,}(?: [A-Z]{2,}){0,4})\1{8,}")
"""A title in capitals right in a rule, no blank beside it: `-STORES------------`."""

_PAIRS = ("--", "==", "**", "~~")
_BETWEEN = re.compile(r"([-=*~]{2}) (?P<title>[A-Z\d]\S*(?: \S+){0,7}) \1")
_BANNER = re.compile(r"([-=*~#_+])\1{2,} +(?P<title>[^\W_].*?) +\1{3,}")
"""A title anywhere in a rule, which other rules must show to be one."""


@lru_cache(maxsize=1 << 12)
def titled_rule(text: str) -> tuple[int, int, int]:
    """Where the title that stands in a rule starts and ends, and its level; zeros where there is none."""
    if text[:1] not in "-=*~_+#":
        return (0, 0, 0)
    bracketed = _BRACKETED.fullmatch(text)
    match = bracketed or (
        (_AT_LEFT.fullmatch(text) or _TIGHT.fullmatch(text)) if len(text) >= ACROSS else None
    )
    if match is None or not any(map(str.isalnum, match["title"])):
        return (0, 0, 0)
    return (match.start("title"), match.end("title"), 1 if bracketed or text[0] in "=*#" else 2)


def titled_between(lines: Sequence[Line], index: int) -> bool:
    """Whether a title stands alone between blank lines, the same two signs on either side of it: `-- Stores --`."""
    text = lines[index].text
    if text[:2] not in _PAIRS or text[-2:] != text[:2]:
        return False
    match = _BETWEEN.fullmatch(text)
    alone = parted_above(lines, index) and parted_above(lines, index + 1)
    return match is not None and alone and not closed(match["title"])


def banner_title(line: Line) -> tuple[int, int]:
    """The columns of a title that stands anywhere in a rule; zeros where there is none."""
    match = _BANNER.fullmatch(line.text)
    return (line.indent + match.start("title"), line.indent + match.end("title")) if match else (0, 0)


_BEHIND = re.compile(r"(?<=[^\s=_~\u2500\u2550-]) {2,}(([-=\u2500\u2550])\2{7,})$")
_ENDS = ("---", "===", "\u2500\u2500\u2500", "\u2550\u2550\u2550")


def rule_behind(line: Line) -> int:
    """The column at which a rule begins that goes from behind a label to the line's end; -1 where none does."""
    if not line.cells.endswith(_ENDS):
        return -1
    match = _BEHIND.search(line.cells)
    return -1 if match is None else match.start(1)
