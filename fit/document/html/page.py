"""A page of HTML under construction: what is open where the walk has come to, and where text goes there."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from fit.document.block_maker import LINE_BREAK, BlockMaker
from fit.document.blocks import Text
from fit.document.characters import TextBuilder
from fit.document.html.lists import Lists
from fit.document.html.source import PLACE, MarkedSource, decoded_places
from fit.document.html.table import TableMaker
from fit.document.html.tree import CELLS, Node, Tree
from fit.document.links import Links

_VALUES: Final = {
    name: re.compile(rf"(?<![\w-]){name}\s*=\s*[\"']?", re.IGNORECASE) for name in ("href", "alt", "value")
}


class KeptPart(NamedTuple):
    """The text of a preformatted block without code in it."""

    at: int
    """Where the block stands among the blocks."""
    text: Text
    level: int


@dataclass(slots=True)
class Page:
    """The state of a page between two elements; the functions that enter and leave elements change it."""

    source: str
    marked: MarkedSource
    tree: Tree
    links: Links
    maker: BlockMaker = field(default_factory=BlockMaker)

    lists: Lists = field(default_factory=Lists)
    marks: list[int] = field(default_factory=list)
    """For each open element that sets text off, the marks around it."""
    open_links: list[tuple[Text, int]] = field(default_factory=list)
    """For each open link its address, and where its text begins."""
    headed: int = 0
    """The blocks before the last heading."""

    tables: list[TableMaker | None] = field(default_factory=list)
    """The open tables, innermost last; None for one that comes apart, or is text of another's cell."""
    kept: TableMaker | None = None
    """The one of them that is kept as a table."""
    keyed: list[bool] = field(default_factory=list)
    """For each open table whether each row is a key and what it means, in blocks."""
    in_key: bool = False

    pre: TextBuilder | None = None
    """The lines of the open preformatted element."""
    kept_parts: list[KeptPart] = field(default_factory=list)

    place: int = 0
    """Where the last run of text ended."""
    shown: int = 0
    """The runs of text that were read."""
    hidden: int = 0
    """Those that the page hides."""
    handles: int = 0
    """Those that only a browser has a use for."""
    pictures: int = 0

    @property
    def in_cell(self) -> TextBuilder | None:
        """The text of the cell being read, where a table is kept as one."""
        return None if self.kept is None else self.kept.cell

    def target(self) -> TextBuilder:
        """Where text goes now."""
        if self.pre is not None:
            return self.pre
        return self.maker.text if self.kept is None else self.kept.cell

    def part(self, tag: str) -> None:
        """A block begins or ends: close the paragraph; inside a cell, only the line; in a key, only part the words."""
        if self.pre is not None:
            pass
        elif self.in_key:
            self.maker.text.add_own(" ")
        elif self.kept is not None:
            # Cells of a table in a cell stand beside each other.
            self.kept.cell.add_own(" " if tag in CELLS else LINE_BREAK)
        else:
            self.maker.close()

    def break_line(self) -> None:
        """End the line here, in the middle of a block."""
        if self.pre is not None:
            self.pre.add_own("\n")
        elif self.in_key:
            self.maker.text.add_own(" ")
        else:
            self.target().add_own(LINE_BREAK)

    def attribute(self, node: Node, name: str) -> Text:
        """The value of an attribute, ``href``, ``alt`` or ``value``, with its places."""
        value = node.attributes.get(name) or ""
        builder = TextBuilder()
        start, _, end = (node.attributes.get(PLACE) or "0-0").partition("-")
        found = _VALUES[name].search(self.source, int(start), int(end))
        if value and found is not None:
            builder.add(value, decoded_places(self.source, found.end(), value), self.maker.mark)
        return builder.build()
