"""Which words English has. The only door to pyspellchecker, whose word list (MIT) comes with it.

Used as evidence where a line-end hyphen has to be judged: "key-" + "board" is a word, "read-" + "only" is not.
"""

from __future__ import annotations

import gzip
import json
import re
from bisect import bisect_left
from functools import cache
from importlib import resources

import spellchecker

RARE = 50
"""The list's count for words it took from a plain word list and never met in running text."""

BRITISH = (("our", "or"), ("ise", "ize"), ("isi", "izi"), ("tre", "ter"), ("ogue", "og"), ("ence", "ense"))
"""The list is American: a British spelling counts as known where its American one is."""


PROBES = 100
"""Lines that are asked whether they are entries."""
_ENTRY = re.compile(r'"[^"\\]+": \d+,?')


def _entry(word: str) -> str:
    return f'"{word}": '


def entries(text: str) -> list[str]:
    """The entries of a list in JSON, `"wick": 50`, in the order of their words; a comma may stand behind each.

    Where the file has one a line they are its lines: to make a dictionary of them took a twentieth of the time of a layout.
    """
    lines = text[1:-1].strip("\n").split("\n")
    if len(lines) == text.count(":") and all(map(_ENTRY.fullmatch, lines[:: 1 + len(lines) // PROBES])):
        lines.sort()
        return lines
    words: dict[str, int] = json.loads(text)
    return sorted(f"{_entry(word)}{count}" for word, count in words.items())


@cache
def _list() -> list[str]:
    """The list alone: the checker around it takes longer to make than the list to read."""
    packed = (resources.files(spellchecker) / "resources" / "en.json.gz").read_bytes()
    return entries(gzip.decompress(packed).decode())


@cache
def frequency(word: str) -> int:
    """How often the list's texts have the word (any case); 0 where it does not know it."""
    known, entry = _list(), _entry(word.lower())
    place = bisect_left(known, entry)
    if place == len(known) or not known[place].startswith(entry):
        return 0
    return int(known[place][len(entry) :].rstrip(","))


def is_word(word: str) -> bool:
    """Whether the list knows the word, its British spelling allowed for."""
    small = word.lower()
    if frequency(small):
        return True
    return any(
        frequency(small.replace(british, american)) > 0 for british, american in BRITISH if british in small
    )
