"""A terminal known by its description: output bytes to operations, for every terminal that is not of ECMA-48's kind.

The description becomes one compiled pattern: text, the terminal's sequences (longest first), the beginnings
of sequences at the end of the data, and what is left. What a sequence does is worked out once and remembered.

What the terminal does not understand is a ``debug`` operation with its bytes; what of it the reader would
see as letters is drawn as text (`fit.dialect.description.UnknownRule`). NUL and DEL are fill characters.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from fit.dialect.byte_trie import Trie, byte_class
from fit.dialect.description import Description, UnknownRule
from fit.dialect.encoding import SEVEN_BIT, TABLES, UTF_8
from fit.dialect.inversion import Inverse
from fit.dialect.meanings import COOKIE, GRAPHICS, REPEAT, STATUS, Effects, line_drawing
from fit.dialect.operation import Operation
from fit.dialect.token_table import TokenTable, build
from fit.dialect.utf8_text import decode_utf8, incomplete_tail

_TEXT, _LONGER, _TOKEN, _UNFINISHED, _FILL = 1, 2, 3, 4, 5
"""Groups of the pattern. What matches in none of them is unknown; what the end of the data cuts off is held
back for the next feed: a sequence that may become a longer one, or a beginning."""

_SEVEN_BITS: Final = bytes(byte & 0x7F for byte in range(256))
_REMEMBERED: Final = 1 << 16
"""Sequences remembered; a grid of 80x25 has 2,000 addresses."""
_WITHIN_STATUS: Final = frozenset({"select_graphic_rendition", "bell", GRAPHICS, COOKIE})
"""What may stand inside a status text; anything else ends it."""
_OWN: Final = frozenset({GRAPHICS, STATUS, REPEAT})


class CapabilityDialect:
    """One terminal, decoded by its description.

    ``encoding`` is one of those of `fit.dialect.encoding`. Raises `DialectError` where the terminal's
    cursor addressing cannot be turned around.
    """

    def __init__(self, description: Description, encoding: str = UTF_8) -> None:
        self.name = description.name
        compiled = compile_description(description, encoding)
        self._table = compiled.table
        self._scan = compiled.pattern.finditer
        self._plain = compiled.plain
        self._encoding = encoding
        self._characters_of = dict(enumerate(TABLES.get(encoding, "")))
        self._cookie = " " * max(0, description.numbers.get("xmc", 0))
        self._glyphs = line_drawing(description.fixed.get("acsc", b""))
        switched = bool(description.without_parameters("smacs"))
        self._always_glyphs = (
            {} if switched else {code: glyph for code, glyph in self._glyphs.items() if code > 0x7F}
        )
        self._held = b""
        self._end = 0
        self._graphics = False
        self._status: str | None = None
        self._status_start = 0

    def feed(self, data: bytes, start: int) -> list[Operation]:
        """Take the next bytes of the output, the first of which stands at offset ``start``."""
        if self._encoding == SEVEN_BIT:
            data = data.translate(_SEVEN_BITS)
        if self._held:
            data, start = self._held + data, start - len(self._held)
            self._held = b""
        self._end = start + len(data)
        return self._decode(data, start)

    def finish(self) -> list[Operation]:
        """What an unfinished sequence at the end comes to."""
        held, self._held = self._held, b""
        operations: list[Operation] = []
        if held:
            start = self._end - len(held)
            effects = self._table.effects_of(held)
            if effects is None and self._encoding == UTF_8 and incomplete_tail(held) == len(held):
                self._text(held, start, operations, may_continue=False)
            elif effects is None:
                operations.append((start, self._end, "debug", (held,), False))
            else:
                self._apply(held, effects, start, self._end, operations)
        self._end_status(self._end, operations)
        return operations

    def _decode(self, data: bytes, start: int) -> list[Operation]:
        operations: list[Operation] = []
        plain = self._plain
        for found in self._scan(data):
            group = found.lastindex
            first, end = start + found.start(), start + found.end()
            if group == _TEXT:
                self._text(found[0], first, operations, may_continue=found.end() == len(data))
            elif group == _TOKEN:
                effects = plain.get(found[0]) if self._status is None else None
                if effects is None:
                    self._token(found[0], first, end, operations)
                elif len(effects) == 1:
                    operations.append((first, end, *effects[0]))
                elif effects and effects[-1][0] == COOKIE:
                    operations += [(first, end, *effect) for effect in effects[:-1]]
                    operations.append(
                        (first, end, "draw", (self._cookie, [first] * len(self._cookie)), False)
                    )
                else:
                    operations += [(first, end, *effect) for effect in effects]
            elif group in (_LONGER, _UNFINISHED):
                self._held = found[0]
            elif group is None:
                self._end_status(first, operations)
                operations.append((first, end, "debug", (found[0],), False))
        return operations

    def _text(self, raw: bytes, first: int, operations: list[Operation], *, may_continue: bool) -> None:
        offsets: int | list[int]
        if self._graphics:
            text, offsets = raw.decode("latin-1").translate(self._glyphs), first
        elif raw.isascii():
            text, offsets = raw.decode("ascii"), first
        elif self._always_glyphs:
            text, offsets = raw.decode("latin-1").translate(self._always_glyphs), first
        else:
            text, offsets = self._characters(raw, first, may_continue=may_continue)
        if self._status is not None:
            self._status += text
        elif text:
            operations.append((first, first + len(raw) - len(self._held), "draw", (text, offsets), False))

    def _characters(self, raw: bytes, first: int, *, may_continue: bool) -> tuple[str, int | list[int]]:
        if self._encoding != UTF_8:
            return raw.decode("latin-1").translate(self._characters_of), first
        cut = incomplete_tail(raw) if may_continue else 0
        if cut:
            raw, self._held = raw[:-cut], raw[-cut:]
        return decode_utf8(raw, first)

    def _token(self, token: bytes, first: int, end: int, operations: list[Operation]) -> None:
        effects = self._table.effects_of(token) or ()
        if self._status is not None:
            if token == self._table.status_end:
                self._end_status(end, operations)
                return
            if all(effect[0] in _WITHIN_STATUS for effect in effects):
                return
            self._end_status(first, operations)
        if not any(effect[0] in _OWN for effect in effects) and len(self._plain) < _REMEMBERED:
            self._plain[token] = effects
        self._apply(token, effects, first, end, operations)

    def _apply(
        self, token: bytes, effects: Effects, first: int, end: int, operations: list[Operation]
    ) -> None:
        for event, arguments, private in effects:
            if event == GRAPHICS:
                self._graphics = arguments[0]
            elif event == COOKIE:
                operations.append((first, end, "draw", (self._cookie, [first] * len(self._cookie)), False))
            elif event == STATUS:
                self._status, self._status_start = "", first
            elif event == REPEAT:
                char, count = bytes([arguments[0]]), arguments[1]
                self._text(char, first + max(0, token.find(char, 1)), operations, may_continue=False)
                if count > 1:
                    operations.append((first, end, "repeat", (count - 1,), False))
            else:
                operations.append((first, end, event, arguments, private))

    def _end_status(self, end: int, operations: list[Operation]) -> None:
        if self._status is not None:
            operations.append((self._status_start, end, "status_text", (self._status,), False))
            self._status = None


@dataclass(frozen=True, slots=True)
class _Compiled:
    """What decoders of one terminal share."""

    table: TokenTable
    pattern: re.Pattern[bytes]
    plain: dict[bytes, Effects]
    """Sequences already met, with their effects."""


@lru_cache(maxsize=256)
def compile_description(description: Description, encoding: str) -> _Compiled:
    """Work out the pattern of a terminal; remembered. Raises `DialectError` as `CapabilityDialect` does."""
    table = build(description)
    return _Compiled(table, re.compile(_pattern(table, description, encoding), re.DOTALL), {})


def _pattern(table: TokenTable, description: Description, encoding: str) -> bytes:
    """The groups above, in this order; then what is not understood."""
    fixed = Trie.of(table.fixed)
    inverses = [addressed.inverse for addressed in table.addressed]
    firsts = set(fixed.children).union(*(inverse.first_bytes for inverse in inverses))
    fill = {0x00, 0x7F, *description.fixed.get("pad", b"")[:1]}
    # Where a sequence may begin with it, one at a time.
    runs = [byte_class(fill - firsts) + b"+"] if fill - firsts else []
    fills = b"|".join(runs + ([byte_class(fill & firsts)] if fill & firsts else []))
    high = {"latin-1": range(0xA0, 0x100), SEVEN_BIT: range(0)}.get(encoding, range(0x80, 0x100))
    text = {*range(0x20, 0x7F), *high} - firsts - fill
    unfinished = b"|".join(filter(None, (fixed.beginning(), *(inverse.beginning for inverse in inverses))))
    longer = _may_become_longer(table, inverses)
    leads = {byte for byte, child in fixed.children.items() if child.children}
    leads = leads.union(*(inverse.first_bytes for inverse in inverses)) & firsts - {
        ord("\n"),
        ord("\r"),
        ord("\b"),
    }
    swallowed = (
        b"%b[\\x20-\\x7e\\x80-\\xff]|" % byte_class(leads)
        if leads and description.unknown == UnknownRule.SWALLOW
        else b""
    )
    return b"|".join(
        (
            b"(%b+)" % byte_class(text),
            b"((?=%b)(?:%b))" % (longer, unfinished) if longer else b"((?!))",
            b"(%b)" % b"|".join(_longest_first(table, fixed)),
            b"(%b)" % unfinished if unfinished else b"((?!))",
            b"(%b)" % fills,
            swallowed + b".",
        )
    )


def _may_become_longer(table: TokenTable, inverses: list[Inverse]) -> bytes:
    """The whole sequences that begin others, as a pattern."""
    beginnings = {token[:size] for token in table.fixed for size in range(1, len(token))}
    fixed = [
        token
        for token in table.fixed
        if token in beginnings or any(inverse.begins_with(token) for inverse in inverses)
    ]
    fixed += [form for form in beginnings if any(inverse.match(form) == len(form) for inverse in inverses)]
    addressed = [
        inverse.whole
        for inverse in inverses
        if any(other is not inverse and other.begins_with(inverse.sample) for other in inverses)
    ]
    # What is unfinished is told by its own pattern: here its first byte is enough.
    listed = [byte_class(set(inverse.first_bytes)) for inverse in inverses if inverse.is_listed]
    patterns = [Trie.of(fixed).whole(), *addressed, *listed]
    return b"|".join(filter(None, patterns))


def _longest_first(table: TokenTable, fixed: Trie) -> list[bytes]:
    """A sequence without parameters that begins with a whole one that has some stands before it."""
    inverses = [addressed.inverse for addressed in table.addressed]
    longer = [
        token for token in table.fixed if any(0 < inverse.match(token) < len(token) for inverse in inverses)
    ]
    return [
        *filter(None, [Trie.of(longer).whole()]),
        *(inverse.whole for inverse in inverses),
        fixed.whole(),
    ]
