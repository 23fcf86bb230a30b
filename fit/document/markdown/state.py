"""A Markdown document between two tokens: what is open, and what was made of it so far."""

from __future__ import annotations

from dataclasses import dataclass, field

from fit.document.block_maker import BlockMaker
from fit.document.blocks import Text
from fit.document.characters import TextBuilder
from fit.document.html.lists import Lists
from fit.document.markdown.addresses import Addresses
from fit.document.markdown.parser import Token
from fit.document.markdown.places import Places


@dataclass(slots=True)
class State:
    """The state of a document being read; the functions that take tokens change it."""

    places: Places
    addresses: Addresses
    maker: BlockMaker = field(default_factory=BlockMaker)

    numbers: list[int | None] = field(default_factory=list)
    """The open lists: the next number, None where they have bullets."""
    lists: Lists = field(default_factory=Lists)
    """The lists that tags in running text opened."""
    marks: list[int] = field(default_factory=list)
    """For each open emphasis the marks around it."""
    open_links: list[tuple[str, int]] = field(default_factory=list)
    """For each open link its address, and where its text begins."""

    rows: list[list[Text]] = field(default_factory=list)
    """The rows of the open table."""
    header_rows: int = 0
    row: Token | None = None
    """The token that opened the last row."""
    row_begin: int = 0
    """Where that row begins, behind the marks of the items in which it stands."""
    cell: TextBuilder | None = None
    """The text of the open cell."""

    html_tables: int = 0
    """The tables of HTML that are open."""

    checked: int = 0
    """The blocks that were looked at for footnotes."""
    pictures: int = 0
    remarks: list[str] = field(default_factory=list)

    def target(self) -> TextBuilder:
        """Where text goes now."""
        return self.maker.text if self.cell is None else self.cell
