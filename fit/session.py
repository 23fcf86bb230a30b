"""A session: what a program printed, byte for byte, what was typed, and where it waited, in order.

Every place in a session is a byte offset into ``output``. An event stands before the byte at its
offset. The file form of a session is read and written by `fit.source.session_file`.
"""

from __future__ import annotations

from array import array
from bisect import bisect_right
from dataclasses import dataclass, field
from enum import StrEnum

from fit.units import Size


class EventKind(StrEnum):
    """What happened between two bytes of output."""

    INPUT = "in"
    """Something was typed."""
    WAIT = "wait"
    """The program waited for input."""
    RESIZE = "resize"
    """The terminal was resized."""
    NOTE = "note"
    """A remark of the recorder, such as a marker; it moves nothing."""


class Waits(StrEnum):
    """How well the places are known at which the program waited."""

    EXACT = "exact"
    """The host of the program saw it wait."""
    INPUTS = "inputs"
    """Taken from the recorded inputs."""
    INFERRED = "inferred"
    """Nothing was recorded: pauses, prompts or assumed looks must do."""


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened before the output byte at offset ``at``."""

    at: int
    kind: EventKind
    data: bytes = b""
    """INPUT: the bytes typed. NOTE: its text in UTF-8. Otherwise empty."""
    time: float | None = None
    """Seconds since the start, where known."""
    size: Size | None = None
    """RESIZE: the new size. Otherwise None."""
    is_look: bool = True
    """WAIT: whether a person can read at it; false where only echo or a poll came before it."""


@dataclass(frozen=True, slots=True)
class Clock:
    """When output arrived: the bytes from ``offsets[i]`` on came at ``seconds[i]``. Both ascend."""

    offsets: array[int] = field(default_factory=lambda: array("q"))
    seconds: array[float] = field(default_factory=lambda: array("d"))

    def __bool__(self) -> bool:
        return len(self.offsets) > 0

    def time_of(self, offset: int) -> float | None:
        """Seconds since the start at which the byte at ``offset`` came; None without times."""
        index = bisect_right(self.offsets, offset) - 1
        return self.seconds[index] if index >= 0 else None


@dataclass(frozen=True, slots=True)
class Session:
    """Everything a program printed and what happened meanwhile."""

    output: bytes
    events: tuple[Event, ...] = ()
    """Ascending by ``at``."""
    clock: Clock = field(default_factory=Clock)
    waits: Waits = Waits.INFERRED
    size: Size | None = None
    """The size the program was told, None where it was not."""
    dialect: str | None = None
    """The terminal the program was told, by its name in the terminal database."""
    encoding: str | None = None
    """One of the names in `fit.dialect.encoding`; None where it must be found from the data."""
    bare_lf: bool = False
    """Whether LF alone means a new line, as in text that went through no terminal; the dialect then adds the CR."""
    command: str | None = None
    exit_status: int | None = None
    ending: str | None = None
    """Why the session ended, where the recorder says: exited, limit, interrupted."""
    keeps_inputs: bool = field(default=False, compare=False)
    """Whether what was typed would stand in it; output alone does not show that nothing was typed."""
    name: str = ""
    """Where it came from, for people."""
    read_as: str = ""
    """What kind of file it was taken for, for people; empty where it came from no file."""
    remarks: tuple[str, ...] = ()
    """What was decided or found damaged while reading, one sentence each."""
