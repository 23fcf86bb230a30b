"""A decoded document to lines: line ends, form feeds, tabs, overstrikes, ANSI attributes.

A line is plain unless it holds a control character or one that does not take exactly one cell; only then is
it resolved cell by cell (`fit.document.text.lines.overstrike`).
"""

from __future__ import annotations

import re
from array import array
from collections import Counter

from fit.document.blocks import Text
from fit.document.text.line import Line
from fit.document.text.lines.info_nodes import find_nodes
from fit.document.text.lines.overstrike import expand_tabs, resolve
from fit.document.text.lines.tabbed import align_tabs, cells_of
from fit.width import single

_TABBED = re.compile(r"[\t -~]*\Z")
_LINE = re.compile(r"[^\n\f\v]*(?:\n|\f|\v|\Z)")
END_OF_FILE = "\x1a"
RECORD = 128
"""The operating system of the 8-bit programs fills the last record of this many bytes with 1Ah."""


def read_lines(source: str) -> tuple[list[Line], list[str]]:
    """All lines, blank ones too, and one sentence for each kind of thing that was not understood."""
    end, remarks = _end_of_text(source)
    nodes = find_nodes(source[:end])
    shape = nodes.text
    if "\n" not in shape:
        shape = shape.replace("\r", "\n")
    lines: list[Line] = []
    tabbed: dict[int, list[Text]] = {}
    unknown: Counter[str] = Counter()
    page = False
    place = 0
    while place < end:
        match = _LINE.match(shape, place)
        if match is None:
            break
        stop = match.end()
        last = shape[stop - 1]
        body_end = stop - 1 if last in "\n\f\v" else stop
        after_feed = last == "\f"
        if not (after_feed and not shape[place:body_end].strip()):
            text_end = _text_end(shape, place, body_end)
            line = _line(shape, place, text_end, unknown)
            if "\t" in shape[place:text_end] and _TABBED.match(shape, place, text_end):
                places = array("q", range(place, text_end))
                text = Text(shape[place:text_end], places, bytes(len(places)))
                tabbed[len(lines)] = cells_of(text)
            line.page = page
            line.aside = place in nodes.aside and line.text != ""
            lines.append(line)
            page = False
        page = page or after_feed
        place = stop
    align_tabs(tabbed, lines)
    return lines, remarks + _remarks(unknown)


def _end_of_text(source: str) -> tuple[int, list[str]]:
    """Where the text ends: at a 1Ah that less than a record follows, or that only padding follows."""
    mark = source.find(END_OF_FILE)
    if mark < 0:
        return len(source), []
    rest = source[mark:].strip(END_OF_FILE + "\0 \r\n")
    if not rest:
        return mark, []
    if len(source) - mark <= RECORD:
        return mark, [f"{len(rest)} characters after the end-of-file mark 1Ah at {mark} were left out."]
    return len(source), []


def _text_end(shape: str, start: int, end: int) -> int:
    """The end of a line without the blanks at its right."""
    while end > start and shape[end - 1] in " \r\t\0":
        end -= 1
    return end


def _line(shape: str, start: int, end: int, unknown: Counter[str]) -> Line:
    raw = shape[start:end]
    if single(raw):
        return Line(raw, start)
    if _TABBED.match(shape, start, end):
        return expand_tabs(raw, start)
    return resolve(raw, range(start, end), unknown)


def _remarks(unknown: Counter[str]) -> list[str]:
    return [
        f"{count} times the control code {name} was taken out: it has no meaning here."
        for name, count in sorted(unknown.items())
    ]
