"""Where to hold: the fewest holds that stab the lives of all words that waiting can save.

Each word that nobody would see has a life on the small screen, from the byte after its last glyph to the operation
that ends its first one; a hold at any place in it saves the word. Among the sets with the fewest holds the one
is taken that breaks at the ends of paragraphs, else of sentences, lines, words.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from fit.remedy.findings import BreakEnd

_PENALTY = {end: number for number, end in enumerate(BreakEnd)}


class Life(NamedTuple):
    """The places ``birth <= place <= death`` at which a hold saves a word."""

    birth: int
    death: int


def plan_holds(lives: Sequence[Life], ends: Mapping[int, BreakEnd]) -> list[int]:
    """The places of the holds, ascending.

    ``ends`` says what ends at a place; other places end nothing. Of plans that are equally good the one with
    the later holds is taken.
    """
    if not lives:
        return []
    by_death = sorted(lives, key=lambda life: life.death)
    places = _places(lives, ends)
    best: list[tuple[int, int, int]] = []  # holds, penalties, index of the hold before
    window: deque[int] = deque()  # indexes of earlier places, cost ascending
    needed = next_life = 0
    opened = False  # whether a life ended before the place at work, so that a hold before it is needed
    for index, place in enumerate(places):
        while next_life < len(by_death) and by_death[next_life].death < place:
            needed = max(needed, by_death[next_life].birth)
            opened = True
            next_life += 1
        while window and places[window[0]] < needed:
            window.popleft()
        penalty = _PENALTY[ends.get(place, BreakEnd.NOTHING)]
        if not opened:
            best.append((1, penalty, -1))
        elif window:
            count, sum_before, _ = best[window[0]]
            best.append((count + 1, sum_before + penalty, window[0]))
        else:
            best.append((len(lives) + 1, 0, -1))
        while window and best[window[-1]][:2] >= best[index][:2]:
            window.pop()
        window.append(index)
    last_birth = max(life.birth for life in lives)
    last = min((best[index][:2], -index) for index in range(len(places)) if places[index] >= last_birth)
    return _trace(places, best, -last[1])


def _places(lives: Sequence[Life], ends: Mapping[int, BreakEnd]) -> list[int]:
    """The places worth a hold: every death, and every end in a life."""
    first = min(life.birth for life in lives)
    last = max(life.death for life in lives)
    return sorted({life.death for life in lives} | {place for place in ends if first <= place <= last})


def _trace(places: list[int], best: list[tuple[int, int, int]], index: int) -> list[int]:
    holds = []
    while index >= 0:
        holds.append(places[index])
        index = best[index][2]
    return holds[::-1]
