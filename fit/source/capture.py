"""Run a program of the host in a pseudo-terminal and record the session, from a key script or from a person.

Whatever ends it (the program, a limit, Ctrl-C, SIGTERM, SIGHUP, an error), the program is hung up on and
reaped, and what was recorded until then comes back with a remark that says so.
"""

from __future__ import annotations

import contextlib
import os
import select
import shlex
import signal
import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from types import FrameType
from typing import Final

from fit.session import EventKind, Session
from fit.source.builder import SessionBuilder
from fit.source.keys import Step, encode_keys
from fit.source.pseudo_terminal import GRACE, PseudoTerminal
from fit.units import Size

MOST_OUTPUT: Final = 10_000_000
LONGEST_STEP: Final = 10.0
_TICK: Final = 0.05  # seconds between looks at the clock and at the program while nothing is printed
_AFTERMATH: Final = (
    0.2  # seconds of silence after the program's end that end its output, where a child of it lives on
)
_SIGNALS: Final = ("SIGINT", "SIGTERM", "SIGHUP")


@dataclass(frozen=True, slots=True)
class Limits:
    """When a capture ends by itself."""

    seconds: float | None = None
    """The whole of it; None for no limit."""
    output: int = MOST_OUTPUT
    """Bytes of output."""
    step: float = LONGEST_STEP
    """Seconds that a step of a key script may wait, and that the program may be silent after the last one."""


@dataclass(frozen=True, slots=True)
class Person:
    """The terminal of a person, in raw mode: file descriptors to read keys from and to copy output to."""

    keyboard: int
    screen: int


@dataclass(slots=True)
class _Capture:
    """A capture under way."""

    terminal: PseudoTerminal
    name: str
    steps: list[Step]
    limits: Limits
    builder: SessionBuilder
    started: float
    person: Person | None
    received: list[int]
    """Signals that end the capture."""
    pending: bytearray = field(default_factory=bytearray)
    """Typed, and not yet taken by the terminal."""
    step_from: int = 0
    """The offset in the output at which the step under way began."""
    step_since: float = 0.0
    last_output: float = 0.0
    echoed: bool | None = None
    ending: str | None = None

    def now(self) -> float:
        """Seconds since the start."""
        return round(time.monotonic() - self.started, 6)


def capture(
    command: Sequence[str],
    *,
    size: Size,
    terminal: str,
    steps: Sequence[Step] | None = None,
    person: Person | None = None,
    limits: Limits | None = None,
) -> Session:
    """Run ``command`` and record it, with the keys of ``steps`` or of a ``person``; with neither it is only watched.

    Raises `CaptureError` where the program cannot be run.
    """
    received: list[int] = []
    with _caught_signals(received), PseudoTerminal(command, size, terminal, os.environ) as child:
        capturing = _Capture(
            child,
            terminal,
            list(steps or ()),
            limits or Limits(),
            SessionBuilder(),
            time.monotonic(),
            person,
            received,
        )
        while capturing.ending is None:
            _turn(capturing)
        if capturing.ending == "exited":
            child.wait(GRACE)
    if capturing.ending == "exited" and capturing.steps:
        capturing.builder.remarks.append(
            f"The program ended before line {capturing.steps[0].line} of the key script came due."
        )
    return replace(
        capturing.builder.build(),
        size=size,
        dialect=terminal,
        command=shlex.join(command),
        exit_status=child.exit_status if capturing.ending == "exited" else None,
        keeps_inputs=True,
        ending=capturing.ending,
    )


@contextlib.contextmanager
def _caught_signals(received: list[int]) -> Iterator[None]:
    """Collect the signals that would end us, so that nothing is torn; only the main thread can."""

    def note(number: int, _: FrameType | None) -> None:
        received.append(number)

    if threading.current_thread() is not threading.main_thread():
        yield
        return
    numbers = [getattr(signal, name) for name in _SIGNALS if hasattr(signal, name)]
    before = {number: signal.signal(number, note) for number in numbers}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _turn(capturing: _Capture) -> None:
    """Wait for what comes next, and take it."""
    child, person = capturing.terminal, capturing.person
    is_signalled = bool(capturing.received)  # before the reading: what was printed earlier is still taken
    reading = [child.fd] if person is None else [child.fd, person.keyboard]
    readable, writable, _ = select.select(reading, [child.fd] if capturing.pending else [], [], _TICK)
    if child.fd in readable:
        _take_output(capturing)
    elif child.has_ended() and capturing.now() - capturing.last_output > _AFTERMATH:
        capturing.ending = "exited"
    if writable:
        del capturing.pending[: child.write(bytes(capturing.pending))]
    if person is not None and person.keyboard in readable:
        _take_keys(capturing, person)
    if capturing.ending is None:
        _check_limits(capturing, is_signalled=is_signalled)
    if capturing.ending is None and person is None:
        _take_step(capturing)


def _take_keys(capturing: _Capture, person: Person) -> None:
    try:
        keys = os.read(person.keyboard, 4096)
    except OSError:  # the person's terminal is gone
        keys = b""
    if keys:
        _type(capturing, keys)
    else:
        _stop(capturing, "interrupted", "The capture ended because its keyboard went away.")


def _take_output(capturing: _Capture) -> None:
    data = capturing.terminal.read()
    if data is None:
        capturing.ending = "exited"
        return
    room = capturing.limits.output - len(capturing.builder.output)
    capturing.last_output = capturing.now()
    capturing.builder.out(data[:room], capturing.last_output)
    if capturing.person is not None:
        _copy(capturing.person.screen, data)
    if len(data) >= room:
        _stop(
            capturing,
            "limit",
            f"The capture ended at the limit of {capturing.limits.output} bytes of output.",
        )


def _copy(screen: int, data: bytes) -> None:
    """Show the person what was printed. A closed terminal sends a signal, which ends the capture."""
    with contextlib.suppress(OSError):
        while data:
            data = data[os.write(screen, data) :]


def _type(capturing: _Capture, keys: bytes) -> None:
    now = capturing.now()
    echoes = capturing.terminal.echoes
    if echoes is not capturing.echoed:
        note = b"the terminal echoes what is typed" if echoes else b"the terminal does not echo"
        capturing.builder.event(EventKind.NOTE, note, now)
        capturing.echoed = echoes
    capturing.builder.event(EventKind.INPUT, keys, now)
    capturing.pending += keys


def _check_limits(capturing: _Capture, *, is_signalled: bool) -> None:
    limits, now = capturing.limits, capturing.now()
    if is_signalled:
        name = signal.Signals(capturing.received[0]).name
        _stop(
            capturing, "interrupted", f"The capture was interrupted ({name}); it holds what came until then."
        )
    elif limits.seconds is not None and now >= limits.seconds:
        _stop(capturing, "limit", f"The capture ended at the limit of {limits.seconds:g} seconds.")


def _take_step(capturing: _Capture) -> None:
    """Type the keys of the step under way where they are due, or end the capture where they never come."""
    now = capturing.now()
    quiet = now - max(capturing.last_output, capturing.step_since)
    waited = now - capturing.step_since
    limit = capturing.limits.step
    if not capturing.steps:
        if capturing.step_since and quiet >= limit:
            _stop(capturing, "limit", "The program still ran when its key script had ended.")
        return
    if not capturing.builder.output and waited < limit:
        return  # a program that is still being loaded is quiet, too
    step = capturing.steps[0]
    if step.is_due(bytes(capturing.builder.output[capturing.step_from :]), quiet):
        capturing.steps.pop(0)
        keys = encode_keys(step.keys, capturing.name, bytes(capturing.builder.output))
        if keys:
            _type(capturing, keys)
        capturing.step_from = len(capturing.builder.output)
        capturing.step_since = now
    elif waited >= limit + step.quiet:
        _stop(
            capturing,
            "limit",
            f"The step in line {step.line} of the key script did not come due within {limit:g} seconds.",
        )


def _stop(capturing: _Capture, ending: str, remark: str) -> None:
    capturing.ending = ending
    capturing.builder.remarks.append(remark)
