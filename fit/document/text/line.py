"""One line of a plain-text document: its cells, and where each of them stands in the document.

Rules about columns work on ``cells``: one character a screen cell, so that wide and combining characters do
not shift what stands below. The real characters come back with ``Line.piece``.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from enum import Enum

from fit.document.blocks import Text

FILLER = "\ufffe"
"""The right half of a wide character in ``cells``."""
REMEMBERED = 1 << 18
"""Lines whose answers to a question are remembered: all those of 15 MB. Fewer than a document has are of no help,
since it is gone through from its start again and again."""


class Ending(Enum):
    """What the document itself says about a line's end."""

    UNKNOWN = 0
    SOFT = 1
    """The word processor broke the line: it goes on in the next one."""
    HARD = 2
    """The writer ended the line."""


@dataclass(slots=True)
class Resolved:
    """Characters of a line that holds more than plain characters, each with its place, mark and first cell."""

    chars: str
    sources: array[int]
    marks: bytes
    starts: Sequence[int]
    """For each cell the index of its character, and one more for the end."""


@dataclass(slots=True)
class Line:
    """A line without its end and without blanks at its right."""

    cells: str
    offset: int
    """Where the line starts in the document; cell i stands at ``offset + i`` where ``resolved`` is None."""
    resolved: Resolved | None = None
    indent: int = 0
    gap: int = 0
    """Blank lines before it."""
    page: bool = False
    """A page starts with it."""
    crossing: bool = False
    """Furniture or a page break was taken out before it, so that ``gap`` says nothing."""
    ending: Ending = Ending.UNKNOWN
    aside: bool = False
    """The document itself says that it is no text: a command to the printer, a running head."""

    text: str = field(init=False)
    """The line without its indentation."""

    def __post_init__(self) -> None:
        self.text = self.cells.lstrip(" ")
        self.indent = len(self.cells) - len(self.text)

    @property
    def end(self) -> int:
        """The column after the last character."""
        return len(self.cells)

    @property
    def apart(self) -> bool:
        """Whether a blank line, or a page end, stands before it."""
        return self.gap > 0 or self.crossing

    def piece(self, start: int, end: int) -> Text:
        """The characters of the cells ``start <= cell < end``."""
        end = min(end, len(self.cells))
        if end <= start:
            return Text()
        held = self.resolved
        if held is None:
            places = array("q", range(self.offset + start, self.offset + end))
            return Text(self.cells[start:end], places, bytes(end - start))
        first, last = held.starts[start], held.starts[end]
        return Text(held.chars[first:last], held.sources[first:last], held.marks[first:last])

    def cut(self, start: int, end: int) -> Line:
        """The part of a line as a line of its own, its column 0 at ``start``."""
        cells = self.cells[start:end].rstrip(" ")
        held = self.resolved
        if held is None:
            return Line(cells, self.offset + start, gap=self.gap)
        piece = self.piece(start, start + len(cells))
        first = held.starts[min(start, len(held.starts) - 1)]
        starts = [index - first for index in held.starts[start : start + len(cells) + 1]] or [0]
        return Line(
            cells, self.offset, Resolved(piece.chars, piece.sources, piece.marks, starts), gap=self.gap
        )

    def marked(self) -> int:
        """The marks that all visible characters of the line share."""
        held = self.resolved
        if held is None:
            return 0
        shared = 255
        for char, mark in zip(held.chars, held.marks, strict=True):
            if not char.isspace():
                shared &= mark
        return shared if shared != 255 else 0


def parted_above(lines: Sequence[Line], index: int) -> bool:
    """Whether a blank line, a page end, or an end of the lines stands before the place of a line; that may be the last."""
    return not 0 < index < len(lines) or lines[index].apart


def part_end(lines: Sequence[Line], start: int) -> int:
    """The end of the lines from ``start`` on that no blank line and no page end parts."""
    end = start + 1
    while end < len(lines) and not lines[end].apart:
        end += 1
    return end


def without_blanks(lines: Iterable[Line]) -> list[Line]:
    """The lines that are not blank, each with the count of the blank ones before it; the first one begins anew."""
    found: list[Line] = []
    gap = 0
    for line in lines:
        if not line.text:
            gap += 1
            continue
        line.gap = gap if found else 0
        found.append(line)
        gap = 0
    return found
