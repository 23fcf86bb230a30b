"""What a program does itself when it is told the small size, from a second session recorded so."""

from __future__ import annotations

from typing import NamedTuple

from fit.session import EventKind, Session
from fit.units import Size

_MORE_TURNS = 1.2
"""From so many times as many turns on, the program waits more often than it did."""
_FEWEST_INPUTS = 2
_CUT_OFF = frozenset(("limit", "interrupted"))
"""Endings of a capture that do not come from the program."""


class Habit(NamedTuple):
    """How one session behaves."""

    turns: int
    widest: int
    """The last column that holds text."""
    highest_row: int
    """The highest row addressed; 0 where none was."""
    glyphs_a_turn: float


def refuses(big: Session, small: Session) -> bool:
    """Whether the session at the small size ends before its second input, where the big one goes on."""
    return ends_at_once(small) and goes_on(big)


def ends_at_once(session: Session) -> bool:
    """Whether it is known that a program ended by itself before a second input."""
    return shows_inputs(session) and session.ending not in _CUT_OFF and inputs(session) < _FEWEST_INPUTS


def goes_on(session: Session) -> bool:
    """Whether something was typed twice at least."""
    return inputs(session) >= _FEWEST_INPUTS


def shows_inputs(session: Session) -> bool:
    """Whether it is known what was typed: output alone does not say that nothing was."""
    return session.keeps_inputs or inputs(session) > 0


def inputs(session: Session) -> int:
    """How often something was typed."""
    return sum(event.kind is EventKind.INPUT for event in session.events)


def doubts(big: Session, small: Session) -> str:
    """What in the headers speaks against its being the same program; empty where nothing does."""
    if not big.command or not small.command or big.command == small.command:
        return ""
    return f"Careful: the commands differ, '{big.command[:40]}' and '{small.command[:40]}'. "


def behaviour(
    big: Session, small: Session, before: Habit, after: Habit, size: Size
) -> tuple[tuple[str, ...], str]:
    """What the program does, in the words of `Pair.behaviour`, and the sentence that shows it."""
    if refuses(big, small):
        return ("refuses",), (
            f"It refuses: told {size}, it takes {inputs(small)} of the {inputs(big)} inputs it takes on the big screen."
        )
    if big.output == small.output:
        return ("unchanged",), f"Told {size}, it prints exactly the same."
    unknown = "" if shows_inputs(small) else _NOT_SHOWN
    found: list[str] = []
    said: list[str] = []
    fits = after.widest <= size.columns and after.highest_row <= size.rows
    if fits and (before.widest > size.columns or before.highest_row > size.rows):
        found.append("adapts")
        said.append(f"its widest row has {after.widest} columns instead of {before.widest}")
    if (
        not unknown
        and after.turns >= _MORE_TURNS * before.turns
        and after.glyphs_a_turn < before.glyphs_a_turn
    ):
        found.append("pages")
        said.append(f"it waits {after.turns} times with text instead of {before.turns}")
    if not found:
        return (
            (),
            f"Told {size}, it prints something else, but "
            + (
                f"does not fit the small screen.{unknown}"
                if unknown
                else "neither fits the small screen nor waits more often."
            ),
        )
    return tuple(found), f"Told {size}, {' and '.join(said)}.{unknown}"


_NOT_SHOWN = " What was typed at the small size was not recorded, so whether it refuses or waits more often cannot be told."
