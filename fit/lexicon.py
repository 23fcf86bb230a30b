"""Which words English has. The only door to pyspellchecker, whose word list (MIT) comes with it.

Used as evidence where a line-end hyphen has to be judged: "key-" + "board" is a word, "read-" + "only" is not.
"""

from __future__ import annotations

from functools import cache

from spellchecker import SpellChecker

RARE = 50
"""The list's count for words it took from a plain word list and never met in running text."""

BRITISH = (("our", "or"), ("ise", "ize"), ("isi", "izi"), ("tre", "ter"), ("ogue", "og"), ("ence", "ense"))
"""The list is American: a British spelling counts as known where its American one is."""


@cache
def _words() -> SpellChecker:
    return SpellChecker(language="en", distance=1)


def frequency(word: str) -> int:
    """How often the list's texts have the word (any case); 0 where it does not know it."""
    return int(_words()[word.lower()])


def is_word(word: str) -> bool:
    """Whether the list knows the word, its British spelling allowed for."""
    small = word.lower()
    if frequency(small):
        return True
    return any(
        frequency(small.replace(british, american)) > 0 for british, american in BRITISH if british in small
    )
