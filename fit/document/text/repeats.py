"""Furniture of documents without form feeds: lines that stand alone and come back at a distance of a page."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from itertools import pairwise
from statistics import median

from fit.document.text.code import code
from fit.document.text.edge_lines import (
    DRAWN,
    EDGE_NUMBER,
    NUMBER,
    ONLY_NUMBER,
    page_value,
    shape,
    stands_alone,
)
from fit.document.text.line import Line

SHORTEST_PAGE = 14
"""Lines from one running head to the next, at least, where no form feed marks the page."""


def at_distance(lines: list[Line], known: set[int]) -> set[int]:
    """Lines of one shape that stand alone and come back at a page's distance."""
    places: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        if (
            line.cells
            and not line.aside
            and not code(line.text)
            and not DRAWN.match(line.text)
            and index not in known
            and _alone_or_paired(lines, index)
        ):
            form = shape(line.cells)
            places[form].append(index)
            if EDGE_NUMBER.search(line.text) and "   " in line.text:
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
            elif len(indices) >= 3 and not ONLY_NUMBER.fullmatch(form) and _paged(indices, strict=True):
                found.update(indices)
        elif len(indices) >= (3 if all(stands_alone(lines, index) for index in indices) else 4) and _paged(
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
    for number in (page_value, _first_value):
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
    found = NUMBER.search(text.lower())
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
