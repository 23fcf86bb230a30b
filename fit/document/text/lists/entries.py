"""Entries and statements without a sign at their start: their ends tell that each line stands for itself."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.measure import closed, prose, sentence

LEAST = 4
"""Lines that show by their lengths that they are entries, at least."""
ALIKE = 3
"""Lines that begin alike, at least, to be entries by that."""
LONG_LINE = 50
"""Cells of running text that is long enough to have been wrapped."""
_STATEMENT_END = (";", "{", "}")
_LABEL = re.compile(r"\S+(?: \S+){0,2}:(?:\s+|$)")
_DOES = re.compile(
    r"[a-z][\w.-]* (?:[a-z]+ly )?(?!(?:as|is|was|has|does|its|this|us|his|always|perhaps|across)\b)[a-z]+[^\Ws]s (?:[a-z]|\w+ )"
)
"""A name in small letters and a verb behind it."""


def labelled(text: str) -> bool:
    """Whether a line begins with a label: up to three words and a colon."""
    return _LABEL.match(text) is not None


def label_end(text: str) -> int:
    """The cells to the text after a label; 0 where a line begins with none."""
    match = _LABEL.match(text)
    return match.end() if match is not None else 0


def ended_alike(part: Sequence[Line]) -> bool:
    """Whether most lines before the last, two at least, end as statements and the items of a list do."""
    ended = sum(line.text.endswith(_STATEMENT_END) for line in part[:-1])
    return ended >= max(2, 0.75 * (len(part) - 1))


def left_short(part: Sequence[Line]) -> bool:
    """Whether most lines leave more room than the next word needs, by the width of all but the longest."""
    told = sum(len(line.text) >= LONG_LINE and prose(line.text) for line in part)
    if len(part) < LEAST or 10 * told > len(part):
        return False
    own = sorted(line.end for line in part)[-2]
    room = sum(shortfall(above, below, own) > NEAR for above, below in pairwise(part))
    return room >= 0.75 * (len(part) - 1)


def begun_alike(part: Sequence[Line]) -> bool:
    """Whether all lines, three at least, begin at one column with the same two words, with a capital, and then differ."""
    if len(part) < ALIKE or not part[0].text[:1].isupper() or part[0].text == part[1].text:
        return False
    head = " ".join(part[0].text.split(" ", 2)[:2]) + " "
    return " " in head[:-1] and all(
        line.indent == part[0].indent and line.text.startswith(head) for line in part
    )


def all_sentences(part: Sequence[Line]) -> bool:
    """Whether each line at one column is a whole sentence, four at least: text that was wrapped does not break so."""
    if len(part) < LEAST or not all(
        line.text[-1] == "." and line.text[0].isupper() and line.indent == part[0].indent for line in part
    ):
        return False
    return sum(sentence(line.text) for line in part) >= len(part) - 1


def names_do(part: Sequence[Line]) -> bool:
    """Whether each line at the first one's column, three at least, is a name and what it does: `light_lamp lights the lamp`."""
    if _DOES.match(part[0].text) is None or any(line.indent < part[0].indent for line in part):
        return False
    outer = [line for line in part if line.indent == part[0].indent]
    return len(outer) >= ALIKE and all(_DOES.match(line.text) for line in outer)


def sentences(part: Sequence[Line]) -> bool:
    """Whether each line is a whole sentence or stands above a deeper one: steps, not text that was wrapped."""
    heads = sum(
        below.indent >= above.indent + 2 and not closed(above.text) for above, below in pairwise(part)
    )
    whole = sum(closed(line.text) for line in part)
    capital = all(line.text[:1].isupper() for line in part)
    return capital and heads > 0 and whole >= 3 and whole + heads == len(part)
