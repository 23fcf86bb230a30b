"""Every terminal by its name: from the terminal database, from our own descriptions, from a user's file."""

from __future__ import annotations

from dataclasses import replace
from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path
from typing import Final

from fit.dialect.alternate_font import AlternateFont, font_of
from fit.dialect.capability_dialect import CapabilityDialect
from fit.dialect.description import Description
from fit.dialect.description_file import completed, packed_names, read_file, read_packed
from fit.dialect.ecma48 import Ecma48
from fit.dialect.ecma48_likeness import follows_ecma48
from fit.dialect.encoding import LATIN_1, UTF_8
from fit.dialect.operation import Dialect
from fit.dialect.terminfo_database import entry_names, folders, read_entry
from fit.errors import DialectError

ECMA48: Final = "ecma48"
"""No terminal, but the standard: what is assumed where nothing speaks of one."""
_HEIR: Final = "vt100"
_ABOUT_ECMA48: Final = (
    "the control functions of ECMA-48, assumed where nothing speaks of a terminal; described as vt100"
)


def terminal_names() -> list[str]:
    """Every terminal that has a name: those of the database and our own, sorted."""
    return sorted({*entry_names(), *packed_names()})


def find_description(name: str) -> Description:
    """The description of a terminal: a name of the database, one of ours, or the path of a ``.toml`` file.

    ``ecma48``, which reports name where nothing speaks of a terminal, is described as the VT100 that it comes from.
    The database comes first where it has the name and can be read; else ours, whose origin then says so. Raises `DialectError` where the name is unknown, with
    the nearest ones, or where its description cannot be read.
    """
    if name == ECMA48:
        return replace(_by_name(_HEIR, folders()), name=ECMA48, about=_ABOUT_ECMA48)
    return read_file(Path(name)) if name.endswith(".toml") else _by_name(name, folders())


@lru_cache(maxsize=4096)
def _by_name(name: str, _searched: tuple[Path, ...]) -> Description:
    ours = read_packed(name) if name in packed_names() else None
    try:
        entry = read_entry(name)
    except DialectError as error:
        if ours is None:
            raise
        return replace(ours, origin=f"{ours.origin}, for {error.source} was passed over: {error.what}")
    if entry is not None:
        return completed(entry)
    if ours is None:
        raise _unknown(name)
    return ours


def _unknown(name: str) -> DialectError:
    near = get_close_matches(name, terminal_names(), n=4, cutoff=0.5)
    meant = f"the nearest names are {', '.join(near)}; " if near else ""
    return DialectError(
        f"no terminal is named '{name[:40]}'",
        hint=f"{meant}'fit terminals' lists them, and a .toml file can describe one",
    )


def find_dialect(name: str, encoding: str = UTF_8) -> Dialect:
    """The decoder of a terminal, by what `find_description` takes.

    Terminals after ECMA-48 are decoded by `Ecma48`, which knows more than any description tells; the
    others by their descriptions. A terminal without cursor addressing is decoded by what it has.
    Raises `DialectError` where the terminal is unknown or cannot be decoded.
    """
    return dialect_of(find_description(name), encoding)


def dialect_of(description: Description, encoding: str = UTF_8) -> Dialect:
    """The decoder of a description; see `find_dialect`."""
    if not follows_ecma48(description):
        return CapabilityDialect(description, encoding)
    eight_bit = description.expressions["cup"].expand(0, 0).startswith(b"\x9b")
    encoding = LATIN_1 if eight_bit and encoding == UTF_8 else encoding
    dialect = Ecma48(encoding)
    dialect.name = description.name
    if font_of(description):
        return AlternateFont(dialect, description, encoding)
    return dialect
