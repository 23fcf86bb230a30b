"""Chunks: lines with no blank line between. Each gets its right margin, its habit of indents, and whether it is
running text at all or lines that stay lines (verse, addresses, code, columns of words).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from fit.document.text.code import code, command
from fit.document.text.joins import cut_word, score, shortfall
from fit.document.text.line import Ending, Line
from fit.document.text.listing import Listing
from fit.document.text.measure import Measure, closed, hangs, prose, starts_small
from fit.document.text.pictures import ruled_off

NARROW = 10
"""Cells by which a chunk must miss the right margin before it has to prove that it is running text."""

_LABEL = re.compile(r"\S+(?: \S+){0,2}:(?:\s|$)")


@dataclass(frozen=True, slots=True)
class Chunk:
    """Lines ``start <= i < end``."""

    start: int
    end: int
    right: int
    """The right edge its running text was wrapped at."""
    base: int
    """The indent of most lines."""
    first_line: bool
    """Whether paragraphs start with a deeper indent."""
    fixed: bool
    """Whether its lines stay lines."""
    broken: bool
    """Whether most of its lines were ended by the writer: one that happens to be full goes on in small letters only."""


def find_chunks(
    lines: Sequence[Line], first: int, last: int, measure: Measure, listing: Listing
) -> dict[int, Chunk]:
    """The chunk of each of the body lines ``first <= i < last``."""
    found: dict[int, Chunk] = {}
    start = first
    for index in range(first + 1, last + 1):
        parted = index == last or lines[index].gap or lines[index].crossing
        if parted or ruled_off(lines[index].text) or ruled_off(lines[index - 1].text):
            chunk = _chunk(lines, start, index, measure, listing)
            if start > first and _next_stanza(lines, found[start - 1], chunk, listing):
                chunk = replace(chunk, fixed=True)
            found.update(dict.fromkeys(range(start, index), chunk))
            start = index
    return found


def _chunk(lines: Sequence[Line], start: int, end: int, measure: Measure, listing: Listing) -> Chunk:
    part = lines[start:end]
    right = _right(part, measure.right(start))
    indents = Counter(line.indent for line in part)
    base = min(indents, key=lambda indent: (-indents[indent], indent))
    fixed = not any(line.ending is Ending.SOFT for line in part) and _fixed(part, start, right, listing)
    if not fixed and _narrow_prose(part, right):
        right = max(line.end for line in part)
    broken = _broken(part, right, measure.slack)
    return Chunk(start, end, right, base, _first_line(part, start, listing), fixed, broken)


def _broken(part: Sequence[Line], right: int, slack: int) -> bool:
    ended = sum(
        above.indent == below.indent
        and (score(above, below, right, slack) <= 0 or code(above.text) or code(below.text))
        for above, below in pairwise(part)
    )
    return ended >= 2 and ended >= 0.5 * (len(part) - 1)


def _right(part: Sequence[Line], around: int) -> int:
    """The right margin: the neighbourhood's, or the chunk's own where it has enough lines to show one."""
    ends = sorted(line.end for line in part[:-1] if prose(line.text))
    if len(ends) >= 3 and ends[-1] >= around - NARROW:
        wide = ends[-1] if len(ends) < 8 or ends[-1] - ends[-2] <= 6 else ends[-2]
        return wide if wide <= around else max(around, ends[-2])
    return around


def _first_line(part: Sequence[Line], start: int, listing: Listing) -> bool:
    """Whether single deeper lines start paragraphs: never two in a row, or only where each stands for itself."""
    plain = [
        line
        for index, line in enumerate(part)
        if not (listing.markers[start + index] or listing.keys[start + index])
    ]
    if len(plain) < 3 or len(plain) < len(part):
        return False
    least = min(line.indent for line in plain)
    deep = [index for index, line in enumerate(plain) if line.indent > least]
    if not deep or any(plain[index].indent - least > 12 for index in deep):
        return False
    if len({plain[index].indent for index in deep}) > 1:
        return False
    if any(starts_small(plain[index].text) for index in deep):
        return False
    runs = sum(b - a == 1 for a, b in pairwise(deep))
    ends_low = plain[-1].indent == least or len(deep) > 1
    return ends_low and runs <= len(deep) // 3 and len(deep) <= 0.6 * len(plain)


def _fixed(part: Sequence[Line], start: int, right: int, listing: Listing) -> bool:
    if len(part) < 2 or any(
        listing.markers[start + index] or listing.keys[start + index] for index in range(len(part))
    ):
        return False
    if all(line.indent >= part[0].indent + 2 for line in part[1:]) and not code(part[0].text):
        if len(part) == 2:
            return not (closed(part[1].text) or prose(part[1].text)) or code(part[1].text)
        part = part[1:]
    if len(part) > 2 and all(_LABEL.match(line.text) for line in part):
        return True
    if any(cut_word(above.text, below.text) for above, below in pairwise(part)):
        return False
    texts = [line.text for line in part]
    coded = sum(code(text) or (command(text) and not prose(text)) for text in texts)
    if coded > 0.5 * len(texts) and sum(code(text) for text in texts) >= 1:
        return True
    widest = max(line.end for line in part)
    if widest >= right - NARROW and _reads(part, right):
        return False
    if widest >= right - NARROW and any(prose(text) for text in texts):
        return _verse(part, right)
    return not _narrow_prose(part, right)


def _reads(part: Sequence[Line], right: int) -> bool:
    """Whether most lines of a chunk are full and go on in the next."""
    full = sum(shortfall(above, below, right) < 0 for above, below in pairwise(part))
    return full >= 0.5 * (len(part) - 1)


def _verse(part: Sequence[Line], right: int) -> bool:
    """Lines that all start with a capital and mostly end before the margin."""
    if len(part) < 3:
        return False
    capital = sum(line.text[:1].isupper() for line in part)
    short = sum(shortfall(above, below, right) > NARROW for above, below in pairwise(part))
    return capital >= 0.9 * len(part) and short >= 0.8 * (len(part) - 1)


def _narrow_prose(part: Sequence[Line], right: int) -> bool:
    """Running text set narrower than its surroundings: full lines by its own margin, sentences that run on."""
    own = max(line.end for line in part)
    pairs = [*pairwise(part)]
    if not pairs:
        return prose(part[0].text)
    reading = sum(prose(line.text) for line in part)
    small = sum(starts_small(below.text) and not closed(above.text) for above, below in pairs)
    capital = sum(line.text[:1].isupper() for line in part)
    full = sum(shortfall(above, below, own) < 0 for above, below in pairs)
    if len(part) == 2:
        above, below = part
        long = above.end - above.indent >= 0.45 * (right - above.indent)
        goes_on = small == 1 or hangs(above.text)
        return prose(above.text) and long and goes_on and (shortfall(above, below, right) <= NARROW * 3)
    if len(part) >= 4 and capital == len(part):
        return False
    if small >= 0.8 * len(pairs) and reading >= 0.6 * len(part) and _even(pairs, own):
        return True
    even = full >= 0.75 * len(pairs) and reading >= 0.5 * len(part)
    return even and small >= 0.5 * len(pairs) and own - part[-1].indent >= 20


def _even(pairs: Sequence[tuple[Line, Line]], own: int) -> bool:
    """Whether lines stand under one another and end near their own margin, three at least and none a label."""
    near = sum(shortfall(above, below, own) < NARROW for above, below in pairs)
    level = all(above.indent == below.indent for above, below in pairs[1:])
    return (
        len(pairs) > 1
        and level
        and near >= 0.6 * len(pairs)
        and not any(_LABEL.match(one.text) for _, one in pairs)
    )


def _next_stanza(lines: Sequence[Line], above: Chunk, chunk: Chunk, listing: Listing) -> bool:
    """Whether short lines that all start with a capital stand under lines that stay lines: verse goes on."""
    part = lines[chunk.start : chunk.end]
    if not above.fixed or len(part) < 2 or lines[above.start].indent != part[0].indent or part[0].gap != 1:
        return False
    marked = any(listing.markers[index] or listing.keys[index] for index in range(chunk.start, chunk.end))
    short = all(line.end < above.right - NARROW and line.text[:1].isupper() for line in part)
    return short and not marked and all(line.text[:1].isupper() for line in lines[above.start : above.end])
