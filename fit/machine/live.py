"""A person plays an 8-bit program: it runs while keys come when they come.

Polls that find nothing take the time they took on a machine of 4 MHz, so that a program that counts, blinks
or waits a moment can be watched; computing goes as fast as it can.
"""

from __future__ import annotations

import time
from dataclasses import replace
from typing import Final, Protocol

from fit.machine.cpu import FRAME_TICKS
from fit.machine.ending import EndingKind, Limits
from fit.machine.host import Host
from fit.machine.run import Run, report, typed_at
from fit.machine.waits import WaitKind
from fit.session import Event, EventKind, Session

LIVE_LIMITS: Final = Limits(ticks=None, silent_ticks=None, waits=None)
"""A person ends a program that they have seen enough of; only its output is limited."""
CLOCK: Final = 4_000_000
"""Ticks a second of the machine that is played on (common practice, no source)."""
_SLICE: Final = 1
"""Frames between two looks at the keyboard."""
_NEVER: Final = 1 << 40
_BLOCKED: Final = (WaitKind.LINE, WaitKind.KEY, WaitKind.PAUSED, WaitKind.PROVED)


class Person(Protocol):
    """Somebody at a keyboard, before a screen."""

    def show(self, output: bytes) -> None:
        """Show what was printed since the last call."""

    def read(self, seconds: float | None) -> bytes | None:
        """Keys typed within so many seconds (None: wait for them), maybe none; None where the person leaves."""


def play_live(host: Host, person: Person) -> Run:
    """Run a program until it ends or the person leaves. The host should have `LIVE_LIMITS`."""
    host.watch.patience = _NEVER  # a person knows when the program waits
    host.watch.tries_streams = False
    pending = b""
    repaints = False
    shown = 0
    while True:
        polls, started = host.polls, time.monotonic()
        wait = host.advance(_SLICE)
        if len(host.console.output) > shown:
            person.show(bytes(host.console.output[shown:]))
            shown = len(host.console.output)
        if host.ending is not None:
            break
        is_blocked = wait in _BLOCKED
        repaints |= wait is WaitKind.REALTIME
        typed = person.read(_pause(host, polls, started, is_blocked=is_blocked, has_keys=bool(pending)))
        if typed is None:
            _leave(host)
            break
        pending += typed
        if pending and (is_blocked or wait is WaitKind.SCHEDULED):
            if repaints:  # keys into a moving picture are no moment for reading
                host.wait = WaitKind.REALTIME
            host.type_keys(pending)
            pending, repaints, host.due = b"", False, -1
        elif pending:
            host.due = host.polls + 1  # the next poll finds them
    return report(host)


def _pause(host: Host, polls: int, started: float, *, is_blocked: bool, has_keys: bool) -> float | None:
    """How long the keyboard may be waited for: until a key where the program waits for one."""
    if has_keys:
        return 0.0
    if is_blocked:
        return None
    if host.polls == polls:
        return 0.0
    return max(0.0, _SLICE * FRAME_TICKS / CLOCK - (time.monotonic() - started))


def _leave(host: Host) -> None:
    host.without_keys = EndingKind.PLAYER_LEFT
    host.end_script()


def joined_inputs(run: Run) -> Session:
    """The session with what was typed between two looks as one input, as a script would type it.

    Keys into a moving picture stay apart: there is no look between them, but each has its moment.
    """
    moving = typed_at(run, {WaitKind.REALTIME})
    events: list[Event] = []
    typed: Event | None = None
    for event in run.session.events:
        if event.kind is EventKind.INPUT:
            typed = event if typed is None else replace(typed, data=typed.data + event.data)
        elif (
            event.kind is not EventKind.WAIT or event.is_look or typed is None or _moves(event, typed, moving)
        ):
            events += [typed, event] if typed is not None else [event]
            typed = None
    return replace(run.session, events=tuple(events) if typed is None else (*events, typed))


def _moves(wait: Event, typed: Event, moving: frozenset[int]) -> bool:
    """Whether a picture moved between keys and the wait for the next ones."""
    return wait.at in moving and wait.at > typed.at
