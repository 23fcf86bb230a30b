"""Names of files or of a program, and nothing else, filled like running text: the blanks between them may be wide, but part no columns."""

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
_OWN_NAMES = re.compile(r"[a-z]\w*(?: {1,2}[a-z]\w*)+")
LINES = 3
"""Lines of names of a program, at least."""
ROOM = 2
"""Cells by which such a line may have had room for the next name: margins are estimates."""
_NAME = re.compile(r"\S+")


def find_file_names(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines between blank lines that are such lists, each as a paragraph."""
    found: list[tuple[int, int, list[Block]]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        line = lines[index]
        form = _form(line) if taken[index] is None and line.apart else None
        if form is not None:
            while (
                end < len(lines)
                and not lines[end].apart
                and form.fullmatch(lines[end].text)
                and taken[end] is None
            ):
                end += 1
            part = lines[index:end]
            whole = parted_above(lines, end)
            if whole and _filled(part) and (form is _NAMES or _to_margin(part)):
                text = flow_lines(part, hyphens)
                found.append((index, end, [Block(Kind.PARAGRAPH, text, note="names and nothing else")]))
        index = end
    return found


def _form(line: Line) -> re.Pattern[str] | None:
    """The form of the names of a line: of files, or of a program."""
    if "." in line.text and _NAMES.fullmatch(line.text):
        return _NAMES
    return _OWN_NAMES if "_" in line.text and "  " in line.text and _OWN_NAMES.fullmatch(line.text) else None


def _to_margin(part: Sequence[Line]) -> bool:
    """Whether half of the names are none of a language, and no line had room for the first name of the next."""
    names = [name for line in part for name in line.text.split()]
    right = max(line.end for line in part)
    full = all(
        above.end + len(below.text.split(maxsplit=1)[0]) + 1 > right - ROOM for above, below in pairwise(part)
    )
    return full and len(part) >= LINES and 2 * sum("_" in name for name in names) >= len(names)


def _filled(part: Sequence[Line]) -> bool:
    """Whether several lines begin at one column, have several names each but the last, and no columns after the first."""
    starts = [[match.start() for match in _NAME.finditer(line.cells)] for line in part]
    level = all(len(line) > 1 for line in starts[:-1])
    ragged = any(
        first != second
        for above, below in pairwise(starts)
        for first, second in zip(above, below, strict=False)
    )
    return len(part) > 1 and sum(map(len, starts)) >= NAMES and level and ragged
