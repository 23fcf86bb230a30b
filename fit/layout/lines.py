"""What a layout is made of: lines whose every character knows its source, and pages of lines."""

from __future__ import annotations

from array import array
from dataclasses import dataclass
from typing import Final, NamedTuple

from fit.document.blocks import Kind
from fit.units import Span

INSERTED = -1
"""The source of a character that the layout put in."""


class LineFlag:
    """What is to be known of a line besides its text: bits of ``Line.flags``.

    Plain numbers, since those of an `enum.IntFlag` took a quarter of the time of a layout.
    """

    NONE: Final = 0
    FIRST: Final = 1
    """First line of its unit: a paragraph, an item, a row of a table, a line that stays a line."""
    LAST: Final = 2
    """Last line of its unit; in flowing text, the last line of a paragraph."""
    HYPHEN: Final = 4
    """Ends in a hyphen that the layout put in; the word goes on in the next line."""
    JOINED: Final = 8
    """The word goes on in the next line without a hyphen put in: cut after / . _ - or between wide characters."""
    MARKED: Final = 16
    """Ends in the mark of a cut; without it, the next line's text (its indentation left out) goes on here."""
    BLANK: Final = 32
    """Parts blocks; no content, left out where a page begins or ends."""
    REPEATED: Final = 64
    """A table header repeated on a later page."""
    RULE: Final = 128
    """Drawn by the layout: parts panels or stands under a table's header."""
    ADDED: Final = 256
    """Asked for by an option: contents, page number, label of a panel."""
    HEADER: Final = 512
    """Of a table's header; what follows it belongs on the same page."""
    PARTED: Final = 1024
    """Ends between two words that belong together, for want of room."""
    WITH_NEXT: Final = 2048
    """LAST, but the next line belongs to the same thing for a page break: a field of a record, a label above its text."""
    FLOWING: Final = 4096
    """Broken by the line breaker: counts in the raggedness where it is not LAST."""
    LABEL: Final = 8192
    """Of an item that is its label and has no text of its own: what stands below it explains it."""


class Line(NamedTuple):
    """One line of output, never with blanks at its end."""

    text: str
    sources: array[int]
    """For each character of ``text`` its offset in the decoded document, or `INSERTED`."""
    block: int
    """Index in ``document.blocks``; -1 for a blank line between blocks, contents, page numbers."""
    kind: Kind | None
    """The block's kind; None where ``block`` is -1."""
    flags: int
    """Bits of `LineFlag`."""
    slack: int = 0
    """FLOWING: the cells left free at the end of the line."""
    heading_level: int = 0
    """HEADING: its level; otherwise 0."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A page break where no reader would turn."""

    page: int
    """The page, from 0, that ends in it."""
    what: str
    """heading last, heading split, label last, table header last, first line alone, last line alone, item split, row
    split, picture split. Items, rows and pictures are said to be split only where they would fit on a page."""
    block: int
    forced: bool
    """Whether no break would do, since what belongs together there is higher than a page."""


@dataclass(frozen=True, slots=True)
class Decision:
    """What was done with a block that could not stay as it was, or a rule that could not be kept."""

    block: int
    kind: Kind
    what: str
    """One sentence."""
    degraded: bool = False
    """Whether it is a rule that could not be kept."""


@dataclass(frozen=True, slots=True)
class Figures:
    """One column of the report: before, or after."""

    lines: int
    lines_over_width: int
    raggedness: float
    """Mean squared slack, in cells, of the lines of paragraphs and items that are not last in their paragraph."""
    hyphens: int
    """Lines that end in a hyphen that is no part of the word."""
    pages: int
    page_faults: int
    forced_faults: int = 0
    """Of the page faults, those that no break could have avoided."""
    tall_items: int = 0
    """Items, records and pictures that are higher than a page: they are broken like paragraphs, which is no fault."""


@dataclass(frozen=True, slots=True)
class Layout:
    """A document laid out."""

    lines: tuple[Line, ...]
    pages: tuple[Span, ...]
    """For each page the lines on it, ascending; blank lines between two pages are on neither."""
    faults: tuple[Fault, ...] = ()
    decisions: tuple[Decision, ...] = ()
    before: Figures | None = None
    """The source as it stands on the small screen, lines cut at its width and pages after every so many; None
    for a format whose source nobody reads as it is (HTML, manual page source)."""
    after: Figures = Figures(0, 0, 0.0, 0, 0, 0)
    naive_pages: int = 0
    """The pages it would take to cut the lines after every so many, blank ones too."""
