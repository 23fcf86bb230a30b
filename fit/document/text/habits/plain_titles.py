"""A few words alone between blank lines, at one place again and again, over text or a table there: titles in small letters.

One such line may be anything. Where several stand so, and next to nothing else does, they are what the document has for titles.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from fit.document.blocks import Block, Kind
from fit.document.text.habits.titles import SAYS, begins_and_ends
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import closed, prose
from fit.document.text.titles.headings import loud

LEAST = 4
"""Titles at one place, at least, those that were read as headings among them."""
FARTHER = 3
"""Titles for each line alone at their place that is none, at least."""
WORDS = 6
"""Words of a title, at most."""
FIRST = 5
"""Cells by which the first line of a paragraph may be set in."""
_SHOWN = {Kind.TABLE, Kind.PICTURE}


@dataclass(slots=True)
class _Place:
    """The lines alone at one indent."""

    levels: Counter[int] = field(default_factory=Counter)
    """The levels of those that were read as headings, but for those in capitals."""
    titles: list[int] = field(default_factory=list)
    """Blocks by number that may be titles."""
    saying: list[int] = field(default_factory=list)
    """Those that have a verb, `If you are lost`: titles beside as many others that have none."""
    others: int = 0
    """How many are none, and no sentences."""


def with_plain_titles(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, those made headings that several such lines at one place show to be titles."""
    places: dict[int, _Place] = {}
    for number, one in enumerate(placed):
        if one.end - one.start > 2 or one.end >= len(lines) or not _apart(lines, one):
            continue
        line, block = lines[one.start], one.block
        place = places.setdefault(line.indent, _Place())
        if block.kind is Kind.HEADING:
            place.levels[block.level] += not loud(line.text)
        elif block.kind is not Kind.PARAGRAPH or one.end - one.start > 1 or _says(line.text):
            continue
        elif _short(line.text) and begins_and_ends(line.text) and _over_text(lines, placed, number):
            (place.saying if SAYS.search(line.text) else place.titles).append(number)
        else:
            place.others += 1
    result = list(placed)
    for place in places.values():
        shown = len(place.titles) + place.levels.total()
        place.others += len(place.saying) * (len(place.saying) > len(place.titles))
        if len(place.titles) < 2 or shown < LEAST or shown < FARTHER * place.others:
            continue
        level = place.levels.most_common(1)[0][0] if place.levels.total() else 2
        for number in [*place.titles, *place.saying]:
            one = placed[number]
            line = lines[one.start]
            text = fold(line.piece(line.indent, line.end))
            result[number] = replace(one, block=Block(Kind.HEADING, text, level=level))
    return result


def _says(text: str) -> bool:
    """Whether a line is a sentence, or a name with what it stands for behind a colon: no title, and no evidence against one."""
    return closed(text) or ": " in text


def _apart(lines: Sequence[Line], one: Placed) -> bool:
    """Whether blank lines stand above and below a block; above, the top of a page will do."""
    above = one.start == 0 or lines[one.start].apart
    return above and lines[one.end].gap > 0 and not lines[one.end].crossing


def _short(text: str) -> bool:
    return len(text.split()) <= WORDS and "   " not in text and text[-1].isalnum()


def _over_text(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether what is above a line has ended, and a paragraph at its place, or what is shown, stands below."""
    if number + 1 == len(placed):
        return False
    one, below = placed[number], placed[number + 1]
    above = placed[number - 1] if number else None
    here = lines[one.start].indent
    open_text = above and above.block.kind is Kind.PARAGRAPH and not closed(above.block.text.chars)
    if above and open_text and lines[above.start].indent <= here:
        return False
    if above and lines[above.end - 1].text.endswith(":"):
        return False
    if below.block.kind in _SHOWN:
        return below.start == one.end
    if below.block.kind is not Kind.PARAGRAPH:
        return False
    first, last = lines[below.start], lines[below.end - 1]
    said = closed(last.text) and prose(first.text) if first is last else lines[below.start + 1].indent == here
    return said and first.text[0].isupper() and here <= first.indent <= here + FIRST
