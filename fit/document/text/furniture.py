"""Which lines are page furniture: running heads, feet, page numbers and the rules under them.

With form feeds the edges of the pages are looked at; without, lines that stand alone and come back at a
distance of a page. What comes back is a *shape*: the line with its numbers blanked.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Callable
from itertools import pairwise
from statistics import median

from fit.document.text.code import code
from fit.document.text.line import Line
from fit.document.text.measure import prose
from fit.document.text.pictures import ruled_off

DEPTH = 4
"""Lines at each edge of a page that may be furniture."""
SHORTEST_PAGE = 14
"""Lines from one running head to the next, at least, where no form feed marks the page."""
_NUMBER = re.compile(r"\d+|(?<![a-z])[ivxlc]+(?![a-z])")
_SPACES = re.compile(r"[\s_=-]{2,}|\s")
_ONLY_NUMBER = re.compile(r"\W*(?:page|p\.|pg\.?)?\W*#(?:\W+#)?\W*(?:of #)?\W*")
_EDGE_NUMBER = re.compile(
    r"^\W{0,3}(?:page )?(\d+)(?:\W{0,3}$|\s{3,}(?=\S))|(?:\s{3,}|page |[-\u2013|/] ?|^)\(?\[?(\d+)\W{0,3}$",
    re.IGNORECASE,
)
_PAGE_LINE = re.compile(
    r"[-\u2013\u2014] ?(?:\d{1,4}|[ivxl]{1,6}) ?[-\u2013\u2014]|\[?(?:page|pg\.) \d{1,4}(?: of \d{1,4})?\]?",
    re.IGNORECASE,
)
_DRAWN = re.compile(r"[+|\u2500-\u257f].*[+|\u2500-\u257f]$")
_MANUAL_HEAD = re.compile(r"\s*(\S+\([0-9n][a-zA-Z]*\))\s.*\s\1\s*")
_ROMAN = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100}


def find_furniture(lines: list[Line]) -> set[int]:
    """Indices of the lines that are furniture."""
    starts = [index for index, line in enumerate(lines) if line.page and index]
    found = _at_edges(lines, [0, *starts, len(lines)]) if starts else set()
    if len(starts) < 2:
        found |= _at_distance(lines, found)
    found |= {
        index
        for index, line in enumerate(lines)
        if _PAGE_LINE.fullmatch(line.text) and _alone(lines, index) and not line.aside
    }
    found |= _manual_page(lines)
    return found | {
        near
        for index in found
        for near in (index - 1, index + 1)
        if 0 <= near < len(lines) and ruled_off(lines[near].text)
    }


def shape(text: str) -> str:
    """A line with its numbers and spacing blanked."""
    return _SPACES.sub(" ", _NUMBER.sub("#", text.strip().lower()))


def _value(text: str) -> int | None:
    """The last number of a line that can be a page number."""
    found = [*_NUMBER.finditer(text.lower())]
    if not found:
        return None
    digits = found[-1].group()
    if digits.isdigit():
        return int(digits) if len(digits) < 6 else None
    values = [_ROMAN[char] for char in digits]
    return sum(-a if a < b else a for a, b in pairwise([*values, 0]))


def _at_edges(lines: list[Line], bounds: list[int]) -> set[int]:
    pages = [
        [index for index in range(first, last) if lines[index].cells] for first, last in pairwise(bounds)
    ]
    found: set[int] = set()
    for take in (_first, _last):
        for _ in range(DEPTH):
            edge = [take([index for index in page if index not in found]) for page in pages]
            new = _repeated(lines, edge)
            if not new:
                break
            found |= new
    return found


def _first(page: list[int]) -> int | None:
    return page[0] if page else None


def _last(page: list[int]) -> int | None:
    return page[-1] if page else None


def _repeated(lines: list[Line], edge: list[int | None]) -> set[int]:
    """Those lines of one edge, one a page, whose shape comes back or whose number counts the pages."""
    shapes = {
        index: shape(lines[index].cells)
        for index in edge
        if index is not None and not _DRAWN.match(lines[index].text)
    }
    counts = Counter(shapes.values())
    shifts: Counter[int] = Counter()
    shift_of: dict[int, set[int]] = defaultdict(set)
    for page, index in enumerate(edge):
        for number in _edge_numbers(lines[index].cells) if index in shapes else ():
            shifts[number - page] += 1
            shift_of[index or 0].add(number - page)
    pages = len(edge)
    enough = max(2, (pages + 1) // 2) if pages <= 5 else 3
    same = Counter(lines[index].cells.strip() for index in shapes)
    turning = _turning(lines, edge, shapes)
    counted = {shift for shift, times in shifts.items() if times >= max(enough, pages // 5)}
    new = set()
    for index, form in shapes.items():
        alone = _alone(lines, index)
        if (
            (_ONLY_NUMBER.fullmatch(form) and "#" in form and (counts[form] >= 2 or alone))
            or (
                same[lines[index].cells.strip()] >= enough
                and (alone or (counts[form] * 2 >= pages and not prose(lines[index].text)))
            )
            or (form in turning and (alone or not prose(lines[index].text)))
            or (shift_of[index] & counted and (alone or len(lines[index].text.split()) <= 8))
        ):
            new.add(index)
    return new


def _turning(lines: list[Line], edge: list[int | None], shapes: dict[int, str]) -> set[str]:
    """The shapes whose last number goes up with the pages, twice at least."""
    shifts: dict[str, Counter[int]] = defaultdict(Counter)
    for page, index in enumerate(edge):
        value = _value(lines[index].cells) if index in shapes else None
        if index in shapes and value is not None:
            shifts[shapes[index]][value - page] += 1
    return {form for form, counted in shifts.items() if max(counted.values()) >= 2}


def _edge_numbers(text: str) -> list[int]:
    return [
        int(found.group(1) or found.group(2))
        for found in _EDGE_NUMBER.finditer(text.strip())
        if len(found.group().strip()) < 7
    ]


def _alone(lines: list[Line], index: int) -> bool:
    before = index == 0 or not lines[index - 1].cells or lines[index].page
    after = index + 1 >= len(lines) or not lines[index + 1].cells or lines[index + 1].page
    return before and after


def _at_distance(lines: list[Line], known: set[int]) -> set[int]:
    """Lines of one shape that stand alone and come back at a page's distance."""
    places: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        if (
            line.cells
            and not line.aside
            and not code(line.text)
            and not _DRAWN.match(line.text)
            and index not in known
            and _alone_or_paired(lines, index)
        ):
            form = shape(line.cells)
            places[form].append(index)
            if _EDGE_NUMBER.search(line.text) and "   " in line.text:
                places["number at the edge"].append(index)
    found: set[int] = set()
    for form, indices in places.items():
        if len(indices) < 2:
            continue
        counting = _counting(lines, indices)
        if form == "number at the edge":
            if len(counting) >= 3 and _paged(counting, strict=False):
                found.update(counting)
        elif "#" in form:
            if len(counting) >= (2 if "page #" in form else 3) and _paged(counting, strict=False):
                found.update(counting)
            elif len(indices) >= 3 and not _ONLY_NUMBER.fullmatch(form) and _paged(indices, strict=True):
                found.update(indices)
        elif len(indices) >= (3 if all(_alone(lines, index) for index in indices) else 4) and _paged(
            indices, strict=True
        ):
            found.update(indices)
    return found


def _alone_or_paired(lines: list[Line], index: int) -> bool:
    """A blank line on one side at least: heads of two lines stand together."""
    return (index == 0 or not lines[index - 1].cells) or (
        index + 1 >= len(lines) or not lines[index + 1].cells
    )


def _counting(lines: list[Line], indices: list[int]) -> list[int]:
    """The longest run of these lines whose last or first numbers go up by one."""
    best: list[int] = []
    for number in (_value, _first_value):
        runs: dict[int, list[int]] = {}
        for index in indices:
            value = number(lines[index].cells)
            if value is None:
                continue
            run = runs.pop(value - 1, [])
            run.append(index)
            runs[value] = run
            if len(run) > len(best):
                best = run
    return best


def _first_value(text: str) -> int | None:
    found = _NUMBER.search(text.lower())
    return int(found.group()) if found and found.group().isdigit() and len(found.group()) < 6 else None


def _paged(indices: list[int], *, strict: bool) -> bool:
    """Whether the lines stand a page apart; strictly: at nearly the same distance each time."""
    steps = [b - a for a, b in pairwise(indices)]
    usual = median(steps)
    if usual < SHORTEST_PAGE:
        return False
    near: Callable[[int], bool] = (
        (lambda step: abs(step - usual * max(1, round(step / usual))) <= 2)
        if strict
        else (lambda step: step >= SHORTEST_PAGE)
    )
    return sum(map(near, steps)) >= 0.75 * len(steps)


def _manual_page(lines: list[Line]) -> set[int]:
    """The first and last line of a formatted manual page, which has no pages on a screen."""
    filled = [index for index, line in enumerate(lines) if line.cells]
    if not filled:
        return set()
    head = _MANUAL_HEAD.fullmatch(lines[filled[0]].cells)
    if head is None:
        return set()
    names = {head.group(1)}
    found = {filled[0]}
    for index in filled:
        other = _MANUAL_HEAD.fullmatch(lines[index].cells)
        if other is not None and _alone(lines, index):
            found.add(index)
            names.add(other.group(1))
            position = filled.index(index) if index != filled[0] else 0
            if position and _foot(lines[filled[position - 1]].cells, names):
                found.add(filled[position - 1])
    if _foot(lines[filled[-1]].cells, names) or "   " in lines[filled[-1]].text:
        found.add(filled[-1])
    return found


def _foot(text: str, names: set[str]) -> bool:
    return "   " in text.strip() and (
        text.rsplit(maxsplit=1)[-1] in names or text.split(maxsplit=1)[0] in names
    )
