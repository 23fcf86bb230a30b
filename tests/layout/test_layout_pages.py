"""Page breaks: brute force, the rules one by one, and what happens where they cannot be kept.

Orphans and widows of 2 are the initial values of CSS Fragmentation Level 3; the other rules are common practice
of typesetters, no source.
"""

from __future__ import annotations

from array import array
from itertools import combinations, pairwise

import pytest
from documents import Maker, pages_of
from hypothesis import given, settings, strategies as st

from fit.document.blocks import Kind
from fit.layout.lines import Line, LineFlag
from fit.layout.page_costs import Break, Spot, emptiness, find_spots, price
from fit.layout.pages import (
    LEAST_PAGE_COST,
    best_starts,
    best_starts_within,
    most_pages,
    naive_pages,
    paginate,
)

LOREM = "The keeper trims the wick at dusk and fills the lamp, and then he sits down by the window to read. "

UNITS = st.tuples(
    st.sampled_from([Kind.PARAGRAPH, Kind.ITEM, Kind.HEADING, Kind.TABLE, Kind.PREFORMATTED]),
    st.integers(1, 4),
    st.booleans(),
)
"""A unit: its kind, its lines, and whether a blank line follows it."""


def lines_of(units: list[tuple[Kind, int, bool]], most: int = 14) -> list[Line]:
    lines: list[Line] = []
    for block, (kind, size, blank) in enumerate(units):
        for number in range(size):
            flags = LineFlag.FIRST * (number == 0) | LineFlag.LAST * (number == size - 1)
            lines.append(Line("x.", array("q", [-1, -1]), block, kind, LineFlag.NONE | flags))
        if blank:
            lines.append(Line("", array("q"), -1, None, LineFlag.BLANK))
    return lines[:most]


def cost_of(starts: tuple[int, ...], spots: list[Spot], rows: int, breaks: list[Break]) -> int | None:
    """The costs of the breaks and the empty rows; None where a page is too high."""
    ends = [*starts[1:], len(spots)]
    total = sum(breaks[start].cost for start in starts)
    for start, end in zip(starts, ends, strict=True):
        unused = rows - (spots[end - 1].row - spots[start].row + 1)
        if unused < 0:
            return None
        if end < len(spots):
            total += breaks[end].emptiness * emptiness(unused, rows)
    return total


@settings(max_examples=150, deadline=None)
@given(st.lists(UNITS, min_size=1, max_size=8), st.integers(1, 6), st.sampled_from([LEAST_PAGE_COST, 200]))
def test_it_equals_brute_force(units: list[tuple[Kind, int, bool]], rows: int, page_cost: int) -> None:
    spots = find_spots(lines_of(units))
    breaks = [
        Break(0),
        *(price(before, after, rows) for before, after in pairwise(spots)),
    ]
    room = [rows] * len(spots)
    ways = {
        (0, *rest): cost
        for count in range(len(spots))
        for rest in combinations(range(1, len(spots)), count)
        if (cost := cost_of((0, *rest), spots, rows, breaks)) is not None
    }
    found = best_starts(spots, room, breaks, page_cost)
    assert ways[tuple(found)] + page_cost * len(found) == min(
        cost + page_cost * len(way) for way, cost in ways.items()
    )
    most = most_pages(naive_pages(lines_of(units), rows))
    within = best_starts_within(spots, room, breaks, most)
    assert len(within) <= most
    assert ways[tuple(within)] + LEAST_PAGE_COST * len(within) == min(
        cost + LEAST_PAGE_COST * len(way) for way, cost in ways.items() if len(way) <= most
    )


@settings(max_examples=50, deadline=None)
@given(st.lists(UNITS, min_size=1, max_size=60), st.integers(1, 9))
def test_pages_hold_every_line_once_and_are_hardly_more_than_naive_ones(
    units: list[tuple[Kind, int, bool]], rows: int
) -> None:
    lines = lines_of(units, most=1000)
    paging = paginate(lines, rows, {})
    on_pages = [index for page in paging.pages for index in range(page.start, page.end)]
    assert on_pages == sorted(set(on_pages))
    left_out = set(range(len(lines))) - set(on_pages)
    assert all(lines[index].flags & LineFlag.BLANK for index in left_out)
    for page in paging.pages:
        assert 0 < page.end - page.start <= rows
        assert not lines[page.start].flags & LineFlag.BLANK
        assert not lines[page.end - 1].flags & LineFlag.BLANK
    assert len(paging.pages) <= max(paging.naive + 1, paging.naive * 1.1)


def test_a_long_document_keeps_the_bound_too() -> None:
    maker = Maker()
    for number in range(300):
        maker.heading(f"Watch {number}").paragraph(LOREM * (number % 3 + 1)).item("-", LOREM)
    layout = maker.lay_out(40, 7)
    assert len(layout.pages) <= layout.naive_pages * 1.1
    assert layout.after.pages == len(layout.pages)


def test_a_heading_goes_with_what_follows_it() -> None:
    maker = (
        Maker()
        .paragraph("one two three four five six")
        .heading("Tides")
        .paragraph("high at six and low at noon")
    )
    pages = pages_of(maker.lay_out(10, 5))
    assert all(page[-1] != "Tides" for page in pages)


def test_no_line_of_a_paragraph_stands_alone() -> None:
    maker = Maker().paragraph(LOREM).paragraph(LOREM * 2).paragraph(LOREM)
    layout = maker.lay_out(30, 7)
    assert not layout.faults


def test_items_stay_whole() -> None:
    maker = Maker()
    for _ in range(5):
        maker.item("-", "trim the wick and fill the lamp")
    layout = maker.lay_out(20, 7)
    assert not layout.faults
    assert all(page[0].startswith("-") for page in pages_of(layout))


def test_no_page_begins_or_ends_with_a_blank_line() -> None:
    maker = Maker()
    for _ in range(9):
        maker.paragraph("one two three")
    for page in pages_of(maker.lay_out(20, 2)):
        assert page[0]
        assert page[-1]


def test_an_item_higher_than_a_page_is_split_and_said_to_be() -> None:
    layout = Maker().item("-", LOREM * 3).lay_out(30, 5)
    assert layout.faults
    assert all(fault.what == "item split" and fault.forced for fault in layout.faults)
    assert layout.after.forced_faults == len(layout.faults)


@pytest.mark.parametrize("rows", [1, 2, 3])
def test_the_lowest_pages_hold_everything(rows: int) -> None:
    maker = Maker().heading("Tides").paragraph(LOREM).table(("a", "b"), ("c", "d"), header_rows=1)
    layout = maker.lay_out(30, rows)
    assert all(len(page) <= rows for page in pages_of(layout))
    assert [line for page in pages_of(layout) for line in page if line] == [
        line.text for line in layout.lines if line.text
    ]
    assert any(fault.forced for fault in layout.faults) == (rows < 4)


def test_an_empty_document_has_no_pages() -> None:
    layout = Maker().lay_out()
    assert layout.pages == ()
    assert layout.lines == ()
    assert layout.naive_pages == 0
