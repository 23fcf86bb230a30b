"""The big screen, read look after look: its words, what is newly shown, what is needed."""

from __future__ import annotations

from dataclasses import dataclass

from fit.dialect.operation import Operation
from fit.loss.bits import PLACED, Flags
from fit.loss.clean import Page
from fit.loss.echo import EchoMarker
from fit.loss.habits import RowHabits
from fit.loss.placed import PlacedMarker
from fit.loss.words import RowWords, age, note_shown, read_row, spell
from fit.screen.pieces import Row
from fit.screen.screen import Screen


@dataclass(slots=True)
class LookFacts:
    """What the big screen shows at one look."""

    number: int
    """From 1."""
    start: int
    """The byte offset of the look before."""
    at: int
    """The byte offset of this look."""
    rows: list[RowWords]
    """The rows that hold a word, from the top."""
    page: Page
    new: int
    """Glyphs newly shown."""
    old_placed: int
    """Placed glyphs that stand and were shown before."""
    is_empty: bool
    """Whether nothing but decoration stands."""


class BigReader:
    """Reads the big screen of one session. ``flags`` takes what is known of each glyph."""

    def __init__(self, screen: Screen, flags: Flags, length: int) -> None:
        self.screen = screen
        self.flags = flags
        self.habits = RowHabits()
        self.looks = 0
        self.shown = 0
        self.placed_shown = 0
        self._length = length
        self._echo = EchoMarker(flags)
        self._placed = PlacedMarker(flags)
        self._known: dict[int, tuple[Row, RowWords]] = {}
        self._last_look = 0

    def typed(self, text: str) -> None:
        """What was typed at the look just taken."""
        self._echo.typed(text)

    def take(self, operations: list[Operation]) -> None:
        """Carry out a stretch of the turn."""
        self._echo.take(operations)
        self._placed.take(operations)
        self.screen.apply(operations)

    def look(self, at: int) -> LookFacts:
        """A person reads before the byte ``at``."""
        self.screen.look(at)
        self._placed.look(at)
        self.looks += 1
        rows = self._read_rows()
        with_words = [row for row in rows if row.words]
        facts = LookFacts(
            number=self.looks,
            start=self._last_look,
            at=at,
            rows=with_words,
            page=Page(
                [row.pieces for row in rows],
                self.screen.size.columns,
                frozenset().union(*(row.decorated for row in rows)),
            ),
            new=sum(row.new for row in with_words),
            old_placed=sum(word.old_placed for row in with_words if row.placed for word in row.words),
            is_empty=not with_words and not any(self._shows(row) for row in rows),
        )
        self.shown += facts.new
        self._last_look = at
        return facts

    def _read_rows(self) -> list[RowWords]:
        known = self._known
        self._known = {}
        rows = []
        for index, row in enumerate(self.screen.grid):
            before = known.get(id(row))
            before_words = before[1] if before is not None else None
            if before_words is not None and before_words.pieces == row.pieces:
                words = before_words
                self.habits.stays(words.row, index)
                words.row = index
                age(words, self.flags)
            else:
                words = self._read_changed(index, row, before_words)
            self._known[id(row)] = (row, words)
            rows.append(words)
        return rows

    def _read_changed(self, index: int, row: Row, before: RowWords | None) -> RowWords:
        pieces = list(row.pieces)
        for column, end, glyph, _, _ in pieces:
            if glyph >= self._length:
                self._inherit(glyph, end - column)
        words = read_row(index, pieces, self.flags)
        self.placed_shown += note_shown(words, self.flags, self._last_look)
        if before is not None and before.row == index and before.words and before.text == words.text:
            words.book, words.kept = before.book, before.kept
        elif words.new:
            words.is_line = True
        self.habits.changes(before, words)
        return words

    def _inherit(self, glyph: int, count: int) -> None:
        """Repeated glyphs are placed where the operation that made them is."""
        fates = self.screen.fates
        if fates is None:
            return
        for repeated in range(glyph, glyph + count):
            if self.flags.has(fates.origin(repeated), PLACED):
                self.flags.set(repeated, repeated + 1, PLACED)

    @staticmethod
    def _shows(row: RowWords) -> bool:
        """Whether a row holds a glyph that is neither blank nor decoration, such as echo."""
        text, glyphs = spell(row.pieces)
        return any(
            not char.isspace() and glyph[0] not in row.decorated
            for char, glyph in zip(text, glyphs, strict=True)
        )
