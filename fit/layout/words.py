"""What a word allows: where it may be parted inside, and which neighbours it must not be parted from.

Non-breaking units are common practice among typesetters (the ties of TeX), no source; the list of units is that
of the International System's brochure as far as manuals of small computers use it, with the trade's own.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final, NamedTuple
from unicodedata import category

from fit.document.text.hyphens import Hyphens, Joint
from fit.layout.costs import End
from fit.layout.unknown_words import known_points


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


_OPEN = r"(?:``|[(\[{<\"'*\u201c\u2018\u00ab\u201e])*"
_CLOSE = r"[*)\]}>\"'\u201d\u2019\u00bb.,;:!?\u2026]*"
_LETTERS = r"[^\W\d_]+"
_TAIL = r"((?:['\u2019][^\W\d_]{1,2})?)"
_PLAIN = re.compile(rf"{_OPEN}({_LETTERS}){_TAIL}{_CLOSE}(?:(?:--|\u2014).*)?")
_COMPOUND = re.compile(rf"{_OPEN}{_LETTERS}(?:-{_LETTERS})+{_TAIL}{_CLOSE}")
_DASHED = re.compile(r"(?<=[^\W\d_.,;:!?)\"'\u2019\u201d])(?:--|\u2014)(?=[^\W_\"'(\u2018\u201c])")
_APART = re.compile(r"(?<=[^/_\W][^/_][/_])(?=[^/_\W]\w)|(?<=://)(?=\w)")
_NAME_INSIDE = re.compile(r"[/\\_@=~]|\w\.\w|^-")

_UNITS = _set(
    "m km cm mm nm kg g mg s ms us min h V mV kV W kW mW A mA Ah Hz kHz MHz GHz K M G B kB KB MB GB Mb kb kbit Mbit "
    "bit/s kbit/s Bd bps cps dpi % \u00b0 \u00b0C \u00b0F C F ft yd lb oz kn hPa mbar Pa bar N J l ml dB lm cd lx ohm "
    "a.m. p.m. am pm AM PM x \u00d7"
)
_TITLES = _set("Mr Mr. Mrs Mrs. Ms Ms. Dr Dr. Prof. St St. Capt. Lt. Sgt.")
_REFERENCES = _set(
    "p. pp. no. nos. nr. fig. figs. vol. ch. sec. sect. eq. \u00a7 \u00a7\u00a7 page pages figure figures table tables chapter "
    "chapters section sections appendix part step line lines row column version number volume"
)
_NUMBER = re.compile(rf"{_OPEN}[-+\u2212\u00b1]?[$\u00a3\u20ac]?\d[\d.,:/\u2013-]*")
_OPTION = re.compile(rf"{_OPEN}--?[^\W\d_][\w-]*|/[A-Z?]")
_INITIALS = re.compile(rf"{_OPEN}(?:[^\W\d_a-z]\.)+")
_NAME = re.compile(r"[^\W\d_a-z]\w*")
_VALUE = re.compile(r"[A-Z][A-Z0-9_-]+|<[^<>]+>|\[?[A-Z]+\]?|\d+")
_DASH = re.compile(r"--|[\u2013\u2014]")
_MARKER = re.compile(r"[-*+o\u2022\u00b7]|\(?(?:\d{1,3}|[A-Za-z]|[ivx]{1,4})[.)]")
_CLOSING = re.compile(r"[)\]}!?,;:./\u00bb\u2019\u201d\u2026]+")
_TRAILING = ".,;:!?)]}\"'\u201d\u2019\u00bb"


_READER = Hyphens("")
"""Our own judge of line-end hyphens, without a document: where it would put a word together wrongly, no line ends."""


class Tie:
    """Reasons for which two words stay together, as bits. A pair is tied where both name one reason."""

    NUMBER: Final = 1
    """A number and its unit."""
    OPTION: Final = 2
    """An option and its value."""
    INITIALS: Final = 4
    """Initials and a name."""
    TITLE: Final = 8
    """A title and a name."""
    REFERENCE: Final = 16
    """`page 5`, `Fig. 2`."""
    ALWAYS: Final = 32
    """On the right: a dash, which ends a line and begins none, a closing mark at its beginning, and what would
    look like the label of an item."""
    OPENING: Final = 64
    """On the left: an opening mark at its end."""


class Word(NamedTuple):
    """What is to be known of a word, whatever the width."""

    inside: tuple[tuple[int, End], ...]
    """Where a line may end inside, ascending: the index of the first character of the next line, and whether a
    hyphen is put in (`End.HYPHEN`) or the word is parted as it is (`End.JOINED`): after the hyphen of a compound,
    after a dash."""
    apart: tuple[int, ...]
    """Where a name may be parted rather than leave a third of a line empty, with nothing put in: after / or _."""
    left: int
    """The `Tie` it has with the word on its right."""
    right: int
    """The `Tie` it has with the word on its left."""


@lru_cache(maxsize=1 << 16)
def analyse(word: str, language: str) -> Word:
    """Look at one word, with the punctuation around it. ``language`` is empty where nothing is hyphenated."""
    inside = [(joint, End.JOINED) for joint in _joints(word)]
    if language:
        inside += [(point, End.HYPHEN) for point in _hyphens(word, language)]
    apart = tuple(match.start() for match in _APART.finditer(word)) if "/" in word or "_" in word else ()
    return Word(tuple(sorted(inside)), apart, _left(word), _right(word))


def _hyphens(word: str, language: str) -> tuple[int, ...]:
    match = _PLAIN.fullmatch(word)
    if match is None:
        return ()
    start, end = match.start(1), match.end(2)
    points = (start + point for point in known_points(match[1], language))
    return tuple(at for at in points if _READER.letters(word[start:at], word[at:end]) is Joint.DROP)


def _joints(word: str) -> tuple[int, ...]:
    if ("-" not in word and "\u2014" not in word) or _NAME_INSIDE.search(word):
        return ()
    if _COMPOUND.fullmatch(word):
        own = (index + 1 for index, char in enumerate(word) if char == "-")
        return tuple(at for at in own if _READER.joint(word[:at], word[at:]) is Joint.CLOSE)
    return tuple(match.end() for match in _DASHED.finditer(word))


def _bare(word: str) -> str:
    """The word without combining marks."""
    return word if word.isascii() else "".join(char for char in word if category(char) != "Mn")


def _left(word: str) -> int:
    tie: int = Tie.ALWAYS
    if category(_bare(word)[-1:] or " ") in ("Ps", "Pi"):
        tie |= Tie.OPENING
    if _NUMBER.fullmatch(word):
        tie |= Tie.NUMBER
    if _OPTION.fullmatch(word):
        tie |= Tie.OPTION
    if _INITIALS.fullmatch(word):
        tie |= Tie.INITIALS
    if word in _TITLES:
        tie |= Tie.TITLE
    if word.lower().lstrip("([") in _REFERENCES:
        tie |= Tie.REFERENCE
    return tie


def _right(word: str) -> int:
    bare = word.rstrip(_TRAILING)
    tie: int = Tie.OPENING
    if bare in _UNITS or word in _UNITS:
        tie |= Tie.NUMBER
    if _VALUE.fullmatch(bare) or _VALUE.fullmatch(word):
        tie |= Tie.OPTION
    if _NAME.fullmatch(bare):
        tie |= Tie.INITIALS | Tie.TITLE
    if _NUMBER.fullmatch(bare):
        tie |= Tie.REFERENCE | Tie.OPTION
    if (
        category(word[0]) in ("Pe", "Pf")
        or _DASH.fullmatch(word)
        or _MARKER.fullmatch(word)
        or _CLOSING.fullmatch(_bare(word))
    ):
        tie |= Tie.ALWAYS
    return tie
