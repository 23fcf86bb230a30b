"""The book of losses: the rows of the big screen that were not kept, small enough for long sessions.

A record holds a row's pieces, packed; its words are read again when somebody asks for them.
"""

from __future__ import annotations

from array import array
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence

from fit.loss.bits import DECORATION, ECHO, Flags
from fit.loss.figures import Cause, LineCounts, LineLoss, LineState, LostWord
from fit.loss.words import RowWords, Word, read_row
from fit.screen.fates import Fate, Fates
from fit.screen.pieces import Piece

_CAUSES = {
    Fate.SCROLLED: Cause.SCROLLED,
    Fate.OVERWRITTEN: Cause.OVERWRITTEN,
    Fate.ERASED: Cause.ERASED,
    Fate.CLIPPED: Cause.CLIPPED,
    Fate.HIDDEN: Cause.HIDDEN,
    Fate.STANDING: Cause.DISPLACED,
    Fate.NONE: Cause.UNDRAWN,
}


_FATES = tuple(Fate)
_AS_PRINTED = 128
"""In the kind of a packed piece: its text is what stands in the output at its id, and is not kept twice."""


class Records:
    """Packed rows."""

    def __init__(self, output: bytes) -> None:
        self._output = output
        self.looks: array[int] = array("I")
        self.kept: array[int] = array("I")
        """The keys of the watches that kept the row; the highest bit is set for a new appearance."""
        self._rows: array[int] = array("H")
        self._pieces: array[int] = array("I", [0])
        self._columns: array[int] = array("H")
        self._ends: array[int] = array("H")
        self._ids: array[int] = array("I")
        self._kinds: array[int] = array("B")
        self._texts = bytearray()
        self._text_ends: array[int] = array("I")

    def __len__(self) -> int:
        return len(self.looks)

    def add(self, look: int, row: RowWords, keys: int) -> int:
        """Keep a row; gives its number."""
        self.looks.append(look)
        self.kept.append(keys)
        self._rows.append(row.row)
        for column, end, glyph, text, kind in row.pieces:
            self._columns.append(column)
            self._ends.append(end)
            self._ids.append(glyph)
            as_printed = text.isascii() and self._output[glyph : glyph + len(text)] == text.encode()
            self._kinds.append(kind | _AS_PRINTED if as_printed else kind)
            self._texts += b"" if as_printed else text.encode("utf-8", "surrogatepass")
            self._text_ends.append(len(self._texts))
        self._pieces.append(len(self._ids))
        return len(self.looks) - 1

    def spans(self, number: int) -> list[tuple[int, int]]:
        """The ids ``low <= id < high`` of a row's pieces, one after the other; of a wide glyph perhaps one too many."""
        span = range(self._pieces[number], self._pieces[number + 1])
        return [
            (self._ids[index], self._ids[index] + self._ends[index] - self._columns[index]) for index in span
        ]

    def row(self, number: int, flags: Flags) -> RowWords:
        """A row as it was read at its look."""
        pieces: list[Piece] = []
        for index in range(self._pieces[number], self._pieces[number + 1]):
            column, end, glyph = self._columns[index], self._ends[index], self._ids[index]
            kind = self._kinds[index]
            start = self._text_ends[index - 1] if index else 0
            if kind & _AS_PRINTED:
                text = self._output[glyph : glyph + end - column].decode("ascii")
            else:
                text = self._texts[start : self._text_ends[index]].decode("utf-8", "surrogatepass")
            pieces.append((column, end, glyph, text, kind & ~_AS_PRINTED))
        return read_row(self._rows[number], pieces, flags)


def _glyphs(row: RowWords) -> list[tuple[int, int]]:
    """The ids ``low <= id < high`` of the glyphs that count."""
    return [(glyph, glyph + count) for word in row.words for glyph, count, _ in word.stretches]


LINE = 1 << 31
"""In `Records.kept`: a new appearance of a row began with this record."""


class LossBook:
    """What was lost on the screen as it is, row by row, and what the lines came to for every watch."""

    def __init__(self, output: bytes, flags: Flags, intact: tuple[Flags, int], key: int) -> None:
        self.records = Records(output)
        self._length = len(output)
        self.kept_by_all = 0
        """Lines that every watch kept at their first look."""
        self._flags = flags
        self._intact, self._bit = intact
        self._key = key
        self._fates: Fates | None = None
        self._big_fates: Fates | None = None

    # While the session runs

    def kept(self, row: RowWords, keys: int) -> None:
        """All words of a row are intact at once, for the watches with these keys."""
        row.kept |= keys
        row.whole |= keys
        if row.book >= 0:
            self.records.kept[row.book] |= keys

    def look(self, number: int, rows: Sequence[RowWords], all_keys: int) -> None:
        """After all watches have had the look ``number``: keep the rows that are not kept by all."""
        for row in rows:
            if not row.fresh or not row.new:
                continue
            if row.is_line and row.kept & all_keys == all_keys:
                self.kept_by_all += 1
            elif row.is_line:
                row.book = self.records.add(number, row, row.kept | LINE)
            elif not row.kept & self._key or self._has_lost(row):
                self.records.add(number, row, row.kept)

    def finish(self, fates: Fates, big_fates: Fates | None) -> None:
        """The session is over: fates are known. ``big_fates`` are given where the big screen has another dialect."""
        self._fates = fates
        self._big_fates = big_fates

    # Afterwards

    def words_in(self, look: int) -> list[LostWord]:
        """The words newly shown at a look that were never intact, in reading order."""
        looks = self.records.looks
        found = []
        for number in range(bisect_left(looks, look), bisect_right(looks, look)):
            for word in self._lost(self.records.row(number, self._flags)):
                cause, by = self._first_loss(word)
                found.append(LostWord(word.text, self._origin(word.first), cause, by))
        return found

    def lines(self) -> Iterator[LineLoss]:
        """Every damaged or lost line, in order."""
        records = self.records
        for number in range(len(records)):
            if not records.kept[number] & LINE or records.kept[number] & self._key:
                continue
            row = records.row(number, self._flags)
            lost = self._lost(row) or row.words
            cause, by = self._first_loss(lost[0])
            state = LineState.DAMAGED if self._any_seen(_glyphs(row)) else LineState.LOST
            yield LineLoss(
                row.text, self._origin(row.low), records.looks[number], row.row + 1, state, cause, by
            )

    def count_lines(
        self, watches: Sequence[tuple[int, Sequence[tuple[Flags, int]], bool]]
    ) -> list[LineCounts]:
        """The lines for each watch: its key, the flags that mark what it saw, and whether what the screen as it is saw
        was seen by it too.
        """
        counts = [[self.kept_by_all, 0, 0] for _ in watches]
        records = self.records
        for number in range(len(records)):
            kept = records.kept[number]
            if not kept & LINE:
                continue
            spans = records.spans(number)
            for count, (key, seen, as_it_is) in zip(counts, watches, strict=True):
                if kept & key:
                    count[0] += 1
                elif self._any_seen(spans, seen, as_it_is=as_it_is):
                    # What was seen may be echo, decoration or a blank: only the words themselves tell.
                    glyphs = _glyphs(records.row(number, self._flags))
                    count[1 if self._any_seen(glyphs, seen, as_it_is=as_it_is) else 2] += 1
                else:
                    count[2] += 1
        return [LineCounts(*count) for count in counts]

    def causes(self) -> dict[Cause, int]:
        """Shown glyphs never intact by cause, the most frequent first."""
        found: Counter[Cause] = Counter()
        counted = Flags(0)
        for number in range(len(self.records)):
            if self._count_row(number, found, counted):
                continue
            for word in self._lost(self.records.row(number, self._flags)):
                self._count_causes(word, found, counted)
        return dict(sorted(found.items(), key=lambda item: (-item[1], item[0].value)))

    def _count_row(self, number: int, found: Counter[Cause], counted: Flags) -> bool:
        """Count a row of one piece that was lost whole to one fate, without reading it; false where it was not."""
        spans = self.records.spans(number)
        if len(spans) != 1 or self._big_fates is not None:
            return False
        low, high = spans[0]
        if high > self._length:
            return False
        codes = self._codes(low, high)
        fates = set(codes) - {Fate.NONE}
        if len(fates) != 1 or Fate.SEEN in fates:
            return False
        untouched = (
            self._intact.count_without(low, high, self._bit),
            counted.count_without(low, high, 1),
            self._flags.count_without(low, high, ECHO | DECORATION),
        )
        if untouched != (high - low,) * 3:
            return False
        found[_CAUSES[_FATES[fates.pop()]]] += high - low - codes.count(Fate.NONE)
        counted.set(low, high, 1)
        return True

    def _count_causes(self, word: Word, found: Counter[Cause], counted: Flags) -> None:
        """A glyph may stand in several words that were lost one after the other: it counts once."""
        for glyph, count, _ in word.stretches:
            end = glyph + count
            if (
                counted.count_without(glyph, end, 1) == count
                and self._intact.count_without(glyph, end, self._bit) == count
                and self._codes(glyph, end).count(self._codes(glyph, glyph + 1)) == count
            ):
                found[self._cause(glyph, word)] += count
            else:
                for one in range(glyph, end):
                    if not counted.has(one, 1) and not self._intact.has(one, self._bit):
                        found[self._cause(one, word)] += 1
            counted.set(glyph, end, 1)

    def _cause(self, glyph: int, word: Word) -> Cause:
        """Why a glyph of a word was never intact."""
        if self._big_fates is not None:
            return self._first_loss(word)[0] if self._fate(glyph) is Fate.SEEN else self._loss(glyph)[0]
        if self._fate(glyph) is not Fate.SEEN:
            return self._by_fate(glyph)
        glyphs = (one for first, count, _ in word.stretches for one in range(first, first + count))
        return next(
            (self._by_fate(one) for one in glyphs if self._fate(one) is not Fate.SEEN), Cause.DISPLACED
        )

    def _by_fate(self, glyph: int) -> Cause:
        """The cause that a glyph's fate is; of repeated glyphs a small screen has no room for all."""
        fate = self._fate(glyph)
        if fate is Fate.NONE and glyph >= self._length:
            return Cause.CLIPPED
        return _CAUSES.get(fate, Cause.DISPLACED)

    def _codes(self, start: int, end: int) -> bytearray:
        return self._fates.code[start:end] if self._fates is not None else bytearray(end - start)

    def _has_lost(self, row: RowWords) -> bool:
        return any(True for _ in self._lost_words(row))

    def _lost(self, row: RowWords) -> list[Word]:
        return list(self._lost_words(row))

    def _lost_words(self, row: RowWords) -> Iterator[Word]:
        for word in row.words:
            if any(
                self._intact.count_without(glyph, glyph + count, self._bit)
                for glyph, count, _ in word.stretches
            ):
                yield word

    def _fate(self, glyph: int) -> Fate:
        code = self._codes(glyph, glyph + 1)
        return _FATES[code[0]] if code else Fate.NONE

    def _any_seen(
        self,
        spans: Sequence[tuple[int, int]],
        seen: Sequence[tuple[Flags, int]] = (),
        *,
        as_it_is: bool = True,
    ) -> bool:
        for low, high in spans:
            if as_it_is and Fate.SEEN in self._codes(low, high):
                return True
            if any(flags.count_without(low, high, bit) != high - low for flags, bit in seen):
                return True
        return False

    def _first_loss(self, word: Word) -> tuple[Cause, int | None]:
        """The cause of a word's first lost glyph; displaced where all were seen."""
        for glyph, count, _ in word.stretches:
            for one in range(glyph, glyph + count):
                if self._fate(one) is not Fate.SEEN:
                    return self._loss(one)
        before = self._origin(word.first) - 1
        return (Cause.CODES, before) if self._is_code_text(before) else (Cause.DISPLACED, None)

    def _loss(self, glyph: int) -> tuple[Cause, int | None]:
        loss = self._fates.loss_of(glyph) if self._fates is not None else None
        if loss is None:
            return self._by_fate(glyph), None
        fate, at = loss
        return (Cause.CODES if self._is_code_text(at) else _CAUSES[fate]), at

    def _is_code_text(self, at: int) -> bool:
        """Whether the byte at an offset was drawn as a glyph on the small screen, but was a control to the big one."""
        if at < 0 or self._big_fates is None or self._fates is None:
            return False
        return bool(self._fates.code[at]) and not self._big_fates.code[at]

    def _origin(self, glyph: int) -> int:
        return glyph if self._fates is None else self._fates.origin(glyph)
