"""Lines of signs that are as long as the words right above them: those are a title."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above

_SIGNS = frozenset("=-~*_+#^\"'`.:<>")
_DRAWN = frozenset("=-~")
"""Signs of which two are a line under a word of two letters; two others are a mark of their own."""
_SOLID = re.compile(r"\S")
_NUMBERED = re.compile(r"(?:[A-Z]\.?)?(?:\d+\.?)*\d* +")
"""The number of a title; the blanks after it may be wide."""


def underlines(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is nothing but the underline of the title above it, of all of it or of each of its words."""
    return _level(lines, index) and (_words_ruled(lines[index - 1], lines[index]) or underline(lines, index))


def underline(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is one sign again and again, as long as the words above it, and the two stand apart."""
    rule = lines[index].text
    sign = rule[:1]
    if not _level(lines, index) or rule != sign * len(rule) or len(rule) < (2 if sign in _DRAWN else 3):
        return False
    text = lines[index - 1].text
    number = _NUMBERED.match(text)
    title = text[number.end() :] if number else text
    return title[:1].isalnum() and "   " not in title and _apart(lines, index)


def numbered_title(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a number and, behind a wide blank, a title, with an underline below both: no row of columns."""
    line = lines[index]
    number = _NUMBERED.match(line.text)
    if number is None or not line.text[:1].isdigit() or "  " in line.text[number.end() :]:
        return False
    return index + 1 < len(lines) and underline(lines, index + 1)


def _level(lines: Sequence[Line], index: int) -> bool:
    """Whether a line that begins with a sign stands right below one that starts, maybe after its number, and ends where it does."""
    rule = lines[index]
    if not index or rule.text[:1] not in _SIGNS or rule.apart:
        return False
    line = lines[index - 1]
    number = _NUMBERED.match(line.text)
    return rule.end == line.end and rule.indent - line.indent in {0, number.end() if number else 0}


def _words_ruled(line: Line, rule: Line) -> bool:
    """Whether a line has a rule under each of its words, and nothing else."""
    sign = rule.text[:1]
    level = sign in set("=-~_*") and "  " not in line.text
    return level and " " in rule.text and _SOLID.sub(sign, line.text) == rule.text


def _apart(lines: Sequence[Line], index: int) -> bool:
    """Whether nothing stands right above a line and the one before it, nor right below."""
    above = index == 1 or lines[index - 1].apart
    return above and parted_above(lines, index + 1)
