"""The description of a terminal: flags, numbers and control sequences under the names of terminfo(5).

It comes from the terminal database (`fit.dialect.terminfo_database`) or from a TOML file
(`fit.dialect.description_file`); everything after this point treats both alike.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Protocol


class Expression(Protocol):
    """A control sequence with parameters, such as the one that addresses the cursor. Never changed."""

    def __hash__(self) -> int: ...

    def expand(self, *parameters: int) -> bytes:
        """The bytes that a program sends for these parameters, which count from 0."""
        ...


class UnknownRule(StrEnum):
    """What a terminal does with a lead-in byte (mostly ESC) followed by a byte that means nothing to it.

    The database does not say, and terminals differ. Either way the bytes after it are printed as text,
    as the reader would see them.
    """

    SWALLOW = "swallow"
    """The lead-in and the next byte disappear (VT52 and most others; common practice, no source)."""
    PRINT = "print"
    """The lead-in disappears, the next byte is printed."""


@dataclass(frozen=True, slots=True, eq=False)
class Description:
    """One terminal; it equals only itself. Names of flags, numbers and sequences are those of terminfo(5)."""

    name: str
    about: str = ""
    aliases: tuple[str, ...] = ()
    flags: frozenset[str] = frozenset()
    numbers: Mapping[str, int] = field(default_factory=dict)
    fixed: Mapping[str, bytes] = field(default_factory=dict)
    """The sequences without parameters, padding left out."""
    expressions: Mapping[str, Expression] = field(default_factory=dict)
    """The sequences with parameters."""
    padded: Mapping[str, tuple[bytes | Expression, ...]] = field(default_factory=dict)
    """The parts of sequences with a delay in their midst, where a program may send fill characters."""
    more: Mapping[bytes, str] = field(default_factory=dict)
    """Sequences that it knows beside those that have a name: each does what that of this name does, and takes no cell."""
    unknown: UnknownRule = UnknownRule.SWALLOW
    origin: str = ""
    """Where the description stands, for people."""
    sources: Mapping[str, str] = field(default_factory=dict)
    """The published source of each row, where the description names it."""

    @property
    def lines(self) -> int:
        """The rows of the terminal; 24 where the description does not say."""
        return max(1, self.numbers.get("lines", 24))

    @property
    def columns(self) -> int:
        """The columns of the terminal; 80 where the description does not say."""
        return max(1, self.numbers.get("cols", 80))

    def without_parameters(self, name: str) -> bytes | None:
        """The bytes of a sequence without parameters; None where there is none or they would be empty."""
        return self.fixed.get(name) or None
