"""Where the pieces of a Markdown document stand.

The parser tells lines but no columns, so each piece of text is looked for in the lines of its block, from
where the last one ended.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from fit.document.characters import TextBuilder
from fit.document.markdown.parser import Token

_LINE_END: Final = re.compile(r"\r\n?|\n")

_BLANK_OR_QUOTED: Final = " \t>"
"""Of what a line consists that is empty but for the marks of quotations."""


class Places:
    """The lines of a document, and how far it was read."""

    def __init__(self, source: str) -> None:
        self.source = source
        self.lines = [0, *(found.end() for found in _LINE_END.finditer(source)), len(source)]
        """Where each line begins, and the end."""
        self.cursor = 0
        """Where the last piece of text ended."""

    def span(self, token: Token) -> tuple[int, int]:
        """Where the lines of a block begin and end."""
        assert token.map is not None
        return self.lines[token.map[0]], self.lines[token.map[1]]

    def bare(self, token: Token) -> str:
        """The document with blanks for the marks of the quotations and items in which the lines of a block stand."""
        assert token.map is not None
        source = self.source
        own = [line for line in token.content.split("\n") if line.strip()][::-1]
        for number in range(*token.map):
            begin, end = self.lines[number], self.lines[number + 1]
            line = source[begin:end].rstrip()
            marks = line.removesuffix(own[-1].strip()) if own else line
            if own and marks != line:
                own.pop()
            elif line.strip(_BLANK_OR_QUOTED):
                return self.source  # tabs in front of it, or other lines than those of the block
            if marks.strip():
                source = source[:begin] + " " * len(marks) + source[begin + len(marks) :]
        return source

    def end_of(self, token: Token) -> int:
        """Where the lines of a block end; of one that tells no lines, the document."""
        return len(self.source) if token.map is None else self.lines[token.map[1]]

    def go_on(self, place: int) -> None:
        """Look no further back than ``place`` from now on."""
        self.cursor = max(self.cursor, place)

    def find(self, written: str, end: int) -> int:
        """Where the next piece of this wording stands before ``end``; -1 where there is none."""
        return self.source.find(written, self.cursor, end)

    def put(self, target: TextBuilder, chars: str, written: str, end: int, mark: int) -> None:
        """Add a piece of text, found in the source as ``written`` or, where lines were joined, bit by bit."""
        if not chars:
            return
        at = self.source.find(written, self.cursor, end)
        if at >= 0:
            self.cursor = at + len(written)
            target.add(chars, _spread(at, chars, written), mark)
            return
        for char in chars:
            found = self.source.find(char, self.cursor, end) if not char.isspace() else -1
            target.add(char, (found if found >= 0 else self.cursor,), mark)
            self.cursor = found + 1 if found >= 0 else self.cursor


def _spread(at: int, chars: str, written: str) -> Sequence[int]:
    """A place for each character of a piece written as ``written``: an escape, an entity, or itself."""
    if chars == written:
        return range(at, at + len(chars))
    return [at + len(written) - 1 if written.startswith("\\") else at] * len(chars)
