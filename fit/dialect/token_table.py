"""A description turned into what a decoder needs: each sequence of the terminal with its effects."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import product
from typing import Final

from fit.dialect.description import Description, Expression
from fit.dialect.inversion import FROM_ZERO, Inverse, invert
from fit.dialect.meanings import (
    ATTRIBUTES,
    CONTROLS,
    COOKIE,
    EFFECTS,
    ENDINGS,
    FIXED,
    GRAPHICS,
    NO_EFFECT,
    PARAMETERISED,
    STATUS,
    Effects,
    attributes,
    repeat_last,
)
from fit.errors import DialectError
from fit.units import LARGEST_SIDE

_COUNTS: Final = range(1, LARGEST_SIDE + 1)
_SGR_CODES: Final = (7, 4, 7, 5, 2, 1, 8)
"""The attributes of ``sgr`` in the order of its parameters: standout, underline, reverse, blink, dim, bold, invisible."""
_AT_ESCAPES: Final = re.compile(rb"(?!\A)(?=\x1b)")
_MOST_COLOURS: Final = 256


@dataclass(frozen=True, slots=True)
class Addressed:
    """One sequence with parameters."""

    name: str
    inverse: Inverse
    effects: Callable[..., Effects]


@dataclass(frozen=True, slots=True)
class TokenTable:
    """Every sequence of a terminal."""

    fixed: Mapping[bytes, Effects]
    addressed: tuple[Addressed, ...]
    status_end: bytes | None
    """What ends a status text; None where the terminal has no status line."""

    def effects_of(self, token: bytes) -> Effects | None:
        """What one whole sequence does, None where it is none of the terminal's."""
        known = self.fixed.get(token)
        if known is not None:
            return known
        for addressed in self.addressed:
            values = addressed.inverse.values(token)
            if values is not None:
                return addressed.effects(*values)
        return None


def build(description: Description) -> TokenTable:
    """Work out the sequences of a terminal.

    Raises `DialectError` where it has no cursor addressing that could be turned around.
    """
    addressed = _addressed(description)
    fixed = _fixed(description)
    _drop_compounds(fixed, addressed, keep=_keep(description))
    _add_without_effect(description, fixed, addressed)
    _add_parts(description, fixed, addressed)
    has_status = "tsl" in {*description.fixed, *description.expressions}
    end = next(iter(_forms(description, "fsl")), None) if has_status else None
    if end is not None:
        fixed.setdefault(end, ())
    return TokenTable(fixed, addressed, end)


def _addressed(description: Description) -> tuple[Addressed, ...]:
    found = [
        one
        for name, expression in description.expressions.items()
        if name in PARAMETERISED
        for one in [_inverted(name, expression, description)]
        if one is not None
    ]
    found += [
        Addressed(name, inverse, PARAMETERISED[name])
        for name, parts in description.padded.items()
        if name in PARAMETERISED and name != "rep" and not isinstance(parts[0], bytes)
        for inverse in [_first_part_inverted(name, parts[0], description)]
        if inverse is not None
    ]
    return tuple(sorted(found, key=_longest_and_most_literal_first))


def _inverted(name: str, expression: Expression, description: Description) -> Addressed | None:
    """One sequence turned around; None where that cannot be done: it stays unknown, and is counted wherever it occurs."""
    ranges, own = _ranges(name, description)
    effects = PARAMETERISED[name]
    if name == "rep" and expression.expand(0x41, 2).startswith(b"A"):
        # The character is printed as it is and only then repeated: what follows it is the sequence.
        expression, ranges, own, effects = _AfterCharacter(expression), ranges[1:], own[1:], repeat_last
    try:
        return Addressed(name, invert(expression, ranges, own), effects)
    except DialectError as error:
        if name != "cup":
            return None
        raise DialectError(
            f"terminal '{description.name}' cannot be decoded: its cursor addressing is ambiguous: {error.what}",
            source=description.origin or None,
        ) from None


def _first_part_inverted(name: str, expression: Expression, description: Description) -> Inverse | None:
    try:
        return invert(expression, *_ranges(name, description))
    except DialectError:
        return None


def _longest_and_most_literal_first(one: Addressed) -> tuple[int, int]:
    return -one.inverse.shortest, one.inverse.parameters


@dataclass(frozen=True)
class _AfterCharacter:
    """The part of a repetition that follows the character itself."""

    whole: Expression

    def expand(self, *parameters: int) -> bytes:
        return self.whole.expand(0x41, *parameters)[1:]


def _ranges(name: str, description: Description) -> tuple[tuple[range, ...], tuple[range, ...]]:
    """The values tried of each parameter, and those that must come out."""
    rows, columns = range(max(24, description.lines)), range(description.columns)
    widths = range(1, max(2, description.columns))
    colours = range(min(_MOST_COLOURS, max(8, description.numbers.get("colors", 8))))
    special = {
        "cup": ((FROM_ZERO, FROM_ZERO), (rows, columns)),
        "csr": ((FROM_ZERO, FROM_ZERO), (rows, rows)),
        "hpa": ((FROM_ZERO,), (columns,)),
        "vpa": ((FROM_ZERO,), (rows,)),
        "tsl": ((FROM_ZERO,), (columns,)),
        "rep": ((range(0x20, 0x7F), _COUNTS), (range(0x20, 0x7F), range(1, description.columns))),
        "setaf": ((colours,), (colours,)),
        "setab": ((colours,), (colours,)),
        "setf": ((range(8),), (range(8),)),
        "setb": ((range(8),), (range(8),)),
    }
    vertical = name in ("cuu", "cud", "il", "dl", "indn", "rin")
    return special.get(name, ((_COUNTS,), (range(1, max(2, description.lines)) if vertical else widths,)))


def _fixed(description: Description) -> dict[bytes, Effects]:
    table = dict(CONTROLS)
    cookie: Effects = ((COOKIE, (), False),) if description.numbers.get("xmc", 0) > 0 else ()
    own: dict[bytes, Effects] = {}
    for name, effects in FIXED.items():
        for form in _forms(description, name):
            own.setdefault(form, effects if name == "nel" and form != b"\r" else CONTROLS.get(form, effects))
    for name, effects in ENDINGS.items():
        for form in _forms(description, name):
            if form not in own or own[form][0][0] in ("select_graphic_rendition", GRAPHICS):
                own[form] = _joined(own.get(form, ()), effects)
    own = {form: effects + cookie if _is_rendition(effects) else effects for form, effects in own.items()}
    for name, effects in ATTRIBUTES.items():
        for form in _forms(description, name):
            own.setdefault(form, effects + cookie)
    for form, name in description.more.items():
        own.setdefault(form, EFFECTS[name])
    for expression in (description.expressions.get("sgr"), *description.padded.get("sgr", ())[:1]):
        for form, effects in _renditions(expression):
            own.setdefault(form, effects + cookie)
    for form, effects in parts_of_attributes(description).items():
        own.setdefault(form, effects)
    if "tsl" in description.fixed:
        for form in _forms(description, "tsl"):
            own[form] = ((STATUS, (), False),)
    table.update(own)
    return table


def parts_of_attributes(description: Description) -> dict[bytes, Effects]:
    """The sequences that one for an attribute is made of: a program may send them alone, with the same effect.

    Where attributes take a cell the parts are not known: nothing says which of them takes it.
    """
    if description.numbers.get("xmc", 0) > 0:
        return {}
    found: dict[bytes, Effects] = {}
    for name, effects in {**ATTRIBUTES, **ENDINGS, "prot": ()}.items():
        for form in _forms(description, name):
            parts = _AT_ESCAPES.split(form)
            if len(parts) > 1 and all(len(part) > 1 for part in parts):
                renditions = tuple(effect for effect in effects if effect[0] != GRAPHICS)
                found |= {
                    part: renditions for part in parts if part.startswith(b"\x1b") and part not in found
                }
    return found


def _is_rendition(effects: Effects) -> bool:
    return any(effect[0] in ("select_graphic_rendition", GRAPHICS) for effect in effects)


def _forms(description: Description, name: str) -> list[bytes]:
    """The bytes of a sequence; both readings of ``%%``, which the database writes where one ``%`` is meant.

    Blanks in front of it are printed as on any line, and a lone printable character moves the cursor only
    because it is printed, or lost its escape in the database: neither belongs to the sequence.
    """
    form = (description.without_parameters(name) or b"").lstrip(b" ")
    alone = form != description.without_parameters(name) and form in CONTROLS
    if not form or alone or (len(form) == 1 and 0x20 < form[0] < 0x7F):
        return []
    return [form, form.replace(b"%%", b"%")] if b"%%" in form else [form]


def _joined(first: Effects, second: Effects) -> Effects:
    """Both endings in one: a sequence that ends two attributes ends all."""
    renditions = [effect for effect in (*first, *second) if effect[0] == "select_graphic_rendition"]
    others = tuple(
        dict.fromkeys(effect for effect in (*first, *second) if effect[0] != "select_graphic_rendition")
    )
    if len(renditions) > 1:
        return others + attributes(0)
    return others + tuple(renditions)


def _renditions(expression: Expression | bytes | None) -> list[tuple[bytes, Effects]]:
    """The forms of ``sgr``, the fewest attributes first, since a terminal may not tell all of them apart."""
    if expression is None or isinstance(expression, bytes):
        return []
    found = []
    for flags in sorted(product((0, 1), repeat=len(_SGR_CODES)), key=sum):
        for graphics in (0, 1):
            form = expression.expand(*flags, 0, graphics)
            codes = dict.fromkeys(code for code, flag in zip(_SGR_CODES, flags, strict=True) if flag)
            if form:
                found.append((form, (*attributes(0, *codes), (GRAPHICS, (bool(graphics),), False))))
    return found


def _keep(description: Description) -> set[bytes]:
    """Sequences that mean more than their parts: home and up reaches the last row where the screen is a loop."""
    return {form for name in ("ll", "tsl") for form in (description.fixed.get(name),) if form}


def _drop_compounds(fixed: dict[bytes, Effects], addressed: tuple[Addressed, ...], keep: set[bytes]) -> None:
    """A sequence made of others does what its parts do, byte for byte, as on the terminal itself."""
    for token in sorted(fixed, key=len, reverse=True):
        if len(token) > 1 and token not in keep and _is_compound(token, fixed, addressed):
            del fixed[token]


def _is_compound(token: bytes, fixed: Mapping[bytes, Effects], addressed: tuple[Addressed, ...]) -> bool:
    at = 0
    while at < len(token):
        end = next_token(token, at, fixed, addressed, shorter_than=len(token))
        if end < 0:
            return False
        at = end
    return True


def next_token(
    data: bytes,
    at: int,
    fixed: Mapping[bytes, Effects],
    addressed: tuple[Addressed, ...],
    *,
    shorter_than: int,
) -> int:
    """The offset after the longest sequence that starts at ``at``; -1 where none does."""
    ends = [one.inverse.match(data, at) for one in addressed]
    best = max((end for end in ends if end - at < shorter_than), default=-1)
    for end in range(min(len(data), at + shorter_than - 1), max(at, best), -1):
        if data[at:end] in fixed:
            return end
    return best


def _add_without_effect(
    description: Description, fixed: dict[bytes, Effects], addressed: tuple[Addressed, ...]
) -> None:
    """Initialisation strings and their like: they do what the known sequences in them do."""
    known = dict(fixed)
    for name in NO_EFFECT:
        for form in _forms(description, name):
            if form in fixed or (len(form) > 1 and _is_compound(form, known, addressed)):
                continue
            fixed[form] = _effects_within(form, known, addressed)


def _effects_within(form: bytes, known: Mapping[bytes, Effects], addressed: tuple[Addressed, ...]) -> Effects:
    effects: Effects = ()
    at = 0
    while at < len(form):
        end = next_token(form, at, known, addressed, shorter_than=len(form))
        if end > at:
            effects += known.get(form[at:end], ())
        at = max(end, at + 1)
    return tuple(effect for effect in effects if effect[0] not in (COOKIE, STATUS))


def _add_parts(
    description: Description, fixed: dict[bytes, Effects], addressed: tuple[Addressed, ...]
) -> None:
    """Where fill characters part a sequence, its beginning does what the whole does; what follows adds nothing.

    A part that is made of known sequences is left to them. Where ESC alone or a letter would be a part, the
    sequence stays whole.
    """
    known = dict(fixed)
    for name, parts in description.padded.items():
        whole = b"".join(part for part in parts if isinstance(part, bytes))
        for index, part in enumerate(parts if _come_apart(parts) else ()):
            if not isinstance(part, bytes) or _is_known(part, known, addressed):
                continue
            if name in NO_EFFECT:
                fixed[part] = _effects_within(part, known, addressed)
            else:
                fixed[part] = known.get(whole, ()) if index == 0 else ()


def _is_known(part: bytes, known: Mapping[bytes, Effects], addressed: tuple[Addressed, ...]) -> bool:
    return part in known or _is_compound(part, known, addressed)


def _come_apart(parts: tuple[bytes | Expression, ...]) -> bool:
    fixed = [part for part in parts if isinstance(part, bytes)]
    return all(part != b"\x1b" and not 0x20 <= part[0] < 0x7F and b"  " not in part for part in fixed)
