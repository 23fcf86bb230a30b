"""Options with two spellings one above the other and one text beside both: `-lamp <l>` over `-l <l>`, the sentence running on.

The text is that of both, so the first spelling stands on its own line and the second one has all of the text.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line, parted_above
from fit.document.text.make import fold
from fit.document.text.signs.measure import closed, hangs, starts_small

LEAST = 2
"""Pairs whose second spelling is short for the first, beside which no sentence can end, at least."""
_KEY = re.compile(r"(--?\w[\w-]*)([ =]?<[^<>]+>|[ =][A-Z]+)?( +)(?=\S)")
"""An option, what is to be put in, and blanks before its text."""
_LABEL = re.compile(r"[a-z]+: ")
"""A word that begins the last line of several texts: what stands behind it is told by itself."""
Pair = tuple[int, int, int, bool]
"""The first line, the columns of the text in both, and whether the second spelling is short for the first."""


def find_paired_options(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such options with their texts, each with its blocks."""
    pairs = [
        pair
        for index in range(len(lines) - 1)
        if lines[index].text[:1] == "-" == lines[index + 1].text[:1] and (pair := _pair(lines, taken, index))
    ]
    sure = [pair for pair in pairs if pair[3] and hangs(lines[pair[0]].text)]
    if len(sure) < LEAST:
        return []
    runs = [
        (pair, _end(lines, taken, pair[0] + 2, pair[2])) for pair in pairs if pair[3] or _runs_on(lines, pair)
    ]
    last = Counter(match[0] for _, end in runs if (match := _LABEL.match(lines[end - 1].text)))
    labels = {label for label, times in last.items() if times >= LEAST}
    return [(pair[0], end, _blocks(lines, pair, end, labels, read)) for pair, end in runs]


def _pair(lines: Sequence[Line], taken: Sequence[object], index: int) -> Pair | None:
    """The option whose first spelling is at a line, if there is one."""
    line, below = lines[index], lines[index + 1]
    if below.apart or below.indent != line.indent or taken[index] is not None or taken[index + 1] is not None:
        return None
    first, second = _KEY.match(line.text), _KEY.match(below.text)
    if first is None or second is None or len(second[3]) < 2 or (first[2] or "") != (second[2] or ""):
        return None
    beside, column = line.indent + first.end(), below.indent + second.end()
    if beside != column and (beside < column or line.indent + len(first[0].rstrip(" ")) < column - 1):
        return None
    if not parted_above(lines, index + 2) and lines[index + 2].indent != column:
        return None
    return index, beside, column, _short(second[1].lstrip("-"), first[1].lstrip("-"))


def _short(name: str, whole: str) -> bool:
    """Whether a name has some of the letters of another one, the first one first."""
    letters = iter(whole)
    return len(name) < len(whole) and name[0] == whole[0] and all(letter in letters for letter in name)


def _runs_on(lines: Sequence[Line], pair: Pair) -> bool:
    """Whether a sentence goes on from beside the first spelling to beside the second one."""
    index, beside, column, _ = pair
    above, below = lines[index].cells[beside:], lines[index + 1].cells[column:]
    return not closed(above) and (starts_small(below) or hangs(above))


def _end(lines: Sequence[Line], taken: Sequence[object], start: int, column: int) -> int:
    """Behind the text of an option: the lines at its column or deeper, a blank line between them at most."""
    end = start
    while end < len(lines) and taken[end] is None and lines[end].indent >= column and lines[end].gap < 2:
        end += 1
    return end


def _blocks(
    lines: Sequence[Line],
    pair: Pair,
    end: int,
    labels: set[str],
    read: Callable[[Sequence[Line]], list[Block]],
) -> list[Block]:
    index, beside, column, _ = pair
    first, second = lines[index], lines[index + 1]
    keys = [fold(first.piece(first.indent, beside)), fold(second.piece(second.indent, column))]
    text = [replace(first.cut(beside, first.end), gap=0)]
    for place in range(index + 1, end):
        cut = lines[place].cut(column, lines[place].end)
        match = _LABEL.match(cut.text)
        text.append(replace(cut, gap=1) if match and match[0] in labels and not cut.gap else cut)
    head, *rest = read(text)
    if head.kind is not Kind.PARAGRAPH:
        head, rest = Block(Kind.PARAGRAPH), [head, *rest]
    items = [Block(Kind.ITEM, label=keys[0]), Block(Kind.ITEM, head.text, label=keys[1])]
    return [*items, *(replace(block, level=block.level + 1) for block in rest)]
