"""Furniture at the edges of pages that form feeds part: what comes back there, or counts the pages.

Form feeds part sections too. Then each starts with a title of its own, and titles are alike: `WATCH 1`, `WATCH 2`.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Set as AbstractSet
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.pages.edge_lines import (
    LEADER,
    MIRRORED,
    ONLY_NUMBER,
    TITLE,
    drawn,
    edge_values,
    listed,
    mirrored,
    page_value,
    parts,
    reads_on,
    says_page,
    set_off,
    shape,
    tabular,
    tight,
)
from fit.document.text.signs.measure import closed, prose, starts_small

DEPTH = 4
"""Lines at each edge of a page that may be furniture."""
NEAR_END = 5
"""Lines at the end of a page among which the last one of running text is looked for."""
_ROMAN_RIGHT = re.compile(r"\s{3,}[ivxlc]+$")
_SPAN = re.compile(r"(?P<first>[A-Za-z]+:?) \S+ (?P<last>[A-Za-z]+|[-\u2013]) \S+")
"""Two words that stay, before the first and the last entry of a page."""
WORDS = 8
"""Words of a running head that no blank line parts from the text, at most."""
INSIDE = 0.5
"""Lines in the middle of pages to one at their edges with the same words, from which on it is text that comes back."""
LONGEST = 16
"""Cells of a number alone on its line with what may be around it, at most."""
SECOND = 3
"""Running heads of two lines of which only the first comes back, at least."""
REACH = 2
"""Pages from one running head to the next, at most: left and right pages may have different ones."""
BARE = 0.25
"""Share of the pages within such a row below which they may begin or end with a line that never comes back."""
CROSSED = 0.2
"""Share of the page ends within a sentence from which on form feeds surely part pages."""


def at_edges(lines: list[Line], bounds: list[int], known: AbstractSet[int] = frozenset()) -> set[int]:
    """Indices of the lines at the edges of pages that are furniture, those that are ``known`` with them.

    ``bounds`` are where pages start, and the end.
    """
    pages = [
        [index for index in range(first, last) if lines[index].cells] for first, last in pairwise(bounds)
    ]
    found = set(known)
    inner = Counter(lines[index].cells.strip() for page in pages for index in page[DEPTH:-DEPTH])
    counted = {index for page in pages for index in _counts_on(lines, page)}
    apart = not _sentences_cross(lines, [[index for index in page if index not in found] for page in pages])
    for take in (_first, _last):
        for _ in range(DEPTH):
            edge = [take([index for index in page if index not in found]) for page in pages]
            edge = [None if index in counted else index for index in edge]
            new = _repeated(lines, edge, found, inner, apart=apart)
            if not new:
                break
            found |= new
    return found | _second_lines(lines, pages, found)


def _second_lines(lines: list[Line], pages: list[list[int]], found: set[int]) -> set[int]:
    """The lines right below running heads that blank lines part from the text: titles that change with the sections.

    Such a title comes back on the pages of its section, or cuts a sentence; else it is the heading of a chapter.
    """
    below: list[int] = []
    heads = seconds = 0
    for page in pages:
        text = next((place for place, index in enumerate(page) if index not in found), 0)
        if not text:
            continue
        heads += 1
        seconds += text > 1 and page[text - 1] == page[text - 2] + 1
        first = page[text]
        touches = lines[first - 1].cells and not lines[first].page
        if (
            touches
            and not closed(lines[first].text)
            and (text + 1 == len(page) or page[text + 1] > first + 1)
        ):
            below.append(first)
    if len(below) + seconds < max(SECOND, 0.5 * heads):
        return set()
    times = Counter(lines[index].text for index in below)
    return {index for index in below if times[lines[index].text] > 1 or _cuts(lines, index)}


def _cuts(lines: list[Line], index: int) -> bool:
    """Whether the text below a line goes on in the middle of a sentence."""
    return starts_small(next((line.text for line in lines[index + 1 :] if line.cells), ""))


def _first(page: list[int]) -> int | None:
    return page[0] if page else None


def _last(page: list[int]) -> int | None:
    return page[-1] if page else None


def _sentences_cross(lines: list[Line], pages: list[list[int]]) -> bool:
    """Whether running text goes on over form feeds: they part pages, and not sections with a title each."""
    cut = 0
    for page in pages[:-1]:
        text = next((lines[i].text for i in reversed(page[-NEAR_END:]) if prose(lines[i].text)), "")
        cut += bool(text) and not closed(text)
    return cut >= 2 or cut >= CROSSED * len(pages)


def _counts_on(lines: list[Line], page: list[int]) -> list[int]:
    """The numbers alone on a line at the edges of a page from which another one in it, at their column, counts on."""
    numbers = {
        (lines[index].indent, value): index
        for index in page
        if len(lines[index].text) <= LONGEST and ONLY_NUMBER.fullmatch(shape(lines[index].text))
        if (value := page_value(lines[index].text)) is not None
    }
    return [
        index
        for (indent, value), index in numbers.items()
        if (indent, value + 1) in numbers or (indent, value - 1) in numbers
    ]


def _repeated(
    lines: list[Line], edge: list[int | None], known: AbstractSet[int], inner: Counter[str], *, apart: bool
) -> set[int]:
    """Those lines of one edge, one a page, whose shape comes back or whose number counts the pages.

    What as many lines in the middle of pages say, ``inner``, is text.
    ``apart`` says that no sentence runs from one page to the next, so that what counts them may be their titles.
    """
    shapes = {
        index: MIRRORED if mirrored(lines[index].cells) else shape(lines[index].cells)
        for index in edge
        if index is not None
        and not drawn(lines, index, known)
        and not LEADER.match(lines[index].text)
        and not tabular(lines, index)
    }
    counts = Counter(shapes.values())
    shifts: Counter[int] = Counter()
    shift_of: dict[int, set[int]] = defaultdict(set)
    for page, index in enumerate(edge):
        for number in edge_values(lines[index].cells) if index in shapes else ():
            shifts[number - page] += 1
            shift_of[index or 0].add(number - page)
    pages = len(edge)
    enough = max(2, (pages + 1) // 2) if pages <= 5 else 3
    places = {index: page for page, index in enumerate(edge) if index is not None and index in shapes}
    texts = {index: lines[index].cells.strip() for index in shapes}
    same = Counter(texts.values())
    held = _in_a_row(places, {index: [text] for index, text in texts.items()}, enough)
    held |= _in_turn(edge, texts)
    half = _in_a_row(places, {index: parts(text) or [text] for index, text in texts.items()}, enough)
    turning = _turning(lines, places, shapes, enough)
    spans = _spans(lines, places, enough)
    counted = {shift for shift, times in shifts.items() if times >= max(enough, pages // 5)}
    numbers = _page_numbers(lines, edge, shapes, shifts)
    entries = listed(lines, [index for index, text in texts.items() if same[text] > 1])
    entries |= {text for text, times in same.items() if inner[text] >= max(2, INSIDE * times)}
    new = set()
    for index, form in shapes.items():
        alone = set_off(lines, index, known)
        text = texts[index]
        if same[text] == 1 and (TITLE.fullmatch(form) or (apart and tight(text))):
            continue
        if text in entries:
            continue
        if (
            (index in numbers and (counts[form] >= 2 or alone))
            or (
                index in held
                and (alone or _in_block(lines, index) or (counts[form] * 2 >= pages and not prose(text)))
            )
            or says_page(text, places[index] + 1)
            or (index in spans and alone)
            or (form == MIRRORED and counts[form] >= enough)
            or (alone and index in half)
            or (form in turning and (alone or not reads_on(text)))
            or (shift_of[index] & counted and (alone or _short(text)))
        ):
            new.add(index)
    if len(new) * 2 < pages:
        return new
    twice = _in_a_row(places, {index: [text] for index, text in texts.items()}, 2)
    return new | {index for index in twice if set_off(lines, index, known)}


def _spans(lines: list[Line], places: dict[int, int], enough: int) -> set[int]:
    """Those lines of most pages that say with the same words from where to where a page goes: `FROM lamp TO oil`."""
    frames: dict[tuple[str, str], set[int]] = defaultdict(set)
    for index in places:
        match = _SPAN.fullmatch(lines[index].text)
        if match is not None:
            frames[match["first"], match["last"]].add(index)
    least = max(enough, (len(places) + 1) // 2)
    return {index for indices in frames.values() if len(indices) >= least for index in indices}


def _in_block(lines: list[Line], index: int) -> bool:
    """Whether a line is one of two or three at the top of a page with a number among them, a blank line below."""
    start = index
    while start and not lines[start].page and lines[start - 1].cells:
        start -= 1
    end = next(
        (at for at in range(index, len(lines)) if not lines[at].cells or (at > start and lines[at].page)), 0
    )
    block = lines[start:end]
    number = any(page_value(line.cells) is not None for line in block)
    return (lines[start].page or not start) and 1 < len(block) < DEPTH and number


def _in_a_row(places: dict[int, int], signs: dict[int, list[str]], enough: int) -> set[int]:
    """Those lines that share a sign with others on the pages before and after, ``enough`` in a row.

    A running head stands on the pages of its part one after the other, or on the left ones, another on the right;
    what comes back now and then is text.
    """
    bearing: dict[str, list[int]] = defaultdict(list)
    for index in places:
        for sign in signs[index]:
            bearing[sign].append(index)
    headed = {places[index] for indices in bearing.values() if len(indices) > 1 for index in indices}
    found: set[int] = set()
    for indices in bearing.values():
        cuts = [at for at in range(1, len(indices)) if places[indices[at]] - places[indices[at - 1]] > REACH]
        for first, last in pairwise([0, *cuts, len(indices)]):
            run = range(places[indices[first]], places[indices[last - 1]] + 1)
            bare = sum(page not in headed for page in run)
            found.update(indices[first:last] if last - first >= enough and bare < BARE * len(run) else ())
    return found


def _in_turn(edge: list[int | None], texts: dict[int, str]) -> set[int]:
    """Those lines that are the same on every second page, four pages one after the other: of left and right ones."""
    heads = [texts.get(-1 if index is None else index, "") for index in edge]
    found: set[int] = set()
    for page in range(len(edge) - 3):
        first, second, *others = heads[page : page + 4]
        if first and second and others == [first, second]:
            found.update(index for index in edge[page : page + 4] if index is not None)
    return found


def _short(text: str) -> bool:
    """Whether a line with a number is short enough for a running head, though it touches the text."""
    return len(text.split()) <= WORDS and (
        any(char.isdigit() for char in text) or _ROMAN_RIGHT.search(text) is not None
    )


def _page_numbers(
    lines: list[Line], edge: list[int | None], shapes: dict[int, str], shifts: Counter[int]
) -> set[int]:
    """Those lines that are numbers alone and count the pages: on most of them, or with another one, or from 1."""
    places = {index: page for page, index in enumerate(edge) if index is not None}
    values = {
        index: value
        for index, form in shapes.items()
        if "#" in form and ONLY_NUMBER.fullmatch(form)
        if (value := page_value(lines[index].cells)) is not None
    }
    if len(values) >= 0.5 * len(edge):
        return set(values)
    turns = {index: value - places[index] for index, value in values.items()}
    return {index for index, turn in turns.items() if turn in {0, 1} or shifts[turn] > 1}


def _turning(lines: list[Line], places: dict[int, int], shapes: dict[int, str], enough: int) -> set[str]:
    """The shapes whose last number goes up with the pages: ``enough`` times, or twice after the word page."""
    shifts: dict[str, Counter[int]] = defaultdict(Counter)
    for index, page in places.items():
        value = page_value(lines[index].cells)
        if value is not None:
            shifts[shapes[index]][value - page] += 1
    return {
        form
        for form, counted in shifts.items()
        if max(counted.values()) >= (2 if "page " in form else enough)
    }
