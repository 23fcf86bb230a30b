"""Why a run ended, and the limits that may end it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final


class EndingKind(StrEnum):
    """Each way in which a run can end."""

    LEFT = "left by itself"
    """It returned to the command processor or called function 0."""
    WARM_START = "warm start"
    """It jumped to 0 or into the BIOS, or was interrupted at the keyboard."""
    STOPPED = "stopped by the operating system"
    """The system wrote an error on the console, and started anew at the next key."""
    SCRIPT_ENDED = "script ended"
    """It waits, and no keys are left."""
    PLAYER_LEFT = "whoever played left"
    TICKS = "limit of clock ticks"
    SILENT = "limit of silent time"
    OUTPUT = "limit of output"
    WAITS = "limit of waits"
    SECONDS = "limit of seconds"
    HALTED = "halted"
    WILD_JUMP = "wild jump"
    """It ran into the operating system's memory or an empty restart vector."""
    UNSUPPORTED = "unsupported call"
    """It called what a sandbox cannot answer."""


LIMITED: Final = frozenset(
    (EndingKind.TICKS, EndingKind.SILENT, EndingKind.OUTPUT, EndingKind.WAITS, EndingKind.SECONDS)
)
"""Endings that a limit brought about: the program would have gone on."""


@dataclass(frozen=True, slots=True)
class Ending:
    """The way a run ended; ``str()`` is its sentence."""

    kind: EndingKind
    detail: str = ""
    address: int | None = None
    """WILD_JUMP, HALTED: where."""

    def __str__(self) -> str:
        return f"{self.kind.value}: {self.detail}" if self.detail else self.kind.value


@dataclass(frozen=True, slots=True)
class Limits:
    """What a run may use; None is without limit.

    Ticks are clock cycles of the emulated processor: 4 million are a second at 4 MHz. They are looked at where
    the program waits and every 100,000 ticks, output after each call that prints.
    """

    ticks: int | None = 8_000_000_000
    silent_ticks: int | None = 800_000_000
    """Since it last printed, took a key or worked with a file."""
    output: int | None = 8_000_000
    """Bytes printed."""
    waits: int | None = 10_000
    seconds: float | None = None
    """Of the host's time. Where it ends a run, the run is not repeatable."""
    written: int = 8 << 20
    """Bytes of changed files kept in memory; a program that writes more finds the disk full."""


UNLIMITED = Limits(ticks=None, silent_ticks=None, output=None, waits=None)
"""For programs that compute for hours, such as processor exercisers."""
