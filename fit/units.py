"""Geometry of text screens: half-open spans, rows before columns. Imports nothing of ours.

  column 0          column 39
+---+---+- - - -+---+
|0,0|0,1|       |   |  row 0         Position(row=0, column=1) is the second cell.
+---+---+- - - -+---+
|   |   |       |   |  row 7         Size(rows=8, columns=40) is written "40x8".
+---+---+- - - -+---+

Span(start=2, end=5) holds 2, 3, 4.
"""

from __future__ import annotations

from typing import NamedTuple

LARGEST_SIDE = 500
"""The largest number of rows or columns a screen may have; larger ones are no text screens."""


class Span(NamedTuple):
    """Offsets ``start <= i < end``, in bytes unless a name says otherwise."""

    start: int
    end: int


class Position(NamedTuple):
    """A cell, counted from 0; rows grow downwards."""

    row: int
    column: int


class Size(NamedTuple):
    """Rows and columns of a screen, in cells, each from 1 to 500."""

    rows: int
    columns: int

    def __str__(self) -> str:
        return f"{self.columns}x{self.rows}"

    @property
    def cells(self) -> int:
        """The number of cells."""
        return self.rows * self.columns
