"""The places inside a word at which a line may end."""

from __future__ import annotations

import re
from collections.abc import Container, Sequence
from itertools import pairwise
from unicodedata import category

from fit.layout.costs import End, Rules
from fit.width import SOFT_HYPHEN, char_cells

ZERO_WIDTH_SPACE = "\u200b"

MARK_FROM = 4
"""The narrowest line on which a hyphen or mark is put in: on a narrower one it takes the place of the text."""

_SEPARATORS = re.compile(r"[/._-]+(?=[^/._-])")

_NO_LINE_START = frozenset(
    "\u3000\u3001\u3002\uff0c\uff0e\uff1a\uff1b\uff01\uff1f\u30fc\u30fb\u3005\u303b\u309d\u309e\u30fd\u30fe\u2026"
    "\u3041\u3043\u3045\u3047\u3049\u3063\u3083\u3085\u3087\u308e\u3095\u3096"
    "\u30a1\u30a3\u30a5\u30a7\u30a9\u30c3\u30e3\u30e5\u30e7\u30ee\u30f5\u30f6"
)
"""The blank, stops, sound marks and small letters of East Asian scripts (Unicode Standard Annex 14, classes BA, CL, EX, NS, CJ)."""


def inside_word(
    written: str,
    inside: Sequence[tuple[int, End]],
    apart: Sequence[int],
    cells: Sequence[int],
    width: int,
    rules: Rules,
    held: Container[int],
) -> list[tuple[int, int, End]]:
    """The places in any word: the index of the first character of the next line, cost, kind; ascending.

    ``inside`` and ``apart`` are those of the word itself, whatever the width; ``cells`` those before each index. Wide
    characters and soft hyphens bring more, and so does a word that is longer than a line. At the indices
    ``held`` only the cut of last resort is allowed.
    """
    costs = rules.costs
    found: dict[int, tuple[int, End]] = {}
    if width >= MARK_FROM:
        if SOFT_HYPHEN in written:
            inside = [(at, End.HYPHEN) for at, pair in enumerate(pairwise(written), 1) if _is_soft(*pair)]
        found |= {at: (costs.hyphen if kind is End.HYPHEN else costs.joint, kind) for at, kind in inside}
        long = 2 * (cells[-1] - cells[0]) > width  # a shorter name, up to its _, looks like another
        found = {at: (costs.apart, End.JOINED) for at in apart if long or written[at - 1] != "_"} | found
    found |= dict.fromkeys(_between_wide(written, cells), (0, End.JOINED))
    too_long = cells[-1] - cells[0] > width
    if too_long:
        for match in _SEPARATORS.finditer(written):
            found.setdefault(match.end(), (costs.separator, End.JOINED))
    found = {at: found[at] for at in sorted(found) if 0 < at < len(written) and at not in held}
    if too_long:
        found |= _cuts(found, cells, width, rules)
    return [(at, *found[at]) for at in sorted(found)]


def _is_soft(char: str, later: str) -> bool:
    return char == SOFT_HYPHEN and later.isalnum()


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
            and category(right) not in ("Pe", "Pf")
            and category(left) not in ("Ps", "Pi")
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
