"""Every terminal that a session could have been written for, those that are decoded alike taken together."""

from __future__ import annotations

import os
from collections.abc import Hashable, Iterable
from dataclasses import dataclass
from functools import lru_cache

from fit.dialect.alternate_font import font_of
from fit.dialect.description import Description, Expression
from fit.dialect.description_file import completed, packed_names, read_packed
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.evidence import heads
from fit.dialect.terminfo_database import entry_names, find_entry, read_entry
from fit.errors import DialectError

ECMA48 = "vt100"
"""The name under which all terminals after ECMA-48 go."""
FAMILIAR = (ECMA48, "vt52", "adm3a")
"""Terminals that later ones took their codes from."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """Terminals with the same sequences."""

    names: tuple[str, ...]
    """The best known first."""
    description: Description
    heads: frozenset[bytes]
    """The kinds of their sequences; see `fit.dialect.evidence.heads`."""
    hiding: bytes
    """How its cursor addresses begin, where rows and columns are control characters, which look like other heads."""
    is_ecma48: bool


def best_known_first(names: Iterable[str]) -> tuple[str, ...]:
    """Those that later terminals took their codes from, then those that come with the program, then short names."""
    packed = packed_names()
    return tuple(sorted(names, key=lambda name: (name not in FAMILIAR, name not in packed, len(name), name)))


@lru_cache(maxsize=1)
def candidates() -> tuple[Candidate, ...]:
    """All terminals with cursor addressing, from our own descriptions and the database."""
    groups: dict[Hashable, list[Description]] = {}
    for description in _descriptions():
        groups.setdefault(_key(description), []).append(description)
    return tuple(_candidate(group) for group in groups.values())


def _descriptions() -> list[Description]:
    """One of each file of the database, and ours that it lacks."""
    packed = packed_names()
    files: dict[str, list[str]] = {}
    for name in entry_names():
        path = find_entry(name)
        if path is not None:
            files.setdefault(os.path.realpath(path), []).append(name)
    found = [
        _readable(min(names, key=lambda name: (name not in packed, len(name), name)))
        for names in files.values()
    ]
    known = {description.name for description in found if description is not None}
    found += [read_packed(name) for name in packed if name not in known]
    return [
        description for description in found if description is not None and "cup" in description.expressions
    ]


def _readable(name: str) -> Description | None:
    try:
        entry = read_entry(name)
        return None if entry is None else completed(entry)
    except DialectError:
        return None  # one damaged entry is no reason to rank none


def _key(description: Description) -> Hashable:
    if follows_ecma48(description):
        return ECMA48, font_of(description)
    return (
        frozenset(description.fixed.items()),
        frozenset(description.expressions.items()),
        frozenset(description.padded.items()),
        frozenset(description.more.items()),
        description.numbers.get("xmc", 0) > 0,
    )


def _candidate(group: list[Description]) -> Candidate:
    names = best_known_first(description.name for description in group)
    first = next(description for description in group if description.name == names[0])
    parts = [part for padded in first.padded.values() for part in padded if isinstance(part, bytes)]
    known = {kind for form in (*first.fixed.values(), *first.more, *parts) for kind in heads(form)}
    for expression in first.expressions.values():
        # Two samples with nothing in common: where their second bytes differ, the first byte is all there is.
        one, two = expression.expand(1, 1, 1), expression.expand(18, 18, 18)
        known.update(heads(one) if one[:2] == two[:2] else [one[:1]])
        if one[:1] != b"\x1b":
            known.add(one[:1])
    return Candidate(
        names,
        first,
        frozenset(known),
        _hiding(first.expressions["cup"]),
        follows_ecma48(first),
    )


def _hiding(cup: Expression) -> bytes:
    start = literal_start(cup)
    return start if any(byte < 0x20 for byte in cup.expand(1, 1)[len(start) :]) else b""


def literal_start(expression: Expression) -> bytes:
    """What a sequence with parameters always begins with."""
    one, two = expression.expand(1, 1, 1), expression.expand(18, 18, 18)
    return next(
        (one[:size] for size in range(min(len(one), len(two)), 0, -1) if one[:size] == two[:size]), b""
    )
