"""Keys and what they mean, two pairs to a line or more, too wide for the screen: a pair a line, in the order of the keys.

Such a table has no rows: that the keys go on from the foot of one column to the head of the next tells how it is read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Text

PAIR = 2
"""Columns of a pair."""
ROWS = 3
"""Rows, at least: fewer keys are in order by chance."""
LONGEST = 8
"""Characters of a key, at most."""


def pair_list(block: Block) -> Block | None:
    """The table with a pair a row, where it has no header and its keys are in order; None for other tables."""
    width = len(block.rows[0])
    if block.header_rows or width < 2 * PAIR or width % PAIR or len(block.rows) < ROWS:
        return None
    pairs = [row[place : place + PAIR] for place in range(0, width, PAIR) for row in block.rows]
    held = [pair for pair in pairs if pair[0].chars or pair[1].chars]
    keys = [pair[0].chars for pair in held]
    if not all(pair[1].chars for pair in held) or not _keys(keys):
        return None
    if not all(first < second for first, second in pairwise(keys)):
        return None
    rows: tuple[tuple[Text, ...], ...] = tuple(held)
    return replace(block, rows=rows, lines=())


def _keys(keys: Sequence[str]) -> bool:
    """Whether all keys are of one kind: one short word each, all in capitals or all in small letters."""
    alike = all(key.isupper() for key in keys) or all(key.islower() for key in keys)
    return alike and all(" " not in key and len(key) <= LONGEST and key[0].isalpha() for key in keys)
