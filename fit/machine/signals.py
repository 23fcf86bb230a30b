"""What ends a stretch of running: the program waits, or it is over.

These are raised by the functions of the operating system and caught by the host alone; no user sees
them.
"""

from __future__ import annotations

from fit.machine.ending import Ending, EndingKind
from fit.machine.waits import Place, WaitKind


class Waiting(Exception):  # noqa: N818  a signal between parts, not an error
    """The call cannot go on without a key; the processor still stands before it."""

    def __init__(self, kind: WaitKind, place: Place | None = None) -> None:
        super().__init__(kind)
        self.kind = kind
        self.place = place


class Ended(Exception):  # noqa: N818  a signal between parts, not an error
    """The run is over."""

    def __init__(self, kind: EndingKind, detail: str = "", address: int | None = None) -> None:
        super().__init__(kind)
        self.ending = Ending(kind, detail, address)
