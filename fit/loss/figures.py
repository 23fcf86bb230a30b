"""The figures of one screen: how much of what the big screen showed could be read on it.

Ratios go from 0 to 1, the score from 0 to 100; each is None where nothing was measured.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple


class Cause(StrEnum):
    """Why a shown glyph was never intact on the small screen."""

    SCROLLED = "scrolled off"
    OVERWRITTEN = "overwritten"
    ERASED = "erased"
    CLIPPED = "clipped"
    HIDDEN = "hidden"
    """It stood on the page that is not shown."""
    DISPLACED = "displaced"
    """It was seen, but apart from its word, or away from its place."""
    CODES = "codes as text"
    """A code that this screen's terminal does not know came out as text in its way."""
    UNDRAWN = "not drawn"
    """This screen's terminal took its bytes for something else."""


class LineState(StrEnum):
    """What became of one appearance of a row of the big screen."""

    KEPT = "kept"
    """All its words were intact at one look."""
    DAMAGED = "damaged"
    """Some of its glyphs were seen."""
    LOST = "lost"
    """None of its glyphs was seen."""


class LineCounts(NamedTuple):
    """Appearances of rows by what became of them."""

    kept: int = 0
    damaged: int = 0
    lost: int = 0


class LostWord(NamedTuple):
    """A word of the big screen that was never intact on the small one."""

    text: str
    at: int
    """The byte offset of its first glyph."""
    cause: Cause
    by: int | None
    """The byte offset of the operation that ended its first lost glyph; None where nothing did."""


class LineLoss(NamedTuple):
    """A row of the big screen that is damaged or lost."""

    text: str
    at: int
    """The byte offset of its first glyph."""
    look: int
    """The look, from 1, at which it was first shown."""
    row: int
    """The row of the big screen it stood on then, from 1."""
    state: LineState
    cause: Cause
    by: int | None
    """The byte offset of the operation that ended its first lost glyph; None where nothing did."""


@dataclass(frozen=True, slots=True)
class TurnFigures:
    """One turn: what was newly shown at the look that ends it, and how much of it could be read."""

    look: int
    """The look that ends the turn, from 1; looks without anything new end no turn and are left out."""
    start: int
    """The byte offset at which the turn starts: the look before."""
    end: int
    """The byte offset of its look."""
    shown: int
    """Glyphs newly shown."""
    intact: int
    """Of these, the ones ever intact."""
    needed: int
    """Glyphs needed at the look: the newly shown and the placed ones that stand."""
    needed_intact: int
    clean: float | None
    """The share of what the small screen shows that is true."""
    split_words: int
    """Words that were intact but for a wrap in the middle."""
    holds: int
    """Extra key presses in the turn."""

    @property
    def needed_shown(self) -> float:
        """Of what the reader needs, how much is intact: 0 to 1."""
        return self.needed_intact / self.needed if self.needed else 1.0


@dataclass(frozen=True, slots=True)
class Figures:
    """What one screen, or one remedy on it, keeps of a session."""

    score: float | None = None
    """100 x needed_shown x clean."""
    needed_shown: float | None = None
    """Q, the mean over the turns."""
    clean: float | None = None
    """C, the mean over the turns."""
    text_kept: float | None = None
    """S, the share of shown glyphs that were ever intact."""
    turns_read: float | None = None
    """T, the share of turns with at least 95 % of their newly shown glyphs ever intact."""
    lines: LineCounts = field(default_factory=LineCounts)
    shown: int = 0
    """Shown glyphs."""
    intact: int = 0
    """Shown glyphs that were ever intact."""
    split_words: int = 0
    holds: int = 0
    """Extra key presses, in the turns."""
    holds_per_turn: float | None = None
    turns: tuple[TurnFigures, ...] = ()
    """Each turn; kept for the screen as it is alone."""
    causes: dict[Cause, int] = field(default_factory=dict)
    """Shown glyphs never intact, by cause, the largest first."""
    fates: dict[str, int] = field(default_factory=dict)
    """All glyphs drawn on this screen, by fate; empty for remedies that change nothing on the screen."""


@dataclass(frozen=True, slots=True)
class Demands:
    """What the program asks of its terminal. Rows and columns count from 1 here, as in the sequences."""

    highest_row: int | None = None
    """The highest row addressed, as asked for; None where none was."""
    highest_column: int | None = None
    moves: int = 0
    """Moves to a row or column, home left out."""
    moves_outside: int = 0
    """Of these, the ones that lead out of the small screen."""
    rows_outside: tuple[int, ...] = ()
    """Rows addressed that the small screen lacks."""
    columns_outside: tuple[int, ...] = ()
    scroll_regions: tuple[tuple[int, int], ...] = ()
    """The scrolling regions asked for, each once."""
    reverse_video: bool = False
    line_drawing: bool = False
    alternate_screen: bool = False
    status_rows: tuple[int, ...] = ()
    """Rows of the big screen rewritten in place that never scrolled."""
    padded_rows: int = 0
    """Rows printed with blanks at their end past the small screen's width, though their text fits."""

    @property
    def share_outside(self) -> float | None:
        """The share of moves that lead out of the small screen; None where there are none."""
        return self.moves_outside / self.moves if self.moves else None


class Unknown(NamedTuple):
    """Sequences that were not understood."""

    data: bytes
    """The bytes of the sequence, cut at 40."""
    times: int
    first: int
    """The byte offset of the first one."""


class LookView(NamedTuple):
    """Both screens at one look, with a mark for each cell."""

    look: int
    at: int
    big_rows: tuple[str, ...]
    big_marks: tuple[str, ...]
    """One character a cell of the row: ``-`` where a shown glyph is not intact on the small screen, else blank."""
    small_rows: tuple[str, ...]
    small_marks: tuple[str, ...]
    """One character a cell: ``?`` where a visible glyph is not clean, else blank."""
