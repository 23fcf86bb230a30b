"""Giving keys to a program that polls, and taking them back where they had no effect.

A program that looks at the keyboard in the middle of a long computation seems to wait. Its keys are
taken back and the place is marked as a mere check; where then nothing ever happens without a key, it
was a wait after all, and the program ignores such keys.
"""

from __future__ import annotations

from typing import Final

from fit.machine.ending import EndingKind
from fit.machine.host import Host, HostState
from fit.machine.waits import LONG_SILENCE, Place, Trust, WaitKind

_CR: Final = 0x0D
_ESCAPE: Final = 0x1B
_PATIENCE: Final = 4 * LONG_SILENCE
"""Frames in which a key must show an effect."""
_LONGER: Final = 8
"""Times as long as it printed until then, after which a program is believed to print for ever."""
_AT_LIMITS: Final = (EndingKind.TICKS, EndingKind.OUTPUT)
_SLICE: Final = 10
_POLLS_TO_READ: Final = 4
"""Polls that reading one key may take; more mean that the program goes on polling as before."""


class Conversation:
    """A program and the one who types."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self._endless: set[Place | None] = set()
        """Places at which the program polled and printed until a limit."""

    def go_on(self) -> None:
        """Run until the program waits. One that prints and polls waits only where it would never end by itself."""
        host = self.host
        if host.advance() is not WaitKind.PRINTING or host.place in self._endless:
            return
        before = host.freeze()
        for _ in range(_LONGER):
            if host.advance() is not WaitKind.PRINTING:
                break
        if host.wait is WaitKind.PRINTING or (host.ending is not None and host.ending.kind in _AT_LIMITS):
            host.thaw(before)
            self._endless.add(host.place)

    def answer(self, keys: bytes) -> bool:
        """Type a step, a key at a time as the program waits for it; false where all was taken back.

        Somebody who types waits for the echo, too: a program that looks for a key to stop its output must
        not find the rest of a line.
        """
        host = self.host
        rest = keys
        while rest and host.wait is not None:
            part = _next_part(rest, host.wait)
            if self._give(part, goes_on=rest is not keys):
                rest = rest[len(part) :]
            elif rest is keys:
                return False
        return True

    def _give(self, keys: bytes, *, goes_on: bool) -> bool:
        if self.host.wait is WaitKind.TRIAL:
            return self._try(keys, goes_on=goes_on)
        self.host.type_keys(keys, goes_on=goes_on)
        self.go_on()
        return True

    def _try(self, keys: bytes, *, goes_on: bool) -> bool:
        host, place = self.host, self.host.place
        assert place is not None
        places = host.watch.places
        trust = places.get(place)
        before = host.freeze()
        host.type_keys(keys, goes_on=goes_on)
        if trust is Trust.WAITS or self._has_effect(keys, before):
            places[place] = trust if trust is Trust.WAITS else Trust.READS
            self._go_on()
            return True
        if trust is not Trust.CHECKS:
            host.thaw(before)
            places[place] = Trust.CHECKS
            self.go_on()
            if host.ending is None or host.ending.kind is not EndingKind.SILENT:
                return False
            host.thaw(before)
            host.type_keys(keys, goes_on=goes_on)
        places[place] = Trust.WAITS
        self._go_on()
        return True

    def _go_on(self) -> None:
        if self.host.wait is None:
            self.go_on()

    def _has_effect(self, keys: bytes, before: HostState) -> bool:
        """Run on until something happens, at most for a while, and tell whether it did."""
        host = self.host
        activity = host.activity
        for _ in range(0, _PATIENCE, _SLICE):
            wait = host.advance(_SLICE)
            if host.activity != activity:
                return True
            if host.ending is not None:
                return host.ending.kind is not EndingKind.SILENT
            if wait is not None:
                return wait is not WaitKind.TRIAL or host.place != before.place
        # It is silent, but does it poll as before?
        return host.polls - before.polls <= _POLLS_TO_READ * (len(keys) + 1)

    def end(self) -> bool:
        """No keys are left: end the run here, unless the program goes on without one."""
        host = self.host
        place = host.place
        if host.wait is WaitKind.TRIAL and place is not None and place not in host.watch.places:
            before, activity = host.freeze(), host.activity
            host.watch.places[place] = Trust.CHECKS
            self.go_on()
            wait = host.wait
            if host.activity != activity or (wait is not None and wait is not WaitKind.TRIAL):
                return False
            host.thaw(before)
            del host.watch.places[place]
        host.end_script()
        return True


def _next_part(keys: bytes, wait: WaitKind) -> bytes:
    """What is typed at once: a line where a line is read, the sequence of a function key, else one key.

    Keys that are due while the program runs are typed ahead: it may look for the rest much later, or never.
    """
    if wait is WaitKind.SCHEDULED:
        return keys
    if wait is WaitKind.LINE:
        end = keys.find(_CR)
        return keys if end < 0 else keys[: end + 1]
    return keys if keys[0] == _ESCAPE else keys[:1]
