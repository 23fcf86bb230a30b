"""What a line at the edge of a page is known by: its shape, which is the line with its numbers blanked."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence, Set as AbstractSet
from itertools import pairwise

from fit.document.text.line import Line
from fit.document.text.signs.markers import Marker, find_marker, follows
from fit.document.text.signs.measure import prose
from fit.document.text.signs.rules import ruled_off

_WORDS = [
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
]  # fmt: skip
ENTRY = 100
"""Lines between two entries of a list, at most."""
LISTED = 0.6
"""Share of the lines with one text that go on from the entry above, at least, where none is a running head."""
NUMBER = re.compile(rf"\d+|(?<![a-z])[ivxlc]+(?![a-z])|(?<=page )(?:{'|'.join(reversed(_WORDS))})(?![a-z])")
_SPACES = re.compile(r"[\s_=-]{2,}|\s")
ONLY_NUMBER = re.compile(r"[^\w#]*(?:page|p\.|pg\.?)?[^\w#]*#(?:[^\w#]+#)?[^\w#]*(?:of #)?[^\w#]*")
EDGE_NUMBER = re.compile(
    r"""^\W{0,3}(?:page\ )?(?P<first>\d+)(?:\W{0,3}$|\s{3,}(?=\S)) | ^(?P<small>[ivxlc]+)\s{3,}(?=\S)
      | (?:\s{3,}|page\ |[-\u2013|/]\ ?|^)\(?\[?(?P<last>\d+)\W{0,3}$ | (?:\s{3,}|page\ )(?P<roman>[ivxlc]+)$""",
    re.IGNORECASE | re.VERBOSE,
)
"""A number at one edge of a line: before or after wide blanks, or after a sign that sets page numbers off."""
LEADER = re.compile(r"(?!\.{2}|\. \.).*(?:\.{4,}|(?: \.){4,})")
"""A leader of dots behind words: an entry of a table of contents, however often such lines come back."""
_DRAWN = re.compile(r"[+|\u2500-\u257f].*[+|\u2500-\u257f]$")
TITLE = re.compile(
    r"\W*(?:chapter|section|part|lesson|appendix|unit|article|book|exercise|module|act|scene"
    r"|figure|fig\.?|table|plate|map|chart|listing|example|illustration)\W+#\W*(?:[^#]*)"
)
"""The shape of a title or caption: a running head of that kind comes back with the same number."""
_PAGE_WORD = re.compile(r"\bp(?:age|g|p)?\b|[-\u2013\u2014|/[] ?#|# ?[-\u2013\u2014|/\]]")
_WORDS_AND_NUMBER = re.compile(r"[^\W\d_][^#]* #[.:)]?|#[.:)]? [^#]*[^\W\d_]\W*")
_SAYS_PAGE = re.compile(r"\S\s{3,}(?:Page|PAGE|page) (\d{1,4})(?: of \d{1,4})?$")
_WIDE = re.compile(r" {3,}")
_WORD = re.compile(r"[^\W\d_]+")
_COUNT = re.compile(r"(\d{1,6})\s")
ROW_GAPS = 2
"""Wide blanks of a row of a table that the row touching it shows to be one, at least."""
MIRRORED = "the same at both edges"
"""The shape of every line that has one word at both edges, as the heads of reference manuals."""
WORDY = 6
"""Letters that the constant part of a running head has, at least."""
LONGEST_NUMBER = 6
"""Digits below which a number can be that of a page."""
_ROMAN = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100}


def shape(text: str) -> str:
    """A line with its numbers and spacing blanked."""
    return _SPACES.sub(" ", NUMBER.sub("#", text.strip().lower()))


def parts(text: str) -> list[str]:
    """The words at the edges of a line that wide blanks part: a running head has its book on one side."""
    found = _WIDE.split(text.strip())
    if len(found) not in {2, 3}:
        return []
    return [part for part in {found[0], found[-1]} if sum(map(str.isalpha, part)) >= WORDY]


def mirrored(text: str) -> bool:
    """Whether a line has the same words at both edges and much blank between."""
    found = _WIDE.split(text.strip())
    return len(found) in {2, 3} and found[0] == found[-1] and "        " in text.strip()


def reads_on(text: str) -> bool:
    """Whether a line reads as running text: wide blanks part the words of a running head from its number."""
    return prose(text) and len(_WIDE.split(text.strip())) not in {2, 3}


def page_value(text: str) -> int | None:
    """The last number of a line that can be a page number, or the one before it: `Page 2 of 5`."""
    found = [*NUMBER.finditer(text.lower())]
    if len(found) > 1 and text[found[-2].end() : found[-1].start()] == " of ":
        return _value(found[-2].group())
    return _value(found[-1].group()) if found else None


def says_page(text: str, number: int) -> bool:
    """Whether a line ends, behind wide blanks, with the word page and this number: `The Log          Page 2 of 5`."""
    found = _SAYS_PAGE.search(text)
    return found is not None and int(found[1]) == number


def edge_values(text: str) -> list[int]:
    """The numbers at the edges of a line that can be page numbers."""
    values = [
        _value(next(group for group in found.groups() if group).lower())
        for found in EDGE_NUMBER.finditer(text.strip())
    ]
    return [value for value in values if value is not None]


def _value(digits: str) -> int | None:
    if digits.isdigit():
        return int(digits) if len(digits) < LONGEST_NUMBER else None
    if digits in _WORDS:
        return _WORDS.index(digits) + 1
    values = [_ROMAN[char] for char in digits]
    return sum(-a if a < b else a for a, b in pairwise([*values, 0]))


def stands_alone(lines: Sequence[Line], index: int, known: AbstractSet[int] = frozenset()) -> bool:
    """Whether a line has nothing right above and below it but furniture that is ``known``."""
    before = index == 0 or not lines[index - 1].cells or lines[index].page or index - 1 in known
    after = (
        index + 1 >= len(lines) or not lines[index + 1].cells or lines[index + 1].page or index + 1 in known
    )
    return before and after


def drawn(lines: Sequence[Line], index: int, known: AbstractSet[int] = frozenset()) -> bool:
    """Whether a line is part of a frame or a table: drawn at both its ends, with more of it above or below."""
    return _DRAWN.match(lines[index].text) is not None and not stands_alone(lines, index, known)


def tabular(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is a row of a table: with the one that touches it, it counts on at one column or is built alike."""
    return any(
        _next_row(lines[first], lines[first + 1])
        for first in (index - 1, index)
        if 0 <= first < len(lines) - 1 and not lines[first + 1].page
    )


def _next_row(line: Line, below: Line) -> bool:
    """Whether a line counts on from one right above it, or has cells as wide blanks part them, of the same signs."""
    if line.indent != below.indent or not line.cells:
        return False
    first, second = _COUNT.match(line.text), _COUNT.match(below.text)
    if first is not None and second is not None and int(second[1]) == int(first[1]) + 1:
        return True
    return len(_WIDE.findall(line.text)) >= ROW_GAPS and _WORD.sub("a", shape(line.text)) == _WORD.sub(
        "a", shape(below.text)
    )


def set_off(lines: Sequence[Line], index: int, known: AbstractSet[int] = frozenset()) -> bool:
    """Whether a line stands alone, or below a rule that does.

    Words with wide blanks between them may have a rule on either side.
    """
    if stands_alone(lines, index, known) or _under_lone_rule(lines, index, known):
        return True
    if _WIDE.search(lines[index].text) is None:
        return False
    above = lines[index - 1] if index and not lines[index].page else None
    below = lines[index + 1] if index + 1 < len(lines) and not lines[index + 1].page else None
    return all(near is None or not near.cells or ruled_off(near.text) for near in (above, below))


def _under_lone_rule(lines: Sequence[Line], index: int, known: AbstractSet[int]) -> bool:
    """Whether nothing but a rule parts a line from the blank lines around it: a foot, and not the sum of a table."""
    rule = index - 1
    return (
        rule > 0
        and ruled_off(lines[rule].text)
        and not lines[rule - 1].cells
        and not lines[index].page
        and stands_alone(lines, index, {*known, rule})
    )


def listed(lines: Sequence[Line], indices: Sequence[int]) -> set[str]:
    """The texts that come back, but as entries of lists: the one counted before stands above most, `b.` over `c.`.

    So does an entry with a bullet stand below another one with that bullet.
    """
    entries: dict[str, list[bool]] = defaultdict(list)
    for index in indices:
        after = after_entry(lines, index)
        if after is not None:
            entries[lines[index].cells.strip()].append(after)
    return {text for text, signs in entries.items() if sum(signs) >= max(2, LISTED * len(signs))}


def after_entry(lines: Sequence[Line], index: int) -> bool | None:
    """Whether an entry of a list goes on from the one above it; None for what is no such entry, or the first one.

    With a bullet, the first one goes on in the one below it.
    """
    text = lines[index].text
    marker = find_marker(text)
    if marker is None or not (marker.ordinal > 1 or _bulleted(text, marker)):
        return None
    above = _first_marker(lines[max(0, index - ENTRY) : index][::-1], lines[index].indent)
    below = (
        None if marker.ordinal else _first_marker(lines[index + 1 : index + 1 + ENTRY], lines[index].indent)
    )
    return any(other is not None and follows(other, marker) for other in (above, below))


def _first_marker(lines: Sequence[Line], indent: int) -> Marker | None:
    """The first marker at a column in some lines."""
    markers = (find_marker(line.text) for line in lines if line.cells and line.indent == indent)
    return next((marker for marker in markers if marker is not None), None)


def _bulleted(text: str, marker: Marker) -> bool:
    """Whether words follow a bullet: a page number may stand between two signs."""
    return not marker.ordinal and text[marker.text : marker.text + 2].isalpha()


def tight(text: str) -> bool:
    """Whether the number of a line is part of its words, as in a title, and nothing calls it a page number."""
    form = shape(text)
    apart = _WIDE.search(text.strip()) is not None or _PAGE_WORD.search(form) is not None
    return not apart and _WORDS_AND_NUMBER.fullmatch(form) is not None
