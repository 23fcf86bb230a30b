"""Page breaks: brute force, the rules one by one, and what happens where they cannot be kept.

Orphans and widows of 2 are the initial values of CSS Fragmentation Level 3; the other rules are common practice
of typesetters, no source.
"""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from itertools import combinations, pairwise
from math import ceil

import pytest
from documents import Maker, pages_of
from hypothesis import given, settings, strategies as st
from page_faults import as_json, count_faults

from fit.document.blocks import Kind
from fit.document.text import read_text
from fit.layout.compose import lay_out
from fit.layout.lines import Line, LineFlag
from fit.layout.page_costs import FAULT, Break, Spot, emptiness, find_spots, is_bound, price
from fit.layout.pages import (
    CLOSED_UP,
    LEAST_PAGE_COST,
    SHORT,
    best_starts,
    best_starts_within,
    most_pages,
    naive_pages,
    paginate,
)
from fit.layout.settings import LayoutSettings
from fit.report.reflowed import reflow_document
from fit.units import Span

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


NESTS = st.lists(st.tuples(st.integers(0, 6), st.integers(2, 5)), max_size=2)
"""The first block of an item with what belongs to it, and how many blocks there are."""


def nested(nests: list[tuple[int, int]]) -> list[Span]:
    """The nests that lie side by side or in each other."""
    spans: list[Span] = []
    for start, size in sorted(nests, key=lambda nest: (nest[0], -nest[1])):
        crossing = [span for span in spans if start < span.end < start + size]
        spans += [] if crossing else [Span(start, start + size)]
    return spans


def headings_of(spots: Sequence[Spot]) -> list[tuple[Spot, Spot]]:
    """Headings one after the other."""
    return [
        (before, after)
        for before, after in pairwise(spots)
        if before.line.kind is after.line.kind is Kind.HEADING
    ]


def cost_of(starts: tuple[int, ...], spots: list[Spot], rows: int, breaks: list[Break]) -> int | None:
    """The costs of the breaks and the empty rows; None where a page is too high."""
    ends = [*starts[1:], len(spots)]
    total = sum(breaks[start].cost for start in starts)
    for start, end in zip(starts, ends, strict=True):
        unused = rows - (spots[end - 1].row - spots[start].row + 1)
        loose = sum(after.row == before.row + 2 for before, after in headings_of(spots[start:end]))
        if unused + loose < 0:
            return None
        total += CLOSED_UP * max(0, -unused)
        unused = max(0, unused)
        if end < len(spots):
            total += breaks[end].emptiness * emptiness(unused, rows)
    return total


@settings(max_examples=150, deadline=None)
@given(
    st.lists(UNITS, min_size=1, max_size=8),
    NESTS,
    st.integers(1, 6),
    st.sampled_from([LEAST_PAGE_COST, 200]),
    st.integers(0, 1),
)
def test_it_equals_brute_force(
    units: list[tuple[Kind, int, bool]], nests: list[tuple[int, int]], rows: int, page_cost: int, beyond: int
) -> None:
    spots = find_spots(lines_of(units), nested(nests))
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
    headed = [after.row for before, after in headings_of(spots) if after.row == before.row + 2]
    loose = [sum(row <= spot.row for row in headed) for spot in spots]
    found = best_starts(spots, room, breaks, page_cost, loose)
    assert ways[tuple(found)] + page_cost * len(found) == min(
        cost + page_cost * len(way) for way, cost in ways.items()
    )
    least = min(map(len, ways))
    most = max(least, most_pages(naive_pages(lines_of(units), rows)))
    within = best_starts_within(spots, room, breaks, most, beyond, loose)

    def price_within(way: tuple[int, ...]) -> int:
        return ways[way] + LEAST_PAGE_COST * len(way) + max(0, len(way) - most) * FAULT // 2

    assert price_within(tuple(within)) == min(price_within(way) for way in ways if len(way) <= most + beyond)
    if not beyond and not headed:
        assert faults_of(within, breaks) == min(faults_of(way, breaks) for way in ways if len(way) <= most)


def faults_of(starts: Sequence[int], breaks: list[Break]) -> int:
    """The faults; a heading split is two, since its beginning is last on a page too."""
    return sum(breaks[start].cost // FAULT for start in starts)


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
        shown = set(range(page.start, page.end)) - paging.closed_up
        assert 0 < len(shown) <= rows
        assert not lines[page.start].flags & LineFlag.BLANK
        assert not lines[page.end - 1].flags & LineFlag.BLANK
    assert len(paging.pages) <= ceil(paging.naive * 11 / 10) + (paging.naive < SHORT)


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


@pytest.mark.parametrize(("caption", "last"), [("Table 1. Oil", False), ("Fig. 2-1", False), ("Oil", True)])
def test_a_caption_goes_with_its_table(caption: str, last: bool) -> None:
    """Nobody should turn a page between a table and its number; other lines that stand alone are not bound so."""
    maker = Maker().paragraph("one two three four five").kept(caption)
    maker.table(("Lamp", "40 cans of oil for it"), ("Horn", "20 cans of oil for it"))
    pages = pages_of(maker.lay_out(14, 5))
    assert any(page[-1].strip() == caption for page in pages) is last


def test_a_page_that_must_end_badly_ends_below_the_title_of_the_document() -> None:
    """A heading over one of its own rank heads nothing: better it is last than a line of the text below is alone."""
    text = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
    pages = pages_of(
        Maker()
        .heading("The tides of the rock in May")
        .heading("by A. Berg")
        .heading("Noon")
        .paragraph(text)
        .lay_out(10, 7)
    )
    assert pages[0][-1] == "by A. Berg"
    assert pages[1][0] == "Noon"


def test_headings_close_up_where_the_text_below_them_would_not_fit() -> None:
    """A blank line between two headings is left out for two lines of the text below, and for nothing less."""
    text = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
    maker = Maker().heading("Tides").heading("by A. Berg").heading("Noon").paragraph(text)
    first = pages_of(maker.lay_out(10, 7))[0]
    assert first[:5] == ["Tides", "by A. Berg", "", "Noon", ""]
    assert len(first) == 7
    assert pages_of(maker.lay_out(10, 8))[0][:4] == ["Tides", "", "by A. Berg", ""]
    assert not maker.lay_out(10, 7).faults


@pytest.mark.parametrize("high", [5, 6])
def test_a_heading_closes_up_to_an_item_or_a_record_that_would_not_fit_below_it(high: int) -> None:
    """Six lines fit below a heading on a page of seven if no blank line stands between them; five have room for one."""
    names = [f"Reading {number}" for number in range(high)]
    item = Maker().heading("Watches").item("1.", "keep lit " * high).paragraph("three four")
    record = Maker().heading("Watches").table(names, ["low"] * high, header_rows=1).paragraph("three four")
    for layout in item.lay_out(12, 7), record.lay_out(20, 7):
        first = pages_of(layout)[0]
        assert not layout.faults
        assert len(first) == 7
        assert (first[1] == "") == (high == 5)


def test_a_heading_is_split_for_nothing_that_can_be_ended_elsewhere() -> None:
    """Better it is last, or what stands above it, than half of it."""
    maker = (
        Maker().paragraph("one two three four five six").heading("Appendix").heading("Stations of the coast")
    )
    maker.table(("Station", "The landing"), ("Keeper", "A. Berg"), ("Height", "60 feet"))
    for rows in range(4, 10):
        assert "heading split" not in {fault.what for fault in maker.lay_out(14, rows).faults}


def test_headings_of_a_text_that_stays_as_it_is_do_not_close_up() -> None:
    lines = (
        Maker()
        .heading("Tides")
        .heading("by A. Berg")
        .heading("Noon")
        .paragraph("one two")
        .lay_out(10, 9)
        .lines
    )
    assert paginate(lines, 5, {}).closed_up
    assert not paginate(lines, 5, {}, closing=False).closed_up


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


def test_an_item_taller_than_a_page_breaks_like_a_paragraph_and_is_counted() -> None:
    layout = Maker().item("-", LOREM * 3).lay_out(30, 5)
    assert not layout.faults
    assert layout.after.tall_items == 1
    assert all(page.end - page.start >= 2 for page in layout.pages)


def test_an_item_with_its_paragraphs_stays_whole_where_it_fits() -> None:
    maker = Maker()
    for number in range(1, 6):
        maker.item(f"{number}.", "Trim the wick").paragraph("It must stand level.", 1)
    layout = maker.lay_out(30, 5)
    assert not layout.faults
    assert all(page[0][0].isdigit() for page in pages_of(layout))


def test_an_item_with_more_than_a_page_breaks_between_what_belongs_to_it() -> None:
    maker = Maker().item("-", "Every watch:")
    for _ in range(4):
        maker.item("*", "trim the wick and then fill the lamp", 1)
    layout = maker.lay_out(20, 6)
    assert not layout.faults
    assert layout.after.tall_items == 1
    assert all(page[0].strip().startswith(("-", "*")) for page in pages_of(layout))


def test_an_introduction_goes_with_what_it_announces_where_there_is_room() -> None:
    maker = Maker().paragraph("The wick is trimmed at dusk.")
    maker.paragraph("So does the keeper who is alone on the rock trim it at dusk, and so again at dawn:")
    maker.kept("raise the glass", "cut the wick", "lower the glass", code=True)
    pages = pages_of(maker.lay_out(40, 7))
    assert [page[0] for page in pages] == [
        "The wick is trimmed at dusk.",
        "So does the keeper who is alone on",
    ]


@pytest.mark.parametrize(("level", "last"), [(1, False), (0, True)])
def test_a_line_with_a_colon_goes_with_the_text_that_stands_deeper_below_it(
    level: int, *, last: bool
) -> None:
    title = "The lamp of the rock smokes when it is turned down:"
    maker = Maker().paragraph("The wick is trimmed at dusk, and once more when the night is half over.")
    maker.paragraph(title).paragraph(LOREM, level=level)
    pages = pages_of(maker.lay_out(40, 6))
    assert any(page[-1].endswith("down:") for page in pages) is last


@pytest.mark.parametrize(("line", "last"), [("What the boat brings", False), ("The boat brings oil.", True)])
def test_a_line_alone_that_ends_no_sentence_goes_with_the_text_below_it(line: str, last: bool) -> None:
    """It may be the title of that text though its reader took it for a paragraph."""
    maker = Maker().paragraph("The wick is trimmed at dusk, and once more when the night is half over.")
    maker.paragraph("The lamp burns.").paragraph(line).paragraph(LOREM)
    pages = pages_of(maker.lay_out(40, 6))
    assert any(page[-1] == line for page in pages) is last


def test_keys_that_share_a_text_stay_with_it() -> None:
    maker = Maker().paragraph("The keeper trims the wick.")
    maker.item("-f", "").item("--fog", "sounds the horn").item("--bell", "").paragraph(LOREM, level=1)
    layout = maker.lay_out(40, 5)
    assert [page[0] for page in pages_of(layout)] == ["The keeper trims the wick.", "--bell"]
    assert not layout.faults


@pytest.mark.parametrize(
    ("keys", "faults"),
    [
        (["--lamp", "--oil", "--wick"], ["label last"]),
        (["1.", "2.", "3."], []),  # an entry that is empty shares nothing with the next
    ],
)
def test_keys_that_no_page_has_room_for_with_their_text_are_parted_from_it_by_a_fault(
    keys: list[str], faults: list[str]
) -> None:
    maker = Maker()
    for key in keys:
        maker.item(key, "")
    layout = maker.item("--watch" if "-" in keys[0] else "4.", "kept").lay_out(40, 3)
    assert [fault.what for fault in layout.faults] == faults
    assert all(fault.forced for fault in layout.faults)


def test_a_label_is_not_parted_from_what_it_is_of() -> None:
    """Three paragraphs are higher than a page: one may begin there, but the first of them goes with the label."""
    maker = Maker().paragraph("Tide." * 3).paragraph("Wind.").item("--lamp", "")
    for number in range(3):
        maker.paragraph(f"{number} {LOREM}", level=1)
    layout = maker.lay_out(40, 5)
    assert not layout.faults
    assert [page[0] for page in pages_of(layout)][1] == "--lamp"


def test_keys_that_nothing_explains_may_be_parted() -> None:
    """So stand the entries of a table of contents, of which the last has some of its own."""
    maker = Maker()
    for number in range(1, 6):
        maker.item(f"1.{number} The lamp", "", level=1)
    maker.item("1.5.1 The wick", "", level=2)
    layout = maker.lay_out(40, 3)
    assert not layout.faults
    assert [len(page) for page in pages_of(layout)] == [3, 3]


def test_the_one_line_that_leads_an_item_goes_with_what_follows_it() -> None:
    maker = Maker().paragraph(LOREM).item("1.", "Dusk").paragraph(LOREM * 3, 1)
    assert all(page[-1] != "1. Dusk" for page in pages_of(maker.lay_out(30, 6)))


def test_a_record_taller_than_a_page_breaks_where_a_field_ends() -> None:
    row = (
        "the south-west channel",
        "by day a red cone over a black ball",
        "by night two lamps, red over white",
    )
    maker = Maker().table(("Where it is shown", "By day", "By night"), row, row, header_rows=1)
    layout = maker.lay_out(24, 4)
    assert not layout.faults
    assert layout.after.tall_items == 2
    assert any(page[0].startswith("By") for page in pages_of(layout))


def test_a_header_is_not_repeated_where_a_row_would_have_no_room_below_it() -> None:
    table = "Watch | Duty of the keeper\n------+----------------\n"
    row = "dusk  | trim the wick\n      | fill the lamp\n      | light it\n------+----------------\n"
    document = read_text(table + row * 3, "x", "ascii")
    assert document.blocks[0].header_rows == 1
    low = lay_out(document, LayoutSettings(width=30, page_rows=4))
    assert not any(line.flags & LineFlag.REPEATED for line in low.lines)
    assert any(decision.degraded for decision in low.decisions)
    assert [fault.what for fault in low.faults] == ["table header last"]
    high = lay_out(document, LayoutSettings(width=30, page_rows=6))
    assert any(line.flags & LineFlag.REPEATED for line in high.lines)


@pytest.mark.parametrize("paragraphs", range(1, 12))
def test_short_documents_take_a_page_more_only_for_a_fault(paragraphs: int) -> None:
    maker = Maker()
    for number in range(paragraphs):
        maker.heading(f"Watch {number}").paragraph(LOREM)
    layout = maker.lay_out(30, 7)
    assert not layout.faults
    assert len(layout.pages) <= ceil(layout.naive_pages * 11 / 10) + 1


@settings(max_examples=100, deadline=None)
@given(st.data())
def test_an_independent_count_of_the_faults_agrees(data: st.DataObject) -> None:
    maker = Maker()
    for _ in range(data.draw(st.integers(1, 12))):
        kind = data.draw(st.sampled_from(["heading", "paragraph", "item", "key", "keys", "kept", "table"]))
        text = " ".join(["lamp oil"] * data.draw(st.integers(1, 20)))
        level = data.draw(st.integers(0, 2))
        if kind == "heading":
            maker.heading(text[:30], level + 1)
        elif kind == "kept":
            maker.kept("lamp", "oil", level=level)
        elif kind == "table":
            maker.table(("Watch", "Duty of the keeper"), ("dusk", text), ("dawn", "sleep"), header_rows=1)
        elif kind == "keys":
            for _ in range(data.draw(st.integers(1, 3))):
                maker.item(f"lamp{len(maker.blocks)} {text[:30]}", "", level)
        elif kind == "key":
            maker.item(f"oil lamp{len(maker.blocks)}", text, level)
        else:
            maker.paragraph(text, level) if kind == "paragraph" else maker.item("-", text, level)
    chosen = LayoutSettings(width=data.draw(st.integers(12, 40)), page_rows=data.draw(st.integers(1, 9)))
    result = reflow_document(maker.document(), chosen)
    ours = [fault for fault in result.layout.faults if fault.what != "table header last"]
    counted = count_faults(as_json(result))
    also_a_fault = len(result.layout.faults) - len(ours)
    assert len(ours) <= counted.total() <= len(ours) + also_a_fault


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


@settings(max_examples=100, deadline=None)
@given(st.lists(UNITS, min_size=1, max_size=8), NESTS, st.integers(1, 6))
def test_a_fault_is_forced_where_its_neighbours_that_are_none_are_further_apart_than_a_page(
    units: list[tuple[Kind, int, bool]], nests: list[tuple[int, int]], rows: int
) -> None:
    spots = find_spots(lines_of(units), nested(nests))
    faulty = [False, *(bool(price(*pair, rows).fault) for pair in pairwise(spots))]
    good = [*(place for place, bad in enumerate(faulty) if not bad), len(spots)]
    for start, end in pairwise(good):
        high = spots[end - 1].row - spots[start].row + 1 > rows
        for place in range(start + 1, end):
            assert is_bound([spot.row for spot in spots], place, faulty.__getitem__, rows) == high


def test_a_rule_between_panels_takes_no_page_for_itself() -> None:
    """The ends of the pages part the panels, where both are as high as a page; elsewhere the rule does."""
    drawing = [("|" + "-" * 30 + "|")] * 6
    assert [len(page) for page in pages_of(Maker().picture(*drawing).lay_out(20, 6))] == [6, 6]
    assert [len(page) for page in pages_of(Maker().picture(*drawing[:2]).lay_out(20, 6))] == [5]


def test_a_rule_between_panels_is_not_counted_as_a_page() -> None:
    """What such a page would take of the pages that a document may have is there for others."""
    drawing = [("|" + "-" * 30 + "|")] * 6
    spots = find_spots(Maker().picture(*drawing).lay_out(20, 9).lines)
    breaks = [Break(0), *(price(*pair, 6) for pair in pairwise(spots))]
    assert any(spot.line.flags & LineFlag.RULE for spot in spots)
    assert len(best_starts(spots, [6] * len(spots), breaks, LEAST_PAGE_COST)) == 2


@pytest.mark.parametrize("height", range(4, 20))
@pytest.mark.parametrize("rows", [6, 7])
def test_empty_rows_of_a_panel_take_no_page_for_themselves(height: int, rows: int) -> None:
    """The second panel has one word, far below: a page without a stroke above it would show nothing."""
    drawing = [*(["|" + "-" * 15 + "|"] * height), "|" + "-" * 15 + "|  drain"]
    pages = pages_of(Maker().picture(*drawing).lay_out(20, rows))
    assert all(any(line.strip("- ") for line in page) for page in pages)
    assert pages[-1][-1] == "drain"
    assert sum(line.startswith("|") for page in pages for line in page) == len(drawing)
