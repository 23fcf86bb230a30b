"""Listings between two rules of the same length, as AsciiDoc delimits them: `----` above the first line and below the last one."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose
from fit.document.text.signs.strokes import strength

LONGEST = 200
"""Lines of a listing, at most."""
SHORTEST = 4
"""Signs of its rules, at least."""
LEAST = 3
"""Pairs around program text, at least, that show what the others hold."""
TALL = 3
"""Lines of a pair, its rules with them, above which no title stands in it: several rules so far apart show what they are for."""
SHARE = 3
"""Pairs for one of which the lines between them show it: a command of small words shows nothing."""
CELLS = 2
"""Cells of a row of a table, at least, beside its key."""
_CELLS = re.compile(r"\S+(?: \S+)*")
_ATTRIBUTES = re.compile(r"\[(?:source|listing|literal)\b[^\]]*\]")
"""What says of the lines below what they are: `[source,sh]`."""
_BEFORE = re.compile(r"\.[^\s.].*|\[[^\]]*\]|\+")
"""A line that may stand between text and the upper rule: the listing's name behind a dot, what it is, or that the item goes on."""


def find_listing_blocks(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such listings, with both rules and what stands over them right above.

    What stands between two rules is told by its attributes, or by most of its lines. Where attributes tell it once, or
    several pairs show it, the others of the document are listings too: that is how it sets them.
    """
    rules = [
        place
        for place, line in enumerate(lines)
        if line.text[:4] in {"----", "...."} and _ruled(line) and taken[place] is None
    ]
    pairs: list[tuple[int, int]] = []
    end = 0
    for index, (first, last) in enumerate(pairwise(rules)):
        after = rules[index + 2] if index + 2 < len(rules) else len(lines)
        if (
            first >= end
            and _pair(lines, first, last)
            and not any(taken[first:last])
            and not _third(lines, last, after)
        ):
            pairs.append((first, last + 1))
            end = last + 1
    named = [pair for pair in pairs if _named(lines, pair[0])]
    shown = [pair for pair in pairs if pair in named or _program(lines[pair[0] + 1 : pair[1] - 1])]
    alike = len(shown) >= LEAST and SHARE * len(shown) >= len(pairs)
    # A rule right over text parts it from what stands above, and closes nothing.
    closed = [(first, last) for first, last in pairs if parted_above(lines, last)]
    tall = Counter(
        lines[first].cells
        for first, last in closed
        if last - first > TALL and not _columned(lines[first + 1 : last - 1])
    )
    told = [pair for pair in closed if tall[lines[pair[0]].cells] >= LEAST]
    listings = [pair for pair in pairs if named or alike or pair in shown or pair in told]
    return [(_above(lines, first), last) for first, last in listings]


def _above(lines: Sequence[Line], first: int) -> int:
    """The first line of what stands right above an upper rule, and says something of the listing."""
    while not parted_above(lines, first) and _BEFORE.fullmatch(lines[first - 1].text):
        first -= 1
    return first


def _ruled(line: Line) -> bool:
    """Whether a line is a rule of dots or dashes."""
    return len(line.text) >= SHORTEST and line.text == line.text[0] * len(line.text)


def _pair(lines: Sequence[Line], first: int, last: int) -> bool:
    """Whether two rules are alike and tight around what stands between them, and the upper one is below no title."""
    if lines[first].cells != lines[last].cells or not 1 < last - first <= LONGEST + 1:
        return False
    if lines[first + 1].gap or lines[last].gap or any(line.crossing for line in lines[first + 1 : last + 1]):
        return False
    inner = lines[first + 1 : last]
    if min(line.indent for line in inner) < lines[first].indent:
        return False
    apart = parted_above(lines, first)
    framed = apart and len(inner) == 1 and abs(len(inner[0].text) - len(lines[first].text)) <= 1
    framed = framed and not code(inner[0].text)
    if framed or not (apart or not _title(lines, first - 1)):
        return False
    if sum(strength(line.text) > 1 for line in inner) > 1:
        return False  # a drawing, that may be too wide to be kept so
    if 2 * sum(line.text.count("|") > 1 for line in inner) >= len(inner) and not _named(lines, first):
        return False  # rows of a table
    said = sum(prose(line.text) and not code(line.text) for line in inner)
    return _named(lines, first) or 2 * said < len(inner)


def _title(lines: Sequence[Line], index: int) -> bool:
    """Whether a line right above a rule is a title by its length, or nearly so and stands alone."""
    line = lines[index]
    over = abs(len(line.text) - len(lines[index + 1].text))
    return not _BEFORE.fullmatch(line.text) and (not over or (over <= 2 and parted_above(lines, index)))


def _third(lines: Sequence[Line], last: int, after: int) -> bool:
    """Whether another rule stands below two, with no blank line on the way: all three are those of a table."""
    if after == len(lines) or lines[after].cells != lines[last].cells:
        return False
    return not any(line.apart for line in lines[last + 1 : after + 1])


def _named(lines: Sequence[Line], first: int) -> bool:
    """Whether attributes right above the upper rule say that a listing begins there."""
    return not parted_above(lines, first) and any(
        _ATTRIBUTES.fullmatch(line.text) for line in lines[max(first - 2, 0) : first]
    )


def _columned(inner: Sequence[Line]) -> bool:
    """Whether most lines between two rules are rows: three cells or more, two of which begin where others do."""
    rows = [[match.start() for match in _CELLS.finditer(line.cells)] for line in inner]
    starts = Counter(start for row in rows for start in row)
    shared = [sum(starts[start] > 1 for start in row) > 1 for row in rows if len(row) > CELLS]
    return 2 * sum(shared) > len(inner)


def _program(inner: Sequence[Line]) -> bool:
    """Whether most lines between two rules are program text, and none reads as anything else."""
    shown = sum(code(line.text) for line in inner)
    return 2 * shown >= len(inner) and not any(prose(line.text) and not code(line.text) for line in inner)
