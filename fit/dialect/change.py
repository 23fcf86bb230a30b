"""Where a session changes from one terminal's language to another's, half way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Final

from fit.dialect.evidence import LAYOUT
from fit.dialect.operation import Operation

_BLOCKS: Final = 256
_LEAST_GAIN: Final = 60
"""What two terminals must explain beyond one: some ten sequences."""
_LEAST_SHARE: Final = 0.9
"""The part of its own control bytes that each of the two must explain."""


@dataclass(frozen=True, slots=True)
class Change:
    """Up to byte ``at`` the one, from there on the other."""

    at: int
    before: int
    after: int
    """Places in the list of readings."""


def find_change(readings: Sequence[list[Operation]], output: bytes) -> Change | None:
    """The place at which the session changes its terminal; None where one reading explains it as well as two.

    ``readings`` are the operations of the same output under several dialects.
    """
    size = max(16, -(-len(output) // _BLOCKS))
    tables = [_by_block(reading, output, size) for reading in readings]
    if not tables:
        return None
    weights = [[good - 3 * bad for good, bad in table] for table in tables]
    starts = [list(accumulate(weight, initial=0)) for weight in weights]
    best = max(start[-1] for start in starts)
    gain, block, before, after = max(
        (
            (starts[one][block] + starts[two][-1] - starts[two][block], block, one, two)
            for block in range(len(weights[0]) + 1)
            for one, two in [_best_pair(starts, block)]
        ),
        key=lambda found: found[0],
    )
    parts = (tables[before][:block], tables[after][block:])
    if before == after or gain - best < _LEAST_GAIN or min(map(_share, parts)) < _LEAST_SHARE:
        return None
    return Change(_first_unknown(readings[before], max(0, (block - 2) * size)) or block * size, before, after)


def _best_pair(starts: list[list[int]], block: int) -> tuple[int, int]:
    one = max(range(len(starts)), key=lambda index: starts[index][block])
    two = max(range(len(starts)), key=lambda index: starts[index][-1] - starts[index][block])
    return one, two


def _share(part: list[tuple[int, int]]) -> float:
    good, bad = sum(good for good, _ in part), sum(bad for _, bad in part)
    return good / (good + bad) if good else 0.0


def _by_block(operations: Iterable[Operation], output: bytes, size: int) -> list[tuple[int, int]]:
    """For each block of the output: bytes of sequences explained, and not."""
    blocks = [output[at : at + size] for at in range(0, len(output), size)]
    good = [len(block.translate(None, bytes(LAYOUT))) for block in blocks]
    bad = [0] * len(blocks)
    for first, end, event, arguments, _ in operations:
        block = first // size
        if (event == "draw" and output[first] >= 0x20) or event == "status_text":
            for place in range(block, (end - 1) // size + 1):
                good[place] -= min(end, (place + 1) * size) - max(first, place * size)
        elif event == "debug":
            good[block] -= len(arguments[0])
            bad[block] += len(arguments[0])
    return list(zip(good, bad, strict=True))


def _first_unknown(operations: Iterable[Operation], least: int) -> int | None:
    return next((first for first, _, event, _, _ in operations if event == "debug" and first >= least), None)
