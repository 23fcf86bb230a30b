"""Tables of HTML that blank lines part: CommonMark ends a piece of HTML at a blank line, a table goes on to its end."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from fit.document.markdown.parser import Token

_PIECE: Final = "html_block"
_TABLE: Final = re.compile(r"<(/?)table\b", re.IGNORECASE)
_CELL: Final = re.compile(r"<t[dhr]\b", re.IGNORECASE)


def open_tables(html: str, before: int = 0) -> int:
    """How many tables are open behind a piece of HTML, of ``before`` ahead of it."""
    for match in _TABLE.finditer(html):
        before = max(0, before - 1) if match[1] else before + 1
    return before


def has_cells(html: str) -> bool:
    """Whether a piece of HTML begins a row or a cell."""
    return _CELL.search(html) is not None


def whole_tables(tokens: Sequence[Token]) -> list[Token]:
    """The tokens, the pieces of each table made one where nothing of Markdown stands between them."""
    ends = _ends_of_tables(tokens)
    whole: list[Token] = []
    at = 0
    while at < len(tokens):
        token, end = tokens[at], ends.get(at, at)
        last = tokens[end]
        if end > at and token.map is not None and last.map is not None:
            content = "\n".join(piece.content for piece in tokens[at : end + 1])
            token = replace(token, content=content, map=[token.map[0], last.map[1]])
        whole.append(token)
        at = end + 1
    return whole


def _ends_of_tables(tokens: Sequence[Token]) -> dict[int, int]:
    """For pieces in which a table begins that of its end, of the widest table where there are several."""
    ends: dict[int, int] = {}
    opened: list[int] = []
    for at, token in enumerate(tokens):
        if token.type != _PIECE:
            opened.clear()
            continue
        for match in _TABLE.finditer(token.content):
            if not match[1]:
                opened.append(at)
            elif opened:
                ends[opened.pop()] = at
    return ends
