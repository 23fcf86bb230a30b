"""Lines that a leader carries to their end: contents, price lists, settings; and contents whose leader is blank."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import concat, flow
from fit.document.text.signs.code import code
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, starts_small
from fit.document.text.signs.pictures import sign_row
from fit.document.text.titles.accounts import alone_at_end, figure, full_entry, under_figures

DOTS = 3
"""Signs of a leader that are kept: it was as long as the line was wide."""
INDENT = 3
"""Cells of indentation that make a level."""
LONGEST_VALUE = 24
"""Cells after a leader that are a value and no text that a key explains."""
SURE = 5
"""Signs of a leader to words, which an ellipsis has not."""
NEARBY = 3
"""Lines to another entry of a list of keys, at most."""
REACH = 2
"""Lines without a leader that may stand between two with one: a title wrapped."""
_LEADER = re.compile(
    r"^(?P<title>\s*\S.*?)\s*"
    r"(?P<dots>[.\u00b7\u2219]{3,}|(?:\s[.\u00b7\u2219]){3,}|_{4,}|(?:\. ){2,}\.?|\u2026{2,}|(?<=\s)-{5,}(?=\s))\s*(?P<value>(?:[^\W_]|[.($\u00a3\u20ac-]\w).*)$"
)
_DOTS = re.compile(r"\.\.\.|\s\.\s\.|\. \. |____|\u2026\u2026|-----|[\u00b7\u2219] ?[\u00b7\u2219]")
"""What every leader has: far faster to look for than the whole."""
_NAMED = re.compile(
    r"(?:appendix|chapter|part|annex) (?:\d{1,2}|[A-Z]|[IVX]+)(?:[.:](?=[ ])|(?=[ ]{2}))(?P<blank> +)",
    re.IGNORECASE,
)
"""An entry with a word before its number."""
_WIDE = re.compile(r"(?<=\S) {3,}(?=\S)")
_PAGE = re.compile(r"[\w.-]{0,8}")
_BLANK_LEADER = re.compile(
    r"^(?P<title>\s*\S.*?\S)(?P<dots> {3,})(?P<value>\d{1,4}|[ivxl]{1,6}|[A-Z]?\d{0,3}-\d{1,3})$"
)
HEADS = re.compile(r"(?:table of )?contents:?|list of \w+|chapters?|index", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Leader:
    """Where the parts of a line with a leader stand, in cells."""

    title: int
    """The end of the title."""
    dots: tuple[int, int]
    value: tuple[int, int]
    text: str
    """The value."""
    sure: bool = True
    """Whether it has more signs than an ellipsis."""


def _leader(line: Line) -> Leader | None:
    match = _LEADER.match(line.cells) if _DOTS.search(line.cells) else None
    if match is None or len(match["value"]) > LONGEST_VALUE:
        return None
    if line.text[0] == line.text[-1] == "|":
        return None  # a row of a box
    if sign_row(line.text) > 1 or match["title"].strip() == match["value"].split()[0]:
        return None  # a row of a map, its number at both edges
    hyphens = match["dots"].startswith("-")
    if (hyphens and not figure(match["value"])) or code(line.text):
        return None
    signs = len(match["dots"].replace(" ", ""))
    return Leader(match.end("title"), match.span("dots"), match.span("value"), match["value"], signs >= SURE)


def _plain(leader: Leader) -> bool:
    """Whether the value is a page or a figure, so that no other line has to show that the leader is one."""
    page = _PAGE.fullmatch(leader.text) is not None
    return (page and (any(char.isdigit() for char in leader.text) or len(leader.text) < 6)) or figure(
        leader.text
    )


def find_contents(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of such lines, two at least, an item an entry."""
    leaders = [_leader(line) if taken[index] is None else None for index, line in enumerate(lines)]
    leaders = _aligned(_among_keys(lines, _without_keys(lines, leaders)))
    blank = _blank_leaders(lines, taken, leaders)
    return sorted(
        [
            (start, end, _entries(lines[start:end], found[start:end], hyphens))
            for found in (leaders, blank)
            for start, end in _runs(lines, taken, found)
        ],
        key=lambda run: run[0],
    )


def _without_keys(lines: Sequence[Line], leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those left out that lead to words beside a longer text that starts at the same column: they are keys.

    Nor does one lead to a number and, behind wide blanks, to what goes on from line to line in a column beside it.
    """
    long = {
        index: (match.start("value"), _beside(match["value"], match.start("value")))
        for index, line in enumerate(lines)
        if leaders[index] is None and ".." in line.text and (match := _LEADER.match(line.cells))
    }
    kept: list[Leader | None] = []
    column = 0  # of the numbers beside which something stands, down to the next blank line
    for index, leader in enumerate(leaders):
        column = 0 if lines[index].gap else column
        text = _beside(leader.text, leader.value[0]) if leader is not None and long else 0
        key = leader is not None and not any(char.isdigit() for char in leader.text)
        start = text or (leader.value[0] if leader is not None and key else 0)
        near = start and any(start in long.get(index + step, ()) for step in range(-NEARBY, NEARBY + 1))
        if index in long and long[index][1]:
            column = long[index][0]
        kept.append(None if leader is None or near or leader.value[0] == column else leader)
    return kept


def _among_keys(lines: Sequence[Line], leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those left out that lead to words at the column of a key near them, one after the other.

    One that leads to words which go on below at their column is a key by itself.
    """
    columns = {
        index: match.start("value")
        for index, line in enumerate(lines)
        if leaders[index] is None and _DOTS.search(line.text) and (match := _LEADER.match(line.cells))
    }
    columns |= {
        index: leader.value[0]
        for index, leader in enumerate(leaders[:-1])
        if leader is not None and not lines[index + 1].apart and lines[index + 1].indent == leader.value[0]
    }
    kept = list(leaders)
    for order in (range(len(lines)), range(len(lines) - 1, -1, -1)) if columns else ():
        for index in order:
            leader = kept[index]
            if leader is None or any(char.isdigit() for char in leader.text):
                continue
            around = range(index - NEARBY, index + NEARBY + 1)
            if any(columns.get(other) == leader.value[0] for other in around):
                kept[index] = None
                columns[index] = leader.value[0]
    return kept


def _beside(value: str, start: int) -> int:
    """The column of what stands behind wide blanks in a value that begins at ``start``; 0 for nothing."""
    match = _WIDE.search(value)
    return start + match.end() if match else 0


def _aligned(leaders: Sequence[Leader | None]) -> list[Leader | None]:
    """The leaders, those to words left out that no other one nearby is in line with."""
    kept: list[Leader | None] = []
    for index, leader in enumerate(leaders):
        around = [*leaders[max(0, index - 3) : index], *leaders[index + 1 : index + 4]]
        even = leader is not None and any(
            other.sure and (other.dots[1], *other.value)[place] == (leader.dots[1], *leader.value)[place]
            for other in around
            if other is not None
            for place in range(3 if leader.sure else 2)
        )
        kept.append(leader if leader is not None and (_plain(leader) or even) else None)
    return kept


def _runs(
    lines: Sequence[Line], taken: Sequence[object], leaders: Sequence[Leader | None]
) -> list[tuple[int, int]]:
    runs: list[tuple[int, int]] = []
    index = floor = 0
    while index < len(lines):
        if leaders[index] is None:
            index += 1
            continue
        last = reached = index
        start = _wrapped_start(lines, taken, index, floor)
        while index < len(lines) and taken[index] is None and index - reached <= REACH:
            if index > start and lines[index].gap > 2 and not lines[index].crossing:
                break
            held = leaders[last]
            if leaders[index] is not None:
                last = reached = index
            elif held and (under_figures(lines[index], held.value) or full_entry(lines[index], held.value)):
                reached = index
            elif _parted(lines, leaders, index, last):
                break
            index += 1
        shown = sum(leader is not None for leader in leaders[start : last + 1]) >= 2
        index = floor = _below(lines, taken, leaders[last], last + 1) if shown else last + 1
        if shown:
            runs.append((start, index))
    return runs


def _parted(lines: Sequence[Line], leaders: Sequence[Leader | None], index: int, last: int) -> bool:
    """Whether a line without a leader, after a blank one, is more than a title between entries."""
    line = lines[index]
    if not line.gap or line.crossing or index - last < 1:
        return False
    return index + 1 >= len(lines) or leaders[index + 1] is None or len(line.text) >= 40


def _below(lines: Sequence[Line], taken: Sequence[object], leader: Leader | None, end: int) -> int:
    """The end of a list with the rule under its last figure and the sum below that, which has no title."""
    stop = end
    while leader and stop < len(lines) and taken[stop] is None and not lines[stop].gap:
        line = lines[stop]
        if not (under_figures(line, leader.value) or (stop > end and alone_at_end(line, leader.value))):
            break
        stop += 1
    return stop


def _wrapped_start(lines: Sequence[Line], taken: Sequence[object], index: int, floor: int) -> int:
    """The line where the title of the first entry begins: the one above, if this one is its deeper rest."""
    line = lines[index]
    if index == floor or taken[index - 1] is not None or line.apart:
        return index
    above = lines[index - 1]
    wraps = above.indent < line.indent <= above.indent + 8 and not closed(above.text)
    return index - 1 if wraps and (starts_small(line.text) or find_marker(above.text)) else index


def _blank_leaders(
    lines: Sequence[Line], taken: Sequence[object], leaders: Sequence[Leader | None]
) -> list[Leader | None]:
    """Entries of contents whose page numbers stand under each other at the right, nothing but blanks before them."""
    found: list[Leader | None] = [None] * len(lines)
    matches = [
        _BLANK_LEADER.match(line.cells) if taken[index] is None and leaders[index] is None else None
        for index, line in enumerate(lines)
    ]
    index = 0
    while index < len(lines):
        match = matches[index]
        if match is None:
            index += 1
            continue
        end, run = index, [index]
        while (
            end + 1 < len(lines)
            and end - run[-1] < REACH
            and lines[end + 1].gap <= 2
            and taken[end + 1] is None
        ):
            end += 1
            other = matches[end]
            if other is not None and other.end() == match.end():
                run.append(end)
            elif other is not None or lines[end].end > match.end("dots"):
                break
        entries = [entry for place in run if (entry := matches[place]) is not None]
        if _is_contents(lines, run, entries):
            for place, entry in zip(run, entries, strict=True):
                found[place] = Leader(
                    entry.end("title"), entry.span("dots"), entry.span("value"), entry["value"]
                )
        index = run[-1] + 1
    return found


def _is_contents(lines: Sequence[Line], run: Sequence[int], entries: Sequence[re.Match[str]]) -> bool:
    """Whether titles and numbers are contents: the numbers never fall, the titles are words and no columns."""
    titles = [_title(entry["title"].strip(" ")) for entry in entries]
    pages = [int(entry["value"]) for entry in entries if entry["value"].isdigit()]
    rising = sum(first <= second for first, second in pairwise(pages))
    headed = any(
        HEADS.fullmatch(re.sub(r"[^\w ]+", "", lines[place].text).strip())
        for place in range(max(0, run[0] - 3), run[0])
    )
    worded = sum(any(char.isalpha() for char in title) for title in titles)
    if len(entries) < (2 if headed else 4) or worded < len(titles) or any("   " in title for title in titles):
        return False
    if headed:
        return rising >= 0.8 * (len(pages) - 1)
    numbered = sum(find_marker(entry["title"].strip(" ")) is not None for entry in entries)
    return rising == len(pages) - 1 and pages[0] < pages[-1] and 2 * numbered >= len(entries)


def _title(text: str) -> str:
    """A title without its number."""
    marker = find_marker(text)
    return text[marker.text :] if marker else text


def _entries(lines: Sequence[Line], leaders: Sequence[Leader | None], hyphens: Hyphens) -> list[Block]:
    """One item an entry: its number, then the title, three signs of the leader and the page or value."""
    blocks: list[Block] = []
    waiting: list[Line] = []
    margin = min(line.indent for line in lines)
    levels: dict[int, int] = {}

    def entry(leader: Leader | None) -> Block:
        first = waiting[0]
        marker = find_marker(first.text)
        level = 0 if figure(first.text) else (first.indent - margin + 1) // INDENT
        if marker is None:
            level = levels.get(first.indent, level)  # under the titles of numbered ones
        else:
            levels[first.indent + marker.text] = level
        return _entry(waiting, leader, hyphens, level)

    values = [leader.value for leader in leaders if leader is not None]
    for line, leader in zip(lines, leaders, strict=True):
        if any(under_figures(line, value) for value in values):
            continue
        if waiting and (line.gap or line.indent < waiting[-1].indent or find_marker(line.text)):
            blocks.append(entry(None))
            waiting = []
        waiting.append(line)
        if leader is not None or any(full_entry(line, value) for value in values):
            blocks.append(entry(leader))
            waiting = []
    if waiting:
        blocks.append(entry(None))
    blocks[0] = replace(blocks[0], note="lines with leaders, cut to three signs")
    return blocks


def _entry(lines: Sequence[Line], leader: Leader | None, hyphens: Hyphens, level: int) -> Block:
    first = lines[0]
    marker = find_marker(first.text)
    named = _NAMED.match(first.text) if marker is None else None
    sign, text = (len(marker.label), marker.text) if marker else named.span("blank") if named else (0, 0)
    start = first.indent + text
    pieces = [line.piece(start if line is first else 0, line.end) for line in lines]
    if leader is not None:
        last = lines[-1]
        pieces[-1] = last.piece(start if last is first else 0, leader.title)
        dots = [place for place in range(*leader.dots) if last.cells[place] != " "]
        pieces.append(concat(last.piece(place, place + 1) for place in dots[:DOTS]))
        pieces.append(last.piece(*leader.value))
    label = first.piece(first.indent, first.indent + sign) if sign else Text()
    return Block(Kind.ITEM, flow(pieces, hyphens), label=label, level=level)
