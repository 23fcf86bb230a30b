"""Blocks with the lines that they were made of, and the depth of indentation from the items that are open."""

from __future__ import annotations

from dataclasses import dataclass, field

from fit.document.blocks import Block

STEP = 3
"""Cells of indentation that make a level."""


@dataclass(slots=True)
class Placed:
    """A block and the body lines ``start <= i < end`` it was made of."""

    block: Block
    start: int
    end: int


@dataclass(slots=True)
class Levels:
    """The depth of indentation, from the items that are open."""

    base: int
    columns: list[tuple[int, int]] = field(default_factory=list)

    def of(self, indent: int, text: int | None) -> int:
        """The level of a block at ``indent``; ``text`` is the text column of an item: one a column is one list."""
        while self.columns and (
            self.columns[-1][0] >= indent or self.columns[-1][1] == text
            if text is not None
            else self.columns[-1][1] > indent + 1
        ):
            self.columns.pop()
        level = len(self.columns)
        if text is not None:
            self.columns.append((indent, text))
        if not self.columns and indent - self.base >= STEP:
            return 1
        return level
