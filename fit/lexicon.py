"""Which words English has. The only door to pyspellchecker, whose word list (MIT) comes with it.

Used as evidence where a line-end hyphen has to be judged: "key-" + "board" is a word, "read-" + "only" is not.
"""

from __future__ import annotations

import gzip
import json
from functools import cache
from importlib import resources

import spellchecker

RARE = 50
"""The list's count for words it took from a plain word list and never met in running text."""

BRITISH = (("our", "or"), ("ise", "ize"), ("isi", "izi"), ("tre", "ter"), ("ogue", "og"), ("ence", "ense"))
"""The list is American: a British spelling counts as known where its American one is."""


@cache
def _words() -> dict[str, int]:
    """The list alone: the checker around it takes longer to make than the list to read."""
    packed = (resources.files(spellchecker) / "resources" / "en.json.gz").read_bytes()
    words: dict[str, int] = json.loads(gzip.decompress(packed))
    return words


def frequency(word: str) -> int:
    """How often the list's texts have the word (any case); 0 where it does not know it."""
    return _words().get(word.lower(), 0)


def is_word(word: str) -> bool:
    """Whether the list knows the word, its British spelling allowed for."""
    small = word.lower()
    if frequency(small):
        return True
    return any(
        frequency(small.replace(british, american)) > 0 for british, american in BRITISH if british in small
    )
