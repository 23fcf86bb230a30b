"""A unit: the lines of one paragraph or one list item, or a line that stands for itself."""

from __future__ import annotations

from dataclasses import dataclass

from fit.document.text.signs.markers import Marker


@dataclass(slots=True)
class Unit:
    """Lines ``start <= i < end`` that belong together."""

    start: int
    end: int
    marker: Marker | None = None
    text: int = 0
    """The column at which an item's text starts."""
    key: int = 0
    """Cells of a hanging key that stands before the text; 0 where there is none."""
    term: bool = False
    """Whether it is nothing but a term, whose text is the next unit."""
    cut: bool = False
    """Whether its second line starts with the rest of its key."""
