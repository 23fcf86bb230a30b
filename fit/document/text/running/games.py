"""Story games: a few words typed at a sign again and again, and after each of them what the game answers.

What is typed keeps its line, and so does the name of a room that the answer begins with; an answer that was wrapped flows.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.running.runs_on import carries
from fit.document.text.signs.joins import cut_word
from fit.document.text.signs.measure import closed, prose, starts_small

LEAST = 3
"""Times that something is typed, at least."""
REACH = 16
"""Lines from one prompt to the next, at most."""
NAME = 30
"""Characters of the name of a room, at most."""
_TYPED = re.compile(
    r"(?P<sign>(?:(?:--?|==?)?>|>>|\?) ?)(?:[a-z][a-z'-]*|[A-Z][A-Z'-]*)(?:,? (?:[A-Za-z][a-z'-]*|[A-Z'-]+)){0,6}"
)
_FIRST = (">", "-", "=", "?")

Turn = tuple[int, int, int]
"""The first line of a turn, the first that flows, and the end."""


def find_games(lines: Sequence[Line], taken: Sequence[object]) -> list[list[Turn]]:
    """The turns of each game, one right after the other."""
    found: list[list[Turn]] = []
    index = 0
    while index < len(lines):
        turns = (
            _game(lines, taken, index)
            if taken[index] is None and lines[index].text.startswith(_FIRST)
            else []
        )
        if turns:
            found.append(turns)
        index = turns[-1][2] if turns else index + 1
    return found


def _sign(line: Line) -> str:
    """The sign before what is typed, or nothing."""
    match = _TYPED.fullmatch(line.text)
    return match["sign"] if match else ""


def _game(lines: Sequence[Line], taken: Sequence[object], start: int) -> list[Turn]:
    """The turns of the game that begins in a line; none where it begins no game."""
    first, sign = lines[start], _sign(lines[start])
    if not sign:
        return []
    typed = [start]
    end = start + 1
    while end < len(lines) and taken[end] is None and end - typed[-1] <= REACH:
        line = lines[end]
        if line.indent < first.indent or line.gap > 2:
            break
        if line.indent == first.indent and _sign(line) == sign:
            typed.append(end)
        end += 1
    if len(typed) < LEAST or not all(_answered(lines, first, *turn) for turn in pairwise(typed)):
        return []
    last = typed[-1] + 1
    if last < end and lines[typed[0] + 1].apart:
        last += 1
    while last < end and not lines[last].apart:
        last += 1
    return [(begin, _flows_from(lines, begin, stop), stop) for begin, stop in pairwise([*typed, last])]


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
        carries(above.text, line.text) or cut_word(above.text, line.text)
        for above, line in pairwise(lines[index] for index in below)
        if not line.apart
    )
    if not wrapped:
        return stop
    return typed + 1 + _is_name(lines, typed + 1)


def _is_name(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a few words that end no sentence, and stands alone or over one that begins anew."""
    text = lines[index].text
    below = lines[index + 1]
    begins = below.apart or not starts_small(below.text)
    return len(text) <= NAME and not closed(text) and not prose(text) and begins
