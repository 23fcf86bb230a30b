"""What is typed and what a machine answers, row by row, with remarks in brackets far to the right: `:lamp      (it is lit)`.

Where a document has such rows all through, one that stands alone is one too, and what is between them are answers.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Block, Kind, Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow, fold, keep_lines
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.measure import prose

MANY = 20
"""Rows with a remark, at least, in a document of such sessions."""
SHARE = 0.1
"""Their share of its lines, at least."""
FAR = 20
"""Cells before a remark, at least."""
_REMARK = re.compile(r"(?<=\S) {3,}(?=\([^)])(?!.*\S {3})")


def find_session_remarks(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines, with no blank line between, that have such rows, and their blocks."""
    rows = [index for index, line in enumerate(lines) if _remark(line)]
    if len(rows) < max(MANY, SHARE * len(lines)):
        return []
    found: list[tuple[int, int, list[Block]]] = []
    floor = 0
    for row in rows:
        if row < floor or taken[row] is not None:
            continue
        start, end = row, row + 1
        while start > floor and not lines[start].apart and taken[start - 1] is None:
            start -= 1
        while end < len(lines) and not lines[end].apart and taken[end] is None:
            end += 1
        floor = end
        if not _told(lines[start:end]):
            found.append((start, end, _blocks(lines[start:end], hyphens)))
    return found


def _remark(line: Line) -> int:
    """The column of the remark beside what a line shows, or 0."""
    match = _REMARK.search(line.cells) if "   (" in line.text else None
    return match.end() if match is not None and match.end() >= FAR else 0


def _told(part: Sequence[Line]) -> bool:
    """Whether running text is among the lines: one that reads as a sentence and had no room for the next word."""
    right = max(line.end for line in part)
    plain = [line for line in part if line.indent < FAR and not _remark(line)]
    return any(
        prose(above.text) and prose(below.text) and shortfall(above, below, right) < 0
        for above, below in pairwise(plain)
    )


def _blocks(part: Sequence[Line], hyphens: Hyphens) -> list[Block]:
    """Rows with a remark as those of a table, what has none between them as lines that are kept."""
    blocks: list[Block] = []
    rows: list[tuple[Text, Text]] = []
    index = 0
    while index < len(part):
        line = part[index]
        end = index + 1
        column = _remark(line)
        if column:
            end = _closed(part, index)
            remark = [line.piece(column, line.end)]
            remark += [rest.piece(rest.indent, rest.end) for rest in part[index + 1 : end]]
            rows.append((fold(line.piece(line.indent, column)), flow(remark, hyphens)))
        else:
            while end < len(part) and not _remark(part[end]):
                end += 1
            blocks += [
                *_table(rows),
                Block(Kind.PREFORMATTED, lines=keep_lines(part[index:end]), note="session"),
            ]
            rows = []
        index = end
    return [*blocks, *_table(rows)]


def _table(rows: Sequence[tuple[Text, Text]]) -> list[Block]:
    return [Block(Kind.TABLE, rows=tuple(rows), note="remarks beside a session")] if rows else []


def _closed(part: Sequence[Line], index: int) -> int:
    """The end of the row that begins at a line: its remark goes on far in, up to its last bracket."""
    depth = part[index].cells.count("(") - part[index].cells.count(")")
    end = index + 1
    while depth > 0 and end < len(part) and part[end].indent >= FAR:
        depth += part[end].cells.count("(") - part[end].cells.count(")")
        end += 1
    return end
