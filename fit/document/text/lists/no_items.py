"""Signs at the beginning of a line that begin no item: dashes of a sentence, requests to a formatter, initials of who signs."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.signs.joins import FAR, shortfall
from fit.document.text.signs.markers import Marker
from fit.document.text.signs.measure import closed, prose, starts_small

_REQUEST = re.compile(r"\. +[a-z@][\w'-]*,? ")
"""A request to a formatter, where it stands at the left margin or among others; else an item behind a full stop."""
NEAR = 60
"""Lines to another one of a paragraph that shows what a line is, at most."""
_DASHES = ("- ", "-- ", "\u2013 ", "\u2014 ")


def set_aside(lines: Sequence[Line], index: int, marker: Marker, right: int) -> bool:
    """Whether a dash below an open sentence belongs to it, or has its fellow before more small letters.

    The first letter of a name that is signed below the last words of a letter is no sign of an item, either.
    """
    line = lines[index]
    parted = line.gap > 0 and not (line.crossing and prose(lines[index - 1].text))
    if not index or parted or not line.text.startswith(_DASHES) or closed(lines[index - 1].text):
        return False
    if not line.crossing and _of_sentence(lines, index, right):
        return True
    words, sign, rest = line.text[marker.text :].partition(f" {marker.label} ")
    return sign != "" and starts_small(words) and starts_small(rest)


def _of_sentence(lines: Sequence[Line], index: int, right: int) -> bool:
    """Whether all dashes that begin lines of a paragraph stand in sentences: small letters behind, an open line above.

    A paragraph that begins with a dash is an item, and two lines right below one another that do are two.
    """
    start, end = _part(lines, index)
    if lines[start].text.startswith(_DASHES):
        return False
    places = [place for place in range(start + 1, end) if lines[place].text.startswith(_DASHES)]
    return all(_goes_on(lines[place - 1], lines[place], right) for place in places)


def _goes_on(above: Line, below: Line, right: int) -> bool:
    """Whether a line with a dash goes on with a sentence of the one right above it, which ended near the margin."""
    if above.indent != below.indent or closed(above.text):
        return False
    words = below.text.partition(" ")[2]
    small = starts_small(words) and (prose(words) or closed(words))
    return small and prose(above.text) and shortfall(above, below, right) <= FAR


def requested(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a request to a formatter: at the left margin, or with one near it that has no blank behind its stop."""
    if lines[index].text[0] != "." or not _REQUEST.match(lines[index].text):
        return False
    start, end = _part(lines, index)
    return not lines[index].indent or any(
        line.text[:1] == "." and line.text[1:2].strip() != "" for line in lines[start:end]
    )


def _part(lines: Sequence[Line], index: int) -> tuple[int, int]:
    """The lines around one that no blank line parts from it, as far as `NEAR` of them to either side."""
    start, end = index, index + 1
    while index - start < NEAR and not parted_above(lines, start):
        start -= 1
    while end - index < NEAR and not parted_above(lines, end):
        end += 1
    return start, end
