"""Decoration: glyphs that carry no words. They count neither as shown nor as visible.

* four or more equal glyphs in a row that are neither letter nor digit;
* box-drawing and block characters (the Unicode blocks U+2500 to U+259F);
* words made only of ``|`` with ``+ - = _ :``; a word of the others alone is none;
* the words ``--`` and ``---``.
"""

from __future__ import annotations

import re

_ANY = re.compile(r"[|\u2500-\u259f]|--|([^\w\s]|_)\1{3}")
"""Quick: a row without a match has no decoration."""

_GLYPHS = re.compile(r"[\u2500-\u259f]+|([^\w\s]|_)\1{3,}")
_WORD = re.compile(r"(?<!\S)(?:[+\-=_:]*\|[|+\-=_:]*|---?)(?!\S)")


def find_decoration(text: str) -> list[tuple[int, int]]:
    """The decorated stretches of a row, as places in ``text``, which has one character a glyph; may overlap."""
    if not _ANY.search(text):
        return []
    return [match.span() for pattern in (_GLYPHS, _WORD) for match in pattern.finditer(text)]
