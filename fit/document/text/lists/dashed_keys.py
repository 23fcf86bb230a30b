"""Keys that a dash or a sign of equality parts from what they mean: `key - meaning`, where a neighbour has the form too."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from fit.document.text.line import Line
from fit.document.text.lists.hanging_keys import NEARBY
from fit.document.text.lists.key_columns import goes_on
from fit.document.text.signs.joins import reads, shortfall
from fit.document.text.signs.markers import Marker, find_dashed
from fit.document.text.signs.measure import Measure, hangs, starts_small
from fit.document.text.signs.rules import ruled_off

SIGN = 3
"""Characters of a key that stands for a word, at most: the L of a map, not the name of a setting."""
_PROGRAM = re.compile(r";$|^[!+@*]|[$\\{}<>|]|\w[(\[]|[\])]\s*$|^[\"'/]|^-?\d+$")
_WORD = re.compile(r"[^\W_]+(?:[ -][^\W_]+)*|\W{1,3}")


def dashed_key(
    lines: Sequence[Line],
    index: int,
    measure: Measure,
    keys: Sequence[int],
    markers: Sequence[Marker | None],
) -> int:
    """The same for ``key - meaning``, where a neighbour has the form too."""
    line = lines[index]
    found = find_dashed(line.text)
    if found is None or _underlined(lines, index):
        return 0
    column = line.indent + found[2]
    beside = [*_beside(lines, range(index - 1, max(-1, index - 1 - NEARBY), -1), line.indent)]
    beside += _beside(lines, range(index + 1, min(len(lines), index + 1 + NEARBY)), line.indent)
    near = [
        other for other in beside if (form := find_dashed(other.text)) is not None and form[1] == found[1]
    ]
    if not near and _below_inner(lines, index, found[1]):
        return column
    if not near or (found[1] == "=" and _assigns(line, near)):
        return 0
    if index and not line.gap and not keys[index - 1] and goes_on(lines[index - 1], line):
        return 0
    begun = index > 0 and not line.gap and bool(keys[index - 1] or markers[index - 1])
    if begun and _stops(lines[index - 1], line) and _within(lines, index, keys, markers):
        return 0
    if index == 0 or line.gap or shortfall(lines[index - 1], line, measure.right(index)) >= 0:
        return column
    above, key = lines[index - 1], keys[index - 1]
    if not _within(lines, index, keys, markers):
        return column
    first = find_dashed(above.cells[key:]) if key else None
    return column if first is not None and first[1] == found[1] else 0


def _underlined(lines: Sequence[Line], index: int) -> bool:
    """Whether a rule as wide as a line stands right below it: the line is a title, its number and its words parted by a dash."""
    line, below = lines[index], lines[index + 1] if index + 1 < len(lines) else None
    return below is not None and not below.apart and ruled_off(below.text) and below.end == line.end


def _below_inner(lines: Sequence[Line], index: int, sign: str) -> bool:
    """Whether a line nearby has the form behind a blank at the same column, over what is deeper: `drill = a - Light` over `b - Trim`."""
    column = lines[index].indent
    place = index - 1
    while place >= max(0, index - NEARBY) and not lines[place + 1].gap and lines[place].indent > column:
        place -= 1
    if place < 0 or lines[place + 1].gap or lines[place].cells[column - 2 : column] not in {"= ", ": ", "  "}:
        return False
    inner = find_dashed(lines[place].cells[column:])
    return inner is not None and inner[1] == sign == "-"


def _stops(line: Line, below: Line) -> bool:
    """Whether a line stops in the middle of a sentence that small letters go on with in the next."""
    return hangs(line.text) and reads(line.text, below.text) and starts_small(below.text)


def _beside(lines: Sequence[Line], places: range, indent: int) -> Iterator[Line]:
    """The two lines next to one, in the order of the places, that start at its indent; deeper ones belong to them."""
    found = 0
    for place in places:
        if lines[place].indent < indent or found == 2:
            return
        if lines[place].indent == indent:
            found += 1
            yield lines[place]


def _assigns(line: Line, near: Sequence[Line]) -> bool:
    """Whether ``name = value`` sets a variable and explains no word, by its own signs and those of its neighbours."""
    own = _setting(line)
    return own is None or any(_setting(other) is None for other in near) or (own and all(map(_setting, near)))


def _setting(line: Line) -> bool | None:
    """None where ``name = value`` has signs of a program; else whether one word explains a long name."""
    name, _, value = line.text.partition("=")
    name, value = name.strip(" "), value.strip(" ")
    if _PROGRAM.search(value) or not _WORD.fullmatch(name):
        return None
    return len(name) > SIGN and " " not in value


def _within(lines: Sequence[Line], index: int, keys: Sequence[int], markers: Sequence[Marker | None]) -> bool:
    """Whether a line stands under the text of the one above."""
    return below_text(lines[index - 1], keys[index - 1], markers[index - 1], lines[index].indent)


def below_text(above: Line, key: int, marker: Marker | None, indent: int) -> bool:
    """Whether a line at ``indent`` stands under the text of the one above: under an item's or a key's text, if any."""
    if key:
        return key == indent
    if marker is not None:
        return above.indent + marker.text == indent
    return above.indent == indent
