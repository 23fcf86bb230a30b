"""Planned holds: as few as possible, then at the best ends; brute force agrees on short cases."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings, strategies as st

from fit.remedy.findings import BreakEnd
from fit.remedy.plan import Life, plan_holds

PENALTY = {
    BreakEnd.PARAGRAPH: 0,
    BreakEnd.SENTENCE: 1,
    BreakEnd.LINE: 2,
    BreakEnd.WORD: 3,
    BreakEnd.NOTHING: 4,
}
LIVES = st.lists(
    st.tuples(st.integers(0, 11), st.integers(0, 5)).map(lambda pair: Life(pair[0], pair[0] + pair[1])),
    max_size=6,
)
ENDS = st.dictionaries(st.integers(0, 16), st.sampled_from(list(BreakEnd)), max_size=8)


def cost(holds: tuple[int, ...] | list[int], ends: dict[int, BreakEnd]) -> tuple[int, int]:
    return len(holds), sum(PENALTY[ends.get(hold, BreakEnd.NOTHING)] for hold in holds)


def stabs(holds: tuple[int, ...] | list[int], lives: list[Life]) -> bool:
    return all(any(life.birth <= hold <= life.death for hold in holds) for life in lives)


def brute_force(lives: list[Life], ends: dict[int, BreakEnd]) -> tuple[int, int]:
    for number in range(len(lives) + 1):
        costs = [cost(holds, ends) for holds in combinations(range(18), number) if stabs(holds, lives)]
        if costs:
            return min(costs)
    raise AssertionError("a hold in each life always does")


@given(lives=LIVES, ends=ENDS)
@settings(max_examples=150, deadline=None)
def test_the_plan_is_as_good_as_brute_force(lives: list[Life], ends: dict[int, BreakEnd]) -> None:
    holds = plan_holds(lives, ends)
    assert stabs(holds, lives)
    assert holds == sorted(set(holds))
    assert cost(holds, ends) == brute_force(lives, ends)


def test_nothing_to_save_needs_no_hold() -> None:
    assert plan_holds([], {3: BreakEnd.PARAGRAPH}) == []


def test_one_hold_serves_lives_that_overlap() -> None:
    assert plan_holds([Life(0, 10), Life(8, 20), Life(9, 12)], {}) == [10]


def test_the_end_of_a_paragraph_beats_the_latest_moment() -> None:
    ends = {4: BreakEnd.PARAGRAPH, 6: BreakEnd.SENTENCE, 9: BreakEnd.LINE}
    assert plan_holds([Life(2, 10)], ends) == [4]


def test_fewer_holds_beat_better_ends() -> None:
    ends = {2: BreakEnd.PARAGRAPH, 12: BreakEnd.PARAGRAPH}
    assert plan_holds([Life(0, 6), Life(5, 14)], ends) == [6]
