"""Key scripts for 8-bit programs, the same as for programs of this computer.

A program here waits exactly, and then it is quiet for ever: a step is due at a wait unless the pattern
it waits for was not printed. Then the run ends, and says so; a program that repaints goes on until it
prints it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from fit.machine.host import Host
from fit.machine.run import keys_of
from fit.machine.waits import WaitKind
from fit.session import Session
from fit.source.keys import Step, encode_keys


class ScriptKeys:
    """Answers each wait with the next step of a script; to be given to `run_program` as its keys."""

    def __init__(self, steps: Sequence[Step], terminal: str | None = None) -> None:
        """``terminal`` decides what named keys such as up send."""
        self._steps = steps
        self._terminal = terminal
        self._next = 0
        self._printed_from = 0

    def __call__(self, host: Host) -> bytes | None:
        output = bytes(host.console.output)
        while self._next < len(self._steps):
            step = self._steps[self._next]
            if not step.is_due(output[self._printed_from :], math.inf):
                return self._not_due(host, step)
            self._next += 1
            self._printed_from = len(output)
            keys = encode_keys(step.keys, self._terminal, output)
            if keys:
                return keys
        return None

    @staticmethod
    def _not_due(host: Host, step: Step) -> bytes | None:
        if host.wait is WaitKind.REALTIME:
            return b""
        assert step.pattern is not None, "quiet never ends here"
        pattern = step.pattern.pattern.decode("utf-8", "replace")
        host.script_detail = (
            f"line {step.line} of the key script waits for '{pattern}', which was not printed"
        )
        return None


def script_of(session: Session) -> str:
    """What was typed in a session, as a key script that types it again: a step at each wait."""
    return "".join(f"quiet 0 => {_named(keys)}\n" for keys in keys_of(session))


def _named(keys: bytes) -> str:
    text = "".join(
        _NAMES.get(byte) or (chr(byte) if 0x20 < byte < 0x7F else f"<0x{byte:02x}>") for byte in keys
    )
    return text.strip()


_NAMES = {0x0D: "<enter>", 0x20: "<space>", 0x1B: "<escape>", 0x09: "<tab>", ord("<"): "<lt>"}
