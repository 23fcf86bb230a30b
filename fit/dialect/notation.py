"""Control sequences as manuals print them, for descriptions of our own: ``ESC Y row+32 column+32``.

Words are separated by blanks. A word is

* a control character by its name in ECMA-48 or ASCII (``ESC``, ``NUL``, ``SP``, ``DEL``), as ``^L``, or a
  byte in hexadecimal (``0x1B``);
* a parameter: ``row``, ``column``, ``count``, ``top``, ``bottom`` or ``char``, counted from 0 (a count from
  1), with a number added or taken away (``row+32``), sent as one byte; with ``<31`` the number is added only
  to values below 31; with ``:d`` it is sent as decimal digits, with ``:d2`` and ``:d3`` as so many digits;
* anything else: these characters themselves (``Y``, ``[``, ``[?7h``).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

_NAMES: Final = (  # noqa: SIM905  words
    "NUL SOH STX ETX EOT ENQ ACK BEL BS HT LF VT FF CR SO SI DLE DC1 DC2 DC3 DC4 NAK SYN ETB CAN EM SUB ESC FS GS RS US SP"
).split()
_CONTROL: Final = {**{name: code for code, name in enumerate(_NAMES)}, "DEL": 0x7F}
_PARAMETERS: Final = {
    "cup": ("row", "column"),
    "csr": ("top", "bottom"),
    "rep": ("char", "count"),
    "hpa": ("column",),
    "vpa": ("row",),
    "tsl": ("column",),
}
_PARAMETER = re.compile(r"([a-z]+)([+-]\d+)?(<\d+)?(:d\d?)?")


@dataclass(frozen=True, slots=True)
class _Parameter:
    index: int
    added: int
    below: int | None
    """The value from which on nothing is added; None where there is none."""
    digits: int | None
    """The least number of digits; None where it is sent as one byte."""

    def expand(self, values: tuple[int, ...]) -> bytes:
        number = values[self.index]
        if self.below is None or number < self.below:
            number += self.added
        if self.digits is not None:
            return b"%0*d" % (self.digits, max(0, number))
        return bytes([number & 0xFF])


@dataclass(frozen=True, slots=True)
class Sequence:
    """A control sequence with or without parameters."""

    pieces: tuple[bytes | _Parameter, ...]

    @property
    def has_parameters(self) -> bool:
        return any(isinstance(piece, _Parameter) for piece in self.pieces)

    def lacks(self, names: tuple[str, ...]) -> tuple[str, ...]:
        """Those of the parameters, in their order, that it has no place for."""
        used = {piece.index for piece in self.pieces if isinstance(piece, _Parameter)}
        return tuple(name for index, name in enumerate(names) if index not in used)

    def expand(self, *parameters: int) -> bytes:
        """The bytes for these parameters."""
        return b"".join(
            piece if isinstance(piece, bytes) else piece.expand(parameters) for piece in self.pieces
        )


def parameters_of(capability: str) -> tuple[str, ...]:
    """The names of the parameters that a sequence takes, in the order of terminfo(5)."""
    return _PARAMETERS.get(capability, ("count",))


def parse(text: str, capability: str) -> Sequence:
    """Read one sequence. Raises `ValueError` with what was expected."""
    words = text.split()
    if not words:
        raise ValueError("an empty sequence; leave the row out where the terminal has none")
    return Sequence(tuple(_piece(word, parameters_of(capability)) for word in words))


def _piece(word: str, allowed: tuple[str, ...]) -> bytes | _Parameter:
    if word in _CONTROL:
        return bytes([_CONTROL[word]])
    if re.fullmatch(r"\^[@-_]", word):
        return bytes([ord(word[1]) - 0x40])
    if re.fullmatch(r"0x[0-9A-Fa-f]{2}", word):
        return bytes([int(word, 16)])
    found = _PARAMETER.fullmatch(word)
    if found and found[1] in allowed:
        return _Parameter(
            allowed.index(found[1]),
            int(found[2] or 0),
            int(found[3][1:]) if found[3] else None,
            None if not found[4] else int(found[4][2:] or 1),
        )
    if found and len(found[1]) > 2:
        raise ValueError(
            f"'{word}', where {', '.join(allowed)} or a control character such as ESC was expected"
        )
    if not word.isascii():
        raise ValueError(f"'{word}', where ASCII characters or bytes such as 0x9B were expected")
    return word.encode("ascii")
