"""Which processor a program needs: judged by the paths that its keys led it through.

    no undefined opcode was executed                safe for an 8080-class processor on these paths
    some were, and the 8080 run printed otherwise   needs a Z80
    some were, and both runs printed the same       undecided

A program that looks at the processor and leaves on an 8080 executes none there; it prints otherwise,
and its Z80 run has hits: it needs a Z80.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from fit.machine.cpu import Processor
from fit.machine.ending import LIMITED
from fit.machine.loader import Program
from fit.machine.opcodes import OTHER_ON_8085, Hit
from fit.machine.run import Run, Schedule, limits_like, repeat_run
from fit.machine.setting import Setting


class ProcessorClass(StrEnum):
    """What is known of the processor a program needs."""

    SAFE_8080 = "safe for an 8080 on the paths explored"
    NEEDS_Z80 = "needs a Z80"
    UNDECIDED = "undecided"


@dataclass(frozen=True, slots=True)
class ProcessorNeed:
    """A processor class with its evidence."""

    kind: ProcessorClass
    hits: tuple[Hit, ...]
    """Undefined opcodes that were executed, on either processor, by address."""
    same_transcript: bool
    reason: str

    @property
    def hits_8085(self) -> tuple[Hit, ...]:
        """Opcodes that mean RIM or SIM on the 8085."""
        return tuple(hit for hit in self.hits if hit.opcode in OTHER_ON_8085)


def processor_class(program: Program, schedule: Schedule, setting: Setting) -> ProcessorNeed:
    """Repeat a run on both processors, watching opcodes, and compare what they printed.

    ``schedule`` is that of a run with the same setting, whichever its processor.
    """
    watching = replace(setting, processor=Processor.Z80, watches_opcodes=True)
    on_z80 = repeat_run(program, schedule, watching)
    on_8080 = repeat_run(
        program, schedule, replace(watching, processor=Processor.I8080, limits=limits_like(on_z80))
    )
    return judge(on_8080, on_z80)


def judge(on_8080: Run, on_z80: Run) -> ProcessorNeed:
    """The class that two runs with the same keys show."""
    hits = tuple(sorted({*on_8080.opcodes, *on_z80.opcodes}))
    same = _prints_the_same(on_8080, on_z80)
    if not hits:
        reason = "no opcode was executed that the 8080 does not define"
        return ProcessorNeed(ProcessorClass.SAFE_8080, hits, same, reason)
    opcodes = ", ".join(sorted({f"{hit.opcode:02X}h" for hit in hits}))
    if not same:
        reason = f"it executed {opcodes} from {hits[0].address:04X}h on, and on an 8080 it prints otherwise"
        return ProcessorNeed(ProcessorClass.NEEDS_Z80, hits, same, reason)
    if not on_8080.opcodes:
        reason = f"it executes {opcodes} on a Z80 alone: it looks which processor it runs on"
        return ProcessorNeed(ProcessorClass.SAFE_8080, hits, same, reason)
    reason = f"it executed {opcodes} from {hits[0].address:04X}h on, yet prints the same on an 8080"
    return ProcessorNeed(ProcessorClass.UNDECIDED, hits, same, reason)


def _prints_the_same(one: Run, other: Run) -> bool:
    """Whether two runs show the same; where limits ended both, as far as the shorter one came."""
    if one.ending.kind is not other.ending.kind:
        return False
    first, second = one.session.output, other.session.output
    if one.ending.kind in LIMITED:
        length = min(len(first), len(second))
        first, second = first[:length], second[:length]
    return first == second
