"""A stretch of output as operations, read as often as screens need it without holding a long one in memory."""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy

from fit.dialect.operation import Dialect, Operation

_HELD = 1 << 18
"""Bytes up to which the operations are held; longer stretches are decoded again."""
_CHUNK = 1 << 16


class Stretch:
    """The operations of the bytes ``start <= i < end``. Each pass gives the same lists of them."""

    def __init__(self, dialect: Dialect, output: bytes, start: int, end: int) -> None:
        self._dialect = dialect
        self._output = output
        self._start = start
        self._end = end
        self._is_last = start < end == len(output) or not output
        self._held: list[Operation] | None = None
        self._again: Dialect | None = None

    def __iter__(self) -> Iterator[list[Operation]]:
        if self._held is not None:
            return iter((self._held,))
        if self._again is not None:
            return self._chunks(deepcopy(self._again))
        if self._end - self._start > _HELD:
            self._again = deepcopy(self._dialect)
            return self._chunks(self._dialect)
        self._held = [operation for part in self._chunks(self._dialect) for operation in part]
        return iter((self._held,))

    def _chunks(self, dialect: Dialect) -> Iterator[list[Operation]]:
        for low in range(self._start, self._end, _CHUNK):
            yield dialect.feed(self._output[low : min(low + _CHUNK, self._end)], low)
        if self._is_last:
            yield dialect.finish()


def cut_at(operations: list[Operation], places: list[int]) -> Iterator[tuple[list[Operation], int | None]]:
    """The operations in parts, each with the place, ascending, at which it was cut; None after the last part."""
    part: list[Operation] = []
    waiting = list(reversed(places))
    for operation in operations:
        rest = operation
        while waiting and waiting[-1] < rest[1]:
            place = waiting.pop()
            before, after = _cut(rest, place)
            if before is not None:
                part.append(before)
            yield part, place
            part = []
            if after is None:
                break
            rest = after
        else:
            part.append(rest)
    yield part, None
    while waiting:
        yield [], waiting.pop()


def _cut(operation: Operation, place: int) -> tuple[Operation | None, Operation | None]:
    """What of an operation comes before the byte at ``place``, and what at and after it."""
    start, end, event, arguments, private = operation
    if place <= start:
        return None, operation
    if event != "draw":
        return operation, None
    text, offsets = arguments
    if isinstance(offsets, int):
        index = place - offsets
        first, second = offsets, offsets + index
        sides = (first, second)
    else:
        index = sum(offset < place for offset in offsets)
        if index == len(offsets):
            return operation, None
        sides = (offsets[:index], offsets[index:])
    before = (start, place, event, (text[:index], sides[0]), private)
    return before, (place, end, event, (text[index:], sides[1]), private)
