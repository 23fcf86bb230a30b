"""The text body: filled lines without furniture, each with the blank lines and page ends before it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from statistics import median

from fit.document.text.columns.barred_columns import find_barred, open_bar
from fit.document.text.line import Ending, Line
from fit.document.text.pages.change_bars import find_change_bars
from fit.document.text.pages.furniture import find_furniture
from fit.document.text.pages.line_numbers import find_line_numbers, without_number
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import NEAR, shortfall
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, hangs, prose, starts_small

Furniture = list[tuple[int, Line]]
"""Furniture with the index of the body line that follows it."""
TORN = 3
"""Blank lines in the middle of running text that make a double-spaced stretch, at least."""
SEVERAL = 2
"""Such stretches that make the document one that is set so, shorter stretches too."""
_KEY = re.compile(r" *\S+(?: \S+){0,5}? {2,}(?=\S)")
PAGE_GAP = 8
"""Blank lines that nobody leaves inside a text, from which on they are the margins of two printed pages."""
TITLE_ROOM = 12
"""Cells that a title leaves free in its line, at least, where the next word had room."""
SHORT_PAGE = 0.6
"""A page filled less than this share of the usual was ended on purpose: nothing runs on to the next."""


def part_body(lines: list[Line]) -> tuple[list[Line], Furniture]:
    """The body lines, with ``gap`` and ``crossing`` set, and the furniture."""
    barred = find_change_bars(lines) or find_barred(lines)
    numbered = find_line_numbers(lines)
    furniture = find_furniture(lines)
    short = _short_pages(lines, furniture)
    body: list[Line] = []
    taken: Furniture = []
    gap = 0
    crossing = False
    ended = False
    for index, whole in enumerate(lines):
        line = whole
        if index in barred:
            line, bar = open_bar(line, barred[index])
            taken.append((len(body), bar))
        if index in numbered and index not in furniture:
            line, number = without_number(line, numbered[index])
            taken.append((len(body), number))
        if line.page:
            crossing = True
            ended = ended or index in short
        if line.aside:
            taken.append((len(body), line))
        elif index in furniture:
            crossing = True
            taken.append((len(body), line))
        elif line.cells:
            ended = ended and not (body and hangs(body[-1].text) and starts_small(line.text))
            line.crossing = (crossing or gap >= PAGE_GAP) and not ended and bool(body)
            line.gap = 2 if ended or not body else gap
            if line.crossing and _caught(body, line):
                body, taken = _without_last(body, taken)
            body.append(line)
            gap = 0
            crossing = ended = False
        elif line.ending is not Ending.SOFT:
            gap += 1
    _single_space(body)
    _close_up(body)
    return body, taken


def _caught(body: list[Line], line: Line) -> bool:
    """Whether the last line of a page is one word at its right edge that the next page begins with: for the binder, no text."""
    if len(body) < 2:
        return False
    word, above = body[-1], body[-2]
    right = word.end >= above.end - TITLE_ROOM and word.indent > (above.indent + above.end) / 2
    return right and word.gap <= 1 and line.text.split(maxsplit=1)[0] == word.text and prose(above.text)


def _without_last(body: list[Line], taken: Furniture) -> tuple[list[Line], Furniture]:
    """The body without its last line, which is furniture."""
    last = len(body) - 1
    before = [(index, line) for index, line in taken if index <= last]
    return body[:last], [
        *before,
        (last, body[last]),
        *((last, line) for index, line in taken if index > last),
    ]


def _short_pages(lines: list[Line], furniture: set[int]) -> set[int]:
    """Starts of the pages before which a page ended early."""
    starts = [0, *(index for index, line in enumerate(lines) if line.page and index), len(lines)]
    if len(starts) < 4:
        return set()
    used: list[int] = []
    for first, last in pairwise(starts):
        filled = [index for index in range(first, last) if lines[index].cells and index not in furniture]
        used.append(filled[-1] - first if filled else 0)
    usual = median(sorted(used)[len(used) // 2 :])
    return {start for start, rows in zip(starts[1:], used, strict=False) if rows < SHORT_PAGE * usual}


def _single_space(body: list[Line]) -> None:
    """Take the blank line between all lines of a double-spaced document out."""
    inner = [line for line in body[1:] if not line.crossing]
    if len(inner) < 12 or sum(line.gap == 0 for line in inner) > 0.1 * len(inner):
        return
    single = sum(line.gap == 1 for line in inner)
    widest = max(line.end for line in inner)
    wide = sum(line.end > 0.75 * widest for line in inner)
    if single >= 0.6 * len(inner) and wide >= 0.5 * len(inner):
        for line in body:
            line.gap = max(0, line.gap - 1)


def _close_up(body: list[Line]) -> None:
    """Take the blank line between the lines of paragraphs that are set double-spaced among others that are not."""
    starts = [0, *(index for index in range(1, len(body)) if body[index].gap != 1), len(body)]
    stretches: list[tuple[list[Line], int]] = []
    double = 0
    set_in = sum(sum(_set_in(body[start:end])) for start, end in pairwise(starts)) >= SEVERAL
    for start, end in pairwise(starts):
        run = body[start:end]
        right = max((line.end for line in run), default=0)
        torn = [
            (above, below)
            for before, above, below in zip([None, *run], run, run[1:], strict=False)
            if _torn(before, above, below, right, set_in)
        ]
        within = sum(not closed(above.text) for above, _ in torn)
        stretches.append(([below for _, below in torn], within))
        double += within >= TORN and len(torn) >= 0.5 * (len(run) - 1)
    for cut, within in stretches:
        if double and within >= (1 if double >= SEVERAL else TORN):
            for below in cut:
                below.gap = 0


def _set_in(run: list[Line]) -> Iterator[bool]:
    """For each line of a stretch but the outer ones whether it begins a paragraph by its indent alone."""
    for before, line, below in zip(run, run[1:], run[2:], strict=False):
        deeper = before.indent == below.indent < line.indent
        yield deeper and (closed(before.text) or before.text.isupper()) and prose(line.text)


def _torn(before: Line | None, above: Line, below: Line, right: int, set_in: bool) -> bool:
    """Whether a blank line stands in the middle of running text: the line above is full, or its sentence goes on.

    What stands deeper than the line below it is the first line of a paragraph: a sentence, or a title, has ended
    ``before`` it. Where all paragraphs are ``set_in``, the sentence that ends with a line ends none.
    """
    if below.crossing or not prose(above.text) or _rows(above, below) or code(below.text):
        return False
    if below.indent > above.indent and not _hung(above, below):
        return False
    full = shortfall(above, below, right) < 0
    if below.indent < above.indent and before is not None and not closed(before.text):
        title = before.text.isupper() or (full and shortfall(before, above, right) >= TITLE_ROOM)
        if not title:
            return False
    if not closed(above.text):
        figure = below.text[:1].isdigit() and find_marker(below.text) is None
        return full or starts_small(below.text) or (figure and shortfall(above, below, right) <= NEAR)
    near = set_in and below.indent == above.indent and prose(below.text)
    return not below.text.isupper() and (full or (near and shortfall(above, below, right) < TITLE_ROOM))


def _hung(above: Line, below: Line) -> bool:
    """Whether a line stands under the text of an item that begins in the line above."""
    marker = find_marker(above.text)
    return marker is not None and below.indent == above.indent + marker.text


def _rows(above: Line, below: Line) -> bool:
    """Whether two lines have a key each and, after wide blanks, their text at one column."""
    ends = [match.end() for line in (above, below) if (match := _KEY.match(line.cells))]
    return len(ends) == 2 and ends[0] == ends[1]
