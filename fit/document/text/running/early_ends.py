"""Sentences that end early in a ragged paragraph: where blank lines part paragraphs, a short line begins no new one."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import code
from fit.document.text.signs.joins import FAR, shortfall
from fit.document.text.signs.measure import Measure, closed, prose, starts_small

_NAME = re.compile(r"[A-Z][\w-]*[A-Z_\d]")
"""A word in capitals, or one with a sign or a number in it: what a program knows by name."""


def early_end(lines: Sequence[Line], unit: Unit, index: int, chunk: Chunk, measure: Measure) -> bool:
    """Whether a line ends a sentence in the middle of a paragraph, though the next word had room.

    It falls no further short of the margin than lines typed by hand do, or than one of its own paragraph in mid-sentence.
    Whole sentences, one a line, are entries of a list, and so are those that begin with a name in capitals.
    """
    above, below = lines[index - 1], lines[index]
    if not measure.parted or chunk.broken or chunk.lined or above.text.endswith(":"):
        return False
    if above.indent != below.indent or not (prose(above.text) and prose(below.text)):
        return False
    if not closed(above.text) or not below.text[:1].isupper() or code(below.text):
        return False
    if unit.end - unit.start == 1 and (closed(below.text) or _NAME.match(below.text)):
        return False
    missing = shortfall(above, below, chunk.right)
    return missing <= FAR or missing <= max(
        (
            shortfall(one, other, chunk.right)
            for one, other in pairwise(lines[unit.start : index])
            if one.indent == other.indent and not closed(one.text) and starts_small(other.text)
        ),
        default=0,
    )
