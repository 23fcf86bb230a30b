"""What the rows of the big screen do over a session: rewritten in place, scrolled, padded with blanks."""

from __future__ import annotations

from collections import Counter

from fit.loss.words import RowWords

_REWRITES = 2
"""A row rewritten only once may be any row whose text was replaced."""


class RowHabits:
    """Counts, row by row of the big screen, from 0."""

    def __init__(self) -> None:
        self._rewritten: Counter[int] = Counter()
        self._scrolled: set[int] = set()
        self._padding: Counter[tuple[int, int]] = Counter()
        self.widest = 0
        """The last column, from 1, that held a word at a look."""

    def stays(self, before: int, now: int) -> None:
        """A row stands unchanged; it may have scrolled."""
        if before != now:
            self._scrolled.update((before, now))

    def changes(self, before: RowWords | None, now: RowWords) -> None:
        """A row was read anew; ``before`` is the same row at the look before."""
        if before is not None and before.words and before.row != now.row:
            self._scrolled.update((before.row, now.row))
        elif before is not None and before.words and now.new and before.high <= now.low:
            # Prose that replaces prose on a page drawn anew is no status line.
            self._rewritten[now.row] += now.placed or _keeps_its_form(before, now)
        if not now.words:
            return
        _, count, column = now.words[-1].stretches[-1]
        self.widest = max(self.widest, column + count)
        if now.is_line and now.pieces[-1][3][-1:].isspace():
            self._padding[column + count, now.pieces[-1][1]] += 1

    @property
    def status_rows(self) -> tuple[int, ...]:
        """Rows rewritten in place that never scrolled, from 0."""
        return tuple(
            sorted(
                row
                for row, times in self._rewritten.items()
                if times >= _REWRITES and row not in self._scrolled
            )
        )

    def padded_rows(self, columns: int) -> int:
        """Lines printed with blanks past ``columns``, though their text fits."""
        return sum(times for (text, end), times in self._padding.items() if text <= columns < end)


def _keeps_its_form(before: RowWords, now: RowWords) -> bool:
    """Whether at least a third of a row's words stand where they stood, but not all of them: labels with new values."""
    old = {(word.text, word.stretches[0][2]) for word in before.words}
    new = {(word.text, word.stretches[0][2]) for word in now.words}
    return old != new and 3 * len(old & new) >= len(new)
