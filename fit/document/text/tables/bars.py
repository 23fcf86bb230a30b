"""Bars and rules of tables with drawn columns."""

from __future__ import annotations

import re

from fit.document.text.line import Line

BARS = "|\u2502\u2551\u2503"
CROSSES = "+|\u250c\u252c\u2510\u251c\u253c\u2524\u2514\u2534\u2518\u2554\u2566\u2557\u2560\u256c\u2563\u255a\u2569\u255d\u256a\u256b\u255e\u2561\u255f\u2562\u2564\u2567\u2565\u2568\u2552\u2555\u2558\u255b\u2553\u2556\u2559\u255c\u2502\u2551"
"""Where rules and bars meet, or a rule ends."""
_BARS = frozenset(BARS)
_RULE = re.compile(
    rf"[{re.escape(CROSSES)}:]?[-=\u2500\u2550_:]+(?:[{re.escape(CROSSES)}:][-=\u2500\u2550_:]+)*[{re.escape(CROSSES)}:]?"
)
_PLUS = re.compile(r"(?<=\w)\+(?=\w)")
"""A sign within a word, as U+2191 has it: no crossing of lines."""


def rule(line: Line) -> bool:
    """Whether the line is one rule from side to side."""
    return len(line.text) >= 3 and _RULE.fullmatch(line.text) is not None


def bars_of(line: Line, also: str = "") -> list[int]:
    """The columns of the bars of a line, and of the signs ``also`` that stand outside words."""
    if not also and _BARS.isdisjoint(line.cells):
        return []
    found = [column for column, char in enumerate(line.cells) if char in BARS or char in also]
    return [column for column in found if not _PLUS.match(line.cells, column)] if also else found
