"""Every terminal by its name: from the terminal database, from our own descriptions, from a user's file."""

from __future__ import annotations

from dataclasses import replace
from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path
from typing import Final

from fit.dialect.capability_dialect import CapabilityDialect
from fit.dialect.description import Description
from fit.dialect.description_file import packed_names, read_file, read_packed
from fit.dialect.ecma48 import Ecma48
from fit.dialect.operation import Dialect
from fit.dialect.terminfo_database import entry_names, read_entry
from fit.errors import DialectError

_HOME_SEQUENCES: Final = (b"\x1b[1;1H", b"\x1b[1;1f", b"\x9b1;1H", b"\x1b[01;01H", b"\x1b[01;001H")
"""How terminals after ECMA-48 (CUP or HVP, counted from 1) address their first cell."""


def terminal_names() -> list[str]:
    """Every terminal that has a name: those of the database and our own, sorted."""
    return sorted({*entry_names(), *packed_names()})


def find_description(name: str) -> Description:
    """The description of a terminal: a name of the database, one of ours, or the path of a ``.toml`` file.

    The database comes first where it has the name. Raises `DialectError` where the name is unknown, with
    the nearest ones, or where its description cannot be read.
    """
    return read_file(Path(name)) if name.endswith(".toml") else _by_name(name)


@lru_cache(maxsize=4096)
def _by_name(name: str) -> Description:
    ours = read_packed(name) if name in packed_names() else None
    entry = read_entry(name)
    if entry is not None and ours is not None:
        return replace(entry, unknown=ours.unknown, about=entry.about or ours.about)
    if entry is None and ours is None:
        raise _unknown(name)
    found = entry or ours
    assert found is not None
    return found


def _unknown(name: str) -> DialectError:
    near = get_close_matches(name, terminal_names(), n=4, cutoff=0.5)
    meant = f"the nearest names are {', '.join(near)}; " if near else ""
    return DialectError(
        f"no terminal is named '{name[:40]}'",
        hint=f"{meant}'fit terminals' lists them, and a .toml file can describe one",
    )


def is_ecma48(description: Description) -> bool:
    """Whether a terminal addresses its cursor as ECMA-48 does and has no attributes that take a cell."""
    cup = description.expressions.get("cup")
    return (
        cup is not None
        and cup.expand(0, 0).endswith(_HOME_SEQUENCES)
        and description.numbers.get("xmc", 0) < 1
    )


def find_dialect(name: str, encoding: str = "utf-8") -> Dialect:
    """The decoder of a terminal, by what `find_description` takes.

    Terminals after ECMA-48 are decoded by `Ecma48`, which knows more than any description tells; the
    others by their descriptions. A terminal without cursor addressing is decoded by what it has.
    Raises `DialectError` where the terminal is unknown or cannot be decoded.
    """
    description = find_description(name)
    if is_ecma48(description):
        eight_bit = description.expressions["cup"].expand(0, 0).startswith(b"\x9b")
        dialect = Ecma48("latin-1" if eight_bit and encoding == "utf-8" else encoding)
        dialect.name = description.name
        return dialect
    return CapabilityDialect(description, encoding)
