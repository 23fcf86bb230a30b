"""Which lines are page furniture: running heads, feet, page numbers and the rules under them.

With form feeds the edges of the pages are looked at; without, lines that stand alone and come back at a
distance of a page. What comes back is a *shape*: the line with its numbers blanked.
"""

from __future__ import annotations

import re
from itertools import pairwise
from statistics import median

from fit.document.text.line import Line
from fit.document.text.pages.borders import page_borders
from fit.document.text.pages.edge_lines import (
    page_value,
    shape,
    stands_alone,
)
from fit.document.text.pages.page_edges import at_edges
from fit.document.text.pages.repeats import at_distance
from fit.document.text.pages.steps import SHORTEST_PAGE
from fit.document.text.signs.rules import ruled_off

TALLEST_PAGE = 100
"""Lines of a printed page, at most: 66 is common, 88 where eight lines an inch are set."""
MOST_PAGES_UNSEEN = 3
"""Bounds of pages without form feeds that say nothing yet: the start, the end and one between."""
HEAD = 6
"""Lines of a running head, of which some may be known already, at most."""
_PAGE_LINE = re.compile(
    r"(?P<dash>[-\u2013\u2014]|--|\u2500{1,2}) ?(?:\d{1,4}|[ivxl]{1,6}|[IVXL]{2,6}) ?(?P=dash)"
    r"|\[?(?:[Pp]age|PAGE|[Pp]g\.|PG\.) \d{1,4}(?: of \d{1,4})?\]?"
)
_NUMBER = re.compile(r"\d{1,3}|[ivxl]{1,6}|\[ ?\d{1,3} ?\]")
_MANUAL_HEAD = re.compile(r"\s*(\S+\([0-9n][a-zA-Z]*\))\s.*\s\1\s*")


def find_furniture(lines: list[Line]) -> set[int]:
    """Indices of the lines that are furniture."""
    starts = [index for index, line in enumerate(lines) if line.page and index]
    bounds = [0, *starts, len(lines)]
    found = at_edges(lines, bounds) if starts and _pages(bounds) else set()
    sure = len(starts) > 1 and bool(found)
    if not sure:
        found |= at_distance(lines, found)
        found |= page_borders(lines)
    found |= {
        index
        for index, line in enumerate(lines)
        if _PAGE_LINE.fullmatch(line.text) and stands_alone(lines, index)
    }
    if not sure:
        found |= _beside_feet(lines, found)
    found |= _manual_page(lines, found)
    found |= _numbers_beside(lines, found)
    return found | {
        near
        for index in found
        for near in (index - 1, index + 1)
        if 0 <= near < len(lines) and ruled_off(lines[near].text)
    }


def _beside_feet(lines: list[Line], found: set[int]) -> set[int]:
    """What else comes back at the edges of the pages that known running heads or feet part."""
    filled = [index for index, line in enumerate(lines) if line.cells]
    bounds = [index for above, index in pairwise(filled) if above in found and index not in found]
    bounds = [at for last, at in pairwise([-HEAD, *bounds]) if at and at - last >= HEAD]
    bounds = [0, *bounds, len(lines)]
    return at_edges(lines, bounds, found) if len(bounds) > MOST_PAGES_UNSEEN else set()


def _pages(bounds: list[int]) -> bool:
    """Whether form feeds part pages, the fuller ones alike, and not sections of any length."""
    heights = sorted(last - first for first, last in pairwise(bounds))
    full = heights[len(heights) // 2 :]
    if full[-1] <= TALLEST_PAGE:
        return True
    usual = median(full)
    alike = sum(0.75 * usual <= height <= 1.34 * usual for height in full)
    return usual <= TALLEST_PAGE and alike >= 0.75 * len(full)


def _numbers_beside(lines: list[Line], found: set[int]) -> set[int]:
    """Page numbers that stand alone next to a known running head, and those that count on from them."""
    filled = [index for index, line in enumerate(lines) if line.cells]
    alone = [index for index in filled if index not in found and _lone_number(lines, index, found)]
    if not alone or len(alone) * SHORTEST_PAGE > len(lines):
        return set()
    place = {index: number for number, index in enumerate(filled)}
    beside: dict[int, int] = {}
    for index in alone:
        value = page_value(lines[index].cells) or 0
        near = filled[max(0, place[index] - 1) : place[index] + 2]
        heads = (page_value(lines[other].cells) for other in near if other in found)
        if any(head is not None and head - value in {0, 1} for head in heads):
            beside[index] = value
    values = set(beside.values())
    return set(beside) | {
        index for index in alone if beside and (page_value(lines[index].cells) or 0) - 1 in values
    }


def _lone_number(lines: list[Line], index: int, found: set[int]) -> bool:
    return _NUMBER.fullmatch(lines[index].text) is not None and stands_alone(lines, index, found)


def _manual_page(lines: list[Line], known: set[int]) -> set[int]:
    """The first and last line of a formatted manual page, which has no pages on a screen."""
    filled = [index for index, line in enumerate(lines) if line.cells]
    if not filled:
        return set()
    head = _MANUAL_HEAD.fullmatch(lines[filled[0]].cells)
    if head is None:
        return set()
    names = {head.group(1)}
    found = {filled[0]}
    foot = shape(lines[filled[-1]].cells) if "   " in lines[filled[-1]].text else ""
    for position, index in enumerate(filled):
        other = _MANUAL_HEAD.fullmatch(lines[index].cells)
        if other is not None and stands_alone(lines, index, known):
            found.add(index)
            names.add(other.group(1))
            above = lines[filled[position - 1]].cells
            if position and (_foot(above, names) or shape(above) == foot):
                found.add(filled[position - 1])
    last = lines[filled[-1]]
    at_edge = last.indent <= lines[filled[0]].indent and stands_alone(lines, filled[-1])
    if _foot(last.cells, names) or (at_edge and "   " in last.text):
        found.add(filled[-1])
    return found


def _foot(text: str, names: set[str]) -> bool:
    return "   " in text.strip() and not names.isdisjoint(
        (text.rsplit(maxsplit=1)[-1], text.split(maxsplit=1)[0])
    )
