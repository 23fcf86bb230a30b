"""Where a word may be hyphenated. The only door to pyphen.

The method is Liang's ("Word Hy-phen-a-tion by Com-put-er", 1983), with the pattern files that pyphen brings
for each language. Departures: at least 2 letters stay before a hyphen and 3 after it (TeX's minima for
English), and a point at which the spelling would change is no point, since no letter may be added or lost.
"""

from __future__ import annotations

from functools import cache, lru_cache

import pyphen  # type: ignore[import-untyped]  # it carries no types; this door gives them

from fit.errors import UsageError

LEAST_BEFORE = 2
LEAST_AFTER = 3

LONGEST_WORD = 64
"""Longer runs of letters are data, not words."""

EXCEPTIONS: dict[str, str] = {
    # Plurals whose last letters are no syllable that a line may begin with.
    "courses": "courses",
    "spaces": "spaces",
    # The list in TeX's English pattern file, given from memory.
    "associate": "as-so-ciate",
    "associates": "as-so-ciates",
    "declination": "dec-li-na-tion",
    "obligatory": "oblig-a-tory",
    "philanthropic": "phil-an-thropic",
    "present": "present",
    "presents": "presents",
    "project": "project",
    "projects": "projects",
    "reciprocity": "reci-procity",
    "recognizance": "re-cog-ni-zance",
    "reformation": "ref-or-ma-tion",
    "retribution": "ret-ri-bu-tion",
    "table": "ta-ble",
}
"""English words that the patterns alone would break wrongly."""


@lru_cache(maxsize=1 << 16)
def break_points(word: str, language: str = "en_US") -> tuple[int, ...]:
    """The indices in ``word`` before which a hyphen and a line end may stand, ascending.

    ``word`` is letters only, without the punctuation around it; anything else has no break points: a digit,
    a capital after the first letter, a sign inside make it a name, not a word.
    Raises `UsageError` where there are no patterns for ``language``.
    """
    dictionary = _dictionary(language)
    small = word.lower()
    if not LEAST_BEFORE + LEAST_AFTER <= len(word) <= LONGEST_WORD or not word.isalpha():
        return ()
    if word[1:] != small[1:] or len(small) != len(word):
        return ()
    if language.startswith("en") and small in EXCEPTIONS:
        pieces = EXCEPTIONS[small].split("-")
        ends = [len("".join(pieces[:count])) for count in range(1, len(pieces))]
        return tuple(end for end in ends if LEAST_BEFORE <= end <= len(word) - LEAST_AFTER)
    return tuple(int(point) for point in dictionary.positions(small) if point.data is None)


@cache
def _dictionary(language: str) -> pyphen.Pyphen:
    """The patterns of a language; ``en``, ``en-us`` and ``en_US`` all do."""
    name = pyphen.language_fallback(language)
    if name is None:
        raise UsageError(
            f"there are no hyphenation patterns for the language {language!r}",
            hint=f"use one of {', '.join(sorted({known.split('_')[0] for known in pyphen.LANGUAGES}))}",
        )
    return pyphen.Pyphen(lang=name, left=LEAST_BEFORE, right=LEAST_AFTER)
