"""Titles set in from the text right below them: a few words over each part of a manual, all at one column."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.make import flow_lines

SEVERAL = 5
"""Such titles, at least."""
SHARE = 0.8
"""The share of lines over text at their left that are a few words: the others begin paragraphs or stanzas."""
DEEPER = 3
"""Cells by which a title stands in, at least."""
FARTHEST = 12
"""And at most."""
LEVEL = 3
_WORDS = re.compile(r"[A-Z][\w'-]*(?: [\w'&-]+){0,3}")


def find_set_in_titles(
    lines: Sequence[Line], taken: Sequence[object], hyphens: Hyphens
) -> list[tuple[int, int, list[Block]]]:
    """Each such title as a heading, with the half-open run of its one line."""
    places: dict[tuple[int, int], list[int]] = defaultdict(list)
    for index in range(len(lines) - 1):
        below = lines[index + 1]
        shift = lines[index].indent - below.indent
        if DEEPER <= shift <= FARTHEST and lines[index].gap and not below.apart and taken[index] is None:
            places[lines[index].indent, below.indent].append(index)

    def title(index: int) -> Block:
        text = flow_lines(lines[index : index + 1], hyphens)
        return Block(Kind.HEADING, text, level=LEVEL, note="title set in")

    return [
        (index, index + 1, [title(index)])
        for found in places.values()
        if len(titles := [index for index in found if _title(lines, index)]) >= SEVERAL
        and len(titles) >= SHARE * len(found)
        for index in titles
    ]


def _title(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a few words, a capital first, and nothing else."""
    text = lines[index].text
    return _WORDS.fullmatch(text) is not None
