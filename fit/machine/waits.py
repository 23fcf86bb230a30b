"""When does a program wait for a key?

    blocking    it called for a line or a key, and none was typed: exact
    proved      registers and memory repeat between two polls: only a key can change anything any more
    trial       it polls in silence while a counter runs: at an unknown place for a long time, at one
                where a key was read already a short time
    realtime    it repaints without scrolling while it polls: it takes keys, but nobody reads
    printing    it polls and prints on and on, and would do so until a limit: only a key can end that

A place is a call: function, return address and stack pointer.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final, NamedTuple

from fit.machine.cpu import FRAME_TICKS

LONG_SILENCE: Final = 20_000_000 // FRAME_TICKS
"""Frames of polling without activity after which a poll at an unknown place counts as a wait."""
TIGHT_POLLS: Final = 200
"""Polls without activity that suffice where a key was read before."""
MANY_POLLS: Final = 200_000
"""Polls without activity after which a mere status check is tried with a key once more: computations
poll less often."""
IGNORED_POLLS: Final = 5_000
"""The same where keys are known to be ignored now and then."""
REPAINT_FRAMES: Final = 4_000_000 // FRAME_TICKS
"""Frames of repainting after which a program that polls all the while is given a key."""
REPAINT_BYTES: Final = 4_000
"""The same in bytes, two screens of 80x25: printing takes no time here, but it did."""
REPAINT_POLLS: Final = 50
MANY_REPAINTS: Final = 8
"""Stretches of output between polls that make a moving picture; a screen drawn once is none."""
STILL_FRAMES: Final = 2_500_000 // FRAME_TICKS
"""Frames without output after which it no longer repaints, but waits."""
PRINTING_FRAMES: Final = 400_000_000 // FRAME_TICKS
"""Frames of printing, 100 s at 4 MHz, after which it is tried whether a program that polls all the while would ever
end by itself, as a listing does that looks for a key to stop it."""
PRINTING_BYTES: Final = 32_000
"""The same in bytes, 33 s at 9600 bit/s: printing takes no time here, but it did."""
MANY_STRETCHES: Final = 50
"""Stretches of output between polls that make a stream."""
PROOF_WINDOW: Final = 16
"""Polls that are compared with a kept state before the next is kept: loops hold few polls."""

_LF: Final = 0x0A
_BACK: Final = (0x08, 0x0D)
"""BS and CR: a line is written over."""
_REPOSITIONS: Final = re.compile(rb"\x1b(?:\[[0-9;]*[AHJdf]|[AEHY=*:;+])|[\x0b\x0c\x1a\x1e]")
"""Home, clear, absolute moves and up, in the families of terminals that programs were written for."""
SOME_MOVES: Final = 3
"""Such moves that make a moving picture; a screen that is cleared once and then filled is none."""
FEW_FEEDS: Final = 24
"""Line feeds after such a move that do not scroll a screen of 24 or 25 rows."""


class WaitKind(StrEnum):
    """How the wait was recognised."""

    LINE = "line"
    KEY = "key"
    PAUSED = "paused"
    """^S stopped the output."""
    PROVED = "proved poll"
    TRIAL = "trial poll"
    REALTIME = "realtime"
    PRINTING = "printing"
    SCHEDULED = "scheduled"
    """A key is due at this poll: of a run that is repeated, a person, or a step of a script that is for it."""


class Place(NamedTuple):
    """Where a program polls."""

    function: int
    """A BDOS function, or 256 and the number of a BIOS function."""
    caller: int
    stack: int


class Trust(StrEnum):
    """What is known of a place."""

    READS = "reads"
    """A key changed something there."""
    CHECKS = "checks"
    """A key changed nothing: a mere status check."""
    WAITS = "waits"
    """It looked like a check, but without a key nothing ever happened: keys may be ignored there."""


_ENOUGH_POLLS: Final = {
    Trust.READS: TIGHT_POLLS,
    Trust.WAITS: IGNORED_POLLS,
    Trust.CHECKS: MANY_POLLS,
}


@dataclass(frozen=True, slots=True)
class WatchState:
    """A copy of a `PollWatch`."""

    polls: int
    activity: int
    quiet_since: int
    repaint_since: int
    repaint_polls: int
    repaints: int
    repaint_at: int
    stream: tuple[int, int, int]
    stretches: int
    total: int


@dataclass
class PollWatch:
    """Judges polls that find no key."""

    places: dict[Place, Trust] = field(default_factory=dict)
    patience: int = 1
    """All thresholds times this: 2 where a run repeats another and must not wait before it."""
    tries_streams: bool = True
    """Whether endless printing counts as a wait; not for a person, nor where a run repeats another."""
    polls: int = 0
    """Since the last activity."""
    total: int = 0
    """All polls of the run, answered or not."""
    _activity: int = -1
    quiet_since: int = 0
    repaint_since: int = 0
    _repaint_polls: int = 0
    _repaints: int = 0
    _repaint_at: int = 0
    _stream: tuple[int, int, int] = (0, 0, 0)
    """Frame, bytes printed and stretches of output when a key was last given or asked for in a stream of output."""
    _stretches: int = 0
    _kept: tuple[bytes, ...] | None = None
    _kept_at: int = 0
    _keep_next: int = 1

    def freeze(self) -> WatchState:
        """Copy everything but what is known of places."""
        return WatchState(
            self.polls,
            self._activity,
            self.quiet_since,
            self.repaint_since,
            self._repaint_polls,
            self._repaints,
            self._repaint_at,
            self._stream,
            self._stretches,
            self.total,
        )

    def thaw(self, state: WatchState) -> None:
        """Come back to a copy; what was learnt of places stays."""
        self.polls, self._activity, self.quiet_since = state.polls, state.activity, state.quiet_since
        self.repaint_since, self._repaint_polls = state.repaint_since, state.repaint_polls
        self._repaints, self._repaint_at, self.total = state.repaints, state.repaint_at, state.total
        self._stream, self._stretches = state.stream, state.stretches
        self._kept, self._keep_next = None, self.polls + 1

    def key_taken(self, frame: int, printed: int) -> None:
        """A key was given: what was quiet or repainted before no longer counts."""
        self._activity = -1
        self._stream = frame, printed, self._stretches
        self._restart_window(frame, printed)

    def is_proved(
        self, has_registers: Callable[[tuple[bytes, ...]], bool], state: Callable[[], tuple[bytes, ...]]
    ) -> bool:
        """Whether the machine is where it was at an earlier poll since the last activity."""
        if self.polls == 0:
            self._kept, self._keep_next = None, 1
            return False
        if self.polls >= self._keep_next:
            self._kept, self._kept_at = state(), self.polls
            self._keep_next = self.polls * 2 + PROOF_WINDOW
            return False
        if self._kept is None or self.polls - self._kept_at > PROOF_WINDOW:
            return False
        return has_registers(self._kept) and state() == self._kept

    def count(self, activity: int, frame: int) -> None:
        """One more poll found no key."""
        self.total += 1
        self._repaint_polls += 1
        if activity == self._activity:
            self.polls += 1
        else:
            self._activity, self.polls, self.quiet_since = activity, 0, frame
            self._repaints += 1
            self._stretches += 1

    def is_trial(self, place: Place, output: bytearray, frame: int) -> bool:
        """Whether it has been quiet for long enough at this place."""
        trust = self.places.get(place)
        quiet = frame - self.quiet_since
        if trust is None:
            return quiet >= LONG_SILENCE * self.patience
        if self.polls + 1 < _ENOUGH_POLLS[trust] * self.patience:
            return False
        # Between two frames of a moving picture a program may well poll as often.
        return quiet > STILL_FRAMES or not self._is_repainted(output, 1)

    def _is_repainted(self, output: bytearray, moves: int) -> bool:
        """Whether what was printed since the last key moves over the screen, so often, rather than scrolling."""
        window = bytes(output[self._repaint_at :])
        stretches = _REPOSITIONS.split(window)
        if len(stretches) > 1:
            return len(stretches) > moves and all(stretch.count(_LF) < FEW_FEEDS for stretch in stretches)
        return _LF not in window and any(code in window for code in _BACK)

    def is_realtime(self, output: bytearray, frame: int) -> bool:
        """Whether it has been repainting without scrolling since the last key, and still does."""
        frames = frame - self.repaint_since
        if (
            self._repaint_polls < REPAINT_POLLS
            or self._repaints < 2
            or frame - self.quiet_since > STILL_FRAMES
        ):
            return False
        if self._repaints < MANY_REPAINTS and frames < LONG_SILENCE:
            return False
        if frames < REPAINT_FRAMES and len(output) - self._repaint_at < REPAINT_BYTES:
            return False
        is_repainted = self._is_repainted(output, SOME_MOVES)
        self._restart_window(frame, len(output))
        return is_repainted

    def is_printing(self, printed: int, frame: int) -> bool:
        """Whether it has been polling and printing, whatever it prints, for so long that its end is to be looked for."""
        if not self.tries_streams:
            return False
        since, at, stretches = self._stream
        if frame - since < PRINTING_FRAMES and printed - at < PRINTING_BYTES:
            return False
        is_stream = self._stretches - stretches >= MANY_STRETCHES and printed > at
        self._stream = frame, printed, self._stretches
        return is_stream and frame - self.quiet_since <= STILL_FRAMES

    def _restart_window(self, frame: int, printed: int) -> None:
        self.repaint_since, self._repaint_polls, self._repaints, self._repaint_at = frame, 0, 0, printed
