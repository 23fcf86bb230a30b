"""Leaders: the dots, strokes or blanks that carry a line to the page or value at its end."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.strokes import sign_row

LONGEST_VALUE = 24
"""Cells after a leader that are a value and no text that a key explains."""
SURE = 5
"""Signs of a leader to words, which an ellipsis has not."""
NEARBY = 3
"""Lines to another entry of a list of keys, at most."""
_LEADER = re.compile(
    r"^(?P<title>\s*\S.*?)\s*"
    r"(?P<dots>[.\u00b7\u2219]{3,}|(?:\s[.\u00b7\u2219]){3,}|_{4,}|(?:\. ){2,}\.?|\u2026{2,}|(?<=\s)-{5,}(?=\s))\s*(?P<value>(?:[^\W_]|[.($\u00a3\u20ac-]\w).*)$"
)
_DOTS = re.compile(r"\.\.\.|\s\.\s\.|\. \. |____|\u2026\u2026|-----|[\u00b7\u2219] ?[\u00b7\u2219]")
"""What every leader has: far faster to look for than the whole."""
_WIDE = re.compile(r"(?<=\S) {3,}(?=\S)")
_PAGE = re.compile(r"[\w.-]{0,8}")
_FIGURE = re.compile(r"[$\u00a3\u20ac]?[\d.,/-]*\d[\w.,/-]*%?")
OVER = 6
"""Cells by which a title without room for a leader may push its figure beyond the end of the others."""
NEAR = 1
"""Cells by which a rule may miss the end of the figures above it."""
WIDER = 3
"""Cells by which it may begin before them."""
_SHORT = re.compile(r"(?P<title>\s*\S.*?) +(?P<dots>[.\u00b7](?: ?[.\u00b7])?) +")


@dataclass(frozen=True, slots=True)
class Leader:
    """Where the parts of a line with a leader stand, in cells."""

    title: int
    """The end of the title."""
    dots: tuple[int, int]
    value: tuple[int, int]
    text: str
    """The value."""
    sure: bool = True
    """Whether it has more signs than an ellipsis."""


def leader_of(line: Line) -> Leader | None:
    match = _LEADER.match(line.cells) if _DOTS.search(line.cells) else None
    if match is None or len(match["value"]) > LONGEST_VALUE:
        return None
    if line.text[0] == line.text[-1] == "|":
        return None  # a row of a box
    if sign_row(line.text) > 1 or match["title"].strip() == match["value"].split()[0]:
        return None  # a row of a map, its number at both edges
    hyphens = match["dots"].startswith("-")
    if (hyphens and not figure(match["value"])) or code(line.text):
        return None
    signs = len(match["dots"].replace(" ", ""))
    return Leader(match.end("title"), match.span("dots"), match.span("value"), match["value"], signs >= SURE)


def _plain(leader: Leader) -> bool:
    """Whether the value is a page or a figure, so that no other line has to show that the leader is one."""
    page = _PAGE.fullmatch(leader.text) is not None
    return (page and (any(char.isdigit() for char in leader.text) or len(leader.text) < 6)) or figure(
        leader.text
    )


def without_keys(lines: Sequence[Line], leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those left out that lead to words beside a longer text that starts at the same column: they are keys.

    Nor does one lead to a number and, behind wide blanks, to what goes on from line to line in a column beside it.
    """
    long = {
        index: (match.start("value"), _beside(match["value"], match.start("value")))
        for index, line in enumerate(lines)
        if leaders[index] is None and ".." in line.text and (match := _LEADER.match(line.cells))
    }
    kept: list[Leader | None] = []
    column = 0  # of the numbers beside which something stands, down to the next blank line
    for index, leader in enumerate(leaders):
        column = 0 if lines[index].gap else column
        text = _beside(leader.text, leader.value[0]) if leader is not None and long else 0
        key = leader is not None and not any(char.isdigit() for char in leader.text)
        start = text or (leader.value[0] if leader is not None and key else 0)
        near = start and any(start in long.get(index + step, ()) for step in range(-NEARBY, NEARBY + 1))
        if index in long and long[index][1]:
            column = long[index][0]
        kept.append(None if leader is None or near or leader.value[0] == column else leader)
    return kept


def among_keys(lines: Sequence[Line], leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those left out that lead to words at the column of a key near them, one after the other.

    One that leads to words which go on below at their column is a key by itself; and so is one that leads to a figure
    at the column of a key right above or below it.
    """
    if not any(leaders):
        return list(leaders)
    columns = {
        index: match.start("value")
        for index, line in enumerate(lines)
        if leaders[index] is None and _DOTS.search(line.text) and (match := _LEADER.match(line.cells))
    }
    texts = {index for index, column in columns.items() if lines[index].cells[column].isalpha()}
    if not texts and all(leader is None or any(map(str.isdigit, leader.text)) for leader in leaders):
        return list(leaders)
    columns |= {
        index: leader.value[0]
        for index, leader in enumerate(leaders[:-1])
        if leader is not None and not lines[index + 1].apart and lines[index + 1].indent == leader.value[0]
    }
    kept = list(leaders)
    for order in (range(len(lines)), range(len(lines) - 1, -1, -1)) if columns else ():
        for index in order:
            leader = kept[index]
            if leader is None:
                continue
            around = set(range(index - NEARBY, index + NEARBY + 1))
            if any(char.isdigit() for char in leader.text):
                around = texts.intersection(_touching(lines, index))
            if any(columns.get(other) == leader.value[0] for other in around):
                kept[index] = None
                columns[index] = leader.value[0]
                texts.add(index)
    return kept


def with_short(lines: Sequence[Line], leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, and those of one sign or two, which a title leaves no more room, where others around lead to their column."""
    kept = list(leaders)
    for index, leader in enumerate(leaders):
        if leader is None or not leader.sure:
            continue
        for other in _touching(lines, index):
            column = leader.value[0]
            match = _SHORT.fullmatch(lines[other].cells[:column]) if kept[other] is None else None
            around = leaders[max(0, other - NEARBY) : other + NEARBY + 1]
            if match and sum(one is not None and one.value[0] == column for one in around) > 1:
                text = lines[other].cells[column:]
                value = (column, lines[other].end)
                if text[:1].strip():
                    kept[other] = Leader(match.end("title"), match.span("dots"), value, text, sure=False)
    return kept


def beside_floor(lines: Sequence[Line], index: int) -> bool:
    """Whether the dots of a line are the floor of a drawing: right above or below it is one as wide, between two walls.

    What stands at its ends then names a place on the wall.
    """
    line = lines[index]
    if " " in line.text:
        return False
    around = _touching(lines, index)
    return any(
        (lines[place].indent, lines[place].end) == (line.indent, line.end)
        and lines[place].text[0] == lines[place].text[-1] == "|"
        for place in around
    )


def _touching(lines: Sequence[Line], index: int) -> range:
    """A line and those right above and below it that no blank line parts from it."""
    below = index + 1 < len(lines) and not lines[index + 1].apart
    return range(index - (not lines[index].apart), index + 1 + below)


def _beside(value: str, start: int) -> int:
    """The column of what stands behind wide blanks in a value that begins at ``start``; 0 for nothing."""
    match = _WIDE.search(value)
    return start + match.end() if match else 0


def in_line(leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those to words left out that no other one nearby is in line with."""
    kept: list[Leader | None] = []
    for index, leader in enumerate(leaders):
        around = [*leaders[max(0, index - 3) : index], *leaders[index + 1 : index + 4]]
        even = leader is not None and any(
            other.sure and (other.dots[1], *other.value)[place] == (leader.dots[1], *leader.value)[place]
            for other in around
            if other is not None
            for place in range(3 if leader.sure else 2)
        )
        kept.append(leader if leader is not None and (_plain(leader) or even) else None)
    return kept


def figure(text: str) -> bool:
    """Whether a text is a figure, with its currency or as a share."""
    return _FIGURE.fullmatch(text) is not None


def full_entry(line: Line, value: tuple[int, int]) -> bool:
    """Whether a title left no room for a leader: its figure ends where that of another entry does."""
    words = line.text.split()
    return 0 <= line.end - value[1] <= OVER and len(words) > 1 and figure(words[-1])


def under_figures(line: Line, value: tuple[int, int]) -> bool:
    """Whether a line is a rule under a figure that stands at the half-open cells ``value``, and no wider."""
    level = abs(line.end - value[1]) <= NEAR and line.indent >= value[0] - WIDER
    return level and ruled_off(line.text)
