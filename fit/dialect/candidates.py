"""Every terminal that a session could have been written for, those that are decoded alike taken together."""

from __future__ import annotations

import os
from collections.abc import Hashable
from dataclasses import dataclass
from functools import lru_cache

from fit.dialect.description import Description
from fit.dialect.description_file import packed_names, read_packed
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.meanings import NO_EFFECT
from fit.dialect.terminfo_database import entry_names, find_entry, read_entry
from fit.errors import DialectError

ECMA48 = "vt100"
"""The name under which all terminals after ECMA-48 go."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """Terminals with the same sequences."""

    names: tuple[str, ...]
    """Sorted, the best known first: those that come with the program, then the shortest."""
    description: Description
    heads: frozenset[bytes]
    """The first two bytes of each of their sequences, or the only one."""
    is_ecma48: bool


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
    found = [_readable(min(names, key=lambda name: (name not in packed, len(name), name))) for names in files.values()]
    known = {description.name for description in found if description is not None}
    found += [read_packed(name) for name in packed if name not in known]
    return [description for description in found if description is not None and "cup" in description.expressions]


def _readable(name: str) -> Description | None:
    try:
        return read_entry(name)
    except DialectError:
        return None  # one damaged entry is no reason to rank none


def _key(description: Description) -> Hashable:
    if follows_ecma48(description):
        return ECMA48
    fixed = frozenset((name, form) for name, form in description.fixed.items() if name not in NO_EFFECT)
    return (fixed, frozenset(description.expressions.items()), description.numbers.get("xmc", 0) > 0)


def _candidate(group: list[Description]) -> Candidate:
    packed = packed_names()
    ordered = sorted(group, key=lambda one: (one.name != ECMA48, one.name not in packed, len(one.name), one.name))
    first = ordered[0]
    forms = [*first.fixed.values(), *(expression.expand(1, 1) for expression in first.expressions.values())]
    return Candidate(
        tuple(description.name for description in ordered),
        first,
        frozenset(form[:2] for form in forms if form),
        _key(first) == ECMA48,
    )
