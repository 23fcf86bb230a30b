"""The lines of a cell to its text: running text, and the items of a list each on a line of its own."""

from __future__ import annotations

import re
from array import array
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from fit.document.blocks import Text
from fit.document.text.hyphens import Hyphens
from fit.document.text.make import concat, flow
from fit.document.text.signs.markers import Marker, find_marker, follows
from fit.document.text.signs.measure import prose

_FIELD = re.compile(r"(?<=\S) {2,}(?=\S)")
_VALUE = re.compile(r" *\w{1,8} ?= ?\w")


def cell_text(pieces: Sequence[Text], hyphens: Hyphens) -> Text:
    """The pieces of a cell, one a line of the table, as its text; a line feed stands before each item of a list."""
    if len(pieces) < 2:
        return flow(pieces, hyphens)
    marked = {
        index: marker
        for index, piece in enumerate(pieces)
        if (marker := find_marker(piece.chars.strip(" "))) is not None
    }
    starts = _items(marked) or _values(pieces) or _lined_up(pieces)
    if not starts:
        return flow(pieces, hyphens)
    indents = [len(piece.chars) - len(piece.chars.lstrip(" ")) for piece in pieces]
    bullet = indents[starts[0]]
    left = [
        index
        for index in range(starts[0], len(pieces))
        if indents[index] < bullet and pieces[index].chars.strip(" ")
    ]
    edges = sorted({0, *starts, *left[:1], len(pieces)})
    texts = [flow(pieces[start:end], hyphens) for start, end in pairwise(edges)]
    line_feed = Text("\n", array("q", [-1]), b"\0")
    parts: list[Text] = []
    for text in filter(len, texts):
        parts += [line_feed, text] if parts else [text]
    return concat(parts)


def _values(pieces: Sequence[Text]) -> list[int]:
    """The lines that say what a value means, two at least, below a line that does not: `1 = trim the wick`."""
    found = [index for index, piece in enumerate(pieces) if _VALUE.match(piece.chars)]
    return found if len(found) > 1 and found[0] else []


def _lined_up(pieces: Sequence[Text]) -> list[int]:
    """All lines of a cell in which wide blanks part fields that begin at one column in two of them at least; or none.

    Such lines are records of a program, and no text that was wrapped: where all end at one column, some fields elsewhere, it was.
    """
    held = [index for index, piece in enumerate(pieces) if piece.chars.strip(" ")]
    texts = [pieces[index].chars.rstrip(" ") for index in held]
    wide = [text for text in texts if "  " in text.lstrip(" ")]
    if len(wide) < 2:
        return []
    fields = Counter(match.end() for text in texts for match in _FIELD.finditer(text))
    lined = bool(fields) and max(fields.values()) > 1
    if lined and max(fields.values()) < len(wide) and len({*map(len, wide)}) == 1:
        return []
    return held if lined and 2 * sum(map(prose, texts)) <= len(texts) else []


def _items(marked: dict[int, Marker]) -> list[int]:
    """The lines that start the items of one list of two or more: bullets of one kind, or numbers that count."""
    for first, marker in marked.items():
        alike = [index for index, other in marked.items() if index >= first]
        counted = marker.kind.startswith("bullet") or (
            marker.ordinal == 1 and all(follows(marked[a], marked[b]) for a, b in pairwise(alike))
        )
        if len(alike) > 1 and counted:
            return alike
    return []
