"""Contents without leaders and page numbers: lines that come again later, in the same order, as titles."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.rules import ruled_off, segmented
from fit.document.text.titles.blank_leaders import HEADS
from fit.document.text.titles.contents import INDENT

ENTRIES = 5
"""Entries of such contents, at least."""
MOST = 0.8
"""The share of its lines that come again, at least."""
REACH = 3
"""Lines from an entry to the next one, at most: a title between them may be wrapped, or changed since."""
SPREAD = 4
"""Lines of the document to a title, on average, at least: what comes again closer is a list."""
ONCE = 0.6
"""The share of titles that come just once, at least: what comes in every section is no contents."""
LONGEST = 72
"""Characters of a title, at most."""


def find_titles_again(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such contents, an item an entry."""
    titles: dict[str, list[int]] = {}
    for index in range(1, len(lines)):
        if len(lines[index].text) <= LONGEST and _alone(lines, index) and (title := _title(lines[index])):
            titles.setdefault(title, []).append(index)
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = _end(lines, taken, index, titles)
        if end:
            found.append((index, end, _entries(lines[index:end], titles, hyphens)))
        index = end or index + 1
    return found


def _alone(lines: Sequence[Line], index: int) -> bool:
    """Whether a line stands by itself, or over a rule that underlines it."""
    line = lines[index]
    below = lines[index + 1] if index + 1 < len(lines) else None
    apart = below is None or below.apart or ruled_off(below.text) or segmented(below.text)
    return bool(line.apart and apart)


def _title(line: Line) -> str:
    """What a title says, without its number."""
    marker = find_marker(line.text)
    return line.text[marker.text if marker else 0 :].strip(" :_-=").casefold()


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, titles: dict[str, list[int]]) -> int:
    """The line after the contents that begin at ``start``; 0 where none do."""
    found: list[int] = []
    index = last = start
    once = 0
    if (start and not lines[start].apart) or HEADS.fullmatch(lines[start].text):
        return 0
    while index < len(lines) and taken[index] is None and index - last <= REACH:
        places = titles.get(_title(lines[index]), [])
        after = bisect_right(places, found[-1] if found else index)
        if (found and index >= found[0]) or (not found and after == len(places)):
            break
        if after < len(places):
            once += after == 0 and len(places) == 1
            found.append(places[after])
            last = index
        index += 1
    enough = len(found) >= ENTRIES and len(found) >= MOST * (last + 1 - start) and once >= ONCE * len(found)
    if not enough or found[-1] - found[0] < SPREAD * len(found):
        return 0
    below = next((place for place in range(last + 1, found[0] + 1) if lines[place].gap), last + 1)
    return below if below <= index and not any(taken[last + 1 : below]) else last + 1


def _entries(lines: Sequence[Line], titles: dict[str, list[int]], hyphens: Hyphens) -> list[Block]:
    margin = min(line.indent for line in lines)
    entries: list[list[Line]] = []
    for line in lines:
        above = entries[-1][-1] if entries else None
        unknown = above is not None and _title(line) not in titles and _title(above) not in titles
        if above is not None and unknown and line.indent > above.indent:
            entries[-1].append(line)
        else:
            entries.append([line])
    return [_entry(entry, margin, hyphens) for entry in entries]


def _entry(lines: Sequence[Line], margin: int, hyphens: Hyphens) -> Block:
    first = lines[0]
    marker = find_marker(first.text)
    label, text = (len(marker.label), marker.text) if marker else (0, 0)
    return Block(
        Kind.ITEM,
        flow(
            [first.piece(first.indent + text, first.end), *(line.piece(0, line.end) for line in lines[1:])],
            hyphens,
        ),
        label=first.piece(first.indent, first.indent + label) if label else Text(),
        level=(first.indent - margin + 1) // INDENT,
    )
