"""A played run without the answers that led nowhere.

Whoever finds keys by trying gets the same short refusal again and again; a person reads it once or twice. A score
that is a mean over turns would be that of the refusals. So answers that showed no new line are left out, as far as
the program still shows every line without them.
"""

from __future__ import annotations

import re
from typing import Final

from fit.machine import Host, Program, Run, run_program
from fit.machine.play import lines_seen
from fit.machine.player import seen_lines
from fit.session import EventKind

MOST_TRIES: Final = 40
"""Runs that shortening may take."""
_LONGEST_TICKS: Final = 400_000_000
"""Of the played run; one that computes for longer is measured as it is."""
_OVERPRINT: Final = re.compile(rb"\r(?=[!-~])")
"""A line that is printed over the one before."""
_OVERPRINTS: Final = 3
"""Such lines, at least, where a program refreshes its screen so."""


def representative(program: Program, run: Run, terminal: str | None) -> Run:
    """What a score and a recording are made from: the run, shortened where it prints a stream of lines.

    Where the cursor is addressed, or lines are printed over others, lines of output are not what stands on the screen:
    then it stays as it is.
    """
    refreshes = len(_OVERPRINT.findall(run.session.output)) >= _OVERPRINTS
    return run if terminal or refreshes else shortened(program, run)


def shortened(program: Program, run: Run) -> Run:
    """The same program with fewer keys, showing the same lines; the run itself where there is no such run."""
    if run.ticks > _LONGEST_TICKS:
        return run
    steps = [event.data for event in run.session.events if event.kind is EventKind.INPUT]
    idle = _idle(run)
    wanted = lines_seen(run.session)
    best = run
    size = len(idle)
    tries = 0
    while size and tries < MOST_TRIES:
        at = 0
        while at < len(idle) and tries < MOST_TRIES:
            dropped = set(idle[at : at + size])
            kept = [step for number, step in enumerate(steps) if number not in dropped]
            tries += 1
            shorter = _again(program, run, kept)
            if lines_seen(shorter.session) >= wanted:
                best, steps = shorter, kept
                idle = [
                    number - sum(gone < number for gone in dropped)
                    for number in idle
                    if number not in dropped
                ]
            else:
                at += size
        size //= 2
    if best is run:
        return run
    # A key script starts without what was learnt of polls: only what it gives again may stand for the run.
    fresh = run_program(program, steps, run.setting)
    return fresh if lines_seen(fresh.session) >= wanted else run


def _idle(run: Run) -> list[int]:
    """The numbers of the inputs after which no line was new."""
    output = run.session.output
    inputs = [event for event in run.session.events if event.kind is EventKind.INPUT]
    if not inputs:
        return []
    seen = seen_lines(output[: inputs[0].at])
    idle: list[int] = []
    ends = [*(event.at for event in inputs[1:]), len(output)]
    for number, (event, end) in enumerate(zip(inputs, ends, strict=True)):
        lines = seen_lines(output[event.at : end], event.data)
        if lines <= seen:
            idle.append(number)
        seen |= lines
    return idle


def _again(program: Program, run: Run, steps: list[bytes]) -> Run:
    host = Host(program, run.setting, run.places)
    return run_program(program, steps, run.setting, host=host)
