"""Key scripts for 8-bit programs, the same as for programs of this computer.

A program here waits exactly, and then it is quiet for ever: a step is due at a wait unless what it waits
for was not printed. Then the run ends, and says so; a program that repaints or prints on goes on until it
prints it. A program that looks for keys while it runs gets those of a step that waits for so many bytes as
soon as it looks then.
"""

from __future__ import annotations

import math
from collections.abc import Sequence, Set as AbstractSet
from typing import Final

from fit.machine.host import Host
from fit.machine.run import Run, typed_at
from fit.machine.waits import WaitKind
from fit.session import EventKind, Session
from fit.source.keys import Step, encode_keys

_RUNNING: Final = (WaitKind.REALTIME, WaitKind.PRINTING, WaitKind.SCHEDULED)


class ScriptKeys:
    """Answers each wait with the next step of a script; to be given to `run_program` as its keys."""

    def __init__(self, steps: Sequence[Step], terminal: str | None = None) -> None:
        """``terminal`` decides what named keys such as up send."""
        self._steps = steps
        self._terminal = terminal
        self._next = 0
        self._printed_from = 0
        self._repaints = False

    @property
    def told(self) -> str:
        """How many of its steps came due, where not all did; else empty."""
        total = len(self._steps)
        return "" if self._next == total else f"{self._next:,} of its {total:,} steps came due"

    def expects(self, printed: int) -> bool:
        """Whether the next step is due while the program runs on, looking for a key.

        A pattern is waited for at waits alone: a check for a key to stop the output would eat what follows it.
        """
        if self._next == len(self._steps):
            return False
        wanted = self._steps[self._next].printed
        return wanted is not None and printed - self._printed_from >= wanted

    def __call__(self, host: Host) -> bytes | None:
        output = bytes(host.console.output)
        self._repaints |= host.wait is WaitKind.REALTIME
        while self._next < len(self._steps):
            step = self._steps[self._next]
            if not step.is_due(output[self._printed_from :], math.inf):
                return self._not_due(host, step)
            self._next += 1
            self._printed_from = len(output)
            keys = encode_keys(step.keys, self._terminal, output)
            if keys:
                if host.wait is WaitKind.SCHEDULED and self._repaints:
                    host.wait = WaitKind.REALTIME  # keys into a moving picture are no moment for reading
                self._repaints = False
                return keys
        return None

    @staticmethod
    def _not_due(host: Host, step: Step) -> bytes | None:
        if host.wait in _RUNNING:
            return b""
        if step.pattern is None:
            what = f"{step.printed:,} bytes, and fewer were printed"
        else:
            what = f"'{step.pattern.pattern.decode('utf-8', 'replace')}', which was not printed"
        host.script_detail = f"line {step.line} of the key script waits for {what}"
        return None


def script_of(session: Session, running: AbstractSet[int] = frozenset()) -> str:
    """What was typed in a session, as a key script that types it again: a step at each wait.

    ``running``: where in the output keys were typed while the program ran; each waits for as many bytes.
    """
    lines: list[str] = []
    before = 0
    for event in session.events:
        if event.kind is EventKind.INPUT:
            printed = event.at - before
            # Where nothing was printed since the keys before, only the next wait parts the two.
            when = f"printed {printed}" if event.at in running and printed else "quiet 0"
            lines.append(f"{when} => {_named(event.data)}\n")
            before = event.at
    return "".join(lines)


def typed_while_running(run: Run, *, by_hand: bool = False) -> frozenset[int]:
    """Where in the output of a run keys were typed though the program did not wait for them.

    ``by_hand``: keys of a person reach a moving picture at any moment, those of a script when it is judged one.
    """
    kinds = {WaitKind.SCHEDULED, WaitKind.PRINTING, *([WaitKind.REALTIME] if by_hand else [])}
    return typed_at(run, kinds)


def _named(keys: bytes) -> str:
    text = "".join(
        _NAMES.get(byte) or (chr(byte) if 0x20 < byte < 0x7F else f"<0x{byte:02x}>") for byte in keys
    )
    return text.strip()


_NAMES = {0x0D: "<enter>", 0x20: "<space>", 0x1B: "<escape>", 0x09: "<tab>", ord("<"): "<lt>"}
