"""Numbered headings: a number is also how list items and entries of a table of contents start.

A heading has text of its own below it, or a heading of the next level; an item or an entry has its next sibling.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above
from fit.document.text.running.outer_items import outer_item
from fit.document.text.running.unit import Unit
from fit.document.text.signs.measure import closed, prose
from fit.document.text.titles.headings import dressed, heading, loud, section_level

TALLEST = 2
"""Lines of a heading in capitals, or with a number of several parts, at most."""
WORDS = 8
"""Words of a title in small letters with a number, at most."""
DEEPEST = 6
"""Headings right below one another, at most."""
_SECTION = re.compile(r"(?:[A-Z]{1,2}\d{0,2}|\d{1,3})(?:\.\d{1,3})+[.:]?(?= +\S)")
"""A number of several parts: `2.3`, `A.1.4`, `AB.2`, `Q2.1`."""
_KEY = re.compile(r"\d{1,2}\.?\s*")
_CHAPTER = re.compile(
    r"(?:chapter|part|section|appendix|annex|lesson|book) (?:[\dIVX]+|(?-i:[A-Z]))[.:]? +\S", re.IGNORECASE
)


def numbered_heading(lines: Sequence[Line], units: Sequence[Unit], place: int) -> int:
    """The level of the heading with a number that a unit between blank lines is, or 0."""
    unit = units[place]
    if place + 1 >= len(units):
        return _above_other(lines, units, place)
    if _chapter(lines, units, place):
        return 1
    if not _numbered(lines, unit) or _answered(unit, units[place + 1]):
        return 0
    if _printed(lines, unit, units[place + 1]):
        return section_level(lines[unit.start].text)
    line, last, below = lines[unit.start], lines[unit.end - 1], units[place + 1]
    tall = unit.end - unit.start
    deep = _depth(lines, unit) > 1
    capital = all(map(loud, (lines[index].text for index in range(unit.start, unit.end))))
    if tall > (TALLEST if deep or capital else 1) or (
        _ends(last.text) and not (deep and last.text[-1] == "!")
    ):
        return 0
    if not lines[below.start].gap and not (deep and _over_text(lines, unit, below)):
        return 0
    if unit.start and not (line.apart or (deep and _left_of_text(lines, unit))):
        return 0
    if _begins_part(lines, unit, below):
        return section_level(line.text)
    if not deep and outer_item(lines, units, place):
        return 0
    if not _leads(lines, units, place) or (place and _siblings(lines, units[place - 1], unit)):
        return 0
    if deep:
        return section_level(line.text)
    if level := heading(line, lines[below.start]):
        return level
    title = line.cells[unit.text :]
    if loud(title):
        return section_level(line.text)  # however wide the blank behind its number is
    return int(_titled(lines, unit, below))


def _printed(lines: Sequence[Line], unit: Unit, below: Unit) -> bool:
    """Whether a number and a title below a blank line, both in bold or underlined, stand over what begins no deeper, and no sibling."""
    line = lines[unit.start]
    tall = unit.end - unit.start
    if line.resolved is None or tall > TALLEST or not parted_above(lines, unit.start):
        return False
    if tall > 1 and not lines[unit.end - 1].marked():
        return False
    level = lines[below.start].indent <= line.indent and not _siblings(lines, unit, below)
    return level and dressed(line) and line.marked() != 0


def _answered(unit: Unit, below: Unit) -> bool:
    """Whether a question after a Q stands above its answer after an A: both are entries, however short the question is."""
    if unit.marker is None or below.marker is None:
        return False
    return unit.marker.label[0] == "Q" and below.marker.label == "A" + unit.marker.label[1:]


def _begins_part(lines: Sequence[Line], unit: Unit, below: Unit) -> bool:
    """Whether the number of a short title ends in 0, and that of the text below it is the same but ends in 1."""
    if unit.marker is None or below.marker is None:
        return False
    first, second = (re.findall(r"\d+", each.marker.label) for each in (unit, below) if each.marker)
    title = lines[unit.start].cells[unit.text :]
    short = title[:1].isupper() and len(title.split()) <= WORDS
    return short and len(first) > 1 and first[:-1] == second[:-1] and (first[-1], second[-1]) == ("0", "1")


def _over_text(lines: Sequence[Line], unit: Unit, below: Unit) -> bool:
    """Whether a short title stands right over a paragraph that starts at the same place, with a capital."""
    line, first = lines[unit.start], lines[below.start]
    words = line.cells[unit.text :].split()
    begins = prose(first.text) and first.text[:1].isupper() and first.indent == line.indent
    return 0 < len(words) <= WORDS and words[0][:1].isupper() and begins and below.marker is None


def _left_of_text(lines: Sequence[Line], unit: Unit) -> bool:
    """Whether a short title stands left of the end of a paragraph that is set in."""
    line, above = lines[unit.start], lines[unit.start - 1]
    words = line.cells[unit.text :].split()
    ended = closed(above.text) and above.indent > line.indent
    return ended and 0 < len(words) <= WORDS and words[0][:1].isupper()


def _titled(lines: Sequence[Line], unit: Unit, below: Unit) -> bool:
    """Whether a number is followed by a short title, and the text below is no paragraph of an item: it has a margin of its own."""
    line = lines[unit.start]
    title = line.text[unit.text - line.indent :]
    margin = min(lines[index].indent for index in range(below.start, below.end))
    return (
        title[:1].isupper()
        and len(title.split()) <= WORDS
        and (margin <= line.indent or margin > unit.text + 1)
        and below.end - below.start > 1
    )


def _above_other(lines: Sequence[Line], units: Sequence[Unit], place: int) -> int:
    """The level of a title alone above a table or a picture: with a number of several parts, or in capitals; or 0."""
    unit = units[place]
    line = lines[unit.start]
    capital = all(loud(one.text) for one in lines[unit.start : unit.end])
    if (
        unit.end - unit.start > (TALLEST if capital else 1)
        or unit.end >= len(lines)
        or not lines[unit.end].gap
    ):
        return 0
    if (unit.start and not line.apart) or (place and _siblings(lines, units[place - 1], unit)):
        return 0
    if _depth(lines, unit) > 1:
        return 0 if _ends(line.text) else section_level(line.text)
    title = line.cells[unit.text :]
    return section_level(line.text) if unit.marker is not None and loud(title) else 0


def _chapter(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether a unit alone between blank lines is called a chapter or the like, with its number and title."""
    unit, below = units[place], lines[units[place + 1].start]
    line, last = lines[unit.start], lines[unit.end - 1]
    alone = parted_above(lines, unit.start) and below.gap
    if unit.marker is not None or not alone or unit.end - unit.start > TALLEST or _ends(last.text):
        return False
    return _CHAPTER.match(line.text) is not None


def _ends(text: str) -> bool:
    """Whether a text ends a sentence that is no question."""
    return closed(text) and text.rstrip("\"')]")[-1:] != "?"


def _numbered(lines: Sequence[Line], unit: Unit) -> bool:
    """Whether a unit begins with a number: as a list marker, or as a key with blanks behind it."""
    line = lines[unit.start]
    if _SECTION.match(line.text):
        return True
    if unit.key:
        return _KEY.fullmatch(line.cells[line.indent : line.indent + unit.key]) is not None
    return unit.marker is not None and not unit.marker.kind.startswith("bullet")


def _depth(lines: Sequence[Line], unit: Unit) -> int:
    """How many parts the number of a unit has; 0 without one."""
    match = _SECTION.match(lines[unit.start].text)
    return match.group().rstrip(".:").count(".") + 1 if match else int(unit.marker is not None)


def _form(lines: Sequence[Line], unit: Unit) -> str:
    """What the numbers of entries of one list share; empty without a number."""
    match = _SECTION.match(lines[unit.start].text)
    if match:
        return re.sub(r"\w+", "1", match.group())
    return "" if unit.marker is None else unit.marker.kind


def _siblings(lines: Sequence[Line], above: Unit, below: Unit) -> bool:
    """Whether two units are entries of one list."""
    form = _form(lines, above)
    same = form != "" and form == _form(lines, below)
    return same and lines[above.start].indent == lines[below.start].indent


def _bracketed(unit: Unit) -> bool:
    """Whether a unit's number stands in brackets, and has no point before that: an item's, never a title's."""
    return unit.marker is not None and unit.marker.label[-1] in ")]"


def _leads(lines: Sequence[Line], units: Sequence[Unit], place: int) -> bool:
    """Whether text comes below a heading, perhaps after headings of further levels, and no sibling."""
    depth = _depth(lines, units[place])
    for below in units[place + 1 : place + DEEPEST]:
        if (
            not _numbered(lines, below)
            or below.end - below.start > TALLEST
            or _ends(lines[below.end - 1].text)
        ):
            return not _siblings(lines, units[place], below)
        if _bracketed(below) and not _bracketed(units[place]):
            return lines[below.start].indent <= lines[units[place].start].indent
        if _depth(lines, below) <= depth:
            return False
        depth = _depth(lines, below)
    return False
