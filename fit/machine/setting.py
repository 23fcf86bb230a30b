"""How a program is run: processor, drives, command line, memory, limits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from fit.errors import ProgramError, UsageError
from fit.machine.cpu import Processor
from fit.machine.ending import Limits
from fit.machine.layout import HIGHEST_TOP, LOWEST_TOP, PROGRAM_START, RETURN_ADDRESS
from fit.machine.loader import Program


@dataclass(frozen=True, slots=True)
class Setting:
    """How a program is run."""

    processor: Processor = Processor.Z80
    drives: Mapping[str, Path] | None = None
    """Folders by drive letter; None: the program's own folder is drive A."""
    arguments: str = ""
    top: int | None = None
    """Where memory for programs ends; None: as high as possible."""
    limits: Limits = field(default_factory=Limits)
    watches_opcodes: bool = False

    def top_for(self, program: Program) -> int:
        """Where memory ends. Raises UsageError for an impossible top, ProgramError where the program does not fit."""
        top = HIGHEST_TOP if self.top is None else self.top
        if not LOWEST_TOP <= top <= HIGHEST_TOP:
            raise UsageError(
                f"memory cannot end at {top:X}h",
                hint=f"choose a top from {LOWEST_TOP:04X}h to {HIGHEST_TOP:04X}h",
            )
        room = top - PROGRAM_START - RETURN_ADDRESS
        if len(program.image) > room:
            raise ProgramError(
                f"the program is {len(program.image):,} bytes long, and memory up to {top:04X}h holds {room:,}",
                source=program.name,
            )
        return top

    def folders(self, program: Program) -> Mapping[str, Path]:
        """Folders by drive letter."""
        if self.drives is not None:
            return self.drives
        return {} if program.folder is None else {"A": program.folder}
