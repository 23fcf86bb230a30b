"""What else decides whether a program is worth loading: processor and memory, from the runs there are.

Each question repeats a run several times. Runs that take long are cut to their first keys, and the
answer says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from fit.machine.ending import EndingKind
from fit.machine.loader import Program
from fit.machine.memory_need import MemoryNeed, lowest_memory
from fit.machine.processor import ProcessorClass, ProcessorNeed, processor_class
from fit.machine.run import Run, Schedule, rehearse
from fit.machine.setting import Setting

_TICKS_A_SECOND: Final = 300e6
"""Emulated clock ticks a second of computation, measured; only to decide what is too long."""
_BYTES_A_SECOND: Final = 600e3
"""Console calls a second, measured."""
_LONGEST: Final = 0.15
"""Seconds that one repetition may take by this reckoning."""
_FEWEST_KEYS: Final = 5
_MOST_TICKS: Final = 60_000_000
_MOST_OUTPUT: Final = 150_000
"""What a repetition may take at most, whatever its keys."""


@dataclass(frozen=True, slots=True)
class Assessment:
    """Processor and memory, with the keys that led there."""

    processor: ProcessorNeed
    memory: MemoryNeed
    keys: int
    """Steps that were typed in the searches."""
    is_cut: bool
    """Whether the run took so long that only its first keys were repeated."""


def assess(program: Program, runs: Sequence[Run]) -> Assessment:
    """Answer both questions: the processor by all runs, memory by the first.

    Every run needs the same setting. Raises ValueError where there is no run.
    """
    if not runs:
        raise ValueError("there must be a run to be repeated")
    rehearsed = [rehearse(program, replace(run, setting=_affordable(run.setting))) for run in runs]
    schedules = [_first_keys(run) for run in rehearsed]
    setting = rehearsed[0].setting
    needs = [processor_class(program, schedule, setting) for schedule in schedules]
    return Assessment(
        processor=_strictest(needs),
        memory=lowest_memory(program, schedules[0], setting),
        keys=sum(bool(keys) for _, keys in schedules[0]),
        is_cut=schedules[0] != rehearsed[0].schedule
        or rehearsed[0].ending.kind in (EndingKind.TICKS, EndingKind.OUTPUT),
    )


def _affordable(setting: Setting) -> Setting:
    """Limits for many repetitions; and the answer must not depend on how fast this computer is."""
    limits = setting.limits
    ticks = _MOST_TICKS if limits.ticks is None else min(limits.ticks, _MOST_TICKS)
    output = _MOST_OUTPUT if limits.output is None else min(limits.output, _MOST_OUTPUT)
    return replace(setting, limits=replace(limits, ticks=ticks, output=output, seconds=None))


def _first_keys(run: Run) -> Schedule:
    """The schedule of a run, or of its first keys where all would take too long."""
    seconds = run.ticks / _TICKS_A_SECOND + len(run.session.output) / _BYTES_A_SECOND
    keys = sum(bool(keys) for _, keys in run.schedule)
    wanted = max(_FEWEST_KEYS, int(keys * _LONGEST / seconds)) if seconds > _LONGEST else keys
    if wanted >= keys:
        return run.schedule
    return (*run.schedule[:wanted], (run.schedule[wanted][0], b""))


def _strictest(needs: list[ProcessorNeed]) -> ProcessorNeed:
    """What the most demanding run needs."""
    order = (ProcessorClass.NEEDS_Z80, ProcessorClass.UNDECIDED, ProcessorClass.SAFE_8080)
    return min(needs, key=lambda need: order.index(need.kind))
