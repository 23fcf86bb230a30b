"""What stands set in below `Example:`, again and again: it is shown, whatever words it has."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line, part_end
from fit.document.text.make import keep_lines
from fit.document.text.running.placed import Placed
from fit.document.text.signs.measure import prose, sentence, starts_small

SEVERAL = 3
"""Examples that show the habit, at least."""
TALLEST = 12
"""Lines of one, at most."""
_LABEL = re.compile(r"(?:[Ff]or )?[Ee]xamples?:?|EXAMPLES?:?")


def with_examples(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with program text made of what stands between blank lines, set in below that word.

    Three of them at least are no text; none ends a sentence that it begins.
    """
    runs = [run for index in range(len(placed) - 1) if (run := _run(lines, placed, index))]
    plain = [run for run in runs if not any(prose(line.text) for line in _lines(lines, placed, run))]
    if len(plain) < SEVERAL:
        return list(placed)
    found = list(placed)
    for first, last in reversed(runs):
        part = _lines(lines, placed, (first, last))
        wrapped = len(part) > 1 and prose(part[0].text) and starts_small(part[1].text)
        if wrapped or any(sentence(line.text) for line in part):
            continue
        start, end = placed[first].start, placed[last - 1].end
        block = Block(Kind.PREFORMATTED, lines=keep_lines(part), level=placed[first].block.level, code=True)
        found[first:last] = [Placed(block, start, end)]
        label = placed[first - 1].block
        if label.kind is Kind.HEADING:
            found[first - 1] = replace(
                placed[first - 1], block=replace(label, kind=Kind.PARAGRAPH, level=block.level)
            )
    return found


def _lines(lines: Sequence[Line], placed: Sequence[Placed], run: tuple[int, int]) -> Sequence[Line]:
    return lines[placed[run[0]].start : placed[run[1] - 1].end]


def _run(lines: Sequence[Line], placed: Sequence[Placed], index: int) -> tuple[int, int] | None:
    """The blocks, from one number to before another, that stand between blank lines below the word alone on its line."""
    label, first = placed[index], placed[index + 1].start
    line = lines[label.start]
    if label.end - label.start > 1 or not _LABEL.fullmatch(line.text):
        return None
    end = part_end(lines, first)
    part = lines[first:end]
    if part[0].gap != 1 or end - first > TALLEST or min(one.indent for one in part) <= line.indent:
        return None
    last = index + 1
    while last < len(placed) and placed[last].end <= end:
        last += 1
    return (index + 1, last) if last > index + 1 else None
