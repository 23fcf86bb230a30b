"""From the bytes of a control sequence back to its parameters, by trying out what each parameter gives.

No expression is solved. The sequence is expanded over one parameter at a time; what stays the same is literal,
what changes is a table from bytes to values. The result is then compared with the true expansions at
hundreds of places of the terminal's own grid (the tests compare all of them); a sequence that does not come apart like this is enumerated over that grid instead.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from os.path import commonprefix
from typing import Final

from fit.dialect.byte_trie import Trie
from fit.dialect.description import Expression
from fit.errors import DialectError
from fit.units import LARGEST_SIDE

Values = tuple[int, ...]
FROM_ZERO: Final = range(LARGEST_SIDE)
"""Rows and columns: beyond the terminal's own grid too, as far as the bytes stay different."""
_MOST_BYTES: Final = 3000
"""Of all forms of a parameter; those of a plain count have half of it, and twice it takes 40 ms to compile."""


@dataclass(frozen=True, slots=True)
class Slot:
    """One piece of a sequence: a literal (``parameter`` None) or the values of one parameter by their bytes."""

    parameter: int | None
    values: Mapping[bytes, int]

    @property
    def patterns(self) -> tuple[bytes, bytes, frozenset[int]]:
        """For the whole, for a beginning that the end of the data cuts off, and the first bytes."""
        return _patterns(frozenset(self.values))


class Inverse:
    """What a sequence with parameters looks like, and the parameters of each form of it."""

    def __init__(self, slots: list[Slot], known: Mapping[bytes, Values] | None = None) -> None:
        patterns = [slot.patterns for slot in slots]
        self.whole = b"".join(whole for whole, _, _ in patterns)
        """A pattern for the sequence; no capturing groups."""
        self.beginning = _beginning(patterns)
        """A pattern for an unfinished sequence at the end of the data."""
        self.first_bytes = patterns[0][2]
        self.shortest = sum(min(map(len, slot.values)) for slot in slots)
        """The length of its shortest form, in bytes."""
        self.parameters = sum(slot.parameter is not None for slot in slots)
        self.slots = slots
        self._known = known
        self._lengths = sorted({len(form) for form in known or ()}, reverse=True)
        # Thousands of forms are quicker looked up than compiled.
        pieces = [] if known else patterns
        self._pattern = re.compile(b"".join(b"(%b)" % whole for whole, _, _ in pieces), re.DOTALL)

    def match(self, data: bytes, at: int = 0) -> int:
        """The offset after the sequence that starts at ``at``; -1 where none does."""
        if self._known is not None:
            return next((at + size for size in self._lengths if data[at : at + size] in self._known), -1)
        found = self._pattern.match(data, at)
        return found.end() if found else -1

    @property
    def is_listed(self) -> bool:
        """Whether its forms are known one by one; then one of them may begin another."""
        return self._known is not None

    @property
    def sample(self) -> bytes:
        """One of its forms."""
        return b"".join(next(iter(slot.values)) for slot in self.slots)

    def begins_with(self, data: bytes) -> bool:
        """Whether the data could be the beginning of a form, and not the whole of it."""
        if self._known is not None:
            return any(form.startswith(data) for form in self._known) and data not in self._known
        if self.slots[0].parameter is None:
            literal = next(iter(self.slots[0].values))
            if not data.startswith(literal):
                return len(data) < len(literal) and literal.startswith(data)
        return re.fullmatch(self.beginning or b"(?!)", data, re.DOTALL) is not None

    def values(self, sequence: bytes) -> Values | None:
        """The parameters of one whole sequence, None where it is another."""
        if self._known is not None:
            return self._known.get(sequence)
        found = self._pattern.fullmatch(sequence)
        if found is None:
            return None
        pairs = sorted(
            (slot.parameter, slot.values[part])
            for slot, part in zip(self.slots, found.groups(), strict=True)
            if slot.parameter is not None
        )
        return tuple(value for _, value in pairs)


@lru_cache(maxsize=256)
def _patterns(strings: frozenset[bytes]) -> tuple[bytes, bytes, frozenset[int]]:
    trie = Trie.of(sorted(strings))
    return trie.whole(), trie.beginning(), frozenset(trie.children)


def _beginning(patterns: list[tuple[bytes, bytes, frozenset[int]]]) -> bytes:
    """Unfinished in the first piece; or the first piece whole, and the end of the data or more unfinished."""
    pattern = b""
    for index, (whole, beginning, _) in reversed(list(enumerate(patterns))):
        branches = [beginning] if beginning else []
        if index < len(patterns) - 1:
            branches.append(whole + (b"(?:\\Z|%b)" % pattern if pattern else b"\\Z"))
        pattern = b"(?:%b)" % b"|".join(branches) if branches else b""
    return pattern


@lru_cache(maxsize=4096)
def invert(expression: Expression, ranges: tuple[range, ...], own: tuple[range, ...]) -> Inverse:
    """Turn a sequence around.

    ``ranges`` are the values tried of each parameter, ``own`` those that must come out right and different
    (those the terminal itself has). Raises `DialectError` where two of these give the same bytes.
    """
    base = tuple(values[0] for values in own)
    columns = [_by_bytes(expression, base, index, values) for index, values in enumerate(ranges)]
    slots = _come_apart(expression, own, columns)
    if slots is not None and any(sum(map(len, slot.values)) > _MOST_BYTES for slot in slots):
        # A sequence that repeats its parameter: what lies beyond the terminal's own grid would cost its start-up.
        columns = [_by_bytes(expression, base, index, values) for index, values in enumerate(own)]
        slots = _come_apart(expression, own, columns)
    if slots is not None and _is_right(expression, own, slots):
        return Inverse(slots)
    return _enumerate(expression, own)


def _by_bytes(expression: Expression, base: Values, index: int, values: Iterable[int]) -> dict[bytes, int]:
    """What one parameter gives while the others stay, first value first; later values with the same bytes go."""
    forms: dict[bytes, int] = {}
    for value in values:
        form = expression.expand(*base[:index], value, *base[index + 1 :])
        forms.setdefault(form, value)
    return forms


def _come_apart(
    expression: Expression, own: tuple[range, ...], columns: list[dict[bytes, int]]
) -> list[Slot] | None:
    """Literals and tables in the order of the bytes; None where the parameters are not apart."""
    whole = expression.expand(*(values[0] for values in own))
    parts = []
    for index, forms in enumerate(columns):
        if len(forms) < 2:
            return None
        head = len(commonprefix(list(forms)))  # noqa: RUF071  bytes, not paths
        tail = len(commonprefix([form[head:][::-1] for form in forms]))  # noqa: RUF071  bytes, not paths
        parts.append((head, tail, index))
    parts.sort()
    slots: list[Slot] = []
    done = 0
    for head, tail, index in parts:
        end = len(whole) - tail
        if head < done or end <= head:
            return None
        if head > done:
            slots.append(Slot(None, {whole[done:head]: 0}))
        slots.append(Slot(index, _table(columns[index], head, tail, own[index])))
        done = end
    if done < len(whole):
        slots.append(Slot(None, {whole[done:]: 0}))
    return slots


def _table(forms: dict[bytes, int], head: int, tail: int, own: range) -> dict[bytes, int]:
    """Bytes to values: the terminal's own first, so that a value beyond its grid takes no bytes from them."""
    parts = {form[head : len(form) - tail]: value for form, value in forms.items() if len(form) > head + tail}
    table = {part: value for part, value in parts.items() if value in own}
    # A seven-bit line drops bit 7: 80h, the database's NUL, arrives as 00h, and so with the others.
    for part, value in list(table.items()):
        table.setdefault(bytes(byte & 0x7F for byte in part), value)
    # Where all of its own have one width, a longer form would take bytes from the next parameter or from the text.
    widths = {len(part) for part in table}
    for part, value in parts.items():
        if len(widths) > 1 or len(part) in widths:
            table.setdefault(part, value)
    return table


def _is_right(expression: Expression, own: tuple[range, ...], slots: list[Slot]) -> bool:
    inverted = [{value: form for form, value in reversed(list(slot.values.items()))} for slot in slots]
    for values in _sample(own):
        built = b""
        for slot, table in zip(slots, inverted, strict=True):
            part = table.get(0 if slot.parameter is None else values[slot.parameter])
            if part is None:
                return False
            built += part
        if built != expression.expand(*values):
            return False
    return True


def _sample(own: tuple[range, ...]) -> Iterator[Values]:
    """Each value of each parameter with some of the others, the first and the last among them."""
    some = [sorted({*values[:: max(1, len(values) // 5)], values[-1]}) for values in own]
    for index, values in enumerate(own):
        yield from product(*(values if other == index else some[other] for other in range(len(own))))


def _enumerate(expression: Expression, own: tuple[range, ...]) -> Inverse:
    known: dict[bytes, Values] = {}
    for values in product(*own):
        form = expression.expand(*values)
        if not form or form in known:
            raise DialectError(_ambiguity(form, known.get(form), values))
        known[form] = values
    return Inverse([Slot(0, {form: index for index, form in enumerate(known)})], known)


def _ambiguity(form: bytes, first: Values | None, second: Values) -> str:
    if first is None:
        return f"its parameters {second} give no bytes at all"
    return f"its parameters {first} and {second} give the same bytes, {form!r}"
