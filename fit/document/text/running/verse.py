"""Verse that its capitals, its rhymes or a hanging quotation mark show: in running text no small word has a capital in a sentence."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.joins import cut_word, shortfall
from fit.document.text.signs.measure import closed, small_word, starts_small

LEAST = 3
"""Lines of such a stanza, at least."""
SURE = 2
"""Lines that begin with a small word in capitals inside a sentence, at least."""
RHYMED = 4
"""Lines of a stanza that rhymes; a longer one has as many more, once or again."""
_RHYME = re.compile(r"[aeiouy]+[^aeiouy]*e?$")
_LAST = re.compile(r"\W+$")
_QUOTES = "\"'`\u201c\u2018"
SHORT = 4
"""Cells by which each line of a couplet ends before the margin, at least."""

TURNS = 4
"""Lines of a stanza at two indents in turn, at least."""
WORDS = 4
"""Words of a line of verse, at least, that no term over its text is."""
_SIGN = re.compile(r"(?:[,.;:!?]|--)[\"')\u201d\u2019]*$")
"""The sign that ends a line of verse."""


def verse(part: Sequence[Line]) -> bool:
    """Whether every line begins with a capital, some of them inside a sentence with a small word.

    The rest of a line that found no room stands deeper, in small letters; then the lines begin at several indents, for
    the entries of a list begin at one.
    """
    if len(part) < LEAST or not part[0].text[:1].isupper():
        return False
    sure = 0
    verses = [part[0]]
    for above, below in pairwise(part):
        if starts_small(below.text) and below.indent > above.indent and not closed(above.text):
            continue
        if not below.text.lstrip("\"'(").lstrip("\u201c\u2018")[:1].isupper():
            return False
        verses.append(below)
        sure += not closed(above.text) and _capital(below.text.split(maxsplit=1)[0])
    if sure < SURE or len(verses) < LEAST:
        return False
    if len(verses) < len(part) and len({line.indent for line in verses}) == 1:
        return False
    return not any(_titled(line.text) for line in part) and not any(
        cut_word(above.text, below.text) for above, below in pairwise(part)
    )


def in_turns(part: Sequence[Line]) -> bool:
    """Whether every second line is set in, all begin with a capital and end in a sign, and one after a comma: no terms, no paragraphs."""
    if len(part) < TURNS or len(part) % 2 or part[1].indent == part[0].indent:
        return False
    level = all(line.indent == part[index % 2].indent for index, line in enumerate(part))
    return level and (
        any(line.text.endswith((",", ";")) for line in part[::2])
        and all(line.text.lstrip("\"'\u201c\u2018")[:1].isupper() for line in part)
        and all(_SIGN.search(line.text) and len(line.text.split()) >= WORDS for line in part)
    )


def rhymed(texts: Sequence[str]) -> bool:
    """Whether lines rhyme two by two, or in turns: one pair may do so by chance, all of them do not."""
    last = [_LAST.sub("", text).rpartition(" ")[2].lower() for text in texts]
    if not last or len(last) % RHYMED:
        return False
    pairs = [*zip(last[::2], last[1::2], strict=True)]
    turns = [(last[at], last[at + 2]) for at in range(len(last)) if at % RHYMED < 2]
    return all(_rhymes(*pair) for pair in pairs) or all(_rhymes(*pair) for pair in turns)


def couplet(part: Sequence[Line], right: int) -> bool:
    """Whether two lines short of the margin both begin with a capital, the second one deeper, and do not go on."""
    if len(part) != 2 or part[1].indent <= part[0].indent + 1:
        return False
    return closed(part[1].text) and all(
        line.text[:1].isupper() and line.end <= right - SHORT and "  " not in line.text for line in part
    )


def _rhymes(first: str, second: str) -> bool:
    """Whether two words, not the same, end in the same letters, from their last vowel on or one before it, two at least.

    A last `e` is silent.
    """
    if first == second:
        return False
    if first[-2:] == second[-2:] and first[-1:] in "aiouy":
        return True
    ends = [match.group() for word in (first, second) if (match := _RHYME.search(word))]
    return len(ends) == 2 and ends[0] == ends[1] and len(ends[0]) > 1


def _capital(word: str) -> bool:
    """Whether a small word has a capital that is not always its own: `I` has."""
    return word[:1].isupper() and word != "I" and not word.startswith("I'") and small_word(word)


def _titled(text: str) -> bool:
    """Whether small words have capitals inside a line too, as in titles, or all its letters are capitals."""
    words = text.split()
    inside = sum(not closed(above) and _capital(word) for above, word in pairwise(words))
    return inside > 1 or text.isupper()


def hanging_quote(part: Sequence[Line], around: int) -> bool:
    """Whether the quotation mark of a first line hangs left of the others, and each line had room for more."""
    if len(part) < 2 or part[0].text[:1] not in _QUOTES or part[1].text[:1] in _QUOTES:
        return False
    hangs = part[0].indent > 0 and all(line.indent > part[0].indent for line in part[1:])
    room = all(shortfall(above, below, around) > 1 for above, below in pairwise(part))
    return hangs and part[1].indent == part[0].indent + 1 and part[1].text[:1].isupper() and room
