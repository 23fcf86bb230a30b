"""Words that the English word list does not know: hyphenated only where they are made of words that it knows.

The patterns were made for words of the language; they part a name, or what a program calls a thing, anywhere. A reader
takes no harm from a hyphen in `super|user`, and none from one in a word with a known ending.
"""

from __future__ import annotations

from typing import Final

from fit.hyphenation import LEAST_AFTER, LEAST_BEFORE, break_points
from fit.lexicon import frequency, is_word

_PREFIXES: Final = {
    "anti", "auto", "counter", "cyber", "de", "dis", "hyper", "infra", "inter", "intra", "macro", "meta", "micro", "mini",
    "mis", "mono", "multi", "non", "out", "over", "para", "photo", "poly", "post", "pre", "proto", "pseudo", "quasi", "re",
    "semi", "sub", "super", "tele", "trans", "tri", "ultra", "un", "under", "uni",
}  # fmt: skip
_ENDINGS: Final = ("s", "es", "ed", "ing", "er", "ers", "able", "ly", "ness", "less")
_SHORTEST: Final = 4
"""Letters of a word that another is made of, at least."""
COMMON: Final = 1000
"""The list's count for such a word, at least: any letters are some word of it."""


def known_points(word: str, language: str) -> tuple[int, ...]:
    """The break points of a word, ascending; of one that English does not know only those between what it knows."""
    points = break_points(word, language)
    if not points or not language.startswith("en") or is_word(word):
        return points
    small = word.lower()
    found = _between_words(small, language) | _before_ending(small, points, language)
    return tuple(sorted(at for at in found if LEAST_BEFORE <= at <= len(word) - LEAST_AFTER))


def _between_words(small: str, language: str) -> set[int]:
    """The seam of a compound with the points of both its parts; nothing where there is no such seam."""
    seams = (
        at
        for at in range(LEAST_BEFORE, len(small) - _SHORTEST + 1)
        if frequency(small[at:]) >= COMMON
        and (small[:at] in _PREFIXES or (at >= _SHORTEST and frequency(small[:at]) >= COMMON))
    )
    best = max(seams, key=lambda at: (small[:at] in _PREFIXES, frequency(small[at:])), default=0)
    if not best:
        return set()
    right = {best + at for at in break_points(small[best:], language)}
    return {best, *break_points(small[:best], language), *right}


def _before_ending(small: str, points: tuple[int, ...], language: str) -> set[int]:
    """The points of the known word that a word is with an ending, and the one between both."""
    stems = {small.removesuffix(ending) for ending in _ENDINGS if small.endswith(ending)}
    stem = max((stem for stem in stems if frequency(stem)), key=len, default="")
    return {at for at in points if at in break_points(stem, language) or at == len(stem)} if stem else set()
