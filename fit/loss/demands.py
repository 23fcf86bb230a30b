"""What a program asks of its terminal, from its operations.

Rows and columns are given as the sequences ask for them, from 1, not as a screen clamps them. Relative moves
count as moves, but where they lead depends on the screen: none of them is counted as leading outside.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from fit.dialect.operation import Operation
from fit.loss.figures import Demands, Unknown
from fit.loss.habits import RowHabits
from fit.loss.placed import is_placing
from fit.units import Size

_ALTERNATE = frozenset({47, 1047, 1049})
_INVERSE = 7
_LONGEST_SHOWN = 40
_MOST_KINDS = 10_000
"""Kinds of sequences not understood that are told apart; damaged data may hold no two that are equal."""


class DemandCounter:
    """Counts what operations ask for."""

    def __init__(self, big: Size) -> None:
        self._big = big
        self._rows: dict[int, int] = {}
        self._columns: dict[int, int] = {}
        self._places: dict[tuple[int, int], int] = {}
        self._relative = 0
        self._regions: dict[tuple[int, int], None] = {}
        self._reverse = False
        self._drawing = False
        self._alternate = False
        self._unknown: dict[bytes, tuple[int, int]] = {}

    def take(self, operations: Iterable[Operation]) -> None:
        """Count a stretch of the session."""
        for start, _, event, arguments, private in operations:
            if event == "draw":
                if not self._drawing and not arguments[0].isascii():
                    self._drawing = any("\u2500" <= char <= "\u259f" for char in arguments[0])
            elif event == "debug":
                self._note_unknown(start, arguments)
            elif is_placing(event, arguments, private=private):
                self._note_move(event, arguments)
            elif event in _OTHERS:
                self._note_other(event, arguments, private=private)

    def demands(self, small: Size, habits: RowHabits) -> Demands:
        """The demands, seen from a small screen."""
        outside = sum(
            times
            for (row, column), times in self._places.items()
            if row > small.rows or column > small.columns
        )
        return Demands(
            highest_row=max(self._rows, default=None),
            highest_column=max(self._columns, default=None),
            moves=sum(self._places.values()) + self._relative,
            moves_outside=outside,
            rows_outside=tuple(sorted(row for row in self._rows if row > small.rows)),
            columns_outside=tuple(sorted(column for column in self._columns if column > small.columns)),
            scroll_regions=tuple(self._regions),
            reverse_video=self._reverse,
            line_drawing=self._drawing,
            alternate_screen=self._alternate,
            status_rows=tuple(row + 1 for row in habits.status_rows),
            padded_rows=habits.padded_rows(small.columns),
        )

    def unknown(self) -> tuple[Unknown, ...]:
        """The sequences that were not understood, the most frequent first."""
        found = [Unknown(data, times, first) for data, (times, first) in self._unknown.items()]
        return tuple(sorted(found, key=lambda entry: (-entry.times, entry.first)))

    def _note_unknown(self, start: int, arguments: tuple[object, ...]) -> None:
        data = arguments[0] if arguments and isinstance(arguments[0], bytes) else repr(arguments).encode()
        key = data[:_LONGEST_SHOWN]
        if key not in self._unknown and len(self._unknown) >= _MOST_KINDS:
            key = b""
        times, first = self._unknown.get(key, (0, start))
        self._unknown[key] = (times + 1, first)

    def _note_move(self, event: str, arguments: tuple[int | None, ...]) -> None:
        if event == "cursor_position":
            row, column = [*(value or 1 for value in arguments), 1, 1][:2]
        elif event == "cursor_to_line":
            row, column = arguments[0] or 1 if arguments else 1, 0
        elif event in ("cursor_to_column", "horizontal_position"):
            row, column = 0, arguments[0] or 1 if arguments else 1
        else:
            self._relative += 1
            return
        if row:
            self._rows[row] = self._rows.get(row, 0) + 1
        if column:
            self._columns[column] = self._columns.get(column, 0) + 1
        self._places[row, column] = self._places.get((row, column), 0) + 1

    def _note_other(self, event: str, arguments: tuple[Any, ...], *, private: bool) -> None:
        if event == "set_margins" and not private:
            self._note_region([value or 0 for value in arguments])
        elif event == "select_graphic_rendition" and not private:
            self._reverse = self._reverse or _INVERSE in _attributes(arguments)
        elif event == "set_mode" and private:
            self._alternate = self._alternate or not _ALTERNATE.isdisjoint(arguments)
        elif event == "define_charset":
            self._drawing = self._drawing or "0" in arguments

    def _note_region(self, values: list[int]) -> None:
        top, bottom = [*values, 0, 0][:2]
        region = (top or 1, bottom or self._big.rows)
        if region != (1, self._big.rows) and len(self._regions) < _MOST_KINDS:
            self._regions[region] = None


_OTHERS = frozenset({"set_margins", "select_graphic_rendition", "set_mode", "define_charset"})


def _attributes(values: tuple[int, ...]) -> Iterator[int]:
    """The attributes of an SGR, without the parameters of its colours: ``38;5;7`` is no inverse video."""
    rest = iter(values)
    for value in rest:
        if value in _COLOURS:
            for _ in range({5: 1, 2: 3}.get(next(rest, 0), 0)):
                next(rest, None)
        else:
            yield value


_COLOURS = frozenset({38, 48, 58})
