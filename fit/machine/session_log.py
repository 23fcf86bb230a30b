"""The log of a run: where it waited, what was typed, and at which poll, so that it can be repeated."""

from __future__ import annotations

from dataclasses import dataclass, replace

from fit.machine.echo import shows_more_than_echo
from fit.machine.waits import WaitKind
from fit.session import Event, EventKind


@dataclass(frozen=True, slots=True)
class LogState:
    """A copy of a log."""

    events: tuple[Event, ...]
    schedule: tuple[tuple[int, bytes], ...]
    kinds: tuple[WaitKind, ...]
    looked_at: int
    typed: bytes


class SessionLog:
    """Waits and inputs in order."""

    def __init__(self, output: bytearray) -> None:
        """``output`` is the console's, which grows."""
        self._output = output
        self.events: list[Event] = []
        self.schedule: list[tuple[int, bytes]] = []
        """What was typed, each with the number of the poll that finds it; nothing where the script ended."""
        self.kinds: list[WaitKind] = []
        """The kind of each wait."""
        self._looked_at = 0
        self._typed = bytearray()

    def wait(self, kind: WaitKind) -> None:
        """The program waits; a person reads then if there is more than echo to be read."""
        printed = bytes(self._output[self._looked_at :])
        is_look = kind is not WaitKind.REALTIME and shows_more_than_echo(printed, bytes(self._typed))
        self.events.append(Event(len(self._output), EventKind.WAIT, is_look=is_look))
        self.kinds.append(kind)
        if is_look:
            self._looked_at = len(self._output)
            self._typed.clear()

    @property
    def shows_only_echo(self) -> bool:
        """Whether nothing but echo was printed since the last keys, and nothing else happened."""
        if not self.events or self.events[-1].kind is not EventKind.INPUT:
            return False
        last = self.events[-1]
        return not shows_more_than_echo(bytes(self._output[last.at :]), last.data)

    def typed(self, keys: bytes, poll: int, *, goes_on: bool = False) -> None:
        """Keys were typed; ``poll`` is the number of the poll that will find them.

        ``goes_on``: they belong to the keys before, and become one input with them.
        """
        if goes_on:
            last = self.events[-1]
            self.events[-1] = replace(last, data=last.data + keys)
        else:
            self.events.append(Event(len(self._output), EventKind.INPUT, keys))
        self.schedule.append((poll, keys))
        self._typed += keys

    def script_ended(self, poll: int) -> None:
        """No keys were left at this wait."""
        self.schedule.append((poll, b""))

    def freeze(self) -> LogState:
        """Copy everything, to come back to it."""
        return LogState(
            tuple(self.events), tuple(self.schedule), tuple(self.kinds), self._looked_at, bytes(self._typed)
        )

    def thaw(self, state: LogState) -> None:
        """Come back to a copy."""
        self.events[:] = state.events
        self.schedule[:] = state.schedule
        self.kinds[:] = state.kinds
        self._looked_at = state.looked_at
        self._typed[:] = state.typed
