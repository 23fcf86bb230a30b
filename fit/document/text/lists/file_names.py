"""Names of files and nothing else, filled like running text: the blanks between them may be wide, but part no columns."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines

NAMES = 5
"""Names of such a list, at least."""
_NAMES = re.compile(r"(?:[\w+-]+(?:\.[\w+-]+)*\.[A-Za-z]\w{0,3}(?: +|,? ?$))+")
_NAME = re.compile(r"\S+")


def find_file_names(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines between blank lines that are such lists, each as a paragraph."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        if taken[index] is None and "." in lines[index].text and lines[index].apart and _named(lines[index]):
            while end < len(lines) and not lines[end].apart and _named(lines[end]) and taken[end] is None:
                end += 1
            part = lines[index:end]
            whole = parted_above(lines, end)
            if whole and _filled(part):
                text = flow_lines(part, hyphens)
                found.append((index, end, [Block(Kind.PARAGRAPH, text, note="names of files")]))
        index = end
    return found


def _named(line: Line) -> bool:
    return _NAMES.fullmatch(line.text) is not None


def _filled(part: Sequence[Line]) -> bool:
    """Whether several lines begin at one column, have several names each but the last, and no columns after the first."""
    starts = [[match.start() for match in _NAME.finditer(line.cells)] for line in part]
    level = len({line.indent for line in part}) == 1 and all(len(line) > 1 for line in starts[:-1])
    ragged = any(
        first != second
        for above, below in pairwise(starts)
        for first, second in zip(above, below, strict=False)
    )
    return len(part) > 1 and sum(map(len, starts)) >= NAMES and level and ragged
