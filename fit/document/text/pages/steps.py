"""How far apart the lines of one form stand, where they are to be a page apart."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from statistics import median

SHORTEST_PAGE = 14
"""Lines from one running head to the next, at least, where no form feed marks the page."""
PAGE_STEP = 2
"""Lines by which pages of one document differ, at most."""
Near = Callable[[int, float], bool]


def paged(indices: list[int], near: Near) -> bool:
    """Whether most of the lines stand a page apart, as ``near`` judges a step by the usual one."""
    steps = [b - a for a, b in pairwise(indices)]
    usual = median(steps)
    return usual >= SHORTEST_PAGE and sum(near(step, usual) for step in steps) >= 0.75 * len(steps)


def far(step: int, _: float) -> bool:
    return step >= SHORTEST_PAGE


def even(step: int, usual: float) -> bool:
    """About as far as usual, or a multiple: pages whose blank lines were taken out."""
    return abs(step - usual * max(1, round(step / usual))) <= 0.15 * usual


def alike(step: int, usual: float) -> bool:
    """As far as usual but for the last lines of a page, which may stay empty."""
    return 0.75 * usual <= step <= 1.34 * usual


def level(step: int, usual: float) -> bool:
    """As far as usual, or twice that where a page has no such line."""
    return min(abs(step - usual), abs(step - 2 * usual)) <= PAGE_STEP
