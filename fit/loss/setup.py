"""What a session is measured on: both screens, their decoders, and the looks."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple

from fit.dialect.operation import Dialect
from fit.screen.rules import Rules
from fit.session import Session
from fit.units import Size


class Moment(NamedTuple):
    """A look, before the byte ``at``, and what is typed at it."""

    at: int
    typed: str = ""


@dataclass(frozen=True, slots=True)
class Terminal:
    """A screen with its rules, and how its decoder is made."""

    name: str
    size: Size
    rules: Rules
    decoder: Callable[[], Dialect]
    terminal: str
    """The dialect's name."""
    chosen: str
    """How the dialect was chosen, one sentence."""
    is_ecma48: bool
    """Whether it is one of the terminals after ECMA-48, which all take the same operations."""


@dataclass(frozen=True, slots=True)
class Setup:
    """One session, ready to be replayed."""

    session: Session
    big: Terminal
    small: Terminal
    moments: tuple[Moment, ...]
    """Ascending; the last one at the end of the output."""
    looks_rule: str
    looks_assumed: bool
    encoding: str
    encoding_evidence: str

    def typed(self, data: bytes) -> str:
        """Typed bytes as text."""
        codec = {"7bit": "ascii"}.get(self.encoding, self.encoding)
        return data.decode(codec, "replace")

    @property
    def is_one_dialect(self) -> bool:
        """Whether both screens take the same operations."""
        if self.big.is_ecma48 and self.small.is_ecma48:
            return True
        return self.big.terminal == self.small.terminal
