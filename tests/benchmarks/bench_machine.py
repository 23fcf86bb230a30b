"""How fast 8-bit programs run: run by hand, ``python tests/benchmarks/bench_machine.py``.

The reference is measured in the same run: a bare breakpoint of the library, answered by moving PC.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "machine"))

from machine_assembler import call, program, text
from machine_samples import ALL, story

from fit.machine.assess import assess
from fit.machine.cpu import BREAKPOINT, PC, SP, Cpu, Processor
from fit.machine.ending import UNLIMITED, Limits
from fit.machine.host import Host
from fit.machine.play import Budget, play
from fit.machine.setting import Setting

CALLS = 300_000
PROGRAMS = 200
STEPS = 60


def timed(work: Callable[[], object]) -> float:
    """Seconds that a piece of work takes."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def bare_trap(processor: Processor) -> float:
    """Microseconds a breakpoint that is only left again."""
    cpu = Cpu(processor)
    # CALL 5, JP 0100h; at 5 a NOP with a breakpoint, and a RET.
    cpu.memory[0x100:0x106] = bytes.fromhex("CD0500 C30001")
    cpu.memory[5:7] = b"\x00\xc9"
    cpu.break_at(5)
    cpu.words[PC], cpu.words[SP] = 0x100, 0xF000

    def work() -> None:
        run, words, hits = cpu.run, cpu.words, 0
        while hits < CALLS:
            if run() & BREAKPOINT:
                hits += 1
                words[PC] = 6

    return timed(work) / CALLS * 1e6


def console(processor: Processor, source: str, calls_for_each_byte: float = 1.0) -> tuple[float, float]:
    """Microseconds a console call, and emulated MHz, of a program that prints for ever."""
    limits = Limits(ticks=None, silent_ticks=None, output=CALLS, waits=None)
    host = Host(program(source), Setting(processor=processor, limits=limits))
    seconds = timed(host.advance)
    calls = len(host.console.output) * calls_for_each_byte
    return seconds / calls * 1e6, host.cpu.ticks / seconds / 1e6


def computing(processor: Processor) -> float:
    """Emulated MHz of a program that never calls."""
    source = "again: ld hl, 0\ninner: dec hl\nld a, h\nor l\njp nz, inner\njp again\n"
    host = Host(program(source), Setting(processor=processor, limits=UNLIMITED))
    seconds = timed(lambda: host.advance(3_000))
    return host.cpu.ticks / seconds / 1e6


def score_one(index: int) -> int:
    """Play one small program, and find its processor and memory; returns how many lines it showed."""
    names = list(ALL)
    name = names[index % len(names)]
    source = story(f"Watch {index}") if name == "story" else ALL[name]()
    loaded = program(source)
    played = play(loaded, seed=index, budget=Budget(steps=STEPS))
    assess(loaded, played.runs)
    return played.lines


def main() -> None:
    """Print each figure beside its bar."""
    one = "again: ld e, 65\nld c, 2\ncall bdos\njp again\n"
    line = (
        "again: " + call(9, "line") + "jp again\n" + text("line", "High water 04:12, oil for 12 nights.\r\n")
    )
    direct = "again: ld e, 65\nld c, 6\ncall bdos\njp again\n"
    for processor in Processor:
        bare = bare_trap(processor)
        print(f"{processor}: bare trap {bare:.2f} us; computing {computing(processor):.0f} MHz")
        for name, source, share in (("2", one, 1.0), ("6", direct, 1.0), ("9", line, 1 / 38)):
            cost, speed = console(processor, source, share)
            print(f"  function {name}: {cost - bare:.2f} us over it (bar 2.5), {speed:.0f} MHz (bar 30)")
    start = time.perf_counter()
    with ProcessPoolExecutor(2) as pool:
        lines = sum(pool.map(score_one, range(PROGRAMS), chunksize=5))
    print(
        f"{PROGRAMS} programs, {STEPS} steps: {time.perf_counter() - start:.1f} s (bar 300), {lines} lines seen"
    )


if __name__ == "__main__":
    main()
