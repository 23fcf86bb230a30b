"""What the user may choose about a layout."""

from __future__ import annotations

from dataclasses import dataclass

from fit.errors import UsageError
from fit.units import LARGEST_SIDE
from fit.width import text_cells

LEAST_WIDTH_FOR_EXTRAS = 12
"""Below, page numbers and the like would take the place of the text."""


@dataclass(frozen=True, slots=True)
class LayoutSettings:
    """The screen to lay out for, and the options. Widths in cells, rows in lines."""

    width: int = 40
    page_rows: int = 7
    """Rows of a page: the screen's rows, less one where the device shows a prompt."""
    language: str = "en_US"
    """Whose hyphenation patterns apply."""
    hyphenate: bool = True
    max_hyphens: int = 2
    """How many lines in a row may end in a hyphen."""
    mark: str = "\\"
    """Ends a line where a word or a line of code had to be cut; one cell."""
    repeat_headers: bool = True
    """Repeat a table's header on each page the table goes on to."""
    contents: bool = False
    """A contents page in front."""
    page_numbers: bool = False
    """A last line on each page with its number."""
    panel_labels: bool = False
    """A line over each panel of a picture that was cut."""
    overlap: int = 0
    """Columns that a panel repeats of the one before it."""

    def __post_init__(self) -> None:
        """Refuse what no screen has. Raises `UsageError`."""
        for what, value, least in (
            ("width", self.width, 1),
            ("page rows", self.page_rows, 1),
            ("consecutive hyphens", self.max_hyphens, 0),
            ("overlap", self.overlap, 0),
        ):
            if not least <= value <= LARGEST_SIDE:
                raise UsageError(f"{what} is {value}", hint=f"give a number from {least} to {LARGEST_SIDE}")
        if self.width < LEAST_WIDTH_FOR_EXTRAS and (self.contents or self.page_numbers or self.panel_labels):
            raise UsageError(
                f"{self.width} columns are too few for a contents page, page numbers or panel labels",
                hint=f"leave them out, or give at least {LEAST_WIDTH_FOR_EXTRAS} columns",
            )
        if text_cells(self.mark) != 1:
            raise UsageError(f"the mark {self.mark!r} does not take one cell", hint="give one character")
        if self.overlap and self.overlap * 2 > self.width:
            raise UsageError(
                f"panels of {self.width} columns cannot overlap by {self.overlap}",
                hint="give at most half the width",
            )
