"""How much memory a program needs: the lowest top at which it still runs as before.

Highest addresses used would mislead, since many programs put data or their stack just below the top.
So the top is lowered by halving, and each time the program must print the same, digits aside (it may
tell how much memory is free), and write nothing at or above the top.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from fit.errors import ProgramError
from fit.machine.layout import HIGHEST_TOP, LOWEST_TOP, PROGRAM_START
from fit.machine.loader import Program
from fit.machine.run import Run, Schedule, limits_like, repeat_run, with_memory
from fit.machine.setting import Setting

PAGE: Final = 0x100
_OFFSET: Final = HIGHEST_TOP % PAGE
_NUMBERS: Final = re.compile(
    rb" *(?:\b[0-9][0-9,]*\b|\b(?:(?:[0-9A-F]{2})+|(?:[0-9a-f]{2})+)[Hh]?\b|[0-9][0-9,]*)"
)
"""Decimal, or bytes and addresses in hexadecimal, as many as stand together."""


@dataclass(frozen=True, slots=True)
class MemoryNeed:
    """The lowest top, to a page of 256 bytes, and what happened below it."""

    top: int | None
    """Where memory must end at least; None where not even the highest top repeats the run."""
    reason: str
    """What fails with one page less."""
    tries: int


def lowest_memory(program: Program, schedule: Schedule, setting: Setting) -> MemoryNeed:
    """Search by halving. ``schedule`` is that of a run with this setting and its top."""
    highest = setting.top if setting.top is not None else HIGHEST_TOP
    model = repeat_run(program, schedule, setting)
    bounded = replace(setting, limits=limits_like(model))
    fault = _fault(model, model)
    if fault:
        return MemoryNeed(None, fault, 1)
    least = max(LOWEST_TOP, PROGRAM_START + len(program.image) + 2)
    low = -(-(least - _OFFSET) // PAGE)
    high = (highest - _OFFSET) // PAGE
    reason = "the program itself would not fit"
    tries = 1
    while low < high:
        middle = (low + high) // 2
        tries += 1
        fault = _try(program, schedule, with_memory(bounded, middle * PAGE + _OFFSET), model)
        if fault:
            low, reason = middle + 1, fault
        else:
            high = middle
    return MemoryNeed(min(high * PAGE + _OFFSET, highest), reason, tries)


def _try(program: Program, schedule: Schedule, setting: Setting, model: Run) -> str:
    try:
        run = repeat_run(program, schedule, setting)
    except ProgramError:
        return "the program itself would not fit"
    return _fault(run, model)


def _fault(run: Run, model: Run) -> str:
    """What makes a run differ from its model; empty where nothing does."""
    if run.writes_above_top:
        return (
            f"with a top of {run.setting.top or HIGHEST_TOP:04X}h it writes at {run.writes_above_top[0]:04X}h"
        )
    if run.ending.kind is not model.ending.kind:
        return f"it ends otherwise: {run.ending}"
    if masked(run.session.output) != masked(model.session.output):
        return "it prints otherwise"
    return ""


def masked(output: bytes) -> bytes:
    """Output with each number, and the blanks that align it, replaced by one mark."""
    return _NUMBERS.sub(b"#", output)
