"""The terminal a program was set for, from the codes that it printed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from fit.dialect.encoding import LATIN_1
from fit.dialect.recognise import Ranked, agreement_of, is_clear, rank

_PLAIN: Final = bytes(range(0x20, 0x100)) + b"\a\b\t\n\r\0\x1a\x7f"
_FEW_BYTES: Final = 8
"""So few bytes of codes fit too many terminals for a guess."""
_ALIKE: Final = 4
_FAMILIAR: Final = ("vt52", "adm3a", "vt100")
"""Terminals that later ones took their codes from: of those that fit alike, the first of these is named."""


class FoundTerminal(NamedTuple):
    """A terminal and why."""

    name: str | None
    """None where the program needs none, or none can be told."""
    evidence: str
    is_clear: bool = True
    """Whether the codes speak for this one so well that it can be relied on."""


def find_terminal(output: bytes) -> FoundTerminal:
    """Which terminal's codes an output holds, with the evidence in words."""
    if not output.translate(None, _PLAIN):
        return FoundTerminal(None, "it prints no codes: any terminal will do")
    ranked = rank(output, LATIN_1)
    if not ranked:
        return FoundTerminal(None, "it prints no codes: any terminal will do")
    best = ranked[0]
    explained, unexplained = best.evidence.explained, best.evidence.unexplained
    total = explained + unexplained
    if best.evidence.weight <= 0 or total < _FEW_BYTES:
        return FoundTerminal(None, f"not known: {total} bytes of codes fit no terminal well")
    name = next((name for name in _FAMILIAR if name in best.names), best.names[0])
    others = [other for other in best.names if other != name]
    more = f", as by {', '.join(others[:_ALIKE])}" if others else ""
    more += " and others" if len(others) > _ALIKE else ""
    said = f"{explained} of {total} bytes of codes are understood by {name}{more}"
    if best.evidence.outside:
        said += f"; {best.evidence.outside} moves lead out of its screen"
    sure = is_clear(ranked, agreement_of(ranked, output))
    return FoundTerminal(name, said if sure else said + _doubt(ranked), sure)


def _doubt(ranked: Sequence[Ranked]) -> str:
    """What speaks against the first of these."""
    familiar = [] if ranked[0].is_familiar else [one for one in ranked if one.is_familiar]
    rivals = [f"{one.names[0]} understands {one.evidence.explained}" for one in [*familiar, *ranked[1:]][:1]]
    return "; " + ", ".join(["not clearly", *rivals, "so --terminal should name it where you know it"])
