"""Lines that stay lines: verse, addresses, letters, code, transcripts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.lists.entries import ended_alike, label_end, labelled, left_short
from fit.document.text.running.runs_on import NARROW, SPREAD, carried, carries, goes_on, narrow_prose, reads
from fit.document.text.running.terms import sign_alone
from fit.document.text.running.verse import hanging_quote, in_turns, rhymed, verse
from fit.document.text.signs.closings import addressed, signed_right_below
from fit.document.text.signs.code import asked, code, prompted, typed, with_options
from fit.document.text.signs.joins import NEAR, cut_word, shortfall
from fit.document.text.signs.measure import closed, hangs, prose, sentence, starts_small
from fit.document.text.signs.quotes import quotation

CENTRED = 8
"""Cells of a margin that only centred lines have."""
SIGNED = "--"
"""What stands over the signature of such a letter."""
TALLEST_SIGNATURE = 5
"""Lines of it with that mark, at most."""
FAR_IN = 12
"""Cells by which verse is set in, at least, where neither capitals nor stops show it."""
SHORT = 0.6
"""The share of the measure that a line of verse takes, at most."""
RIGHT_SIDE = 0.6
"""Share of the measure behind which no paragraph starts."""
MESSAGES = 6
"""Lines that all begin anew, at least: of running text as many start with a capital by no chance."""
ROWS = 3
"""Rows with as many fields, at least."""
COMMAS = 2
"""Commas of such a row, at least."""
_COMMA = re.compile(r"[^\W\d_],(?=[^\W\d_])")
_QUOTES = ">."
"""Prompts that may also quote a letter or end a sentence."""
_REQUEST = re.compile(r"\.[a-z]{2}(?: \S+)?")
"""A line that asks a formatter for something: what stands below it is its input, line by line."""
_COUNT = re.compile(r"\(?(?:\d{1,3}|[IVXL]{1,6})[.)] +(?=[\"']?[A-Z])")
"""The number of a stanza."""
STANZA = 4
"""Lines of a stanza with a number, at least: an item may have three that begin with names."""
VALUES = 3
"""Lines with dots that lead to a value, at least."""
_VALUE = re.compile(r"\.{4,} ?:? ?[\w(][\w.,%-]*(?: \S+)?$")
"""Dots that lead to a value of a word or two: `lamp oil ..... : 14 gallons`."""
_BLANK = re.compile(r"\.{8}|_{6}")
"""Room to write something in."""
_ASIDE = re.compile(r"\([^()]+\)")
"""A line in brackets: what stands below it is said for itself."""
_SIGN = re.compile(r"(?:[,.;:!?]|--)[\"')\u201d\u2019]*$")
"""The sign that ends a line of verse."""
STEP = 4
"""Cells by which the rest of a text may hang; what stands deeper is set off."""


def is_signature(part: Sequence[Line], last: bool) -> bool:
    """Whether the lines are the signature of a letter sent over a network: the last few, under a mark of their own."""
    return last and part[0].text == SIGNED and 1 < len(part) <= TALLEST_SIGNATURE


def by_design(part: Sequence[Line], around: int) -> bool:
    """Lines that were set as lines: verse, centred lines, forms, words quoted from a letter, input of a formatter."""
    if quotation([line.text for line in part]) or hanging_quote(part, around):
        return True
    if (
        addressed(part, around)
        or signed_right_below(part)
        or (len(part) > 1 and _REQUEST.fullmatch(part[0].text))
    ):
        return True
    if is_stanza(part, around) or in_turns(part) or verse(part):
        return True
    if _fields(part) or _form(part):
        return True
    if _centred(part, around) or _at_right(part, around) or _session(part):
        return True
    return len(part) > 2 and min(line.indent for line in part) >= FAR_IN and ragged(part, around)


def _fields(part: Sequence[Line]) -> bool:
    """Whether several lines have as many fields, three at least, parted by commas with no blank behind them: rows of a file."""
    if len(part) < ROWS or part[0].text.count(",") < COMMAS:
        return False
    counts = {len(_COMMA.findall(line.text)) for line in part}
    return len(counts) == 1 and counts.pop() >= COMMAS


def _form(part: Sequence[Line]) -> bool:
    """Whether half of the lines, two at least, leave room to write in, dots or strokes: a form to fill in."""
    blanks = sum(
        _BLANK.search(line.text) is not None for line in part if ".." in line.text or "__" in line.text
    )
    return blanks > 1 and 2 * blanks >= len(part)


def chorus(part: Sequence[Line], around: int) -> bool:
    """Whether verse stands behind its name, all its lines at the column of the first: `Chorus: Heave away, ...`.

    Behind its number some of the lines may be set in.
    """
    count = _COUNT.match(part[0].text) if len(part) >= STANZA else None
    column = part[0].indent + (count.end() if count else label_end(part[0].text))
    if column == part[0].indent or any(line.indent < column for line in part[1:]):
        return False
    if count is None and any(line.indent > column for line in part[1:]):
        return False
    inside = [line.cut(column, line.end) for line in part]
    return bool(inside[0].text) and (is_stanza(inside, around - column) or verse(inside))


def ragged(part: Sequence[Line], around: int) -> bool:
    """Whether lines are short, and a third of them leave room for the next word by the longest one: none was wrapped."""
    widest = max(line.end for line in part)
    short = all(len(line.text) <= SHORT * around and not SPREAD.search(line.text) for line in part)
    room = sum(shortfall(above, below, widest) >= NEAR for above, below in pairwise(part))
    cut = any(cut_word(above.text, below.text) for above, below in pairwise(part))
    return short and not cut and 3 * room >= len(part) - 1


def _session(part: Sequence[Line]) -> bool:
    """What was typed at a prompt, and what came of it right below."""
    if len(part) < 2 or any(line.indent < part[0].indent for line in part):
        return False
    texts = [line.text for line in part]
    if not (prompted(texts[0]) or _asked(texts)):
        return False
    return not any(carries(above.text, below.text) for above, below in pairwise(part[1:]))


def _asked(texts: Sequence[str]) -> bool:
    """Whether a few small words behind `>` were typed in a game that answers: elsewhere the sign quotes a letter."""
    answered = not texts[1].startswith(">") and not starts_small(texts[1])
    return answered and all(asked(text) for text in texts if text.startswith(">")) and texts[0][:1] == ">"


def typed_on(part: Sequence[Line]) -> bool:
    """Whether something is typed at the same prompt again below, or nothing below reads as text: no key starts between."""
    if not prompted(part[0].text) or not _session(part):
        return False
    again = sum(line.indent == part[0].indent and prompted(line.text) for line in part)
    return again > 1 or (
        part[0].text[0] not in _QUOTES
        and not any(prose(line.text) or (closed(line.text) and line.text.strip(".")) for line in part[1:])
    )


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


def is_stanza(part: Sequence[Line], around: int) -> bool:
    """Lines of verse: most end in a punctuation mark, and all start with a capital or are far from the margin."""
    if len(part) > 3 and _ASIDE.fullmatch(part[-1].text) and part[-1].indent >= part[0].indent + FAR_IN:
        part = part[:-1]  # whose it is
    texts = [line.text for line in part]
    if len(texts) < 3 or _SIGN.search(texts[-1]) is None or not any(map(prose, texts)):
        return False
    ended = sum(_SIGN.search(text) is not None for text in texts)
    capital = all(text.lstrip("\"'")[:1].isupper() for text in texts)
    short = len(texts) > 3 and all(len(text) <= SHORT * around for text in texts) and part[0].indent > 0
    if any(shortfall(a, b, around) < 2 or cut_word(a.text, b.text) for a, b in pairwise(part)):
        return False
    if any(SPREAD.search(text) for text in texts):
        return False
    whole = sum(map(sentence, texts)) >= 0.6 * len(texts) and not rhymed(texts)
    return ended >= 0.6 * len(texts) and (capital or short) and not whole


def stay_lines(part: Sequence[Line], right: int) -> bool:
    """Whether lines are no running text though nothing shows that they were set as lines: a list, code, names."""
    if len(part) < 2:
        return False
    if all(line.indent >= part[0].indent + 2 for line in part[1:]) and not code(part[0].text):
        if len(part) == 2:
            told = closed(part[1].text) or prose(part[1].text) or _runs_over(part[0], part[1], right)
            explained = sign_alone(part[0].text)
            return not (told or explained) or code(part[1].text)
        part = part[1:]
    if len(part) > 2 and all(labelled(line.text) for line in part):
        return True
    if len(part) == 2 and _ASIDE.fullmatch(part[0].text) and sentence(part[1].text):
        return False
    valued = sum(_VALUE.search(line.text) is not None for line in part)
    if valued >= VALUES:
        return True
    if any(cut_word(above.text, below.text) for above, below in pairwise(part)):
        return False
    texts = [line.text for line in part]
    whole = sum(sentence(text) for text in texts[:-1]) + (sentence(texts[-1]) or prose(texts[-1]))
    if whole >= 0.6 * len(texts) and not any(prompted(text) for text in texts):
        return False
    if ended_alike(part) or left_short(part):
        return True
    coded = sum(map(typed, texts))
    if coded > 0.5 * len(texts) and sum(code(text) for text in texts) >= 1:
        return True
    if any(map(with_options, texts)) and len({text.split(maxsplit=1)[0] for text in texts}) == 1:
        return True
    if _same_command(texts):
        return True
    if goes_on(part) or carried(part) or _enumerated(part, right) or _cut_by_long_word(part, right):
        return False
    if _each_begins(texts):
        return True
    widest = max(line.end for line in part)
    if widest >= right - NARROW and reads(part, right):
        return False
    if widest >= right - NARROW and any(prose(text) for text in texts):
        return _verse(part, right)
    return not narrow_prose(part, right)


def _same_command(texts: Sequence[str]) -> bool:
    """Whether all lines start with the same command behind a stroke: `/join`."""
    first = texts[0].partition(" ")[0]
    return first[1:].isalpha() and first[0] == "/" and all(text.partition(" ")[0] == first for text in texts)


def _each_begins(texts: Sequence[str]) -> bool:
    """Whether each of several lines starts with a capital and none before the last ends a sentence or clause: what a program says."""
    return (
        len(texts) >= MESSAGES
        and all(text[:1].isupper() and not hangs(text) for text in texts)
        and not any(closed(text) or ". " in text for text in texts[:-1])
    )


def _runs_over(above: Line, below: Line, right: int) -> bool:
    """Whether a full line stops in the middle of a sentence that goes on in small letters, a little deeper."""
    stops = prose(above.text) and not closed(above.text) and starts_small(below.text)
    return stops and below.indent - above.indent <= STEP and shortfall(above, below, right) < 0


def _enumerated(part: Sequence[Line], right: int) -> bool:
    """Whether full lines stop at the commas of an enumeration."""
    full = all(shortfall(above, below, right) < 0 for above, below in pairwise(part))
    return full and all(line.text.endswith(",") and not code(line.text) for line in part[:-1])


def _cut_by_long_word(part: Sequence[Line], right: int) -> bool:
    """Whether the first of two lines reads as text and stops without an end where the next word found no room."""
    if len(part) != 2 or part[0].indent != part[1].indent:
        return False
    above, below = part
    open_ = prose(above.text) and not closed(above.text) and not typed(below.text)
    return open_ and shortfall(above, below, right) < 0


def _verse(part: Sequence[Line], right: int) -> bool:
    """Lines that all start with a capital, and mostly end before the margin or all with room for the next word."""
    if len(part) < 3:
        return False
    capital = sum(line.text[:1].isupper() for line in part)
    if capital == len(part) and all(shortfall(above, below, right) > 1 for above, below in pairwise(part)):
        return True
    short = sum(shortfall(above, below, right) > NARROW for above, below in pairwise(part))
    return capital >= 0.9 * len(part) and short >= 0.8 * (len(part) - 1)
