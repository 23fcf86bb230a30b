"""Chunks: lines with no blank line between. Each gets its right margin, its habit of indents, and whether it is
running text at all or lines that stay lines (verse, addresses, code, columns of words).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from fit.document.text.line import Ending, Line
from fit.document.text.lists.entries import all_sentences, begun_alike, ended_alike, names_do, sentences
from fit.document.text.lists.listing import Listing
from fit.document.text.running.addresses import address
from fit.document.text.running.cases import opening
from fit.document.text.running.hung_entries import NO_ENTRIES, Entries, find_entries, hung
from fit.document.text.running.runs_on import NARROW, narrow_prose, set_narrow
from fit.document.text.running.set_in import Shown
from fit.document.text.running.set_lines import (
    SIGNED,
    by_design,
    chorus,
    is_signature,
    is_stanza,
    ragged,
    stay_lines,
    typed_on,
)
from fit.document.text.running.turns import find_turns
from fit.document.text.running.verse import couplet, in_turns, verse
from fit.document.text.signs.code import code, prompted
from fit.document.text.signs.joins import score, shortfall
from fit.document.text.signs.measure import UNWRAPPED, Measure, closed, hangs, prose, starts_small
from fit.document.text.signs.quotes import find_quotations
from fit.document.text.signs.rules import ruled_off
from fit.document.text.signs.underlines import underline

ENTRIES = 5
"""Lines that end in the same word, at least, to be entries of a list."""
TERMS = 3
"""Terms over their texts, at least, that show a list: its lines are no verse and no addresses."""
SEEN = 90
"""Cells of a line that was meant to be seen as it is, at most: words in a longer one are a paragraph that nobody wrapped."""
ITEMS = 3
"""Items of a list with lines below them that show a margin of its own, at least."""


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
    refrain: str
    """The last word of every entry, where its lines are entries of a list that end alike; else empty."""
    hung: bool
    """Whether what does not fit on the first line of an entry hangs deeper than it."""
    entries: Entries
    """Where each line begins an entry, for what does not fit, or what a term means, stands deeper all through it."""
    opening: str
    """The words that each of its cases begins with, where it is a list of such; else empty."""
    lined: bool
    """Whether nothing but what hangs deeper goes on with the line above it."""
    verse: bool = False
    """Whether its capitals, or the lines above or below it, show that it is verse."""
    shown: bool = False
    """Whether it is an example of program text, one piece over its blank lines."""


def find_chunks(
    lines: Sequence[Line], first: int, last: int, measure: Measure, listing: Listing
) -> dict[int, Chunk]:
    """The chunk of each of the body lines ``first <= i < last``."""
    found: dict[int, Chunk] = {}
    start = first
    turns: set[int] = set()
    ends = _ends(lines, first, last, measure)
    if listing.stops:
        around = {place for stop in listing.stops for place in (stop, stop + 1) if first < place <= last}
        ends = sorted({*ends, *around})
    examples = {start: end for start, end in listing.shown.items() if first <= start < last}
    if examples:
        ends = _around(ends, examples, first)
    for index in ends:
        if start in examples:
            start = index
            continue
        turns |= find_turns(lines, start, index, listing) if lines[start].text != SIGNED else set()
        turns |= {start + turn for turn in find_quotations([line.text for line in lines[start:index]])}
        start = index
    start = first
    shown = Shown(lines, listing)
    for index in sorted(turns | set(ends)):
        chunk = _chunk(lines, start, index, measure, listing)
        if start in examples:
            chunk = replace(chunk, fixed=True, shown=True)
        elif shown.takes(start, index, measure.right(start)):
            chunk = replace(chunk, fixed=True)
        if start > first and not chunk.shown and _next_stanza(lines, found[start - 1], chunk, listing):
            chunk = replace(chunk, fixed=True, verse=True)
        if (
            start > first
            and chunk.verse
            and not chunk.shown
            and _couplet_above(lines, found[start - 1], chunk)
        ):
            above = replace(found[start - 1], fixed=True, verse=True)
            found.update(dict.fromkeys(range(above.start, above.end), above))
        found.update(dict.fromkeys(range(start, index), chunk))
        start = index
    return found


def _ends(lines: Sequence[Line], first: int, last: int, measure: Measure) -> list[int]:
    """The ends of the runs that blank lines, rules and page ends part; transcripts and verse go on over a page end."""
    ends: list[int] = []
    start = first
    for index in range(first + 1, last + 1):
        if _parted(lines, index, last) and not (
            index < last
            and lines[index].crossing
            and (_typed_on(lines, start, index, last) or _verse_on(lines, start, index, last, measure))
        ):
            ends.append(index)
            start = index
    return ends


def _around(ends: Sequence[int], examples: dict[int, int], first: int) -> list[int]:
    """The ends of runs, where each example is one."""
    inside = {index for start, end in examples.items() for index in range(start + 1, end)}
    return sorted(
        {end for end in (*ends, *examples, *examples.values()) if end > first and end not in inside}
    )


def _typed_on(lines: Sequence[Line], start: int, index: int, last: int) -> bool:
    """Whether a page end cuts what was typed at a prompt, and what came of it: the next prompt stands below it."""
    first = lines[start]
    if not prompted(first.text):
        return False
    for place in range(index, last):
        line = lines[place]
        if line.indent < first.indent or (place > index and _parted(lines, place, last)):
            return False
        if line.indent == first.indent and prompted(line.text):
            return True
    return False


def _verse_on(lines: Sequence[Line], start: int, index: int, last: int, measure: Measure) -> bool:
    """Whether a page end cuts a stanza: only both parts together show that they are verse."""
    end = next(place for place in range(index + 1, last + 1) if _parted(lines, place, last))
    part = lines[start:end]
    return len({line.indent for line in part}) == 1 and is_stanza(part, measure.right(index))


def _parted(lines: Sequence[Line], index: int, last: int) -> bool:
    """Whether a blank line, a page end or a rule stands before a line, or nothing is left."""
    if index == last or lines[index].apart:
        return True
    if ruled_off(lines[index].text) or ruled_off(lines[index - 1].text):
        return True
    return underline(lines, index)


def _chunk(lines: Sequence[Line], start: int, end: int, measure: Measure, listing: Listing) -> Chunk:
    part = lines[start:end]
    right = _right(part, measure.right(start))
    indents = Counter(line.indent for line in part)
    base = min(indents, key=lambda indent: (-indents[indent], indent))
    begun = len(part) > 2 and (listing.keys[start] or listing.markers[start])
    if typed_on(part) or (begun and (chorus(part, measure.right(start)) or in_turns(part))):
        listing.markers[start:end] = [None] * len(part)
        listing.keys[start:end] = [0] * len(part)
    led = start + 1 if ended_alike(part) else start  # a label may stand before statements
    fixed = not any(line.ending is Ending.SOFT for line in part) and not _listed(led, end, listing)
    fixed = fixed and not (any(line.end > SEEN for line in part) and all(prose(line.text) for line in part))
    fixed = fixed and not any(
        line.end > UNWRAPPED and prose(line.text) and line.text[0].isalnum() for line in part
    )
    fixed = fixed and sum(index in listing.terms for index in range(start, end)) < TERMS
    fixed = fixed and (
        is_signature(part, end == len(lines))
        or by_design(part, measure.right(start))
        or stay_lines(part, right)
    )
    widest = max(line.end for line in part)
    if not fixed and narrow_prose(part, right):
        right = widest
    elif not fixed and widest < right - NARROW and not _listed(start, end, listing) and set_narrow(part):
        whole = not any(closed(line.text) for line in part[:-1])
        right = min(line.end for line in part[:-1]) if whole else widest
    elif not fixed and widest < right - NARROW and _narrow_items(part, start, listing):
        right = widest
    broken = _broken(part, right, measure.slack) or sentences(part)
    first_line = _first_line(part, start, listing)
    hangs_all = not first_line and hung(part, right)
    marked = [bool(listing.markers[index] or listing.keys[index]) for index in range(start, end)]
    entries = NO_ENTRIES if first_line else find_entries(part, marked, right)
    lined = begun_alike(part) or all_sentences(part) or names_do(part)
    sung = fixed and verse(part)
    refrain, cases = _refrain(part), opening(part)
    return Chunk(
        start, end, right, base, first_line, fixed, broken, refrain, hangs_all, entries, cases, lined, sung
    )


def _refrain(part: Sequence[Line]) -> str:
    """The word with a sign behind it at the end of at least half of the lines, or nothing: `(optional)`, `feet;`."""
    if len(part) < ENTRIES:
        return ""
    word, count = Counter(line.text.split()[-1] for line in part).most_common(1)[0]
    told = any(char.isalpha() for char in word) and not word[-1].isalnum()
    return word if told and count >= max(ENTRIES, len(part) / 2) else ""


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
    if any(starts_small(plain[index].text) or _mid_sentence(plain, index) for index in deep):
        return False
    if any(address(plain[index].text) for index in deep):
        return False  # set in by a writer who did not break it
    runs = sum(b - a == 1 for a, b in pairwise(deep))
    ends_low = plain[-1].indent == least or len(deep) > 1
    return ends_low and runs <= len(deep) // 3 and len(deep) <= 0.6 * len(plain)


def _mid_sentence(part: Sequence[Line], index: int) -> bool:
    """Whether running text right above a line stops where no sentence can end."""
    above = part[index - 1].text if index else ""
    return hangs(above) and above[-1].isalpha() and prose(above)


def _narrow_items(part: Sequence[Line], start: int, listing: Listing) -> bool:
    """Whether the items of a list are set far from the margin: no line of theirs had room for what hangs below it."""
    begun = [bool(listing.markers[index] or listing.keys[index]) for index in range(start, start + len(part))]
    hung = [(above, below) for (above, below), new in zip(pairwise(part), begun[1:], strict=True) if not new]
    if not begun[0] or len(hung) < ITEMS or begun.count(True) < ITEMS:
        return False
    widest = max(line.end for line in part)
    running = any(prose(above.text) and starts_small(below.text) for above, below in hung)
    return running and all(shortfall(above, below, widest) < 0 for above, below in hung)


def _listed(start: int, end: int, listing: Listing) -> bool:
    """Whether an item, a hanging key or one of several terms over one meaning starts in one of the lines."""
    return any(
        listing.markers[index] or listing.keys[index] or index in listing.stacked
        for index in range(start, end)
    )


def _next_stanza(lines: Sequence[Line], above: Chunk, chunk: Chunk, listing: Listing) -> bool:
    """Whether short lines stand under lines that stay lines: verse goes on, in capitals, or ragged and as tall."""
    part = lines[chunk.start : chunk.end]
    if not above.fixed or len(part) < 2 or lines[above.start].indent != part[0].indent or part[0].gap != 1:
        return False
    marked = any(listing.markers[index] or listing.keys[index] for index in range(chunk.start, chunk.end))
    short = all(line.end < above.right - NARROW for line in part)
    stanza = lines[above.start : above.end]
    capital = all(line.text[:1].isupper() for line in [*stanza, *part])
    alike = len(part) == len(stanza) > 2 and not any(code(line.text) for line in part)
    return short and not marked and (capital or (alike and ragged(part, above.right)))


def _couplet_above(lines: Sequence[Line], above: Chunk, chunk: Chunk) -> bool:
    """Whether two lines a blank line above verse begin where its first two do: they are its first stanza."""
    part, below = lines[above.start : above.end], lines[chunk.start : chunk.start + 2]
    if above.fixed or len(part) != 2 or below[0].gap != 1:
        return False
    level = [line.indent for line in part] == [line.indent for line in below]
    return level and couplet(part, above.right)
