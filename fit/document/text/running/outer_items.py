"""Items with nothing but a few words, and another list set in below them: no titles."""

from __future__ import annotations

from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.running.unit import Unit
from fit.document.text.signs.markers import follows
from fit.document.text.titles.headings import loud

REACH = 60
"""Units of the inner lists of one item, at most."""


def outer_item(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether another list stands in below a unit, right under its words, as with the items beside or around it."""
    if not _outer(lines, units, place):
        return False
    beside = [found for step in (-1, 1) if (found := _sibling(lines, units, place, step)) is not None]
    alike = [_outer(lines, units, found) for found in beside]
    return any(alike) and all(alike)


def _outer(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether the unit below begins another list, right under the words of this one; bullets may stand below a title."""
    unit = units[place]
    if unit.marker is None or place + 1 >= len(units) or loud(lines[unit.start].cells[unit.text :]):
        return False
    below = units[place + 1]
    if below.marker is None or any(
        each.marker.kind.startswith("bullet") for each in (unit, below) if each.marker
    ):
        return False
    return not follows(unit.marker, below.marker) and abs(lines[below.start].indent - unit.text) <= 1


def _sibling(lines: Sequence[Line], units: Sequence[Unit], place: int, step: int) -> int | None:
    """The next unit, in one direction, that does not stand deeper, where it is the item before or after in the list."""
    unit = units[place]
    near = place + step
    while 0 <= near < len(units) and abs(near - place) <= REACH:
        other = units[near]
        if lines[other.start].indent <= lines[unit.start].indent:
            first, second = (unit, other) if step > 0 else (other, unit)
            same = lines[other.start].indent == lines[unit.start].indent
            if first.marker is None or second.marker is None or not same:
                return None
            return near if follows(first.marker, second.marker) else None
        near += step
    return None
