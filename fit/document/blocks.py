"""The blocks of a document: what every reader makes and the layout takes.

Text is never a bare string here: each character knows where it stands in the document, so that the
layout can prove that every word came through.
"""

from __future__ import annotations

from array import array
from collections import Counter
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final


class Mark:
    """How a character is set off; bits of ``Text.marks``: plain numbers, as those of `enum.IntFlag` are slow."""

    NONE: Final = 0
    BOLD: Final = 1
    UNDERLINE: Final = 2
    CODE: Final = 4
    NO_BREAK: Final = 8
    """No line break, and no hyphen, may follow this character."""
    PROGRAM: Final = 16
    """Of a line of program text among other text, in a cell: where it is continued, it needs a mark."""


@dataclass(frozen=True, slots=True)
class Text:
    """Characters with their places. The three parts have one length."""

    chars: str = ""
    sources: array[int] = field(default_factory=lambda: array("q"))
    """For each character its offset in the decoded document; -1 where the reader put it in (a joining space)."""
    marks: bytes = b""
    """For each character bits of `Mark`."""

    def __len__(self) -> int:
        return len(self.chars)

    def again(self) -> Text:
        """The text once more, with no place in the document."""
        return Text(self.chars, array("q", [-1]) * len(self), self.marks)


class Kind(StrEnum):
    """What a block is."""

    HEADING = "heading"
    PARAGRAPH = "paragraph"
    ITEM = "item"
    TABLE = "table"
    PREFORMATTED = "preformatted"
    """Code, transcripts, verse, addresses: lines stay lines."""
    PICTURE = "picture"
    """Drawings whose columns belong together."""
    NOTE = "note"
    """A footnote or a list of link addresses, set where its page or the document ends."""
    FURNITURE = "furniture"
    """Running heads and page numbers: taken out, reported."""


@dataclass(frozen=True, slots=True)
class Block:
    """One block. Which parts are used follows from ``kind``."""

    kind: Kind
    text: Text = field(default_factory=Text)
    """HEADING, PARAGRAPH, ITEM, NOTE: the flowing text, white space folded to single spaces. In paragraphs and items
    a line feed stands where the document ends a line."""
    label: Text = field(default_factory=Text)
    """ITEM, NOTE: the bullet, number or hanging key, as it stood."""
    level: int = 0
    """HEADING: 1 is the highest. Others: depth of indentation, 0 at the margin."""
    lines: tuple[Text, ...] = ()
    """PREFORMATTED, PICTURE, FURNITURE: lines as they stood. TABLE: the rows as drawn, where the source drew any."""
    rows: tuple[tuple[Text, ...], ...] = ()
    """TABLE: cells by row; every row has the same number of cells. A line feed stands where the document ends a line.
    A cell over several columns or rows may stand in each of them, with no place in the document but in the first."""
    header_rows: int = 0
    """TABLE: how many of ``rows`` are headers."""
    code: bool = False
    """PREFORMATTED: program text, where a continued line needs a mark."""
    apart: bool = False
    """Deeper than the item above it, but no part of it: a quotation after a list begins here."""
    note: str = ""
    """What the reader decided and why, where it is worth a line in the report."""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """What stands in a plain text and in none of its blocks."""

    words: tuple[str, ...] = ()
    """Runs of characters with a letter or digit among them: lost by the reader."""
    hyphens: int = 0
    """Hyphens that a line end put into a word."""
    signs: Counter[str] = field(default_factory=Counter)
    """Other characters, of rules, frames, leaders and underlines."""


@dataclass(frozen=True, slots=True)
class Document:
    """A document read."""

    source: str
    """The decoded text; offsets in `Text` point into it."""
    blocks: tuple[Block, ...]
    format: str
    """text, wordproc, markdown, html, man."""
    encoding: str
    name: str = ""
    remarks: tuple[str, ...] = ()
    """What was decided or not understood, one sentence each."""
    left_out: LeftOut | None = None
    """What none of the blocks holds; None where the source is markup, or stays as it is."""
