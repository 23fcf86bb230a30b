"""Decoding old terminals beside ECMA-48 on the same screenfuls in one run: ``python tests/benchmarks/bench_dialect.py``.

The bar: at least half as fast as ECMA-48, and an entry ready in under 0.1 s of processor time. Exit code 1 below it.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable
from typing import Final

from fit.dialect.capability_dialect import CapabilityDialect
from fit.dialect.description import Description
from fit.dialect.description_file import packed_names, read_packed
from fit.dialect.ecma48 import Ecma48
from fit.dialect.operation import Dialect
from fit.dialect.terminfo_database import read_entry

SCREENS: Final = 60
CELLS: Final = 400
"""Places written on each screen: a cursor address, an attribute on, ten glyphs, the attribute off."""
ROUNDS: Final = 5
NAMES: Final = [name for name in packed_names() if name not in ("vt100", "vt220", "dumb")]
SLOWEST: Final = (  # noqa: SIM905  words
    "wy99gt-tek wy160-tek viewdata-o linux-s att4415-w d430-unix-sr att4425-w ncr160vt200wpp d410-7b ofcons "
    "adm3a hz1500 regent100 d412-unix dm1520 hp2621 tvi950 wy50 guru"
).split()
"""The ten entries of the database that take longest to get ready, and some of those in wide use."""


def screenfuls(description: Description, seed: int) -> bytes:
    """The same screens in the language of one terminal; attributes only where it has them."""
    chance = random.Random(seed)
    cup = description.expressions["cup"]
    on, off = description.fixed.get("smso", b""), description.fixed.get("rmso", b"")
    clear = description.fixed["clear"]
    parts = []
    for _ in range(SCREENS):
        parts.append(clear)
        for _ in range(CELLS):
            parts += [cup.expand(chance.randrange(24), chance.randrange(70)), on, b"lamp tide ", off]
        parts.append(b"\r\n".join([b"the keeper trims the wick and writes the hour into the log book"] * 20))
    return b"".join(parts)


def seconds(make: Callable[[], Dialect], data: bytes) -> float:
    """The best time of several rounds, each with a fresh decoder."""
    best = float("inf")
    for _ in range(ROUNDS):
        dialect = make()
        start = time.process_time()
        for at in range(0, len(data), 1 << 16):
            dialect.feed(data[at : at + (1 << 16)], at)
        dialect.finish()
        best = min(best, time.process_time() - start)
    return best


def decoding() -> bool:
    """Print the speed of each terminal relative to ECMA-48; whether all reach the bar."""
    vt100 = screenfuls(read_packed("vt100"), 1)
    reference = seconds(Ecma48, vt100)
    print(f"{SCREENS} screenfuls; ECMA-48 takes {reference:.3f} s for {len(vt100):,} bytes")
    slowest = float("inf")
    for name in NAMES:
        description = read_packed(name)
        data = screenfuls(description, 1)
        needed = seconds(lambda description=description: CapabilityDialect(description, "latin-1"), data)  # type: ignore[misc]
        slowest = min(slowest, reference / needed)
        print(
            f"  {name:<12} {needed:.3f} s for {len(data):>9,} bytes: {reference / needed:.2f} times as fast"
        )
    return slowest >= 0.5


def starting() -> bool:
    """Print what the first decoder of a terminal costs; whether all stay below the bar."""
    slowest = 0.0
    for name in SLOWEST:
        description = read_entry(name)
        if description is None:
            continue
        start = time.process_time()
        CapabilityDialect(description)
        needed = time.process_time() - start
        slowest = max(slowest, needed)
        print(f"  {name:<12} ready after {needed * 1000:.1f} ms")
    return slowest < 0.1


if __name__ == "__main__":
    is_fast, is_ready = decoding(), starting()
    sys.exit(0 if is_fast and is_ready else 1)
