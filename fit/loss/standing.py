"""What stands on a screen now, found by glyph id; and whether a word stands there intact."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fit.loss.words import RowWords, Word
from fit.screen.pieces import SINGLE, Row


class Standing:
    """The glyphs on the visible page in reading order, as runs whose ids and cells both follow one another.

    A place in reading order is ``row * columns + column``.
    """

    __slots__ = ("_columns", "_runs", "_starts")

    def __init__(self, grid: Sequence[Row], columns: int) -> None:
        self._columns = columns
        runs: list[tuple[int, int, int]] = []  # first id, id after the last, place of the first
        first = after = place = next_place = -1
        base = 0
        for row in grid:
            for column, end, glyph, _, kind in row.pieces:
                alone = kind & SINGLE
                if not alone and glyph == after and base + column == next_place:
                    after += end - column
                    next_place += end - column
                    continue
                if first >= 0:
                    runs.append((first, after, place))
                first, place = glyph, base + column
                after = glyph + 1 if alone else glyph + end - column
                next_place = -1 if alone else base + end
            base += columns
        if first >= 0:
            runs.append((first, after, place))
        runs.sort()
        self._runs = runs
        self._starts = [run[0] for run in runs]

    def place_of(self, glyph: int, count: int) -> int:
        """The place of the first of ``count`` glyphs that stand cell after cell; -1 where they do not."""
        index = bisect_right(self._starts, glyph) - 1
        if index < 0:
            return -1
        first, after, place = self._runs[index]
        return place + glyph - first if glyph + count <= after else -1

    def touches(self, low: int, high: int) -> bool:
        """Whether any glyph with ``low <= id < high`` stands."""
        index = bisect_right(self._starts, high - 1) - 1
        return index >= 0 and self._runs[index][1] > low

    def intact_on(self, row: RowWords) -> tuple[list[Word], list[Word]]:
        """The words of a row that stand intact, and those of them that are split by a wrap."""
        if not self.touches(row.low, row.high):
            return [], []
        if row.simple and not row.placed:
            place = self.place_of(row.low, row.high - row.low)
            if place >= 0:
                return row.words, self._split_among(row, place)
        whole: list[Word] = []
        split: list[Word] = []
        for word in row.words:
            rows = self.rows_of(word, row.row)
            if rows:
                whole.append(word)
                if rows > 1:
                    split.append(word)
        return whole, split

    def rows_of(self, word: Word, big_row: int) -> int:
        """On how many rows a word stands intact: 0 where it does not."""
        glyph, count, column = word.stretches[0]
        start = place = self.place_of(glyph, count)
        if place < 0:
            return 0
        columns = self._columns
        for glyph, count, next_column in word.stretches[1:]:
            expected = start + next_column - column
            place = self.place_of(glyph, count)
            if place == expected:
                continue
            # A wide glyph that does not fit at the end of a row leaves one cell blank there.
            if place != expected + 1 or place % columns or count > 1:
                return 0
            start += 1
        rows = (place + count - 1) // columns - self.place_of(*word.stretches[0][:2]) // columns + 1
        if word.placed and (rows > 1 or (not word.is_text and divmod(start, columns) != (big_row, column))):
            return 0
        return rows

    def _split_among(self, row: RowWords, place: int) -> list[Word]:
        columns = self._columns
        if place // columns == (place + row.high - row.low - 1) // columns:
            return []
        shift = place - row.low
        return [
            word for word in row.words if (word.first + shift) // columns != (word.last + shift) // columns
        ]
