"""What matters of a terminal besides its sequences: how lines wrap, what an attribute costs, what it lacks."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

from fit.dialect.description import Description, UnknownRule
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.inversion import FROM_ZERO, Inverse, invert
from fit.errors import DialectError

Wrap = Literal["deferred", "immediate", "none"]
"""The values of `fit.screen.rules.WrapRule` that a terminal can have."""

_CONTROL_NAMES: Final = (  # noqa: SIM905  words
    "NUL SOH STX ETX EOT ENQ ACK BEL BS HT LF VT FF CR SO SI DLE DC1 DC2 DC3 DC4 NAK SYN ETB CAN EM SUB ESC FS GS RS US SP"
).split()
_ABILITIES: Final = {
    "erase to the end of a line": ("el",),
    "erase to the end of the screen": ("ed",),
    "insert and delete lines": ("il1", "il", "csr"),
    "insert characters": ("ich1", "ich", "smir"),
    "delete characters": ("dch1", "dch"),
    "scroll backwards": ("ri", "rin"),
    "reverse video": ("smso", "rev"),
    "underline": ("smul",),
    "line drawing": ("smacs", "acsc"),
}
"""What programs ask of a terminal, and the capabilities of which one is enough for it."""


@dataclass(frozen=True, slots=True)
class Traits:
    """A terminal in words and numbers."""

    name: str
    about: str
    rows: int
    columns: int
    addressing: str
    """How the cursor is addressed, as manuals write it; empty where it cannot be."""
    wrap: Wrap
    """What a glyph in the last column does: wrap with the next one, at once, or never."""
    attribute_cells: int
    """Cells that each change of an attribute takes on the screen."""
    backs_over_edge: bool
    """Whether BS in column 1 moves to the end of the row above."""
    overstrikes: bool
    """Whether a glyph is added to the one below it, as on paper."""
    prints_tilde: bool
    unknown: UnknownRule
    has_status_line: bool
    lacks: tuple[str, ...]
    is_ecma48: bool
    origin: str


def traits_of(description: Description) -> Traits:
    """The traits of a terminal."""
    flags = description.flags
    have = {*(name for name, form in description.fixed.items() if form), *description.expressions}
    have.update(description.more.values())
    return Traits(
        name=description.name,
        about=description.about,
        rows=description.lines,
        columns=description.columns,
        addressing=addressing(description),
        wrap="none" if "am" not in flags else "deferred" if "xenl" in flags else "immediate",
        attribute_cells=max(0, description.numbers.get("xmc", 0)),
        backs_over_edge="bw" in flags,
        overstrikes="os" in flags,
        prints_tilde="hz" not in flags,
        unknown=description.unknown,
        has_status_line="hs" in flags and "tsl" in have,
        lacks=tuple(what for what, names in _ABILITIES.items() if have.isdisjoint(names)),
        is_ecma48=follows_ecma48(description),
        origin=description.origin,
    )


def addressing(description: Description) -> str:
    """The cursor address as manuals write it, such as ``ESC Y row+32 column+32``; empty where there is none."""
    cup = description.expressions.get("cup")
    if cup is None:
        return ""
    try:
        inverse = invert(
            cup, (FROM_ZERO, FROM_ZERO), (range(max(24, description.lines)), range(description.columns))
        )
    except DialectError:
        return ""
    return _written(inverse) or "by moves from the first cell"


def _written(inverse: Inverse) -> str:
    words = []
    for slot in inverse.slots:
        if slot.parameter is None:
            words.append(spelled(next(iter(slot.values))))
            continue
        first = {value: form for form, value in reversed(list(slot.values.items()))}
        words.append(
            _parameter(("row", "column")[slot.parameter], [first.get(value, b"") for value in (0, 1, 10)])
        )
    return " ".join(words) if len(words) > 1 else ""


def _parameter(name: str, forms: list[bytes]) -> str:
    zero, one, ten = forms
    if len(zero) == len(one) == len(ten) == 1:
        step = (one[0] - zero[0]) % 256 == 1 and (ten[0] - one[0]) % 256 == 9
        offset = zero[0] if zero != b"\x80" else 0
        return (
            f"{name}+{offset}" if step and offset else name if step or zero == b"\x80" else f"{name} (coded)"
        )
    if zero.strip().isdigit() and one.strip().isdigit():
        digits = f" in {len(zero)} digits" if len(zero) == len(ten) else " in digits"
        return f"{name}{'+1' if int(zero) == 1 else ''}{digits}"
    return f"{name} (coded)"


def spelled(data: bytes) -> str:
    """Bytes as manuals write them, such as ``ESC [2J``: control characters by name, the others together."""
    pieces = re.findall(rb"[!-~]+|[^!-~]", data)
    return " ".join(
        piece.decode("ascii") if b" " < piece[:1] < b"\x7f" else _named(piece[0]) for piece in pieces
    )


def _named(byte: int) -> str:
    return _CONTROL_NAMES[byte] if byte <= 0x20 else "DEL" if byte == 0x7F else f"0x{byte:02X}"
