"""Total-fit breaking: the examples of the literature, and brute force over all ways to break."""

from __future__ import annotations

from array import array
from itertools import combinations

import pytest
from hypothesis import given, settings, strategies as st

from fit.document.blocks import Text
from fit.layout.breaks import Places, find_places
from fit.layout.costs import Costs, End, Rules
from fit.layout.total_fit import total_fit

PLAIN = Costs(tie=0, short_last=0, count_last=True)
"""Only squared slack, the last line's included."""


def places_of(chars: str, width: int, rules: Rules) -> Places:
    return find_places(Text(chars, array("q", range(len(chars))), bytes(len(chars))), width, rules)


def lines_of(chars: str, places: Places, chosen: list[int]) -> list[str]:
    starts = [0, *(places.starts[place] for place in chosen)]
    put_in = {End.HYPHEN: "-", End.MARKED: "\\"}
    return [
        chars[start : places.ends[place]] + put_in.get(places.kinds[place], "")
        for start, place in zip(starts, chosen, strict=False)
    ]


def cost_of(places: Places, chosen: list[int], width: int, costs: Costs, max_hyphens: int) -> int | None:
    """The cost of one way, added up from its definition; None where a line is too wide."""
    total = hyphens = start = 0
    for place in chosen:
        slack = width - (places.end_cells[place] - start)
        if slack < 0:
            return None
        last = place == len(places) - 1
        if not last or costs.count_last:
            total += slack * slack
        else:
            total += costs.short_last if width - slack < width // 6 else 0
            total += costs.last_hyphen if hyphens else 0
        total += places.costs[place]
        hyphens = hyphens + 1 if places.kinds[place] is End.HYPHEN else 0
        total += costs.many_hyphens if hyphens > max_hyphens else 0
        start = places.start_cells[place]
    return total


@pytest.mark.parametrize(
    ("chars", "width", "optimum"),
    [
        # Two layouts tie, so that the cost is compared. Greedy takes 63.
        ("To be, or not to be: that is the question", 10, 41),
        # A standard example of texts on algorithms; greedy takes 17, and there is one optimum.
        ("AAA BB CC DDDDD", 6, 11),
    ],
)
def test_the_optimum_of_the_literature(chars: str, width: int, optimum: int) -> None:
    places = places_of(chars, width, Rules("", costs=PLAIN))
    chosen = total_fit(places, width, PLAIN, 2)
    assert sum((width - len(line)) ** 2 for line in lines_of(chars, places, chosen)) == optimum


def test_the_unique_optimum() -> None:
    places = places_of("AAA BB CC DDDDD", 6, Rules("", costs=PLAIN))
    assert lines_of("AAA BB CC DDDDD", places, total_fit(places, 6, PLAIN, 2)) == ["AAA", "BB CC", "DDDDD"]


SOME_WORDS = [
    "a",
    "I",
    "of",
    "the",
    "lamp",
    "keeper",
    "lighthouse",
    "obviously",
    "well-kept",
    "3",
    "mm",
    "Mr",
    "Ames",
]

words = st.lists(
    st.sampled_from(SOME_WORDS),
    min_size=1,
    max_size=6,
)


@settings(max_examples=300, deadline=None)
@given(words, st.integers(11, 24), st.sampled_from(["", "en_US"]), st.integers(1, 2), st.booleans())
def test_it_equals_brute_force(
    chosen_words: list[str], width: int, language: str, max_hyphens: int, count_last: bool
) -> None:
    costs = Costs(count_last=count_last)
    places = places_of(" ".join(chosen_words), width, Rules(language, costs=costs))
    found = cost_of(places, total_fit(places, width, costs, max_hyphens), width, costs, max_hyphens)
    last = len(places) - 1
    ways = (
        cost_of(places, [*inner, last], width, costs, max_hyphens)
        for count in range(last + 1)
        for inner in combinations(range(last), count)
    )
    assert found == min(cost for cost in ways if cost is not None)


def test_no_more_hyphens_in_a_row_than_allowed() -> None:
    chars = "obviously lighthouse obviously lighthouse obviously lighthouse obviously lighthouse"
    costs = Costs(hyphen=0)
    for most in (1, 2, 3):
        places = places_of(chars, 13, Rules("en_US", costs=costs))
        run = longest = 0
        for line in lines_of(chars, places, total_fit(places, 13, costs, most)):
            run = run + 1 if line.endswith("-") else 0
            longest = max(longest, run)
        assert longest <= most


def test_the_first_line_may_be_longer() -> None:
    chars = "the lamp is lit at dusk"
    places = places_of(chars, 8, Rules(""))
    assert lines_of(chars, places, total_fit(places, 8, Costs(), 2, 4)) == ["the lamp is", "lit at", "dusk"]


def test_an_empty_text_has_no_lines() -> None:
    places = places_of("", 10, Rules(""))
    assert total_fit(places, 10, Costs(), 2) == []
