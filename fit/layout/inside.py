"""The places inside a word at which a line may end."""

from __future__ import annotations

import re
from collections.abc import Container, Sequence
from itertools import pairwise

from fit.layout.costs import End, Rules
from fit.layout.words import Word
from fit.width import SOFT_HYPHEN, char_cells

ZERO_WIDTH_SPACE = "\u200b"

MARK_FROM = 4
"""The narrowest line on which a hyphen or mark is put in: on a narrower one it takes the place of the text."""

_SEPARATORS = re.compile(r"[/._-]+(?=[^/._-])")

_NO_LINE_START = frozenset(
    "\u3001\u3002\uff0c\uff0e\uff1a\uff1b\uff01\uff1f\u300d\u300f\uff09\u3015\uff3d\u3011\u3009\u300b\u30fc\u30fb\u2026"
)
_NO_LINE_END = frozenset("\u300c\u300e\uff08\u3014\uff3b\u3010\u3008\u300a")
"""Closing and opening punctuation and sound marks of East Asian scripts (Unicode Standard Annex 14, classes CL, NS, OP)."""


_Inside = tuple[int, int, End]
"""Index of the first character of the next line, cost, kind."""


def inside_word(word: Word, rules: Rules) -> list[_Inside]:
    """The joints and hyphenation points of a word that fits on a line."""
    found = [(at, rules.costs.joint, End.JOINED) for at in word.joints]
    if word.hyphens:
        found += [(at, rules.costs.hyphen, End.HYPHEN) for at in word.hyphens]
        found.sort()
    return found


def inside_odd_word(
    written: str, word: Word, cells: Sequence[int], width: int, rules: Rules, held: Container[int]
) -> list[_Inside]:
    """The same for a word that may have wide characters or soft hyphens, or be longer than a line.

    ``cells`` are those before each index; at the indices ``held`` only the cut of last resort is allowed.
    """
    costs = rules.costs
    found: dict[int, tuple[int, End]] = {}
    if width >= MARK_FROM:
        found |= {at: (cost, kind) for at, cost, kind in inside_word(word, rules)}
        if SOFT_HYPHEN in written:
            soft = [at for at, char in enumerate(written, 1) if char == SOFT_HYPHEN]
            found = dict.fromkeys(soft, (costs.hyphen, End.HYPHEN))
    found |= dict.fromkeys(_between_wide(written, cells), (0, End.JOINED))
    too_long = cells[-1] - cells[0] > width
    if too_long:
        for match in _SEPARATORS.finditer(written):
            found.setdefault(match.end(), (costs.separator, End.JOINED))
    found = {at: found[at] for at in sorted(found) if 0 < at < len(written) and at not in held}
    if too_long:
        found |= _cuts(found, cells, width, rules)
    return [(at, *found[at]) for at in sorted(found)]


def _between_wide(written: str, cells: Sequence[int]) -> list[int]:
    """Indices between two wide characters, or after a zero width space, at which a line may end."""
    if written.isascii():
        return []
    return [
        index
        for index, (left, right) in enumerate(pairwise(written), start=1)
        if left == ZERO_WIDTH_SPACE
        or (
            char_cells(left) == char_cells(right) == 2
            and right not in _NO_LINE_START
            and left not in _NO_LINE_END
            and _begins_cluster(cells, index)
        )
    ]


def _begins_cluster(cells: Sequence[int], at: int) -> bool:
    return cells[at + 1] > cells[at]


def _cuts(
    found: dict[int, tuple[int, End]], cells: Sequence[int], width: int, rules: Rules
) -> dict[int, tuple[int, End]]:
    """Places at every cluster of the pieces that are still longer than a line."""
    kind = End.MARKED if width >= MARK_FROM else End.JOINED
    cuts: dict[int, tuple[int, End]] = {}
    for start, end in pairwise([0, *found, len(cells) - 1]):
        if cells[end] - cells[start] > width - 1:  # 1: a hyphen or a mark
            cuts |= {
                at: (rules.costs.cut, kind) for at in range(start + 1, end) if _begins_cluster(cells, at)
            }
    return cuts
