"""Which terminal a session was written for: all of them ranked by evidence, the evidence with them.

First every terminal's sequences are compared with the control characters of the session by their first two bytes;
then the likeliest decode it in full. What decides is a sum of our own (no source): bytes of sequences explained,
less three times the bytes not understood, less six for each move to a place that the screen lacks.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable
from dataclasses import dataclass
from os.path import commonprefix
from typing import Final

from fit.dialect.candidates import Candidate, candidates
from fit.dialect.encoding import UTF_8
from fit.dialect.evidence import Evidence, gather, heads, same_text
from fit.dialect.operation import Operation
from fit.dialect.registry import dialect_of
from fit.errors import DialectError
from fit.units import Size

_DECODED: Final = 40
"""Terminals that decode the session in full."""
_READ: Final = 1 << 18
"""Bytes of the session looked at from its start: some hundred screens."""
_DEFAULT_SIZE: Final = Size(25, 80)
_LARGEST_USED: Final = Size(25, 132)


@dataclass(frozen=True, slots=True)
class Ranked:
    """Terminals that show a session alike, and what speaks for them."""

    names: tuple[str, ...]
    """The best known first."""
    evidence: Evidence
    unused: int
    """Kinds of sequences they have that the session never uses."""
    operations: list[Operation]


def rank(output: bytes, encoding: str = UTF_8, size: Size | None = None) -> list[Ranked]:
    """The likeliest terminals, best first; empty where the session is plain text, for which none is needed."""
    sample = output[:_READ]
    found = heads(sample)
    if not found:
        return []
    groups: dict[object, Ranked] = {}
    for alike in likely(sample, found):
        operations = decode(alike[0], sample, encoding)
        evidence = gather(operations, sample, size or _DEFAULT_SIZE)
        unused = min(len(candidate.heads - found.keys()) for candidate in alike)
        names = tuple(name for candidate in alike for name in candidate.names)
        key = same_text(operations)
        known = groups.get(key)
        if known is not None:
            names, unused = (*known.names, *names), min(unused, known.unused)
        groups[key] = Ranked(names, evidence, unused, operations)
    return sorted(groups.values(), key=lambda one: (-one.evidence.weight, -one.evidence.sense, one.unused))


def likely(sample: bytes, found: Counter[bytes]) -> list[list[Candidate]]:
    """The candidates whose sequences begin as the session's do, those alike on it together; ECMA-48 always."""

    def explained(candidate: Candidate) -> int:
        return sum(count for head, count in found.items() if head in candidate.heads or head[:1] in candidate.heads)

    seen = _Seen(sample)
    groups: dict[Hashable, list[Candidate]] = {}
    for candidate in candidates():
        groups.setdefault(seen.key(candidate), []).append(candidate)
    ordered = sorted(groups.values(), key=lambda group: -max(map(explained, group)))
    return ordered[:_DECODED] + [group for group in ordered[_DECODED:] if any(one.is_ecma48 for one in group)]


class _Seen:
    """Which sequences occur in a session, each looked for once."""

    def __init__(self, sample: bytes) -> None:
        self._sample = sample
        self._occurs: dict[bytes, bool] = {}

    def key(self, candidate: Candidate) -> Hashable:
        """What of a terminal matters for this session: those with the same key decode it alike."""
        if candidate.is_ecma48:
            return True
        description = candidate.description
        fixed = frozenset((name, form) for name, form in description.fixed.items() if self.occurs(form))
        addressed = frozenset(
            (name, expression)
            for name, expression in description.expressions.items()
            if self.occurs(commonprefix([expression.expand(1, 1, 1), expression.expand(18, 18, 18)]))
        )
        return fixed, addressed, description.numbers.get("xmc", 0) > 0

    def occurs(self, form: bytes) -> bool:
        known = self._occurs.get(form)
        if known is None:
            known = self._occurs[form] = form in self._sample
        return known


def decode(candidate: Candidate, output: bytes, encoding: str) -> list[Operation]:
    """The operations of the whole output; none where the candidate cannot be decoded."""
    try:
        dialect = dialect_of(candidate.description, encoding)
    except DialectError:
        return []
    return dialect.feed(output, 0) + dialect.finish()
