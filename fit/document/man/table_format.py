"""The format of a table of tbl(1): for each of its lines how the columns of a row stand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from fit.document.blocks import Mark

_KEY: Final = re.compile(
    r"([lrcnasLRCNAS^])"
    r"((?:\s*(?:[wW]\([^)]*\)|[fF]\([^)]*\)|[fF]\S{1,2}|[pPvV][-+]?[0-9]+|[bBiIeEtTuUzZdDxX]|[0-9]+|\|))*)"
    r"|[|_=-]"
)
MOST_HEADERS: Final = 3
"""Rows of a header."""
_BOLD: Final = re.compile(r"[bB]|[fF]\(?B", re.ASCII)
_ITALIC: Final = re.compile(r"[iI]", re.ASCII)


class Column(NamedTuple):
    """How the format sets a column in a row."""

    key: str
    font: int


def columns_of(chars: str) -> Iterator[list[Column]]:
    """The columns of each row that a line of the format is for; none for a rule."""
    for part in chars.rstrip(".").split(","):
        columns = [Column(found[1].lower(), _font(found[2])) for found in _KEY.finditer(part) if found[1]]
        if columns or (part.strip() and set(part.strip()) <= set("_=-| \t")):
            yield columns


def head_lines(formats: Sequence[Sequence[Column]]) -> int:
    """The lines of a format before its last, where each aligns a column otherwise than that one does for the body."""
    *heads, body = [line for line in formats if line] or [[]]
    if len(heads) > MOST_HEADERS or any(each.key == "^" for each in body):
        return 0
    return len(heads) if all(_aligns_anew(head, body) for head in heads) else 0


def _aligns_anew(head: Sequence[Column], body: Sequence[Column]) -> bool:
    """Whether a column stands otherwise; one set in below another (``a`` below ``l``) belongs to it."""
    return any(
        above.key not in ("s", below.key) and (above.key, below.key) != ("l", "a")
        for above, below in zip(head, body, strict=False)
    )


def _font(options: str) -> int:
    if _BOLD.search(options):
        return Mark.BOLD
    return Mark.UNDERLINE if _ITALIC.search(options) else Mark.NONE
