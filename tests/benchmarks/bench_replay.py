"""Replay and measuring, beside a bare `pyte.Screen(80, 25)` on the same bytes in the same run.

    python tests/benchmarks/bench_replay.py [replay] [measure] [MEGABYTES ...]

``replay``: both screens (80x25 and 40x8) with the fates of all glyphs. The bars: at least 10 times as fast as the one
bare screen on 4 MB of 70-column lines, at least 1.5 times on 2 MB of moves to random places of 80x25, each with
an attribute change and ten glyphs. What takes turns on the machine hits both alike: they alternate, chunk by chunk.

``measure``: what ``fit check --json`` takes for plain sessions of 1, 2, 5, 10 and 20 MB (or the sizes given), each in
a process of its own. The bars: at 10 MB at most 6 bytes of memory a byte of session plus 100 MB; time in proportion.
"""

from __future__ import annotations

import random
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pyte

from fit.dialect.ecma48 import Ecma48
from fit.screen.fates import Fates, Repeats
from fit.screen.screen import Screen
from fit.units import Size

WORDS = str.split("the lamp oil keeper tide log rock harbour signal bell of and to in wind gauge stair lens")
CHUNK = 1 << 16
SIZES = (1.0, 2.0, 5.0, 10.0, 20.0)
MEASURED = """
import sys
from fit.cli import main
try:
    main()
finally:
    status = open("/proc/self/status").read()
    print(next(line for line in status.splitlines() if "VmHWM" in line), file=sys.stderr)
"""
"""Runs the command and prints the most memory that it had; ru_maxrss would count what this process has, too."""
LINES_BAR, MOVES_BAR = 10.0, 1.5


def lines(size: int) -> bytes:
    """Lines of 70 columns."""
    rng = random.Random(1)
    rows = []
    for _ in range(size // 72):
        text = ""
        while len(text) < 70:
            text += rng.choice(WORDS) + " "
        rows.append(text[:70].encode() + b"\r\n")
    return b"".join(rows)


def moves(size: int) -> bytes:
    """Moves to random places, an attribute change and ten glyphs each."""
    rng = random.Random(2)
    parts = []
    written = 0
    while written < size:
        place, colour = (rng.randint(1, 25), rng.randint(1, 71)), rng.randint(30, 37)
        part = b"\x1b[%d;%dH\x1b[%dm%s" % (*place, colour, "".join(rng.choices("abcdefghij", k=10)).encode())
        parts.append(part)
        written += len(part)
    return b"".join(parts)


def compare(data: bytes) -> tuple[float, float]:
    """Seconds of processor time for ours (both screens) and for the bare screen, chunk after chunk."""
    repeats = Repeats(len(data))
    big = Screen(Size(25, 80), fates=Fates(len(data), repeats))
    small = Screen(Size(8, 40), fates=Fates(len(data), repeats))
    dialect = Ecma48()
    bare = pyte.Screen(80, 25)
    stream = pyte.ByteStream(bare)
    ours = theirs = 0.0
    for start in range(0, len(data), CHUNK):
        chunk = data[start : start + CHUNK]
        before = time.process_time()
        operations = dialect.feed(chunk, start)
        big.apply(operations)
        small.apply(operations)
        between = time.process_time()
        stream.feed(chunk)
        theirs += time.process_time() - between
        ours += between - before
    if big.display != bare.display:
        raise SystemExit("the big screen and the bare screen differ")
    return ours, theirs


def replay() -> None:
    """The bars of replaying."""
    for name, data, bar in (
        ("4 MB of lines", lines(4_000_000), LINES_BAR),
        ("2 MB of moves", moves(2_000_000), MOVES_BAR),
    ):
        ours, theirs = compare(data)
        said = "met" if theirs / ours >= bar else "MISSED"
        print(
            f"{name}: ours {ours:.2f} s for both screens, bare {theirs:.2f} s: {theirs / ours:.1f} times, bar {bar:g}: {said}"
        )


def measure(sizes: tuple[float, ...]) -> None:
    """The bars of measuring."""
    with tempfile.TemporaryDirectory() as folder:
        for size in sizes:
            path = Path(folder) / f"{size:g}.txt"
            path.write_bytes(lines(int(size * 1_000_000)))
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            command = [sys.executable, "-c", MEASURED, "check", "--json", str(path)]
            done = subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            seconds = after.ru_utime - before.ru_utime
            peak = int(done.stderr.split()[-2]) * 1024
            bar = 6 * path.stat().st_size + 100_000_000
            said = "met" if peak <= bar else "MISSED"
            print(
                f"{size:g} MB: {seconds:.1f} s, {seconds / size:.2f} s/MB; "
                f"memory {peak / 1e6:.0f} MB, bar {bar / 1e6:.0f} MB: {said}",
                flush=True,
            )


if __name__ == "__main__":
    chosen = sys.argv[1:] or ["replay", "measure"]
    numbers = tuple(float(word) for word in chosen if word[0].isdigit())
    if "replay" in chosen:
        replay()
    if "measure" in chosen:
        measure(numbers or SIZES)
