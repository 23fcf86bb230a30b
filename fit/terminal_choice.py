"""Which terminal each screen speaks, and why: given, from the session, from its screen's file, or from the data.

The data is asked only where ECMA-48 does not explain it, and believed only where it is clear.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import NamedTuple

from fit.dialect.ecma48 import Ecma48
from fit.dialect.encoding import LATIN_1
from fit.dialect.operation import Dialect
from fit.dialect.recognise import recognise
from fit.dialect.registry import ECMA48, dialect_of, find_description
from fit.dialect.traits import traits_of
from fit.errors import DialectError
from fit.loss.setup import Terminal
from fit.screen.named import NamedScreen
from fit.screen.rules import Rules, WrapRule
from fit.session import Session

_SAMPLE = 1 << 16
"""Bytes of the output that are asked: some dozen screens."""
_FEWEST = 3
"""Signs of another terminal than this are chance or damage."""
_RARE_CONTROLS = bytes(set(range(0x20)) - set(b"\0\a\b\t\n\r\x0e\x0f\x1b"))
"""Control characters that programs for ECMA-48 terminals hardly send, but those for older ones do."""


class Chosen(NamedTuple):
    """The name of a terminal and why it was chosen."""

    name: str
    why: str
    insists: bool = True
    """Whether somebody chose it for this very screen, so that its way to wrap counts too."""


def choose_big(session: Session, given: str | None, screen: NamedScreen, encoding: str) -> Chosen:
    """The terminal of the program. A name in the session that nobody knows is said and passed over."""
    if given is not None:
        return Chosen(given, "it was given")
    if session.dialect is not None:
        if _is_known(session.dialect):
            return Chosen(session.dialect, "the session says so")
        return Chosen(
            ECMA48, f"the session's terminal '{session.dialect[:40]}' is unknown here", insists=False
        )
    if screen.terminal is not None:
        return Chosen(screen.terminal, f"the screen {screen.name} insists on it")
    if seems_older(session.output, encoding):
        found = recognise(session.output[:_SAMPLE], encoding, screen.size)
        if found.is_clear and found.best is not None:
            return Chosen(found.best, "the output clearly shows it ('fit terminals' lists the evidence)")
        return Chosen(
            ECMA48,
            "the output does not clearly show another ('fit terminals' lists the evidence)",
            insists=False,
        )
    return Chosen(ECMA48, "nothing says otherwise", insists=False)


def choose_small(given: str | None, screen: NamedScreen, big: Chosen) -> Chosen:
    """The terminal of the reader's screen: the program's, unless somebody chose another."""
    if given is not None:
        return Chosen(given, "it was given")
    if screen.terminal is not None:
        return Chosen(screen.terminal, f"the screen {screen.name} insists on it")
    return Chosen(big.name, "the small screen does not insist on another", insists=False)


def seems_older(output: bytes, encoding: str) -> bool:
    """Whether ECMA-48 leaves much of the output unexplained."""
    sample = output[:_SAMPLE]
    rare = len(sample) - len(sample.translate(None, _RARE_CONTROLS))
    if rare >= _FEWEST or sample.count(b"\x1b=") > _FEWEST or sample.count(b"~\x11") >= _FEWEST:
        return True
    operations = Ecma48(encoding).feed(sample, 0)
    sequences = sum(operation[2] != "draw" for operation in operations)
    unknown = sum(operation[2] == "debug" for operation in operations)
    return unknown >= _FEWEST and 10 * unknown >= sequences


def terminal_at(session: Session, encoding: str, screen: NamedScreen, chosen: Chosen) -> Terminal:
    """A screen with its decoder. Raises `DialectError` where the terminal is unknown or cannot be decoded."""
    decoder, is_ecma48, edges = decoder_of(chosen.name, encoding, bare_lf=session.bare_lf)
    rules = edges.applied_to(screen.rules) if chosen.insists and edges is not None else screen.rules
    said = f"{chosen.name}, because {chosen.why}"
    return Terminal(screen.name, screen.size, rules, decoder, chosen.name, said, is_ecma48)


class Edges(NamedTuple):
    """What a terminal does where a row ends and where it begins."""

    wrap: WrapRule
    back_wrap: bool

    def applied_to(self, rules: Rules) -> Rules:
        """The terminal's ways, unless the screen's file has one of its own to wrap."""
        wrap = self.wrap if rules.wrap is WrapRule.DEFERRED else rules.wrap
        return replace(rules, wrap=wrap, back_wrap=self.back_wrap)


class Decoding(NamedTuple):
    """How a terminal is decoded."""

    decoder: Callable[[], Dialect]
    is_ecma48: bool
    edges: Edges | None
    """None where the screen's own rules count."""


def decoder_of(name: str, encoding: str, *, bare_lf: bool) -> Decoding:
    """How a fresh decoder of a terminal is made."""
    if name == ECMA48:
        return Decoding(partial(Ecma48, encoding, bare_lf=bare_lf), is_ecma48=True, edges=None)
    description = find_description(name)
    first = dialect_of(description, encoding)
    traits = traits_of(description)
    edges = Edges(WrapRule(traits.wrap), traits.backs_over_edge)
    if isinstance(first, Ecma48):
        if edges.wrap is WrapRule.NONE:  # it is off at first, and programs turn it on (DECAWM)
            edges = edges._replace(wrap=WrapRule.DEFERRED)
        return Decoding(partial(Ecma48, first.encoding, bare_lf=bare_lf), is_ecma48=True, edges=edges)
    return Decoding(partial(dialect_of, description, encoding), is_ecma48=False, edges=edges)


def rules_of(name: str, screen: NamedScreen) -> Rules:
    """The rules of a screen that is this terminal: its own way to wrap where the screen has none of its own."""
    edges = decoder_of(name, LATIN_1, bare_lf=False).edges
    return screen.rules if edges is None else edges.applied_to(screen.rules)


def _is_known(name: str) -> bool:
    try:
        find_description(name)
    except DialectError:
        return False
    return True
