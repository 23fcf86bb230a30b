"""Questions behind the same signs again and again, `*** Who lights the lamp?`: the titles of what answers them."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.running.placed import Placed

LEAST = 5
"""Questions behind the same signs, at least."""
SHARE = 2
"""One of so many paragraphs behind them, at least, is a question; what is not stands as they do."""
TALLEST = 3
"""Lines of such a title, at most."""
_SIGNS = re.compile(r"([*=#~+])\1{2,} +(?=[^\W_]|[\"'(])")


def with_asked_titles(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, with headings made of the paragraphs behind such signs, each between blank lines."""
    forms: dict[tuple[str, int], list[int]] = defaultdict(list)
    for number, one in enumerate(placed):
        if (
            one.block.kind is Kind.PARAGRAPH
            and one.end - one.start <= TALLEST
            and (signs := _SIGNS.match(lines[one.start].text)) is not None
            and _alone(lines, one)
        ):
            forms[signs[0].rstrip(), lines[one.start].indent].append(number)
    titles: set[int] = set()
    for found in forms.values():
        asked = sum(placed[number].block.text.chars.endswith("?") for number in found)
        if asked >= LEAST and asked * SHARE >= len(found):
            titles.update(found)
    if not titles:
        return list(placed)
    level = 2 if any(one.block.kind is Kind.HEADING and one.block.level == 1 for one in placed) else 1
    return [
        replace(one, block=Block(Kind.HEADING, one.block.text, level=level)) if number in titles else one
        for number, one in enumerate(placed)
    ]


def _alone(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block stands between blank lines, with something below it."""
    above = one.start == 0 or lines[one.start].apart
    return above and one.end < len(lines) and lines[one.end].gap > 0
