"""Which processor a program needs: judged by the paths that its keys led it through.

    no undefined opcode was executed                          safe for an 8080-class processor on these paths
    some were, and the 8080 run printed or ended otherwise,
    or came to undefined opcodes where the Z80 run has none   needs a Z80
    some were, and both runs were the same                    undecided

A program that looks at the processor and leaves on an 8080 executes none there; it prints less, or a refusal,
and its Z80 run has hits: it needs a Z80. One that goes on there with other code, and comes to the same end or
shows as much, is safe. Where the Z80 takes a jump that is none on an 8080, that one runs
on into texts and data: what it meets there is no code of the program's, however the run ends.

20h and 30h are instructions of the 8085. Where nothing else was met, and the 8080 run, which passes over
them, shows all that the Z80 run does and more, the program may be for an 8085: undecided.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from enum import Enum, StrEnum, auto
from typing import Final

from fit.machine.cpu import Processor
from fit.machine.ending import LIMITED, EndingKind
from fit.machine.loader import Program
from fit.machine.opcodes import OTHER_ON_8085, Hit
from fit.machine.run import Run, Schedule, limits_like, repeat_run
from fit.machine.screen_text import lines_of
from fit.machine.setting import Setting

_REFUSAL: Final = re.compile(
    r"\bz-?80\b|\bnot\b|n't\b|\bcannot\b|\bsorry\b|\bonly\b|\bneeds?\b|\brequire|\bmust\b|\bwrong\b",
    re.IGNORECASE,
)
"""Words with which a program says that it will not run on this processor; common practice, no source."""
_ACCIDENTS: Final = LIMITED | {EndingKind.WILD_JUMP, EndingKind.HALTED, EndingKind.UNSUPPORTED}


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
    """Undefined opcodes that were executed, by address: on the Z80, or where none was there, on the 8080."""
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
    hits = tuple(sorted({*(on_z80.opcodes or on_8080.opcodes)}))
    same = _prints_the_same(on_8080, on_z80)
    if not hits:
        reason = "no opcode was executed that the 8080 does not define"
        return ProcessorNeed(ProcessorClass.SAFE_8080, hits, same, reason)
    opcodes = ", ".join(sorted({f"{hit.opcode:02X}h" for hit in hits}))
    met = f"it executed {opcodes} from {hits[0].address:04X}h on"
    if _is_for_8085(on_8080, on_z80, hits):
        reason = f"{met}, and shows more where that does nothing: it may be for an 8085"
        return ProcessorNeed(ProcessorClass.UNDECIDED, hits, same, reason)
    if not on_8080.opcodes and on_8080.ending.kind is on_z80.ending.kind:
        reason = f"it executes {opcodes} on a Z80 alone: it looks which processor it runs on"
        way = _Way.ON if same else _way_without(on_8080, on_z80)
        if way is _Way.ON:
            return ProcessorNeed(ProcessorClass.SAFE_8080, hits, same, reason)
        if way is _Way.UNKNOWN:
            reason += ", and prints otherwise on an 8080"
            return ProcessorNeed(ProcessorClass.UNDECIDED, hits, same, reason)
    difference = "" if same else "prints otherwise"
    difference = difference or _ends_otherwise(on_8080, on_z80) or _goes_astray(on_8080, hits)
    if difference:
        reason = f"{met}, and on an 8080 it {difference}"
        return ProcessorNeed(ProcessorClass.NEEDS_Z80, hits, same, reason)
    reason = f"{met}, yet prints the same on an 8080"
    return ProcessorNeed(ProcessorClass.UNDECIDED, hits, same, reason)


class _Way(Enum):
    """What a program does on an 8080 that executes its undefined opcodes on a Z80 alone."""

    ON = auto()
    AWAY = auto()
    UNKNOWN = auto()


def _way_without(on_8080: Run, on_z80: Run) -> _Way:
    """Whether it goes on with other code, or leaves: by what it prints on one processor and not on the other."""
    shown, there = lines_of(on_8080.session.output), lines_of(on_z80.session.output)
    if on_8080.ending.kind in _ACCIDENTS or any(_REFUSAL.search(line) for line in shown if line not in there):
        return _Way.AWAY
    waits, waits_there = len(on_8080.wait_kinds), len(on_z80.wait_kinds)
    if waits < waits_there:
        return _Way.AWAY
    if (
        (waits and 2 * len(shown) >= len(there))
        or (shown and shown[-1:] == there[-1:])
        or len(shown) > len(there)
    ):
        return _Way.ON
    return _Way.AWAY if len(shown) < len(there) else _Way.UNKNOWN


def _prints_the_same(one: Run, other: Run) -> bool:
    """Whether two runs show the same; where limits ended both, as far as the shorter one came."""
    first, second = one.session.output, other.session.output
    if one.ending.kind in LIMITED and one.ending.kind is other.ending.kind:
        length = min(len(first), len(second))
        first, second = first[:length], second[:length]
    return first == second


def _ends_otherwise(on_8080: Run, on_z80: Run) -> str:
    """How a run ends that ends otherwise than the one on a Z80; else empty. Which limit ended it tells nothing."""
    one, other = on_8080.ending, on_z80.ending
    if one.kind is other.kind and (one.kind in LIMITED or one == other):
        return ""
    return f"ends otherwise: {one}"


def _goes_astray(on_8080: Run, hits: tuple[Hit, ...]) -> str:
    """Where a run meets undefined opcodes that the run on a Z80 does not; empty where it meets none."""
    known = {hit.address for hit in hits}
    strays = [hit for hit in on_8080.opcodes if hit.address not in known]
    return f"goes astray: it comes to {strays[0].opcode:02X}h at {strays[0].address:04X}h" if strays else ""


def _is_for_8085(on_8080: Run, on_z80: Run, hits: tuple[Hit, ...]) -> bool:
    """Whether all that speaks against an 8080 are codes of the 8085, without which the program shows more."""
    if any(hit.opcode not in OTHER_ON_8085 for hit in (*hits, *on_8080.opcodes)):
        return False
    shown, there = on_8080.session.output, on_z80.session.output
    return len(shown) > len(there) and shown.startswith(there) and on_8080.ending.kind not in _ACCIDENTS
