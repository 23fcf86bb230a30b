"""Drawing text: character sets, wrapping, insertion, wide and combining characters."""

from __future__ import annotations

from collections.abc import Sequence

from fit.screen.charsets import TRANSLATIONS
from fit.screen.cursor import CursorGrid
from fit.screen.fates import Fate, Fates
from fit.screen.pieces import CLUSTER, SEEN, SINGLE, WIDE, Piece, Row, split
from fit.screen.rules import Rules, WrapRule
from fit.units import Size
from fit.width import char_cells

_NARROW = {chr(code) for code in range(0x20, 0x7F)}
"""Characters known to take one cell; grows as others are met."""
_MOST_NARROW = 20_000


class DrawingGrid(CursorGrid):
    """A grid on which text is drawn."""

    def __init__(self, size: Size, rules: Rules | None = None, fates: Fates | None = None) -> None:
        super().__init__(size, rules, fates)
        self._defers = self.rules.wrap in (WrapRule.DEFERRED, WrapRule.WORD)
        self._may_wrap = self.rules.wrap is not WrapRule.NONE
        self._wraps_words = self.rules.wrap is WrapRule.WORD
        self._passed_blanks = False  # after the end of a full row: the next word is a new one
        self.insert_mode = False
        self.charsets = ["B", "B", "B", "B"]
        """The sets designated as G0 to G3, by the final character of the designation."""
        self.locked = 0
        """Which of G0 to G3 stands in GL."""
        self.locked_right: int | None = None
        """Which of G1 to G3 the bytes above A0h come from; None where they are as the encoding has them."""
        self.shifted_once: int | None = None
        """Which of G2 and G3 the next character alone comes from."""
        self.unattached = 0
        """Combining characters that found nothing to combine with."""
        self.last_character = ""
        """What REP repeats."""
        self.drawn = 0
        """Characters drawn without offsets, as a bare `pyte.Stream` does: they number their glyphs."""

    def draw(self, text: str, offsets: int | Sequence[int] | None = None) -> None:
        """Draw characters at the cursor.

        ``offsets`` is the byte offset of the first character where each took one byte, else one offset a
        character. Without it the characters are numbered in the order in which they are drawn.
        """
        if offsets is None:
            offsets = self.drawn
            self.drawn += len(text)
        if (
            self.charsets[self.locked] != "B"
            or self.shifted_once is not None
            or self.locked_right is not None
        ):
            text = self._recoded(text)
        self.last_character = text[-1:]
        if isinstance(offsets, int) and (text.isascii() or self._is_narrow(text)):
            self._draw_run(text, offsets)
        else:
            self._draw_characters(text, offsets)

    def _recoded(self, text: str) -> str:
        """The text as the character sets in force have it."""
        if self.shifted_once is not None:
            text = self._translated(text[:1], self.shifted_once) + text[1:]
            self.shifted_once = None
        if self.charsets[self.locked] != "B":
            text = self._translated(text, self.locked)
        if self.locked_right is not None and not text.isascii():
            text = "".join(
                self._translated(chr(ord(char) - 0x80), self.locked_right) if "\xa0" < char < "\xff" else char
                for char in text
            )
        return text

    def _translated(self, text: str, slot: int) -> str:
        table = TRANSLATIONS.get(self.charsets[slot])
        return text if table is None else text.translate(table)

    @staticmethod
    def _is_narrow(text: str) -> bool:
        strange = set(text) - _NARROW
        if any(char_cells(char) != 1 for char in strange):
            return False
        if len(_NARROW) < _MOST_NARROW:
            _NARROW.update(strange)
        return True

    # Runs of one cell a character

    def _draw_run(self, text: str, glyph: int) -> None:
        grid = self.grid
        rest = len(text)
        kind = self.protection
        while True:
            if self.pending:
                if self._wraps_words and not self.placing:
                    text, skipped = self._wrap_word(text, glyph)
                    glyph += skipped
                    rest -= skipped
                    if not rest:
                        return
                else:
                    self.at = glyph
                    self._wrap()
            column = self.column
            limit = (self.right if column <= self.right else self.size.columns - 1) + 1
            row = grid[self.row]
            if row.double:
                limit = min(limit, self._last_column() + 1)
                column = min(column, limit - 1)
            room = limit - column
            if self.insert_mode:
                self._insert_blanks(self.row, column, min(rest, room))
            end = column + rest if rest < room else limit
            if not (self.autowrap and self._may_wrap) and end == limit:
                self.column = limit - 1
                if room > 1:
                    self._put(row, column, limit - 1, glyph, text[: room - 1], kind)
                self._pile_up(row, text[room - 1 :], glyph + room - 1)
                return
            pieces = row.pieces
            if not pieces or pieces[-1][1] <= column:  # what `_put` does, without the call
                pieces.append((column, end, glyph, text if rest <= room else text[:room], kind))
                row.seen = False
            else:
                self._put(row, column, end, glyph, text if rest <= room else text[:room], kind)
            if rest < room:
                self.column = end
                return
            self.column = limit - 1
            if self._defers:
                self.pending = True
                self._passed_blanks = False
            else:
                self._reach_edge(glyph + room)
            if rest == room:
                return
            glyph += room
            rest -= room
            text = text[room:]

    def _reach_edge(self, glyph: int) -> None:
        """The last column was filled just before the glyph ``glyph``, on a screen that wraps."""
        if self._defers:
            self.pending = True
            self._passed_blanks = False
        else:
            self.at = glyph - 1
            self._wrap()

    def _wrap(self) -> None:
        """Go on at the start of the next row."""
        if self.hooks is not None and self.hooks.on_wrap is not None:
            self.hooks.on_wrap(self)
        self.column = self.left if self.column >= self.left else 0
        self.pending = False
        if self.row == self.bottom:
            self._scroll_one()
        elif self.row < self.size.rows - 1:
            self.row += 1
        self.grid[self.row].wrapped = True

    def _pile_up(self, row: Row, text: str, glyph: int) -> None:
        """Draw in the last column of a screen that does not wrap: each character replaces the one before it.

        What is replaced there counts as clipped: the line was too long for the screen.
        """
        last = self.column
        left, standing, right = split(row.pieces, last, last + 1)
        if self.hooks is not None:
            self._warn(
                [*standing, (last, last + 1, glyph, text[:-1], CLUSTER)] if len(text) > 1 else standing
            )
            left, standing, right = split(row.pieces, last, last + 1)
        self._lose(standing, Fate.CLIPPED)
        if self.fates is not None and len(text) > 1:
            for start in range(0, len(text) - 1, 256):
                self.fates.lose(
                    glyph + start, min(256, len(text) - 1 - start), Fate.CLIPPED, glyph + start + 1
                )
        row.pieces = [*left, (last, last + 1, glyph + len(text) - 1, text[-1], self.protection), *right]
        row.seen = False

    # Word wrapping, a remedy

    def _wrap_word(self, text: str, glyph: int) -> tuple[str, int]:
        """Wrap before the word that does not fit; give the text still to draw and how much was passed over.

        Blanks that would start the new row are passed over; a word that began in this row moves whole.
        """
        rest = text.lstrip(" ")
        skipped = len(text) - len(rest)
        self._passed_blanks = self._passed_blanks or skipped > 0
        if not rest:
            return rest, skipped
        self.at = glyph + skipped
        row = self.grid[self.row]
        start = self.left if self._passed_blanks else self._word_start(row)
        moved: list[Piece] = []
        if start > self.left:
            row.pieces, moved, _ = split(row.pieces, start, self.size.columns)
        if self.hooks is not None and moved and self.row == self.bottom:
            row.pieces += moved  # a hold must see the word where it still stands
            self._warn_rows_leaving(self.top, 1)
            row.pieces, moved, _ = split(row.pieces, start, self.size.columns)
        self._wrap()
        if moved:
            below = self.grid[self.row]
            below.pieces = [*((c - start, e - start, g, t, k) for c, e, g, t, k in moved)]
            below.seen = all(piece[4] & SEEN for piece in moved)
            self.column = below.pieces[-1][1]
        return rest, skipped

    def _word_start(self, row: Row) -> int:
        """The column at which the word that ends in the last column begins; 0 where it fills the row."""
        start = self.size.columns
        for column, end, _, text, kind in reversed(row.pieces):
            if end != start:
                break
            if kind & SINGLE:
                if text.isspace():
                    break
                start = column
                continue
            space = text.rfind(" ")
            start = column + space + 1
            if space >= 0:
                break
        return start if start < self.size.columns else 0

    # Characters of other widths

    def _draw_characters(self, text: str, offsets: int | Sequence[int]) -> None:
        for index, char in enumerate(text):
            glyph = offsets + index if isinstance(offsets, int) else offsets[index]
            width = char_cells(char)
            if width == 1:
                self._draw_run(char, glyph)
            elif width == 2:
                self._draw_wide(char, glyph)
            else:
                self._combine(char)

    def _draw_wide(self, char: str, glyph: int) -> None:
        self.at = glyph
        if self.size.columns < 2:
            if self.fates is not None:
                self.fates.lose(glyph, 1, Fate.CLIPPED, glyph)
            return
        if self.pending:
            self._wrap()
        limit = (
            min(self.right if self.column <= self.right else self.size.columns - 1, self._last_column()) + 1
        )
        if self.column + 2 > limit:
            if self.autowrap and self._may_wrap:
                self._wrap()
                limit = min(self.right, self._last_column()) + 1
            else:
                self.column = limit - 2
        if self.insert_mode:
            self._insert_blanks(self.row, self.column, 2)
        self._put(self.grid[self.row], self.column, self.column + 2, glyph, char, WIDE | self.protection)
        if self.column + 2 < limit:
            self.column += 2
        else:
            self.column = limit - 1
            if self.autowrap and self._may_wrap:
                self._reach_edge(glyph + 1)

    def _combine(self, char: str) -> None:
        """Add a combining character to the glyph before the cursor."""
        column = self.column if self.pending else self.column - 1
        row = self.grid[self.row]
        left, middle, right = split(row.pieces, column, column + 1)
        if not middle:
            self.unattached += 1
            return
        start, end, glyph, text, kind = middle[-1]
        row.pieces = [*left, *middle[:-1], (start, end, glyph, text + char, kind | CLUSTER), *right]

    # Character sets

    def define_charset(self, code: str, mode: str) -> None:
        """Designate a set as G0 ``(``, G1 ``)``, G2 ``*`` or G3 ``+``; 96-character sets use ``-``, ``.``, ``/``."""
        slot = {"(": 0, ")": 1, "*": 2, "+": 3, "-": 1, ".": 2, "/": 3}.get(mode)
        if slot is not None:
            self.charsets[slot] = code

    def shift_in(self) -> None:
        self.locked = 0

    def shift_out(self) -> None:
        self.locked = 1

    def alternate_charset(self, slot: int) -> None:
        """Lock one of G0 to G3 into GL (LS2, LS3)."""
        self.locked = slot

    def lock_right(self, slot: int) -> None:
        """Lock one of G1 to G3 into GR (LS1R, LS2R, LS3R); only 8-bit encodings have it."""
        self.locked_right = slot

    def single_shift(self, slot: int) -> None:
        """The next character alone comes from G2 or G3 (SS2, SS3)."""
        self.shifted_once = slot
