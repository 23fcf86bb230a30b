"""Titles of one line or several that a rule below them, or one above and one below, shows."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.measure import closed, hangs, prose, starts_small
from fit.document.text.signs.rules import ruled_off
from fit.document.text.titles.headings import (
    BY_EYE,
    LONGEST,
    NUMBERED,
    SECTION,
    SET_IN,
    TALLEST,
    gap,
    loud,
    nothing_below,
    underlined,
)

SHORT = 40
"""Cells of a title of several lines that begins with a small letter, at most."""
_LABEL = re.compile(r"^[A-Z][a-z]+: +")
"""A word before a title, which says what it is the title of."""
_IMPRINT = re.compile(r"(?:by|version|copyright|\(c\)|\u00a9) .*|.*[\w>]@\w.*", re.IGNORECASE)


def imprint(text: str) -> bool:
    """Whether a line of a title says who wrote it, or which version it is of."""
    return _IMPRINT.fullmatch(text) is not None


def underlined_each(lines: Sequence[Line], index: int) -> int:
    """The end of a title of two lines of which each has its rule: the second goes on in small letters; or 0."""
    end = index + 4
    if end > len(lines) or any(line.apart for line in lines[index + 1 : end]):
        return 0
    line, rule, below, last = lines[index:end]
    on = starts_small(below.text) or hangs(line.text.lower() if line.text.isupper() else line.text)
    return end if on and rule.text[0] == last.text[0] and underlined(lines, index + 2) else 0


def underlined_together(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether the lines ``start <= i < end`` are one heading with a rule as long as the longest below.

    Lines in capitals show it by themselves, and so does the number of a section; the rule may be that of the last one; others ask for a rule that is not one sign shorter or longer.
    """
    if end - start > TALLEST or parted_above(lines, end):
        return False
    part, rule = lines[start:end], lines[end]
    if not ruled_off(rule.text):
        return False
    right = max(line.end for line in part)
    if all(loud(line.text) for line in part) or (SECTION.match(part[0].text) and not closed(part[-1].text)):
        return abs(rule.end - right) <= 4 or (rule.indent, rule.end) == (part[-1].indent, part[-1].end)
    exact = (rule.indent, rule.end) == (min(line.indent for line in part), right)
    words = not any(closed(line.text) or "   " in line.text or len(line.text) > LONGEST for line in part)
    title = part[0].text[:1].isupper() or right - rule.indent <= SHORT
    return exact and words and title


def lines_over_rule(lines: Sequence[Line], start: int) -> int:
    """The end of the two or three lines, flush or each in the middle, that are one heading with a rule; else 0."""
    end = start + 1
    while end < min(len(lines), start + TALLEST) and not (lines[end].gap or ruled_off(lines[end].text)):
        end += 1
    apart = parted_above(lines, start)
    middles = [line.indent + line.end for line in lines[start:end]]
    level = max(middles) - min(middles) <= BY_EYE or len({line.indent for line in lines[start:end]}) == 1
    return end if apart and level and end > start + 1 and underlined_together(lines, start, end) else 0


def titles_over_rule(lines: Sequence[Line], start: int) -> int:
    """The end of the two or three titles in the middle, one below the other, of which the last alone has its rule; else 0."""
    if lines[start].indent < SET_IN or (start and not lines[start].apart):
        return 0
    end = start + 1
    while end < min(len(lines), start + TALLEST) and not (lines[end].apart or ruled_off(lines[end].text)):
        end += 1
    if end < start + 2 or parted_above(lines, end) or not ruled_off(lines[end].text):
        return 0
    part, rule = lines[start:end], lines[end]
    middles = [line.indent + line.end for line in part]
    exact = (rule.indent, rule.end) == (part[-1].indent, part[-1].end) and nothing_below(
        lines[end + 1] if end + 1 < len(lines) else None
    )
    words = not any(gap(line.text) or closed(line.text) for line in part)
    return end if exact and words and max(middles) - min(middles) <= 2 else 0


def between_rules(lines: Sequence[Line], index: int) -> int:
    """The end of the title that stands between a rule and another of the same place and length, or 0.

    One that is numbered or asks something may be as long as they are.
    """
    rule = lines[index]
    end = index + 1
    while end < min(len(lines), index + 1 + TALLEST) and not ruled_off(lines[end].text):
        end += 1
    part = lines[index + 1 : end]
    typed = (lines[index - 1], *part[:1]) if index and not rule.apart else part[:1]
    if any(line.text.startswith("> ") for line in typed):
        return 0  # what is typed at a prompt, or quoted, stands between two rules
    if not part or end >= len(lines) or any(line.apart for line in lines[index + 1 : end + 1]):
        return 0
    below = lines[end]
    alike = (below.indent, below.end, below.text) == (rule.indent, rule.end, rule.text)
    own = NUMBERED.match(part[0].text) is not None or part[-1].text.endswith("?")
    longest = max(LONGEST, len(rule.text)) if own else LONGEST
    title = not any(
        gap(_LABEL.sub("", line.text)) or len(line.text) > longest or _sentence(line.text) for line in part
    )
    return end if alike and title else 0


def _sentence(text: str) -> bool:
    return closed(text) and text.endswith(".") and prose(text)
