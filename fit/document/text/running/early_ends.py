"""Lines of a paragraph that end before the margin: where the paragraph goes on below them, and where it ends.

In ragged text that blank lines part, a sentence that ends in a short line ends no paragraph; in justified text it does.
A line left short in mid-sentence goes on, too, where words of a program had no room in it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.lists.entries import labelled
from fit.document.text.running.chunks import Chunk
from fit.document.text.running.runs_on import SPREAD
from fit.document.text.running.unit import Unit
from fit.document.text.signs.code import small_words, typed
from fit.document.text.signs.joins import FAR, reads, shortfall
from fit.document.text.signs.measure import WIDEST, Measure, closed, prose, small_word, starts_small

PLAIN = 3
"""Words of small letters in the first line of such a paragraph, at least."""
SHOWN = 3
"""Lines at the margin above a shorter one, at least."""
_NAME = re.compile(r"[A-Z][A-Z\d_-]+\b")
"""A word in capitals: what a program knows by name."""
_SHOUTED = re.compile(r"[A-Z]{2,},? [A-Z]{2,} ")
"""Words in capitals: what is to be heard above all else begins a line of its own."""


def early_end(lines: Sequence[Line], unit: Unit, index: int, chunk: Chunk, measure: Measure) -> bool:
    """Whether a line ends a sentence in the middle of a paragraph, though the next word had room.

    It falls no further short of the margin than lines typed by hand do, or than one of its own paragraph in mid-sentence.
    Whole sentences, one a line, are entries of a list, and so are those that begin with a name in capitals.
    """
    above, below = lines[index - 1], lines[index]
    if not measure.parted or chunk.broken or above.text.endswith(":"):
        return False
    if above.indent != below.indent or not (prose(above.text) and prose(below.text)):
        return False
    if not closed(above.text) or not below.text[:1].isupper():
        return False
    if _SHOUTED.match(below.text):
        return False
    if unit.end - unit.start == 1 and (closed(below.text) or _NAME.match(below.text)):
        return False
    missing = shortfall(above, below, chunk.right)
    return missing <= max(FAR, measure.loose) or missing <= _left_free(lines, unit, index, chunk.right)


def _left_free(lines: Sequence[Line], unit: Unit, index: int, right: int) -> int:
    """The most cells that a line of a paragraph above one leaves free in mid-sentence, behind the next word."""
    return max(
        (
            shortfall(one, other, right)
            for one, other in pairwise(lines[unit.start : index])
            if one.indent == other.indent and not closed(one.text) and starts_small(other.text)
        ),
        default=0,
    )


def named_below(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a sentence goes on with a name, below a line that ends no earlier than one above it in mid-sentence."""
    above, below = lines[index - 1], lines[index]
    if closed(above.text) or unit.end - unit.start == 1 or above.indent != below.indent:
        return False
    if not (below.text[:1].isupper() and prose(above.text) and (prose(below.text) or closed(below.text))):
        return False
    if labelled(below.text) or typed(below.text) or small_word(below.text.partition(" ")[0]):
        return False
    return shortfall(above, below, right) <= _left_free(lines, unit, index, right)


def loosely_wrapped(unit: Unit, above: Line, below: Line, measure: Measure) -> bool:
    """Whether a line stops in mid-sentence, however short, in a text that was wrapped loosely all through."""
    if not measure.loose or labelled(below.text):
        return False
    if not starts_small(below.text) and not (
        measure.parted and unit.end - unit.start > 1 and not closed(above.text)
    ):
        return False
    if closed(above.text) and above.text[-1] != ":":
        return False
    if unit.end - unit.start == 1 and not above.text[0].isalpha():
        return False  # a command over what it does
    if above.text[-1] == ":" and below.text[-1] == ";":
        return False  # a statement that the colon leads to
    if below.indent != (above.indent if unit.end - unit.start > 1 else max(above.indent, unit.text)):
        return False
    return reads(above.text, below.text) and prose(below.text) and not typed(above.text)


def told_below(lines: Sequence[Line], unit: Unit, index: int, right: int) -> bool:
    """Whether a colon in a sentence is followed by its rest: small letters, up to the full stop that ends the paragraph."""
    above, below = lines[index - 1], lines[index]
    if not above.text.endswith(":") or not below.text.endswith(".") or not starts_small(below.text):
        return False
    if index + 1 < len(lines) and not lines[index + 1].apart:
        return False
    if unit.marker is not None:
        return False
    said = lines[unit.start].text[:1].isupper() and prose(above.text) and prose(below.text)
    return said and shortfall(above, below, right) <= FAR and not (typed(below.text) or labelled(below.text))


def left_short(unit: Unit, above: Line, below: Line, right: int) -> bool:
    """Whether a line with words of a program in it stops in mid-sentence, however short, and plain words go on below it."""
    if right > WIDEST:
        return False  # nothing was wrapped: each line stands for itself
    listed = unit.marker is not None and not above.text.endswith(",")
    if listed or unit.key or above.indent != below.indent or closed(above.text):
        return False
    if not starts_small(below.text) or labelled(below.text) or small_words(below.text) < 2:
        return False
    if not (prose(below.text) and reads(above.text, below.text)):
        return False
    if not below.text.split(maxsplit=2)[1].isalpha():
        return False
    plain = sum(word.isalpha() and word.islower() for word in above.text.replace(",", "").split())
    return unit.end - unit.start > 1 or plain >= PLAIN


def last_short(lines: Sequence[Line], unit: Unit, index: int, measure: Measure) -> bool:
    """Whether a sentence ends in a line that was not brought to the margin as those above it were: its paragraph's last."""
    above, below = lines[index - 1], lines[index]
    if not closed(above.text) or index - 1 - unit.start < SHOWN or not below.text[:1].isupper():
        return False
    if not measure.justified(index):
        return False
    margin = measure.right(index)
    part = lines[unit.start : index - 1]
    return (
        shortfall(above, below, margin) >= 0
        and all(line.end == margin for line in part)
        and sum(SPREAD.search(line.text) is not None for line in part) > 1
    )
