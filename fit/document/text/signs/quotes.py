"""Words quoted from another letter: the mark that stands before each line of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import prose

_MARK = re.compile(r"((?:[A-Z]{2,3}|\w)?(?:>\s?)+|[|:]\s)(?=\S)")
_BARE = re.compile(r"(?:>\s?)+|:")
"""A mark with nothing behind it: a blank line of the quotation."""
_NAMED = re.compile(r"([^\W\d_]\w{1,11}>)(?:\s+(?=\S)|$)")
"""The name, or the initials, of who wrote the words; a blank line of the quotation has nothing behind it."""
_NESTED = re.compile(r"(?:[>:] ?)+")
"""Marks that letters of several ages share: `>` and `>>` are one quotation."""

LEAST = 2
"""Lines of a quotation that can be told from what was typed at a prompt, at least."""


def quotation(texts: Sequence[str]) -> bool:
    """Whether all lines have the mark of one quotation before them, and one of them has words behind it."""
    first = _mark(texts[0])
    if not first or any(_mark(text) != first for text in texts):
        return False
    return any(map(_MARK.match, texts)) or (len(texts) >= LEAST and any(map(prose, map(_behind, texts))))


def quoted_words(texts: Sequence[str]) -> bool:
    """Whether several lines are a quotation of running text; what stands in capitals behind a prompt was typed."""
    if len(texts) < LEAST or not quotation(texts):
        return False
    behind = map(_behind, texts)
    return any(prose(text) and not typed(text) and not text.isupper() for text in behind)


def find_quotations(texts: Sequence[str]) -> set[int]:
    """Where a quotation of two lines or more begins or ends, with no blank line to part it from what was said to it."""
    turns: set[int] = set()
    start = 0
    while start < len(texts):
        mark = _shared(texts[start])
        end = start + 1
        while mark and end < len(texts) and _shared(texts[end]) == mark:
            end += 1
        said = any(prose(text) and not typed(text) for text in texts[start:end])
        if mark and end - start > 1 and said:
            turns.update((start, end))
        start = end
    return turns - {0, len(texts)}


def _shared(text: str) -> str:
    """The first sign of a mark without initials, else nothing: with a letter it may be the prompt of a system."""
    return text[0] if text[:1] in {">", ":"} and _mark(text) else ""


def _mark(text: str) -> str:
    """The mark before a line without its blanks, one sign for all ages of a letter; else nothing."""
    match = _MARK.match(text)
    if match is None:
        named = _NAMED.match(text) if ">" in text else None
        return named[1] if named else text[0] if _BARE.fullmatch(text) else ""
    return match[1][0] if _NESTED.fullmatch(match[1]) else match[1].strip()


def _behind(text: str) -> str:
    """What stands behind the mark before a line."""
    return (_MARK if _MARK.match(text) else _NAMED).sub("", text, count=1)
