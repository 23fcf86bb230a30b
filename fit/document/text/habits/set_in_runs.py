"""Runs of lines that are set in from the text above them, and what leads to them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from fit.document.blocks import Kind
from fit.document.text.line import Line
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import closed, prose

DEEPER = 2
"""Cells by which what is shown stands in, at least."""
LEADING = 3
"""Words of a line that leads to another without a sign, at most: `or`, `then type`."""


@dataclass(slots=True)
class Run:
    """Blocks from number ``first`` on that no blank line parts, set in from the text above by ``shift`` cells."""

    first: int
    blocks: Sequence[Placed]
    lines: Sequence[Line]
    shift: int
    above: str
    """The last line of the text above where it leads to them, or nothing."""

    @property
    def code(self) -> bool:
        """Whether all of it was read as program text."""
        return all(one.block.code for one in self.blocks)

    @property
    def kept(self) -> bool:
        """Whether all its lines stay lines."""
        return all(one.block.kind is Kind.PREFORMATTED for one in self.blocks)


def walk(lines: Sequence[Line], placed: Sequence[Placed], shown: Callable[[Run], bool]) -> None:
    """Ask of each run that is set in from a paragraph or an item above it whether it is ``shown``.

    Then that text leads to the next run too. What stands between blank lines at the left of the text is a run as well.
    """
    left, under = -1, 0  # of the text above: its column, and its number
    first = margin = -1  # where the last text with a first line set in had that line, and the others
    index = 0
    while index < len(placed):
        one = placed[index]
        line = lines[one.start]
        last = index + 1
        alone = last == len(placed) or placed[last].start > one.start
        if left >= 0 and alone and line.indent >= left + DEEPER and not line.crossing:
            while last < len(placed) and _goes_on(lines, placed[last - 1], placed[last], left):
                last += 1
            part = lines[one.start : placed[last - 1].end]
            shift = min(each.indent for each in part) - left
            if shown(Run(index, placed[index:last], part, shift, _leading(lines, placed[under]))):
                index = last
                continue
        elif left >= 0 and alone and line.gap and line.indent <= left and _between(lines, one):
            run = Run(
                index, [one], lines[one.start : one.end], line.indent - left, _leading(lines, placed[under])
            )
            if run.above and shown(run):
                left, index = -1, last
                continue
        left, under = _left(lines, placed[last - 1]), last - 1
        start, end = placed[under].start, placed[under].end
        if left >= 0 and end - start > 1:
            first, margin = lines[start].indent, left
        elif left == first > margin >= 0 and placed[under].block.kind is Kind.PARAGRAPH:
            left = margin
        index = last


def _between(lines: Sequence[Line], one: Placed) -> bool:
    """Whether program text, or one line that is no term over its text, stands between blank lines at the left of the text."""
    single = one.end - one.start == 1 and one.block.kind in (Kind.PARAGRAPH, Kind.HEADING)
    if not (single or one.block.code):
        return False
    if one.end == len(lines):
        return True
    after, line = lines[one.end], lines[one.start]
    return after.gap > 0 and (one.block.code or after.indent < line.indent + DEEPER)


def _goes_on(lines: Sequence[Line], one: Placed, after: Placed, left: int) -> bool:
    line = lines[after.start]
    return after.start > one.start and not line.apart and line.indent >= left + DEEPER


def _left(lines: Sequence[Line], one: Placed) -> int:
    """The column at which the text of a block stands; -1 where it is no running text."""
    if one.block.kind not in (Kind.ITEM, Kind.PARAGRAPH):
        return -1
    hung = one.block.kind is Kind.ITEM and one.end - one.start > 1
    return min(line.indent for line in lines[one.start + hung : one.end])


def _leading(lines: Sequence[Line], one: Placed) -> str:
    """The last line of a text that leads to what stands below it by its colon, or because it has no end; or nothing."""
    text = lines[one.end - 1].text
    if text.endswith(":"):
        return text
    words = text.split()
    few = len(words) <= LEADING and all(word.isalpha() and word.islower() for word in words)
    return text if not closed(text) and (prose(text) or one.end - one.start > 1 or few) else ""
