"""What could be typed at a prompt: yes or no, a number in its range, a letter of its menu, a word.

The first fitting kind comes first; what a program of the time would understand comes in capitals.
All of it is common practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

MENU_LINES: Final = 30
"""Lines above a prompt in which its menu may stand."""
MOST_NOUNS: Final = 12
_PROMPT_TAIL: Final = 160

_YES_NO: Final = re.compile(r"\by(?:es)?\b\s*(?:/|or|,)\s*\bno?\b", re.IGNORECASE)
_ANY_KEY: Final = re.compile(
    r"any key|any character|\b(?:press|hit|type|strike|push|tap)\b.{0,30}\b(?:key|return|enter|space|cr|continue)\b"
    r"|<(?:cr|return|enter)>|\bmore\b\W*$|\bcontinue\b\W*$",
    re.IGNORECASE,
)
_SPACE: Final = re.compile(r"\bspace\b", re.IGNORECASE)
_RANGE: Final = re.compile(r"(\d{1,5})\s*(?:-|to|\.\.+|and|thru|through)\s*(\d{1,5})", re.IGNORECASE)
_BETWEEN: Final = r"(?:\s*[,/|]\s*(?:or\s+)?|\s+or\s+)"
_CHOICES: Final = re.compile(
    rf"[(\[<]\s*(\w{{1,10}}(?:{_BETWEEN}\w{{1,10}})+)\s*[)\]>]|\b(\w{{1,10}}\s+or\s+\w{{1,10}})\s*\?\s*$",
    re.IGNORECASE,
)
_MENU_LINE: Final = re.compile(r"^\W*(?:[(\[<]([A-Za-z0-9])[)\]>]|([A-Za-z0-9])\s*(?:[).:=]|-+>?\s))\s*\w")
_INLINE_LETTER: Final = re.compile(r"(?:^|[\s,;:])([A-Z])\s+[-=]?\s*[a-z]{2,}")
_INLINE_MARKED: Final = re.compile(r"[(\[<]([A-Za-z0-9])[)\]>]\s?[A-Za-z]")
_FEWEST_INLINE: Final = 3
"""Letters or digits before words that make a menu; fewer may be a sentence, or things that are counted."""
_COUNTED: Final = re.compile(r"(?:^|\s|[,;:/(])([0-9])(?:\s|[).:=-])\s*(?=[A-Za-z])")
_COUNTED_LINE: Final = re.compile(r"^\W*([0-9])\s+[A-Za-z]")
"""Digits before words, in the prompt itself or one a line above it: choices where they count from 0 or 1."""
_NUMBER: Final = re.compile(
    r"how (?:many|much|long|far)|\bnumber\b|\bamount\b|\blevel\b|\bage\b|#", re.IGNORECASE
)
_NAME: Final = re.compile(r"\bnames?\b|who are you|call you", re.IGNORECASE)
_FILE: Final = re.compile(r"\bfile", re.IGNORECASE)
_WORD: Final = re.compile(r"[A-Za-z]{3,10}")

_COMMON: Final = (
    "LOOK", "HELP", "N", "S", "E", "W", "INVENTORY", "U", "D", "1", "Y", "?", "2", "LIST", "A", "",
)  # fmt: skip
_VERBS: Final = ("TAKE", "OPEN", "READ", "EXAMINE", "USE", "GO")
_LAST: Final = ("NO", "0", "QUIT")
_OWN_WORDS: Final = frozenset((*_COMMON, *_VERBS, *_LAST))
"""Words that may stand on the screen because they were typed."""
_STOP_WORDS: Final = frozenset(
    re.findall(
        r"\w+",
        "the and you are for with that this there have has was were not but can what who how why your from into "
        "here very its his her they them will would could then than one two all any some now see say get out "
        "yes press key type cannot dont understand sorry again",
    )
)


class PromptKind(StrEnum):
    """What a prompt seems to ask for."""

    YES_NO = "yes or no"
    ANY_KEY = "any key"
    RANGE = "number in a range"
    MENU = "menu"
    NUMBER = "number"
    NAME = "name"
    FILE = "file"
    WORDS = "words"


@dataclass(frozen=True, slots=True)
class Prompt:
    """A prompt and what could be typed at it, likeliest first, without a final CR."""

    kind: PromptKind
    text: str
    answers: tuple[str, ...]


def read_prompt(lines: list[str], files: tuple[str, ...] = ()) -> Prompt:
    """The prompt at the end of what was printed since the last key; ``files`` are names it could be asked for."""
    text = lines[-1][-_PROMPT_TAIL:] if lines else ""
    nearby = " ".join(lines[-2:])[-_PROMPT_TAIL:]
    if found := _YES_NO.search(nearby):
        upper = found.group()[0].isupper()
        return Prompt(PromptKind.YES_NO, text, ("Y", "N") if upper else ("y", "n"))
    if _ANY_KEY.search(nearby):
        return Prompt(PromptKind.ANY_KEY, text, (" ", "\r") if _SPACE.search(nearby) else ("\r", " "))
    if span := _RANGE.search(text):
        return Prompt(PromptKind.RANGE, text, _numbers(int(span.group(1)), int(span.group(2))))
    if letters := _menu(lines):
        return Prompt(PromptKind.MENU, text, letters)
    if _FILE.search(text) and files:
        return Prompt(PromptKind.FILE, text, (*files[:3], "TEST.TXT", ""))
    if _NUMBER.search(text):
        return Prompt(PromptKind.NUMBER, text, ("1", "2", "3", "5", "10", "0"))
    if _NAME.search(text):
        return Prompt(PromptKind.NAME, text, ("KEEPER", ""))
    return Prompt(PromptKind.WORDS, text, _words(lines))


def _numbers(low: int, high: int) -> tuple[str, ...]:
    if low > high:
        low, high = high, low
    picked = (low, high, (low + high) // 2, low + 1, high - 1)
    return tuple(dict.fromkeys(str(number) for number in picked if low <= number <= high))


def _menu(lines: list[str]) -> tuple[str, ...]:
    """Letters of a menu above the prompt, or of the choices that it names itself."""
    letters: list[str] = []
    if lines and (choice := _CHOICES.search(lines[-1])):
        letters += re.split(_BETWEEN, choice.group(1) or choice.group(2))
    nearby = " ".join(lines[-3:])
    letters += _counting(_COUNTED.findall(lines[-1]) if lines else [], _FEWEST_INLINE)
    letters += _counting(
        [match.group(1) for line in lines[-MENU_LINES:] if (match := _COUNTED_LINE.match(line))],
        _FEWEST_INLINE,
    )
    inline = _INLINE_LETTER.findall(nearby)
    if len(set(inline)) >= _FEWEST_INLINE:
        letters += inline
    marked = _INLINE_MARKED.findall(nearby)
    if len(set(marked)) > 1:
        letters += marked
    found = [
        match.group(1) or match.group(2) for line in lines[-MENU_LINES:] if (match := _MENU_LINE.match(line))
    ]
    if len(found) > 1:
        letters += found
    return tuple(dict.fromkeys(letters))


def _counting(digits: list[str], fewest: int) -> list[str]:
    """The last of these digits that count up from 0 or 1; none where they are too few to be choices."""
    starts = [index for index, digit in enumerate(digits) if digit in "01"]
    for start in starts:
        first = int(digits[start])
        run = [digit for number, digit in enumerate(digits[start:], first) if digit == str(number)]
        if len(run) == len(digits) - start >= fewest:
            return run
    return []


def _words(lines: list[str]) -> tuple[str, ...]:
    nouns = _nouns(lines)
    pairs = tuple(f"{verb} {noun}" for noun in nouns for verb in _VERBS)
    return (*_COMMON[:7], *nouns[:2], *pairs, *_COMMON[7:], *_LAST)


def _nouns(lines: list[str]) -> list[str]:
    """Words on the screen, later lines first."""
    seen: dict[str, None] = {}
    for line in reversed(lines[-MENU_LINES:]):
        for word in _WORD.findall(line):
            if word.lower() not in _STOP_WORDS and word.upper() not in _OWN_WORDS:
                seen[word.upper()] = None
    return list(seen)[:MOST_NOUNS]
