"""Chunks: lines with no blank line between. Each gets its right margin, its habit of indents, and whether it is
running text at all or lines that stay lines (verse, addresses, code, columns of words).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from fit.document.text.line import Ending, Line
from fit.document.text.lists.entries import ended_alike, labelled, left_short, sentences
from fit.document.text.lists.listing import Listing
from fit.document.text.running.hanging_quotes import hanging_quote
from fit.document.text.running.turns import find_turns
from fit.document.text.signs.code import asked, code, command, prompted, quoted, typed, with_options
from fit.document.text.signs.joins import cut_word, score, shortfall
from fit.document.text.signs.measure import Measure, closed, hangs, prose, sentence, starts_small
from fit.document.text.signs.pictures import ruled_off

NARROW = 10
"""Cells by which a chunk must miss the right margin before it has to prove that it is running text."""

CENTRED = 8
"""Cells of a margin that only centred lines have."""
SIGNED = "--"
"""What stands over the signature of such a letter."""
TALLEST_SIGNATURE = 5
"""Lines of it with that mark, at most."""
RIGHT_SIDE = 0.6
"""Share of the measure behind which no paragraph starts."""
SHORT_CLAUSE = 5
"""Words of a line that may be no more than a name or a title."""
LONG_LINE = 50
"""Cells of a line that is long enough to have been wrapped."""
_SPREAD = re.compile(r"[^\s.:!?)\"'] {2,}\S")
"""Blanks between words that only justified lines and columns have."""
_REQUEST = re.compile(r"\.[a-z]{2}(?: \S+)?")
"""A line that asks a formatter for something: what stands below it is its input, line by line."""
_ENDED = re.compile(r"(?:[,.;:!?]|--)[\"')\u201d\u2019]*$")


STEP = 4
"""Cells by which the rest of a text may hang; what stands deeper is set off."""
JUSTIFIED = 4
"""Lines of a paragraph that show a margin of their own, at least."""
ENTRIES = 5
"""Lines that end in the same word, at least, to be entries of a list."""


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


def find_chunks(
    lines: Sequence[Line], first: int, last: int, measure: Measure, listing: Listing
) -> dict[int, Chunk]:
    """The chunk of each of the body lines ``first <= i < last``."""
    found: dict[int, Chunk] = {}
    start = first
    turns: set[int] = set()
    ends = _ends(lines, first, last, measure)
    for index in ends:
        turns |= find_turns(lines, start, index, listing) if lines[start].text != SIGNED else set()
        start = index
    start = first
    for index in sorted(turns | set(ends)):
        chunk = _chunk(lines, start, index, measure, listing)
        if start > first and _next_stanza(lines, found[start - 1], chunk, listing):
            chunk = replace(chunk, fixed=True)
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
    return len({line.indent for line in part}) == 1 and _stanza(part, measure.right(index))


def _parted(lines: Sequence[Line], index: int, last: int) -> bool:
    """Whether a blank line, a page end or a rule stands before a line, or nothing is left."""
    if index == last or lines[index].gap or lines[index].crossing:
        return True
    return ruled_off(lines[index].text) or ruled_off(lines[index - 1].text)


def _chunk(lines: Sequence[Line], start: int, end: int, measure: Measure, listing: Listing) -> Chunk:
    part = lines[start:end]
    right = _right(part, measure.right(start))
    indents = Counter(line.indent for line in part)
    base = min(indents, key=lambda indent: (-indents[indent], indent))
    led = start + 1 if ended_alike(part) else start  # a label may stand before statements
    fixed = not any(line.ending is Ending.SOFT for line in part) and not _listed(led, end, listing)
    fixed = fixed and (
        _signature(part, end == len(lines)) or _by_design(part, measure.right(start)) or _fixed(part, right)
    )
    widest = max(line.end for line in part)
    if not fixed and _narrow_prose(part, right):
        right = widest
    elif not fixed and widest < right - NARROW and not _listed(start, end, listing) and _set_narrow(part):
        whole = not any(closed(line.text) for line in part[:-1])
        right = min(line.end for line in part[:-1]) if whole else widest
    broken = _broken(part, right, measure.slack) or sentences(part)
    return Chunk(start, end, right, base, _first_line(part, start, listing), fixed, broken, _refrain(part))


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
    if any(starts_small(plain[index].text) for index in deep):
        return False
    runs = sum(b - a == 1 for a, b in pairwise(deep))
    ends_low = plain[-1].indent == least or len(deep) > 1
    return ends_low and runs <= len(deep) // 3 and len(deep) <= 0.6 * len(plain)


def _listed(start: int, end: int, listing: Listing) -> bool:
    """Whether an item or a hanging key starts in one of the lines."""
    return any(listing.markers[index] or listing.keys[index] for index in range(start, end))


def _signature(part: Sequence[Line], last: bool) -> bool:
    """Whether the lines are the signature of a letter sent over a network: the last few, under a mark of their own."""
    return last and part[0].text == SIGNED and 1 < len(part) <= TALLEST_SIGNATURE


def _by_design(part: Sequence[Line], around: int) -> bool:
    """Lines that were set as lines: verse, centred lines, words quoted from a letter, input of a formatter."""
    if len({quoted(line.text).strip() for line in part} | {""}) == 2 and all(
        quoted(line.text) for line in part
    ):
        return True
    if hanging_quote(part, around):
        return True
    if len(part) > 1 and _REQUEST.fullmatch(part[0].text):
        return True
    return _stanza(part, around) or _centred(part, around) or _at_right(part, around) or _session(part)


def _session(part: Sequence[Line]) -> bool:
    """What was typed at a prompt, and what came of it right below."""
    if len(part) < 2 or any(line.indent < part[0].indent for line in part):
        return False
    if not (prompted(part[0].text) or _asked([line.text for line in part])):
        return False
    return not any(_carries(above.text, below.text) for above, below in pairwise(part[1:]))


def _asked(texts: Sequence[str]) -> bool:
    """Whether a few small words behind `>` were typed in a game that answers: elsewhere the sign quotes a letter."""
    answered = not texts[1].startswith(">") and not starts_small(texts[1])
    return answered and all(asked(text) for text in texts if text.startswith(">")) and texts[0][:1] == ">"


def _centred(part: Sequence[Line], around: int) -> bool:
    """Two lines or more, far from both margins, with one middle but different lengths."""
    middles = [line.indent + line.end for line in part]
    short = all(2 * len(line.text) <= around for line in part)  # then the middle was found by eye
    return (
        len(part) > 1
        and max(middles) - min(middles) <= (3 if short else 2)
        and all(line.indent >= CENTRED and line.end <= around - CENTRED // 2 for line in part)
        and all(abs(a.indent - b.indent) > 1 for a, b in pairwise(part))
    )


def _at_right(part: Sequence[Line], around: int) -> bool:
    """Names, dates and titles at the right side of the page, as they stand under a letter."""
    return all(line.indent >= RIGHT_SIDE * around and not prose(line.text) for line in part)


def _stanza(part: Sequence[Line], around: int) -> bool:
    """Lines of verse: most end in a punctuation mark, and all start with a capital or are far from the margin."""
    texts = [line.text for line in part]
    if len(texts) < 3 or _ENDED.search(texts[-1]) is None or not any(map(prose, texts)):
        return False
    ended = sum(_ENDED.search(text) is not None for text in texts)
    capital = all(text.lstrip("\"'")[:1].isupper() for text in texts)
    short = len(texts) > 3 and all(len(text) <= 0.6 * around for text in texts) and part[0].indent > 0
    if any(shortfall(a, b, around) < 2 or cut_word(a.text, b.text) for a, b in pairwise(part)):
        return False
    if any(_SPREAD.search(text) for text in texts):
        return False
    whole = sum(map(sentence, texts)) >= 0.6 * len(texts)
    return ended >= 0.6 * len(texts) and (capital or short) and not whole


def _fixed(part: Sequence[Line], right: int) -> bool:
    if len(part) < 2:
        return False
    if all(line.indent >= part[0].indent + 2 for line in part[1:]) and not code(part[0].text):
        if len(part) == 2:
            told = closed(part[1].text) or prose(part[1].text) or _runs_over(part[0], part[1], right)
            return not told or code(part[1].text)
        part = part[1:]
    if len(part) > 2 and all(labelled(line.text) for line in part):
        return True
    if any(cut_word(above.text, below.text) for above, below in pairwise(part)):
        return False
    texts = [line.text for line in part]
    whole = sum(sentence(text) for text in texts[:-1]) + (sentence(texts[-1]) or prose(texts[-1]))
    if whole >= 0.6 * len(texts) and not any(prompted(text) for text in texts):
        return False
    if ended_alike(part) or left_short(part):
        return True
    coded = sum(code(text) or (command(text) and not prose(text)) for text in texts)
    if coded > 0.5 * len(texts) and sum(code(text) for text in texts) >= 1:
        return True
    if any(map(with_options, texts)) and len({text.split(maxsplit=1)[0] for text in texts}) == 1:
        return True
    if _goes_on(part) or _carried(part) or _enumerated(part, right):
        return False
    widest = max(line.end for line in part)
    if widest >= right - NARROW and _reads(part, right):
        return False
    if widest >= right - NARROW and any(prose(text) for text in texts):
        return _verse(part, right)
    return not _narrow_prose(part, right)


def _runs_over(above: Line, below: Line, right: int) -> bool:
    """Whether a full line stops in the middle of a sentence that goes on in small letters, a little deeper."""
    stops = prose(above.text) and not closed(above.text) and starts_small(below.text)
    return stops and below.indent - above.indent <= STEP and shortfall(above, below, right) < 0


def _enumerated(part: Sequence[Line], right: int) -> bool:
    """Whether full lines stop at the commas of an enumeration."""
    full = all(shortfall(above, below, right) < 0 for above, below in pairwise(part))
    return full and all(line.text.endswith(",") and not code(line.text) for line in part[:-1])


def _goes_on(part: Sequence[Line]) -> bool:
    """Whether all lines are running text, and each ends a sentence or goes on in small letters below."""
    pairs = [*pairwise(part)]
    runs = [prose(a.text) and not closed(a.text) and starts_small(b.text) for a, b in pairs]
    return (
        all(run or closed(a.text) for run, (a, _) in zip(runs, pairs, strict=True))
        and any(run and len(a.text) >= LONG_LINE for run, (a, _) in zip(runs, pairs, strict=True))
        and all(prose(line.text) for line in part)
    )


def _carried(part: Sequence[Line]) -> bool:
    """Whether half of the lines stop in the middle of a sentence that the next one goes on with."""
    if len(part) == 2 and len(part[0].text.split()) > SHORT_CLAUSE:
        above, below = part[0].text, part[1].text
        said = closed(below) and any(map(str.isalpha, below)) and not typed(below)
        if prose(above) and above[-1].isalnum() and said:
            return True
    if all(line.text[:1].islower() for line in part):
        return False  # lines of a list without signs
    carried = sum(_carries(above.text, below.text) for above, below in pairwise(part))
    return len(part) > 1 and 2 * carried >= len(part) - 1


def _set_narrow(part: Sequence[Line]) -> bool:
    """Whether a paragraph stands far from the margin: words from its first line on, and sentences that go on."""
    hanging = len(part) > 2 and all(line.indent >= part[0].indent + 2 for line in part[1:])
    return prose(part[0].text) and (_carried(part) or (hanging and _carried(part[1:])))


def _carries(above: str, below: str) -> bool:
    """Whether a sentence goes on from one line to the next, by the words alone."""
    if closed(above) or not prose(above) or code(above) or typed(below):
        return False
    if below.startswith("(") and below.endswith(")"):
        return False
    return (hangs(above) and above[-1].isalpha()) or (starts_small(below) and (prose(below) or closed(below)))


def _reads(part: Sequence[Line], right: int) -> bool:
    """Whether most lines of a chunk are full and go on in the next."""
    full = sum(shortfall(above, below, right) < 0 for above, below in pairwise(part))
    return full >= 0.5 * (len(part) - 1)


def _verse(part: Sequence[Line], right: int) -> bool:
    """Lines that all start with a capital, and mostly end before the margin or all with room for the next word."""
    if len(part) < 3:
        return False
    capital = sum(line.text[:1].isupper() for line in part)
    if capital == len(part) and all(shortfall(above, below, right) > 1 for above, below in pairwise(part)):
        return True
    short = sum(shortfall(above, below, right) > NARROW for above, below in pairwise(part))
    return capital >= 0.9 * len(part) and short >= 0.8 * (len(part) - 1)


def _narrow_prose(part: Sequence[Line], right: int) -> bool:
    """Running text set narrower than its surroundings: full lines by its own margin, sentences that run on."""
    own = max(line.end for line in part)
    pairs = [*pairwise(part)]
    if not pairs:
        return prose(part[0].text)
    reading = sum(prose(line.text) for line in part)
    if _justified(part) and reading >= 0.5 * len(part):
        return True
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


def _justified(part: Sequence[Line]) -> bool:
    """Whether all lines but the last end at one column, which wide blanks between their words show to be a margin."""
    spread = sum(_SPREAD.search(line.text) is not None for line in part)
    return len(part) >= JUSTIFIED and len({line.end for line in part[:-1]}) == 1 and spread >= 2


def _even(pairs: Sequence[tuple[Line, Line]], own: int) -> bool:
    """Whether lines stand under one another and end near their own margin, three at least and none a label."""
    near = sum(shortfall(above, below, own) < NARROW for above, below in pairs)
    level = all(above.indent == below.indent for above, below in pairs[1:])
    return (
        len(pairs) > 1
        and level
        and near >= 0.6 * len(pairs)
        and not any(labelled(one.text) for _, one in pairs)
    )


def _next_stanza(lines: Sequence[Line], above: Chunk, chunk: Chunk, listing: Listing) -> bool:
    """Whether short lines that all start with a capital stand under lines that stay lines: verse goes on."""
    part = lines[chunk.start : chunk.end]
    if not above.fixed or len(part) < 2 or lines[above.start].indent != part[0].indent or part[0].gap != 1:
        return False
    marked = any(listing.markers[index] or listing.keys[index] for index in range(chunk.start, chunk.end))
    short = all(line.end < above.right - NARROW and line.text[:1].isupper() for line in part)
    return short and not marked and all(line.text[:1].isupper() for line in lines[above.start : above.end])
