"""What a line at the edge of a page is known by: its shape, which is the line with its numbers blanked."""

from __future__ import annotations

import re
from itertools import pairwise

from fit.document.text.line import Line

NUMBER = re.compile(r"\d+|(?<![a-z])[ivxlc]+(?![a-z])")
_SPACES = re.compile(r"[\s_=-]{2,}|\s")
ONLY_NUMBER = re.compile(r"\W*(?:page|p\.|pg\.?)?\W*#(?:\W+#)?\W*(?:of #)?\W*")
EDGE_NUMBER = re.compile(
    r"^\W{0,3}(?:page )?(\d+)(?:\W{0,3}$|\s{3,}(?=\S))|(?:\s{3,}|page |[-\u2013|/] ?|^)\(?\[?(\d+)\W{0,3}$",
    re.IGNORECASE,
)
DRAWN = re.compile(r"[+|\u2500-\u257f].*[+|\u2500-\u257f]$")
_WIDE = re.compile(r" {3,}")
WORDY = 6
"""Letters that the constant part of a running head has, at least."""
_ROMAN = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100}


def shape(text: str) -> str:
    """A line with its numbers and spacing blanked."""
    return _SPACES.sub(" ", NUMBER.sub("#", text.strip().lower()))


def parts(text: str) -> list[str]:
    """The words at the edges of a line that wide blanks part: a running head has its book on one side."""
    found = _WIDE.split(text.strip())
    if len(found) not in {2, 3}:
        return []
    return [part for part in {found[0], found[-1]} if sum(map(str.isalpha, part)) >= WORDY]


def page_value(text: str) -> int | None:
    """The last number of a line that can be a page number."""
    found = [*NUMBER.finditer(text.lower())]
    if not found:
        return None
    digits = found[-1].group()
    if digits.isdigit():
        return int(digits) if len(digits) < 6 else None
    values = [_ROMAN[char] for char in digits]
    return sum(-a if a < b else a for a, b in pairwise([*values, 0]))


def stands_alone(lines: list[Line], index: int) -> bool:
    before = index == 0 or not lines[index - 1].cells or lines[index].page
    after = index + 1 >= len(lines) or not lines[index + 1].cells or lines[index + 1].page
    return before and after
