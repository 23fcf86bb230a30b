"""Which terminal a session was written for: all of them ranked by evidence, the evidence with them.

First every terminal's sequences are compared with the control characters of the session by their first two bytes;
then the likeliest decode it in full. What decides is a sum of our own (no source): bytes of sequences explained,
less three times the bytes not understood, less six for each move to a place that the screen lacks. One that explains
nearly as much as any and leaves nothing over comes before those that leave something over.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from fit.dialect.alternate_font import font_of
from fit.dialect.candidates import FAMILIAR, Candidate, best_known_first, candidates, literal_start
from fit.dialect.change import find_change
from fit.dialect.description_file import packed_names
from fit.dialect.encoding import UTF_8
from fit.dialect.evidence import Evidence, gather, heads, same_text
from fit.dialect.operation import Operation
from fit.dialect.registry import dialect_of, find_dialect
from fit.dialect.token_table import parts_of_attributes
from fit.errors import DialectError
from fit.units import Size

_ALWAYS: Final = 3
_DECODED: Final = 32
_MOST_DECODED: Final = 120
"""Kinds of terminals that decode a session in full: always, where they come near, and at most."""
_READ: Final = 1 << 18
"""Bytes of the session looked at from its start: some hundred screens."""
_DEFAULT_SIZE: Final = Size(25, 80)
_CLEAR_SHARE: Final = 0.95
_CLEAR_BYTES: Final = 12
"""So many bytes of sequences must be explained, and by so many the second fall behind, for the first to be clear."""
_NEARLY_ALL: Final = 0.9
"""Who explains this part of what the most talkative explains, and leaves nothing over, is not beaten by a remainder."""
_ENOUGH: Final = 100
"""Bytes of sequences; some thirty sequences."""
_ALIKE: Final = 0.95
"""Or the second agrees with it in this part of the operations: then little is lost by either."""
_SHOWN: Final = 4
_FEWEST: Final = 3
"""Fewer addresses than that are chance."""
_FONT: Final = re.compile(rb"\x1b\[(?:[0-9;]*;)?1[12][;m]")
"""Select graphic rendition with an alternate font: see `fit.dialect.alternate_font`."""


@dataclass(frozen=True, slots=True)
class Ranked:
    """Terminals that show a session alike, and what speaks for them."""

    names: tuple[str, ...]
    """The best known first."""
    evidence: Evidence
    unused: int
    """Kinds of sequences they have that the session never uses."""
    operations: list[Operation]

    @property
    def is_familiar(self) -> bool:
        """Whether one of them comes with the program: families that many programs can be set for."""
        return self.names[0] in packed_names()


@dataclass(frozen=True, slots=True)
class Recognition:
    """What a session says about the terminal it was written for."""

    ranked: tuple[Ranked, ...]
    """Best first; empty where the session is plain text and needs none."""
    change: tuple[int, str, str] | None
    """The byte at which the session changes its terminal, the one before and the one after."""
    not_by_second: tuple[tuple[bytes, int], ...]
    """Sequences that the first understands and the second does not, and how often; the most frequent first."""

    agreement: float
    """The part of the operations in which the first two agree, 0 to 1; cells that attributes take are left out."""

    @property
    def best(self) -> str | None:
        """The name of the likeliest terminal; None where none is needed."""
        return self.ranked[0].names[0] if self.ranked else None

    @property
    def is_clear(self) -> bool:
        """Whether the first place can be relied on: it explains nearly all, and the second less or nearly the same.

        A rare terminal is not clear where one of the familiar ones explains it but for a trifle.
        """
        return not self.change and is_clear(self.ranked, self.agreement)


def is_clear(ranked: Sequence[Ranked], agreement: float) -> bool:
    """Whether the first of these explains nearly all, and the second less or, by this agreement, nearly the same;
    and it is familiar, or no familiar one comes near.
    """
    if not ranked:
        return False
    first = ranked[0].evidence
    familiar = max((one.evidence.weight for one in ranked if one.is_familiar), default=0)
    if not ranked[0].is_familiar and first.weight - familiar < _CLEAR_BYTES:
        return False
    second = ranked[1].evidence.weight if len(ranked) > 1 else 0
    falls_behind = first.weight - second >= _CLEAR_BYTES or agreement >= _ALIKE
    return first.share >= _CLEAR_SHARE and first.explained >= _CLEAR_BYTES and falls_behind


def recognise(output: bytes, encoding: str = UTF_8, size: Size | None = None) -> Recognition:
    """Find the terminal that a session was written for, with the evidence and the runner-up.

    ``size`` is that of the screen it was written for; 80x25 where it is not known.
    """
    ranked = rank(output, encoding, size)
    change = _change(output[:_READ], encoding, ranked)
    return Recognition(tuple(ranked), change, _not_by_second(ranked), agreement_of(ranked, output))


def agreement_of(ranked: Sequence[Ranked], output: bytes) -> float:
    """The part of the operations that the first two share; cells that attributes take are left out."""
    if len(ranked) < 2:
        return 0.0
    first, second = (Counter(map(repr, same_text(_without_cookies(one, output)))) for one in ranked[:2])
    return (first & second).total() / max(1, first.total(), second.total())


def _without_cookies(one: Ranked, output: bytes) -> Iterator[Operation]:
    return (
        operation for operation in one.operations if operation[2] != "draw" or output[operation[0]] >= 0x20
    )


def _change(sample: bytes, encoding: str, ranked: list[Ranked]) -> tuple[int, str, str] | None:
    """The place at which one terminal follows another, and both, where two explain clearly more than one."""
    third = len(sample) // 3
    names = [best.names[0] for part in (sample[:third], sample[-third:]) for best in rank(part, encoding)[:1]]
    if len(names) < 2 or set(names) <= set(ranked[0].names):
        return None
    change = find_change([_read_as(name, sample, encoding) for name in (ranked[0].names[0], *names)], sample)
    if change is None:
        return None
    before, after = (rank(part, encoding)[:1] for part in (sample[: change.at], sample[change.at :]))
    return (change.at, before[0].names[0], after[0].names[0]) if before and after else None


def _read_as(name: str, output: bytes, encoding: str) -> list[Operation]:
    dialect = find_dialect(name, encoding)
    return dialect.feed(output, 0) + dialect.finish()


def _not_by_second(ranked: list[Ranked]) -> tuple[tuple[bytes, int], ...]:
    if len(ranked) < 2:
        return ()
    unknown = {operation[0] for operation in ranked[0].operations if operation[2] == "debug"}
    counts = Counter(
        arguments[0]
        for first, _, event, arguments, _ in ranked[1].operations
        if event == "debug" and first not in unknown
    )
    return tuple(counts.most_common(_SHOWN))


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
        # Those after ECMA-48 are many: some of them have just what is used.
        unused = min(0 if one.is_ecma48 else len(one.heads - found.keys()) for one in alike)
        names = tuple(name for candidate in alike for name in candidate.names)
        key = same_text(operations)
        known = groups.get(key)
        if known is not None:
            names, unused = (*known.names, *names), min(unused, known.unused)
        groups[key] = Ranked(best_known_first(names), evidence, unused, operations)
    most = max((one.evidence.explained for one in groups.values()), default=0)
    return sorted(groups.values(), key=lambda one: (_leaves_over(one.evidence, most), *_order(one)))


def _leaves_over(evidence: Evidence, most: int) -> bool:
    """Whether something makes no sense under it, or it explains clearly less than ``most``."""
    return bool(evidence.unexplained or evidence.outside) or evidence.explained < _NEARLY_ALL * most


def _order(one: Ranked) -> tuple[int, int, bool, int, bool, int, str]:
    """Weight first; what a terminal has and the session does not use counts only where the session says enough.
    Of those alike in all that, the familiar ones.
    """
    evidence, name = one.evidence, one.names[0]
    unused = one.unused if evidence.explained >= _ENOUGH else 0
    known = FAMILIAR.index(name) if name in FAMILIAR else len(FAMILIAR)
    return -evidence.weight, -evidence.sense, evidence.cookies > 0, unused, not one.is_familiar, known, name


def likely(sample: bytes, found: Counter[bytes]) -> list[list[Candidate]]:
    """The candidates whose sequences begin as the session's do, those alike on it together; ECMA-48 always."""

    def explained(candidate: Candidate) -> int:
        return sum(
            count for head, count in found.items() if head in candidate.heads or head[:1] in candidate.heads
        )

    seen = _Seen(sample)
    groups: dict[Hashable, list[Candidate]] = {}
    for candidate in candidates():
        groups.setdefault(seen.key(candidate), []).append(candidate)
    scored = sorted(
        ((max(map(explained, group)), group) for group in groups.values()), key=lambda pair: -pair[0]
    )
    best = scored[0][0]
    chosen = [
        group
        for place, (score, group) in enumerate(scored[:_MOST_DECODED])
        if _is_worth_it(place, score, best)
    ]
    return chosen + [
        group
        for _, group in scored
        if (group[0].is_ecma48 or seen.is_hidden(group[0])) and group not in chosen
    ]


def _is_worth_it(place: int, score: int, best: int) -> bool:
    """Whether a group decodes the session in full: the first few, others that come near, and all as good as the best."""
    return place < _ALWAYS or (place < _DECODED and score * 4 >= best) or score * 10 >= best * 9


class _Seen:
    """Which sequences occur in a session, each looked for once."""

    def __init__(self, sample: bytes) -> None:
        self._sample = sample
        self._has_fonts = _FONT.search(sample) is not None
        self._occurs: dict[bytes, bool] = {}

    def key(self, candidate: Candidate) -> Hashable:
        """What of a terminal matters for this session: those with the same key decode it alike."""
        description = candidate.description
        if candidate.is_ecma48:
            font = font_of(description)
            return font if self._has_fonts else None
        fixed = frozenset((name, form) for name, form in description.fixed.items() if self.occurs(form))
        addressed = frozenset(
            (name, expression)
            for name, expression in description.expressions.items()
            if self.occurs(literal_start(expression))
        )
        padded = (part for parts in description.padded.values() for part in parts if isinstance(part, bytes))
        parts = frozenset(filter(self.occurs, (*padded, *parts_of_attributes(description))))
        more = frozenset((name, form) for form, name in description.more.items() if self.occurs(form))
        return (
            fixed,
            addressed,
            parts,
            more,
            description.fixed.get("acsc"),
            description.numbers.get("xmc", 0) > 0,
        )

    def is_hidden(self, candidate: Candidate) -> bool:
        """Whether a terminal's cursor addresses may be what looks like other sequences."""
        return bool(candidate.hiding) and self._sample.count(candidate.hiding) >= _FEWEST

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
