"""Keys and what they mean, two pairs to a line or more, too wide for the screen: a pair a line, in the order of the keys.

Such a table has no rows: that the keys go on from the foot of one column to the head of the next tells how it is read.
Keys to press are no values of others either, and come in the order of the lines where they have none of their own.
So is read what stands under the same names again, a part after the other, each with its names.
"""

from __future__ import annotations

import re
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
STEP = 3
"""Numbers by which one key stands behind the one before it, at most."""
_WORD = re.compile(r"[^\W\d_]{2}")
_NUMBERED = re.compile(r"(\D*)(\d+)(\D*)")
_PRESSED = re.compile(
    r"\^\S{1,2}|(?:ESC|Esc|CTRL|Ctrl|ALT|Alt|SHIFT|Shift)(?: ?[-+] ?| )\S+|[CM]-\S{1,3}|<[^<>]+>|[-/\\:](?:\w[\w-]*|\S)"
)
"""A key to press, or what is typed behind a sign: `^E`, `ESC <`, `Ctrl-L`, `-a`, `-#`."""
_SIGN = re.compile(r"[^\w\s]{1,2}|\w")
"""A sign, as maps and operators have them."""


def pair_list(block: Block) -> Block | None:
    """The table with a pair a row, where its keys are in order below no header or the same names; None for other tables."""
    width = len(block.rows[0])
    if block.header_rows:
        return _under_names(block)
    if width < 2 * PAIR or width % PAIR or len(block.rows) < ROWS:
        return None
    places = range(0, width, PAIR)
    pairs = [row[place : place + PAIR] for place in places for row in block.rows]
    if not _listed(pairs):
        pairs = [row[place : place + PAIR] for row in block.rows for place in places]
        if not _pressed(pairs):
            return None
    rows: tuple[tuple[Text, ...], ...] = tuple(pair for pair in pairs if pair[0].chars)
    return replace(block, rows=rows, lines=())


def _under_names(block: Block) -> Block | None:
    """The parts of a table side by side one after the other, the names above each; None where their keys are in no order."""
    names = [cell.chars for cell in block.rows[0]]
    size = next((size for size in range(PAIR, len(names) // 2 + 1) if names[:-size] == names[size:]), 0)
    if block.header_rows > 1 or not size or len(names) % size or len({*names}) < size:
        return None
    parts = [
        [
            row[place : place + size]
            for row in block.rows
            if any(cell.chars for cell in row[place : place + size])
        ]
        for place in range(0, len(names), size)
    ]
    keys = [row[0].chars.lower() for part in parts for row in part[1:]]
    if len(keys) < 2 * ROWS or not all(first < second for first, second in pairwise(keys)):
        return None
    return replace(block, rows=tuple(row for part in parts for row in part), lines=())


def _listed(pairs: Sequence[Sequence[Text]]) -> bool:
    """Whether the keys of all pairs are of one kind and in order, each with its meaning."""
    keys = [key.chars for key, meaning in pairs if key.chars or meaning.chars]
    ordered = _keys(keys) and all(first < second for first, second in pairwise(keys))
    return _whole(pairs) and (ordered or _counted(keys))


def _counted(keys: Sequence[str]) -> bool:
    """Whether keys are alike but for the number in them, which rises by small steps; others may stand behind them all."""
    matches = [_NUMBERED.fullmatch(key) for key in keys]
    while matches and matches[-1] is None:
        matches.pop()
    numbered = [match for match in matches if match]
    if len(numbered) < max(2 * ROWS, len(matches)) or len({(match[1], match[3]) for match in numbered}) > 1:
        return False
    steps = [int(second[2]) - int(first[2]) for first, second in pairwise(numbered)]
    return min(steps) > 0 and max(steps) <= STEP


def _pressed(pairs: Sequence[Sequence[Text]]) -> bool:
    """Whether each pair is a key to press and what it does, or a sign and what it means in words; no key is there twice."""
    keys = [key.chars for key, meaning in pairs if key.chars or meaning.chars]
    pressed = all(_PRESSED.fullmatch(key) and len(key) <= LONGEST for key in keys)
    pressed = pressed or (
        all(map(_SIGN.fullmatch, keys))
        and 2 * sum(key.isalnum() for key in keys) <= len(keys)
        and all(_WORD.search(meaning.chars) for _, meaning in pairs if meaning.chars)
    )
    return pressed and _whole(pairs) and len(set(keys)) == len(keys)


def _whole(pairs: Sequence[Sequence[Text]]) -> bool:
    return all(bool(key.chars) == bool(meaning.chars) for key, meaning in pairs)


def _keys(keys: Sequence[str]) -> bool:
    """Whether all keys are of one kind: one short word each, all in capitals or all in small letters."""
    alike = all(key.isupper() for key in keys) or all(key.islower() for key in keys)
    return alike and all(" " not in key and len(key) <= LONGEST and key[0].isalpha() for key in keys)
