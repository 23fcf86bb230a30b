"""Story games: a few words typed at a sign again and again, and after each of them what the game answers.

What is typed keeps its line, and so does the name of a room that the answer begins with; an answer that was wrapped flows.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line, parted_above
from fit.document.text.running.runs_on import carries
from fit.document.text.running.typed_lines import typed_lines
from fit.document.text.signs.measure import closed, prose, starts_small

LEAST = 3
"""Times that something is typed, at least."""
ARROWS = 2
"""The same behind an arrow, which quotes no letter and asks nothing."""
DEEPER = 3
"""Cells by which lines of a game are set in, at most."""
DISPLAY = 12
"""Lines of a game that is set in above what is typed first, or below what comes of the last, at most."""
REACH = 16
"""Lines from one prompt to the next, at most."""
NAME = 30
"""Characters of the name of a room, at most."""
_TYPED = re.compile(
    r"(?P<sign>(?:(?:--?|==?)?>|>>|\?) ?)(?:(?:[a-z][a-z'-]*|[A-Z][A-Z'-]*)(?:,? (?:[A-Za-z][a-z'-]*|[A-Z'-]+)){0,6}|[A-Z][a-z]+|\d+)"
)
_FIRST = (">", "-", "=", "?")

Turn = tuple[int, int, int]
"""The first line of a turn, the first that flows, and the end."""


def find_games(lines: Sequence[Line], taken: Sequence[object]) -> list[list[Turn]]:
    """The turns of each game, one right after the other."""
    found: list[list[Turn]] = []
    index = floor = 0
    while index < len(lines):
        asked = taken[index] is None and lines[index].text.startswith(_FIRST)
        turns = _game(lines, taken, index, floor) if asked else []
        if turns:
            found.append(turns)
        floor = turns[-1][2] if turns else floor
        index = max(floor, index + 1)
    return found


def _sign(text: str) -> str:
    """The sign before what is typed, or nothing."""
    match = _TYPED.fullmatch(text)
    return match["sign"] if match else ""


def _game(lines: Sequence[Line], taken: Sequence[object], start: int, floor: int) -> list[Turn]:
    """The turns of the game of which a line, not above ``floor``, is the first that was typed; mostly none."""
    first, sign = lines[start], _sign(lines[start].text)
    if not sign:
        return []
    typed, end = typed_lines(lines, taken, start, _sign, REACH)
    least = ARROWS if len(sign.strip()) > 1 else LEAST
    if len(typed) < least or not all(_answered(lines, first, *turn) for turn in pairwise(typed)):
        return []
    last = typed[-1] + 1
    if not (_answered(lines, first, typed[-1], end) or len(typed) > least):
        return []
    if last < end and lines[typed[0] + 1].apart:
        last += 1
    while last < end and not lines[last].apart:
        last += 1
    turns = [(begin, _flows_from(lines, begin, stop), stop) for begin, stop in pairwise([*typed, last])]
    flows = any(flow < stop for _, flow, stop in turns)
    above, below = (_set_in(lines, taken, *one, floor) for one in ((start, -1), (last - 1, 1)))
    return [*_as_turns(lines, above, flows), *turns, *_as_turns(lines, below, flows)]


def _as_turns(lines: Sequence[Line], part: tuple[int, int], flows: bool) -> list[Turn]:
    """Lines before or after a game as a turn: but for a name they flow where an answer does, or where they were wrapped."""
    start, end = part
    if start == end:
        return []
    return [(start, start + _is_name(lines, start) if flows else _flows_from(lines, start - 1, end), end)]


def _set_in(
    lines: Sequence[Line], taken: Sequence[object], index: int, step: int, floor: int
) -> tuple[int, int]:
    """The lines before or after a game that stand as deep, down to text at their left; half-open."""
    first, place = lines[index], index + step
    while floor <= place < len(lines) and abs(place - index) <= DISPLAY and taken[place] is None:
        line = lines[place]
        if line.indent > first.indent + DEEPER:
            break  # the game is not set in, but this is
        if line.indent < first.indent:
            return (place + 1, index) if step < 0 else (index + 1, place)
        place += step
    return (index, index)


def _answered(lines: Sequence[Line], first: Line, typed: int, stop: int) -> bool:
    """Whether a sentence, a name or a bracket stands below what was typed, at the same indent."""
    if stop == typed + 1:
        return False
    answer = lines[typed + 1]
    return answer.indent == first.indent and not starts_small(answer.text)


def _flows_from(lines: Sequence[Line], typed: int, stop: int) -> int:
    """The first line of a turn that flows: below the name of a room where a later line was wrapped; else its end."""
    below = range(typed + 1, stop)
    wrapped = any(
        carries(above.text, line.text)
        for above, line in pairwise(lines[index] for index in below)
        if not line.apart
    )
    if not wrapped:
        return stop
    return typed + 1 + _is_name(lines, typed + 1)


def _is_name(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a few words that end no sentence, and stands alone or over one that begins anew."""
    text = lines[index].text
    begins = parted_above(lines, index + 1) or not starts_small(lines[index + 1].text)
    return len(text) <= NAME and not closed(text) and not prose(text) and begins
