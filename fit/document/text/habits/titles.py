"""Titles alone between blank lines: where others at that place were read as headings, those that look like them are ones too.

A title of one short word, or with few capitals, is a paragraph by itself; that the document has its titles there, over text
that stands just so, shows what it is.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import fold
from fit.document.text.running.placed import Placed
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import closed, hangs, prose
from fit.document.text.titles.headings import loud

LEAST = 4
"""Titles that were read as headings, at least, to show what the document does."""
FEW = 2
"""Such titles left of their texts, at least, where nothing else stands at their place."""
PURE = 0.8
"""Share of the lines at that place that are or may be titles, at least, to say so: one of them leads to a list."""
ALIKE = 2
"""Titles of a kind, at least: over program text, with a colon inside, behind a sign."""
FARTHER = 3
"""Titles left of their texts for one of which another was read as a heading: nothing else stands so."""
LONGEST = 66
"""Characters of a title, at most."""
FEW_WORDS = 3
"""Words of a title with a colon behind it, at most."""
WORDS = 9
"""Words of a title, at most."""
SAYS = re.compile(
    r"\b(?:am|is|are|was|were|been|has|have|had|can|could|will|would|must|should|may|you|we|they)\b|[a-z]{2}\\. |@|://"
)
"""What sentences and addresses have, and titles hardly ever."""
_CAPTION = re.compile(r"(?:Figure|Fig\.|Table|Example|Listing|Plate|Map|Chart) \d")
_WORD = re.compile(r"[^\W\d_]{3}")
_FIELD = re.compile(r"([^:]+): ")
_NUMBER = re.compile(r"\(?(?:[A-Z]?\d[\w.]*|[IVXLC]+|[A-Za-z])[.)]? ")


@dataclass(slots=True)
class _Form:
    """The lines alone at one indent, over text as far left or farther right."""

    alone: int = 0
    """How many of them there are."""
    levels: Counter[int] = field(default_factory=Counter)
    """The levels of those that were read as headings."""
    heads: list[int] = field(default_factory=list)
    """These blocks by number."""
    others: list[int] = field(default_factory=list)
    """Blocks by number that were not, though they may be titles."""
    labels: Counter[str] = field(default_factory=Counter)
    """What stands before a colon in all of them."""


def with_titles(lines: Sequence[Line], placed: Sequence[Placed]) -> list[Placed]:
    """The blocks in order, those made headings that stand and look as the headings of the document do."""
    forms: dict[tuple[int, bool], _Form] = {}
    for number, one in enumerate(placed):
        if not _alone(lines, placed, number):
            continue
        line = lines[one.start]
        form = forms.setdefault((line.indent, lines[one.end].indent > line.indent), _Form())
        form.alone += 1
        if label := _FIELD.match(line.text):
            form.labels[label[1]] += 1
        if one.block.kind is Kind.HEADING:
            if not loud(line.text) and not _NUMBER.match(line.text):
                form.levels[one.block.level] += 1
                form.heads.append(number)
        elif (
            one.block.kind in {Kind.PARAGRAPH, Kind.PREFORMATTED} and not one.block.code and may_be(line.text)
        ) or _with_colon(lines, placed, number):
            form.others.append(number)
    result = list(placed)
    for (_, deeper), form in forms.items():
        heads = len(form.heads)
        least = FEW if deeper and heads + len(form.others) >= PURE * form.alone else LEAST
        if not form.others or heads < least or heads * (FARTHER if deeper else 1) < len(form.others):
            continue
        level = form.levels.most_common(1)[0][0]
        traits = Counter(
            trait for number in form.heads for trait in _traits(lines, placed, number, form.labels)
        )
        for number in form.others:
            one = placed[number]
            line = lines[one.start]
            if all(traits[trait] >= ALIKE for trait in _traits(lines, placed, number, form.labels)):
                text = fold(line.piece(line.indent, line.end))
                result[number] = replace(one, block=Block(Kind.HEADING, text, level=level))
    return result


def _alone(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether a block is one line between blank lines, over text that does not stand farther left."""
    one = placed[number]
    if one.end != one.start + 1 or one.end >= len(lines) or number + 1 == len(placed):
        return False
    line, below = lines[one.start], lines[one.end]
    parted = (one.start == 0 or line.apart) and below.gap > 0 and not below.crossing
    return parted and below.indent >= line.indent and len(line.text) <= LONGEST


def _traits(lines: Sequence[Line], placed: Sequence[Placed], number: int, labels: Counter[str]) -> list[str]:
    """What is unusual in a title: a sign at its start, a colon, the label before it if that comes again, code below it."""
    text = lines[placed[number].start].text
    traits: list[str] = []
    if not text[0].isalnum():
        traits.append(text[0] if text[0] in "\"'`(\u2018\u201c" else text.split(maxsplit=1)[0])
    if label := _FIELD.match(text):
        traits.append(label[0] if labels[label[1]] > 1 else ":")
    if text.endswith("?"):
        traits.append("?")
    below = placed[number + 1].block
    if below.kind is Kind.PICTURE or (below.kind is Kind.PREFORMATTED and below.code):
        traits.append("code")
    return traits


def _with_colon(lines: Sequence[Line], placed: Sequence[Placed], number: int) -> bool:
    """Whether a few words with a colon stand left of a paragraph, with words enough to be no label: a title like the others."""
    line, after = lines[placed[number].start], placed[number + 1]
    words = line.text.removesuffix(":")
    few = words != line.text and 1 < len(words.split()) <= FEW_WORDS and may_be(words)
    told = after.block.kind is Kind.PARAGRAPH and prose(lines[after.start].text)
    return few and told and lines[after.start].indent > line.indent


def may_be(text: str) -> bool:
    """Whether a line can be a title: it begins as one, ends as one, and says nothing of anything."""
    return SAYS.search(text) is None and begins_and_ends(text)


def begins_and_ends(text: str) -> bool:
    """Whether a line begins as a title and ends as one, whatever it says."""
    if find_marker(text) is not None or text.startswith("Copyright") or _CAPTION.match(text):
        return False
    if closed(text.rstrip("?")) or hangs(text) or text[-1] in ":,;" or len(text.split()) > WORDS:
        return False
    return text[0].isupper() or (not text[0].isalpha() and _WORD.search(text) is not None and text[-1] != ")")
