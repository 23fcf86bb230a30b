"""Total-fit line breaking: of all ways to break a paragraph, the one of least cost.

The cost of a line is its slack squared, plus that of its end (`Costs`). This is the dynamic programme of Knuth
and Plass ("Breaking Paragraphs into Lines", Software: Practice and Experience 11, 1981, 1119-1184), with slack
in the place of their badness since cells neither stretch nor shrink. Only the places from which a line still
fits are looked at, so that the time is linear in the length of the paragraph.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from fit.layout.breaks import Places
from fit.layout.costs import Costs, End

_FAR = 1 << 60


class _Run(NamedTuple):
    """The best way to a place with a given number of lines in a row that end in a hyphen."""

    cost: int
    node: int
    """The place before, as a node."""
    run: int
    """The hyphens in a row there."""


_NOWHERE = _Run(_FAR, 0, 0)


def total_fit(places: Places, width: int, costs: Costs, max_hyphens: int, extra: int = 0) -> list[int]:
    """Choose the places at which the lines end.

    ``width`` is that of a line in cells; the first has ``extra`` more.
    At most ``max_hyphens`` lines in a row end in a hyphen, unless there is no other way.
    The answer ascends and ends with the last place; it is empty where there are no places.
    """
    chosen = _cheapest(places, width, costs, None, extra)  # nearly always keeps the limit by itself
    if _most_in_a_row(places, chosen) > max_hyphens:
        return _cheapest(places, width, costs, max_hyphens, extra)
    return chosen


def _most_in_a_row(places: Places, chosen: list[int]) -> int:
    most = run = 0
    for place in chosen:
        run = run + 1 if places.kinds[place] is End.HYPHEN else 0
        most = max(most, run)
    return most


def _cheapest(places: Places, width: int, costs: Costs, max_hyphens: int | None, extra: int) -> list[int]:
    """The dynamic programme, with or without a limit on hyphens in a row."""
    end_cells, kinds = places.end_cells, places.kinds
    start_cells = [extra, *places.start_cells]  # by node: node 0 is the beginning, node i + 1 the place i
    count = len(places)
    best = [0] * (count + 1)
    origin = [0] * (count + 1)
    runs: dict[int, list[_Run]] = {}
    first = 0
    for place in range(count):
        node = place + 1
        reach = end_cells[place] - width
        while first < place and start_cells[first] < reach:
            first += 1
        window: Sequence[int] = range(first, node)
        if extra and first == 0:  # the longer first line may hold what the lines after it do not
            window = [0, *(before for before in window if before and start_cells[before] >= reach)]
        if start_cells[first] < reach:  # too wide even alone
            best[node], origin[node] = best[place] + costs.overfull, place
        elif max_hyphens is not None and kinds[place] is End.HYPHEN:
            own = places.costs[place]
            ways = _after_hyphen(
                best, runs, [(start_cells[before] - reach, before) for before in window], max_hyphens, costs
            )
            runs[node] = [way._replace(cost=way.cost + own) for way in ways]
            best[node] = min(runs[node]).cost
        else:
            least = _FAR
            from_node = first
            if place + 1 < count or costs.count_last:
                for before in window:
                    slack = start_cells[before] - reach
                    cost = best[before] + slack * slack
                    if cost < least:
                        least, from_node = cost, before
            else:
                ends = [
                    best[before]
                    + _last_line(start_cells[before] - reach, width, costs)
                    + (costs.last_hyphen if before and kinds[before - 1] is End.HYPHEN else 0)
                    for before in window
                ]
                least = min(ends)
                from_node = window[ends.index(least)]
            best[node], origin[node] = least + places.costs[place], from_node
    return _trace(origin, runs, count)


def _after_hyphen(
    best: list[int], runs: dict[int, list[_Run]], lines: list[tuple[int, int]], max_hyphens: int, costs: Costs
) -> list[_Run]:
    """The best ways to a place with a hyphen: one for each number of hyphens in a row, itself included.

    ``lines`` are the slack and the first node of each line that may end there.
    """
    found = [_NOWHERE] * max_hyphens
    for slack, before in lines:
        square = slack * slack
        if before not in runs:
            if best[before] + square < found[0].cost:
                found[0] = _Run(best[before] + square, before, 0)
            continue
        for run, way in enumerate(runs[before], start=1):
            cost = way.cost + square + (costs.many_hyphens if run == max_hyphens else 0)
            slot = min(run, max_hyphens - 1)
            if cost < found[slot].cost:
                found[slot] = _Run(cost, before, run)
    return found


def _last_line(slack: int, width: int, costs: Costs) -> int:
    """The cost of the last line: only that of being short."""
    return costs.short_last if width - slack < width // 6 else 0


def _trace(origin: list[int], runs: dict[int, list[_Run]], node: int) -> list[int]:
    """The places of the best way to the last node, ascending."""
    chosen: list[int] = []
    run = 0  # hyphens in a row at the node, 0 where the best will do
    while node:
        chosen.append(node - 1)
        if node in runs:
            ways = runs[node]
            way = ways[run - 1] if run else min(ways)
            node, run = way.node, way.run
        else:
            node, run = origin[node], 0
    return chosen[::-1]
