"""What a shelf is scored for: the reader's screen, the device's processor and memory, how programs are played."""

from __future__ import annotations

from dataclasses import dataclass

from fit.machine import Budget, Processor
from fit.pipeline import DEFAULT_SMALL
from fit.screen.named import NamedScreen, find_screen

STEPS = 60
"""Answers that each of the two ways of playing may give."""


@dataclass(frozen=True, slots=True)
class ShelfSettings:
    """The same for every entry."""

    small: str = DEFAULT_SMALL
    big: str | None = None
    """What sessions say, else 80x25, where None."""
    terminal: str | None = None
    """What programs are set for; found from what they print where None."""
    small_terminal: str | None = None
    processor: Processor = Processor.I8080
    """The device's."""
    top: int | None = None
    """Where the device's memory for programs ends; what the screen's file says, else not known, where None."""
    steps: int = STEPS
    seconds: float | None = None
    seed: int = 1

    @property
    def screen(self) -> NamedScreen:
        """The reader's screen. Raises ScreenError or UsageError where it is unknown."""
        return find_screen(self.small)

    @property
    def memory_top(self) -> int | None:
        """Where the device's memory ends, None where nobody said."""
        return self.top if self.top is not None else self.screen.memory_top

    @property
    def budget(self) -> Budget:
        """What playing may take."""
        return Budget(steps=self.steps, seconds=self.seconds)

    def identity(self) -> str:
        """Everything that a result depends on, as text; a screen's file by what it says, not by its name."""
        big = None if self.big is None else find_screen(self.big)
        return repr((self.screen, big, self))
