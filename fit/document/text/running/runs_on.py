"""Whether the lines of a chunk are one running text: full, justified, or a sentence that goes on from line to line."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.lists.entries import labelled
from fit.document.text.signs.code import code, typed
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

NARROW = 10
"""Cells by which a chunk must miss the right margin before it has to prove that it is running text."""
SHORT_CLAUSE = 5
"""Words of a line that may be no more than a name or a title."""
LONG_LINE = 50
"""Cells of a line that is long enough to have been wrapped."""
SPREAD = re.compile(r"[^\s.:!?)\"'] {2,}\S")
"""Blanks between words that only justified lines and columns have."""
_PATH = re.compile(r"/\w+/\S+ [a-z]")
"""The path of a file in the middle of a sentence."""
SEVERAL = 5
"""Lines of a list without signs, at least."""
JUSTIFIED = 4
"""Lines of a paragraph that show a margin of their own, at least."""


def goes_on(part: Sequence[Line]) -> bool:
    """Whether all lines are running text, and each ends a sentence or goes on in small letters below."""
    pairs = [*pairwise(part)]
    runs = [prose(a.text) and not closed(a.text) and starts_small(b.text) for a, b in pairs]
    return (
        all(run or closed(a.text) for run, (a, _) in zip(runs, pairs, strict=True))
        and any(run and len(a.text) >= LONG_LINE for run, (a, _) in zip(runs, pairs, strict=True))
        and all(prose(line.text) for line in part)
    )


def carried(part: Sequence[Line]) -> bool:
    """Whether half of the lines stop in the middle of a sentence that the next one goes on with."""
    if len(part) == 2 and len(part[0].text.split()) > SHORT_CLAUSE:
        above, below = part[0].text, part[1].text
        said = closed(below) and any(map(str.isalpha, below)) and not typed(below)
        if prose(above) and above[-1].isalnum() and said:
            return True
    if all(line.text[:1].islower() for line in part) or left_half(part):
        return False  # lines of a list without signs
    carried = sum(carries(above.text, below.text) for above, below in pairwise(part))
    return len(part) > 1 and 2 * carried >= len(part) - 1


def left_half(part: Sequence[Line]) -> bool:
    """Whether a line fills less than half of the width though the next word had room, where no sentence ends before the last.

    The first line may lead to the others, which all begin with a small letter.
    """
    if len(part) < SEVERAL or not all(line.text[:1].islower() for line in part[1:]):
        return False
    own = max(line.end for line in part)
    return any(
        above.indent == below.indent
        and 2 * len(above.text) < own - above.indent
        and shortfall(above, below, own) > NARROW
        for above, below in pairwise(part[1:])
    ) and not any(closed(line.text) or ". " in line.text for line in part[1:-1])


def set_narrow(part: Sequence[Line]) -> bool:
    """Whether a paragraph stands far from the margin: words from its first line on, and sentences that go on."""
    hanging = len(part) > 2 and all(line.indent >= part[0].indent + 2 for line in part[1:])
    return prose(part[0].text) and (carried(part) or (hanging and carried(part[1:])))


def carries(above: str, below: str) -> bool:
    """Whether a sentence goes on from one line to the next, by the words alone."""
    if closed(above) or not prose(above) or code(above) or typed(below):
        return False
    if below.startswith("(") and below.endswith(")"):
        return False
    return (hangs(above) and above[-1].isalpha()) or (starts_small(below) and (prose(below) or closed(below)))


def reads(part: Sequence[Line], right: int) -> bool:
    """Whether most lines of a chunk are full and go on in the next."""
    full = sum(shortfall(above, below, right) < 0 for above, below in pairwise(part))
    return full >= 0.5 * (len(part) - 1)


def narrow_prose(part: Sequence[Line], right: int) -> bool:
    """Running text set narrower than its surroundings: full lines by its own margin, sentences that run on."""
    own = max(line.end for line in part)
    pairs = [*pairwise(part)]
    if not pairs:
        return prose(part[0].text)
    reading = sum(prose(line.text) for line in part)
    if left_half(part):
        return False
    if _justified(part) and reading >= 0.5 * len(part):
        return True
    small = sum(
        (starts_small(below.text) or (below.text[0] == "/" and _PATH.match(below.text) is not None))
        and not closed(above.text)
        for above, below in pairs
    )
    capital = sum(line.text[:1].isupper() for line in part)
    full = sum(shortfall(above, below, own) < 0 for above, below in pairs)
    if len(part) == 2:
        above, below = part
        long = above.end - above.indent >= 0.45 * (right - above.indent)
        goes_on = small == 1 or hangs(above.text)
        said = prose(below.text) or closed(below.text)
        if below.indent < above.indent and not said and shortfall(above, below, right) > NARROW:
            return False
        return prose(above.text) and long and goes_on and (shortfall(above, below, right) <= NARROW * 3)
    if len(part) >= 4 and capital == len(part):
        return False
    if small >= 0.8 * len(pairs) and reading >= 0.6 * len(part) and _even(pairs, own):
        return True
    even = full >= 0.75 * len(pairs) and reading >= 0.5 * len(part)
    return even and small >= 0.5 * len(pairs) and own - part[-1].indent >= 20


def _justified(part: Sequence[Line]) -> bool:
    """Whether all lines but the last end at one column, which wide blanks between their words show to be a margin."""
    spread = sum(SPREAD.search(line.text) is not None for line in part)
    return len(part) >= JUSTIFIED and len({line.end for line in part[:-1]}) == 1 and spread >= 2


def _even(pairs: Sequence[tuple[Line, Line]], own: int) -> bool:
    """Whether lines stand under one another and end near their own margin, three at least and none a label."""
    near = sum(shortfall(above, below, own) < NARROW for above, below in pairs)
    level = all(above.indent == below.indent for above, below in pairs[1:])
    return (
        len(pairs) > 1
        and level
        and near >= 0.6 * len(pairs)
        and not any(labelled(one.text) for _, one in pairs)
    )
