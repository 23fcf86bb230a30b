"""Titles in the middle of the page that end in a full stop, as old handbooks set them: several show what they are.

One such line may be a sentence, a verse or a signature; a few words in the middle, now shorter and now longer, are titles.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.habits.titles import SAYS
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines
from fit.document.text.running.placed import Placed
from fit.document.text.titles.headings import loud

LEAST = 3
"""Such titles, at least."""
TALLEST = 3
"""Lines of a title, at most."""
WORDS = 12
"""Words of a title, at most."""
INSET = 6
"""Cells at the left and the right of a title, at least."""
OFF = 2
"""Twice the cells by which the middle of a title may miss that of the text."""
FILLED = 3
"""Lines of a paragraph that shows the margins, at least."""


def with_stopped_titles(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks in order, those made headings that are titles with a full stop in the middle of the page."""
    may = [number for number, one in enumerate(placed) if _may_be(lines, placed, number, one)]
    if len(may) < LEAST:
        return list(placed)
    base, right = _margins(lines, placed)
    found = [
        number
        for number in may
        if all(
            _centred(lines[index], base, right) for index in range(placed[number].start, placed[number].end)
        )
    ]
    if len(found) < LEAST:
        return list(placed)
    result = list(placed)
    for number in found:
        one = placed[number]
        part = lines[one.start : one.end]
        level = 1 if all(loud(line.text) for line in part) else 2
        result[number] = replace(one, block=Block(Kind.HEADING, flow_lines(part, hyphens), level=level))
    return result


def _may_be(lines: Sequence[Line], placed: Sequence[Placed], number: int, one: Placed) -> bool:
    """Whether a block is a few words with a full stop, set in, between blank lines or right below a heading."""
    if (
        one.block.kind not in {Kind.PARAGRAPH, Kind.PREFORMATTED}
        or one.block.code
        or not 0 < one.end - one.start <= TALLEST
        or one.end >= len(lines)
        or not lines[one.end - 1].text.endswith(".")
        or lines[one.end - 1].text.endswith("..")
        or not lines[one.end].apart
    ):
        return False
    part = lines[one.start : one.end]
    titled = number > 0 and placed[number - 1].block.kind is Kind.HEADING and not part[0].apart
    if not (part[0].apart or titled) or any(line.apart for line in part[1:]):
        return False
    text = " ".join(line.text for line in part)
    words = "   " not in text and len(text.split()) <= WORDS and SAYS.search(text) is None
    return words and text[0].isupper() and ". " not in text and all(line.indent >= INSET for line in part)


def _margins(lines: Sequence[Line], placed: Sequence[Placed]) -> tuple[int, int]:
    """Where the lines of most paragraphs begin, and where the longest of nearly all of these end."""
    held = [
        lines[one.start : one.end]
        for one in placed
        if one.block.kind is Kind.PARAGRAPH and one.end - one.start >= FILLED
    ]
    if not held:
        return 0, 0
    base = Counter(min(line.indent for line in part) for part in held).most_common(1)[0][0]
    ends = Counter(
        max(line.end for line in part) for part in held if min(line.indent for line in part) == base
    )
    return base, ends.most_common(1)[0][0]


def _centred(line: Line, base: int, right: int) -> bool:
    middle = abs(line.indent + line.end - base - right) <= OFF
    return middle and line.indent >= base + INSET and line.end <= right - INSET
