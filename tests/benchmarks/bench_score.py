"""How fast a shelf is scored: run by hand, ``python tests/benchmarks/bench_score.py``.

200 small programs of five kinds, each another one, with found keys of 60 steps: at most 5 minutes on two cores, and
at most 5 s for a second look at the same shelf. The reference in the same run is playing alone, on one core.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "machine"))

from machine_assembler import assemble
from machine_samples import ALL

from fit.machine import Budget, load_program, play

PROGRAMS = 200
STEPS = 60
JOBS = 2
MOST_SECONDS = 300.0
MOST_AGAIN = 5.0
FIT = [sys.executable, "-c", "from fit.cli import main; main()", "score"]


def fill(folder: Path) -> list[Path]:
    """Write the programs; they differ in a byte that none of them reads."""
    paths = []
    kinds = list(ALL.values())
    for number in range(PROGRAMS):
        path = folder / f"LIGHT{number}.COM"
        path.write_bytes(assemble(kinds[number % len(kinds)]()) + number.to_bytes(2, "little"))
        paths.append(path)
    return paths


def score(folder: Path, cache: Path) -> float:
    """Seconds that the command takes."""
    start = time.perf_counter()
    options = ["--steps", str(STEPS), "--jobs", str(JOBS), "--cache", str(cache), "--csv"]
    done = subprocess.run([*FIT, str(folder), *options], check=True, capture_output=True, text=True)
    assert done.stdout.count("\n") == PROGRAMS + 1, "one line each, and the names of the columns"
    return time.perf_counter() - start


def main() -> None:
    """Measure all of it and say whether it is enough."""
    with tempfile.TemporaryDirectory() as name:
        shelf, cache = Path(name) / "shelf", Path(name) / "cache"
        shelf.mkdir()
        paths = fill(shelf)
        start = time.perf_counter()
        for path in paths[:20]:
            play(load_program(path), budget=Budget(steps=STEPS))
        alone = (time.perf_counter() - start) / 20
        first, again = score(shelf, cache), score(shelf, cache)
    print(f"playing alone, one core     {alone:8.2f} s a program")
    print(f"{PROGRAMS} programs, {JOBS} processes   {first:8.1f} s, at most {MOST_SECONDS:.0f}")
    print(f"again, from the cache       {again:8.1f} s, at most {MOST_AGAIN:.0f}")
    if first > MOST_SECONDS or again > MOST_AGAIN:
        raise SystemExit("too slow")


if __name__ == "__main__":
    main()
