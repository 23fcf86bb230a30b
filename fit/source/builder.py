"""Puts a session together in the order in which things happened: what every reader of a recording uses."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from fit.session import Clock, Event, EventKind, Session, Waits
from fit.units import Size


@dataclass(slots=True)
class SessionBuilder:
    """Takes output and events in order; `build` gives the session.

    Times are seconds since the start. One that lies before an earlier one is raised to it, because a
    clock ascends; how often that happened becomes a remark.
    """

    name: str = ""
    output: bytearray = field(default_factory=bytearray)
    events: list[Event] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    _clock: Clock = field(default_factory=Clock)
    _now: float = 0.0
    _backwards: int = 0

    def out(self, data: bytes, time: float | None = None) -> None:
        """The program printed ``data``."""
        if time is not None:
            self._clock.offsets.append(len(self.output))
            self._clock.seconds.append(self._ascending(time))
        self.output += data

    def event(
        self,
        kind: EventKind,
        data: bytes = b"",
        time: float | None = None,
        *,
        size: Size | None = None,
        is_look: bool = True,
    ) -> None:
        """Something happened before the next byte of output."""
        time = None if time is None else self._ascending(time)
        self.events.append(Event(len(self.output), kind, data, time, size, is_look))

    def build(self, waits: Waits | None = None) -> Session:
        """The session so far; ``waits`` follows from the inputs unless it is given."""
        if self._backwards:
            self.remarks.append(f"{self._backwards} times ran backwards and were raised to the time before.")
            self._backwards = 0
        if waits is None:
            typed = any(event.kind is EventKind.INPUT for event in self.events)
            waits = Waits.INPUTS if typed else Waits.INFERRED
        return replace(
            Session(bytes(self.output), name=self.name, waits=waits, clock=self._clock),
            events=tuple(self.events),
            remarks=tuple(self.remarks),
        )

    def _ascending(self, time: float) -> float:
        if time < self._now:
            self._backwards += 1
        self._now = max(self._now, time)
        return self._now
