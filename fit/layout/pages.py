"""Where pages end: the breaks of least cost, by dynamic programming over the lines.

There are at most a tenth more pages than when the lines are cut after every so many; within that, a page is cheap,
since it is what avoids faults. In a short document, for which a tenth is no page or two, the tenth is rounded up and
one page more allowed, each where it saves a fault.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from fit.document.blocks import Kind
from fit.layout.lines import Fault, Line, LineFlag
from fit.layout.page_costs import FAULT, Break, Spot, count_tall, emptiness, find_spots, is_bound, price
from fit.units import Span

LEAST_PAGE_COST = 60
"""A page more must be worth something even where there are pages enough: keeping a table together, not a hyphen."""
CLOSED_UP = FAULT // 10
"""A blank line left out below a heading: done for nothing less than a fault."""
_CLOSING_UP = (Kind.HEADING, Kind.ITEM, Kind.NOTE, Kind.TABLE, Kind.PICTURE)
"""What may stand right below a heading: no running text, which would seem to go on from it."""
_LEAST_ROWS = 5
"""Rows of a page on which something whole fits below a heading: on lower ones its blank line is worth more."""
_DEAREST_PAGE = 1 << 40
"""Above every sum of other costs: with it there are as few pages as can be."""
SHORT = 50
"""Naive pages below which a page more or less is little against a page that ends badly: at 20 it is one in twenty."""
EXACT_UP_TO = 200_000
"""Lines times pages for which every number of pages is tried: some tenths of a second."""


@dataclass(frozen=True, slots=True)
class Paging:
    """Pages chosen."""

    pages: list[Span]
    """For each page its lines; blank lines between two pages, and a rule that would be alone on one, are on neither."""
    faults: list[Fault]
    naive: int
    """The pages it takes to cut the lines after every so many."""
    tall: int = 0
    """Items, records and drawings that are higher than a page."""
    closed_up: frozenset[int] = frozenset()
    """The blank lines below headings that are left out, for what stands below these to fit on their page."""


def paginate(
    lines: Sequence[Line],
    rows: int,
    headers: Mapping[int, int],
    nests: Sequence[Span] = (),
    *,
    closing: bool = True,
) -> Paging:
    """Break lines into pages of at most ``rows``.

    ``headers`` has, by block, the lines that are repeated on each page on which a table goes on: they take
    their place from the rows of such a page. ``nests`` are the blocks of each item with what belongs to it.
    ``closing`` says that blank lines below headings may be left out.
    """
    spots = find_spots(lines, nests)
    if not spots:
        return Paging([], [], 0)
    room = [rows - _repeated(spot, headers) for spot in spots]
    loose = _loose(spots, rows) if closing else [0] * len(spots)
    breaks = [Break(0), *(price(*pair, rows) for pair in pairwise(spots))]
    naive = naive_pages(lines, rows)
    starts = _cheapest(spots, room, breaks, naive, loose)
    ends = [*starts[1:], len(spots)]
    bare = [_shows_nothing(spots[start:end]) for start, end in zip(starts, ends, strict=True)]
    top = _tops(spots, max(room))
    pages = [
        Span(top[start], spots[end - 1].row + 1)
        for start, end, rule in zip(starts, ends, bare, strict=True)
        if not rule
    ]

    def is_fault(place: int) -> bool:
        return bool(breaks[place].fault)

    kept = [spot.row - blanks for spot, blanks in zip(spots, loose, strict=True)]
    faults = [
        Fault(
            page - sum(bare[:page]),
            breaks[start].fault,
            spots[start].line.block,
            is_bound(kept, start, is_fault, rows),
        )
        for page, start in enumerate(starts[1:])
        if breaks[start].fault
    ]
    closed_up = _closed_up(spots, room, loose, [*zip(starts, ends, strict=True)])
    return Paging(pages, faults, naive, count_tall(spots, rows), closed_up)


def _loose(spots: Sequence[Spot], rows: int) -> list[int]:
    """For each line how many single blank lines stand above it between a heading and what may close up to it."""
    below = _CLOSING_UP if rows >= _LEAST_ROWS else (Kind.HEADING,)
    loose = (
        before.line.kind is Kind.HEADING and after.line.kind in below and after.row == before.row + 2
        for before, after in pairwise(spots)
    )
    return [*accumulate(loose, initial=0)]


def _closed_up(
    spots: Sequence[Spot], room: Sequence[int], loose: Sequence[int], pages: Sequence[tuple[int, int]]
) -> frozenset[int]:
    """The rows of the blank lines that the pages, half-open runs of ``spots``, have no room for."""
    found: list[int] = []
    top = _tops(spots, max(room))
    for start, end in pages:
        short = spots[end - 1].row + 1 - top[start] - room[start]
        blanks = [spots[at].row - 1 for at in range(start + 1, end) if loose[at] > loose[at - 1]]
        found += blanks[: max(0, short)]
    return frozenset(found)


def _parts_panels(line: Line) -> bool:
    """Whether a line is the rule between two panels, or an empty row of one, which shows nothing at the end of a page."""
    return not line.text or bool(line.flags & LineFlag.RULE and not line.flags & LineFlag.HEADER)


def _shows_nothing(spots: Sequence[Spot]) -> bool:
    """Whether a page would hold the rule between two panels, or empty rows of one, and nothing else."""
    return all(_parts_panels(spot.line) for spot in spots)


def _tops(spots: Sequence[Spot], rows: int) -> list[int]:
    """The row at which a page that begins with each line shows something: below a rule over a panel that fills the page."""
    tops = [spot.row for spot in spots]
    for place, (spot, below) in enumerate(pairwise(spots)):
        if spot.line.flags & LineFlag.RULE and below.unit.end - below.unit.start == rows:
            panels = _parts_panels(spot.line) and below.line.block == spot.line.block
            tops[place] = below.row if panels and below.row == spot.row + 1 else spot.row
    return tops


def most_pages(naive: int) -> int:
    """A tenth more than naive pages."""
    return naive * 11 // 10


def _beyond(naive: int) -> int:
    """The pages more than `most_pages` that a short document may have where each saves a fault."""
    return -(-naive * 11 // 10) + (naive < SHORT) - most_pages(naive)


def _repeated(spot: Spot, headers: Mapping[int, int]) -> int:
    """The header lines that a page beginning with the line needs first."""
    continues = not spot.line.flags & LineFlag.HEADER
    return headers.get(spot.line.block, 0) if continues else 0


def naive_pages(lines: Sequence[Line], rows: int) -> int:
    """The pages it takes to cut the lines after every ``rows`` of them, blank ones too."""
    return -(-len(lines) // rows)


def _cheapest(
    spots: Sequence[Spot], room: Sequence[int], breaks: Sequence[Break], naive: int, loose: Sequence[int]
) -> list[int]:
    """The starts of the pages: exact for short documents, by a price on each page for long ones."""
    most = most_pages(naive)
    starts = best_starts(spots, room, breaks, LEAST_PAGE_COST, loose)
    if len(starts) <= most:
        return starts
    most = max(
        most, len(best_starts(spots, room, breaks, _DEAREST_PAGE, loose))
    )  # repeated headers may need more
    if len(spots) * most <= EXACT_UP_TO:
        return best_starts_within(
            spots, room, breaks, most, max(0, most_pages(naive) + _beyond(naive) - most), loose
        )
    low, high, too_many = LEAST_PAGE_COST, LEAST_PAGE_COST, starts
    while len(starts) > most:
        low, high, too_many = high, high * 4, starts
        starts = best_starts(spots, room, breaks, high, loose)
    while high - low > max(1, low // 64):
        middle = (low + high) // 2
        tried = best_starts(spots, room, breaks, middle, loose)
        if len(tried) <= most:
            high, starts = middle, tried
        else:
            low, too_many = middle, tried
    return _spliced(too_many, starts, most)


def _spliced(too_many: list[int], few: list[int], most: int) -> list[int]:
    """The beginning of the one and the rest of the other, parted where both begin a page, at most ``most`` pages.

    Both are best at nearly the same price of a page, and so is what is put together from them.
    """
    place = {start: index for index, start in enumerate(few)}
    best = few
    for index, start in enumerate(too_many):
        if start in place and index + len(few) - place[start] <= most:
            best = too_many[:index] + few[place[start] :]
    return best


def best_starts(
    spots: Sequence[Spot],
    room: Sequence[int],
    breaks: Sequence[Break],
    page_cost: int,
    loose: Sequence[int] = (),
) -> list[int]:
    """The first line of each page, for the least sum of the costs of breaks, empty rows and pages.

    ``loose`` counts the blank lines above each line that may be left out.
    """
    count = len(spots)
    loose = loose or [0] * count
    rows = [spot.row for spot in spots]
    least = [0] * (count + 1)
    origin = [0] * (count + 1)
    widest = max(room)
    top = _tops(spots, widest)
    empty = [emptiness(unused, widest) for unused in range(widest + 1)]
    prices = [each.cost for each in breaks]
    for end in range(1, count + 1):
        after_last = rows[end - 1] + 1
        weight = breaks[end].emptiness if end < count else 0
        found = -1
        start = end - 1
        above = loose[start]
        highest = widest + above - (loose[start - widest] if start > widest else 0)
        while start >= 0 and after_last - top[start] <= highest:
            unused = room[start] - after_last + top[start]
            if unused >= loose[start] - above or start == end - 1:
                cost = least[start] + prices[start] + weight * empty[max(0, unused)]
                if unused < 0 and start < end - 1:
                    cost -= unused * CLOSED_UP
                if found < 0 or cost < found:
                    found, origin[end] = cost, start
            start -= 1
        least[end] = found + page_cost
    starts: list[int] = []
    end = count
    while end:
        end = origin[end]
        starts.append(end)
    return starts[::-1]


def best_starts_within(
    spots: Sequence[Spot],
    room: Sequence[int],
    breaks: Sequence[Break],
    most: int,
    beyond: int = 0,
    loose: Sequence[int] = (),
) -> list[int]:
    """The first line of each page, for the least sum of the costs of breaks and empty rows with at most ``most`` pages.

    Each of as many as ``beyond`` pages more must save a fault. ``loose`` is as for `best_starts`.
    """
    loose = loose or [0] * len(spots)
    rows = [spot.row for spot in spots]
    widest = max(room)
    top = _tops(spots, widest)
    empty = [emptiness(unused, widest) for unused in range(widest + 1)]
    prices = [each.cost for each in breaks]
    weights = [*(each.emptiness for each in breaks[1:]), 0]
    layers: list[dict[int, tuple[int, int]]] = [{0: (0, 0)}]
    """By number of pages, for each line after them the least cost and the start of the last page."""
    for _ in range(most + beyond):
        reached: dict[int, tuple[int, int]] = {}
        for start, (cost, _) in layers[-1].items():
            for end in range(start + 1, len(spots) + 1):
                unused = room[start] - rows[end - 1] - 1 + top[start]
                total = cost + prices[start] + weights[end - 1] * empty[max(0, unused)]
                if unused < 0 and end > start + 1:
                    if unused < loose[start] - loose[end - 1]:
                        break
                    total -= unused * CLOSED_UP
                if end not in reached or total < reached[end][0]:
                    reached[end] = total, start
        layers.append(reached)
    count = min(
        (pages for pages, layer in enumerate(layers) if len(spots) in layer),
        key=lambda pages: (
            layers[pages][len(spots)][0] + pages * LEAST_PAGE_COST + max(0, pages - most) * FAULT // 2
        ),
    )
    starts: list[int] = []
    end = len(spots)
    for layer in layers[count:0:-1]:
        end = layer[end][1]
        starts.append(end)
    return starts[::-1]
