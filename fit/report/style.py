"""How wide a text report is and whether it has colour; and the pieces that every section is made of."""

from __future__ import annotations

from dataclasses import dataclass, field

from fit.report.bars import bar
from fit.report.ink import Ink, Paint
from fit.report.numbers import percent
from fit.report.plain import pad, wrap

INDENT = "  "
NARROW = 60
"""Below so many columns the explanations beside the figures go, and tables keep their main columns."""
WIDEST = 100
"""Lines longer than this are hard to read, whatever the terminal has."""
LABEL = 13


@dataclass(frozen=True, slots=True)
class Style:
    """The width of the page in cells, and its paint."""

    width: int = 80
    paint: Paint = field(default_factory=Paint)

    @property
    def narrow(self) -> bool:
        """Whether the page is of the small kind."""
        return self.width < NARROW

    @property
    def bar_cells(self) -> int:
        """The length of the bars."""
        return 12 if self.narrow else 20

    def heading(self, text: str) -> list[str]:
        """A heading of a section."""
        return [self.paint(line, Ink.BOLD) for line in wrap(text, self.width)]

    def text(self, text: str, first: str = INDENT, later: str | None = None) -> list[str]:
        """A paragraph, indented."""
        return wrap(text, self.width, first=first, later=first if later is None else later)

    def item(self, text: str) -> list[str]:
        """One thing of a list."""
        return self.text(text, "  - ", "    ")

    def measure(self, label: str, share: float | None, note: str = "", ink: Ink = Ink.PLAIN) -> list[str]:
        """A label, a bar, a percentage; and a note beside them where the page is wide."""
        drawn = self.paint(bar(share, self.bar_cells), ink)
        head = f"{INDENT}{pad(label, LABEL)} {drawn} {percent(share):>4}"
        if self.narrow or not note:
            return [head]
        start = len(INDENT) + LABEL + 1 + self.bar_cells + 1 + 4 + 2
        notes = wrap(note, self.width - start) or [""]
        return [f"{head}  {notes[0]}", *(" " * start + line for line in notes[1:])]
