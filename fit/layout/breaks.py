"""The places at which a line of flowing text may end, and what each costs.

Costs are in squared cells, like the slack they are weighed against.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from enum import IntEnum
from itertools import pairwise

from fit.document.blocks import Mark, Text
from fit.layout.cells import cells_before
from fit.layout.words import Word, analyse
from fit.width import SOFT_HYPHEN, char_cells

ZERO_WIDTH_SPACE = "\u200b"
MARK_FROM = 4
"""The narrowest line on which a hyphen or mark is put in: on a narrower one it takes the place of the text."""

_WORD = re.compile(r"[^ \t\n]+")
_SEPARATORS = re.compile(r"[/._-]+(?=[^/._-])")
_SET_OFF = Mark.BOLD | Mark.UNDERLINE | Mark.CODE

_NO_LINE_START = frozenset(
    "\u3001\u3002\uff0c\uff0e\uff1a\uff1b\uff01\uff1f\u300d\u300f\uff09\u3015\uff3d\u3011\u3009\u300b\u30fc\u30fb\u2026"
)
_NO_LINE_END = frozenset("\u300c\u300e\uff08\u3014\uff3b\u3010\u3008\u300a")
"""Closing and opening punctuation and sound marks of East Asian scripts (Unicode Standard Annex 14, classes CL, NS, OP)."""


class End(IntEnum):
    """How a line ends."""

    BLANK = 0
    """At a blank, or at the end of the text."""
    HYPHEN = 1
    """In a word, with a hyphen put in."""
    JOINED = 2
    """In a word, with nothing put in."""
    MARKED = 3
    """In a word, with the mark of a cut put in."""


@dataclass(frozen=True, slots=True)
class Costs:
    """What a line end costs besides its squared slack."""

    hyphen: int = 20
    joint: int = 4
    """After a hyphen or dash that the word has anyway: a reader may take it for one put in."""
    short_last: int = 20
    """A last line of less than an eighth of the width."""
    many_hyphens: int = 2_000
    """More hyphens in a row than allowed."""
    tie: int = 3_000
    """Parting what belongs together. More than any slack at 40 columns, so that only need does it."""
    separator: int = 400
    """After / . _ - in a word longer than a line."""
    cut: int = 10_000
    overfull: int = 1_000_000
    """A line that is too wide, where a single cluster is wider than the screen."""
    count_last: bool = False
    """Whether the slack of the last line counts; for comparisons with the literature."""


@dataclass(slots=True)
class Places:
    """The places in order, as columns of a table. A line runs from a ``start`` to a later ``end``."""

    ends: list[int] = field(default_factory=list)
    """Index of the first character that is not on the line."""
    starts: list[int] = field(default_factory=list)
    """Index of the first character of the next line."""
    end_cells: list[int] = field(default_factory=list)
    """Cells of the text up to the end, with the hyphen or mark to put in; never descending."""
    start_cells: list[int] = field(default_factory=list)
    costs: list[int] = field(default_factory=list)
    kinds: list[End] = field(default_factory=list)

    def __len__(self) -> int:
        return len(self.ends)

    def add(self, end: int, start: int, cells: tuple[int, int], cost: int, kind: End) -> None:
        """Append one place."""
        self.ends.append(end)
        self.starts.append(start)
        self.end_cells.append(cells[0])
        self.start_cells.append(cells[1])
        self.costs.append(cost)
        self.kinds.append(kind)


@dataclass(frozen=True, slots=True)
class Rules:
    """What holds for all words of a document."""

    language: str
    """Empty where nothing is to be hyphenated."""
    names: frozenset[str] = frozenset()
    """Words that are never hyphenated: those of the document's program texts."""
    mark: str = "\\"
    costs: Costs = Costs()


def find_places(text: Text, width: int, rules: Rules) -> Places:
    """All places in a text at which a line of at most ``width`` cells may end; the last is the end of the text."""
    chars = text.chars
    cells = cells_before(chars)
    even = isinstance(cells, range)
    marks = _telling_marks(text.marks)
    places = Places()
    before: Word | None = None
    before_end = 0
    for match in _WORD.finditer(chars):
        start, end = match.span()
        written = match[0]
        word = analyse(written, rules.language)
        if before is not None:
            tied = before.left & word.right or (marks and _no_break(marks, before_end, start))
            cost = rules.costs.tie if tied else 0
            places.add(before_end, start, (cells[before_end], cells[start]), cost, End.BLANK)
        if not even or end - start > width:
            for at, cost, kind in _inside_odd_word(
                written, [cells[i] for i in range(start, end + 1)], width, rules
            ):
                if not (marks and _held(marks, start, start + at, end, kind)):
                    extra = kind in (End.HYPHEN, End.MARKED)
                    spot = start + at
                    places.add(spot, spot, (cells[spot] + extra, cells[spot]), cost, kind)
        elif word.hyphens or word.joints:
            for at, cost, kind in _inside_word(written, word, rules):
                if not (marks and _held(marks, start, start + at, end, kind)):
                    spot = start + at
                    places.add(spot, spot, (spot + (kind is End.HYPHEN), spot), cost, kind)
        before, before_end = word, end
    if before is not None:
        places.add(before_end, len(chars), (cells[before_end], cells[before_end]), 0, End.BLANK)
    return places


def _telling_marks(marks: bytes) -> bytes:
    """The marks, or nothing where they set nothing apart: a text all bold is as good as plain."""
    kinds = set(marks)
    return marks if len(kinds) > 1 or any(kind & (Mark.NO_BREAK | Mark.CODE) for kind in kinds) else b""


def _no_break(marks: bytes, end: int, start: int) -> bool:
    return any(mark & Mark.NO_BREAK for mark in marks[end - 1 : start])


def _held(marks: bytes, start: int, at: int, end: int, kind: End) -> bool:
    """Whether the marks forbid a place inside a word: a name that is set off is cut only where it is too long."""
    if marks[at - 1] & Mark.NO_BREAK and kind is not End.MARKED:
        return True
    return kind is End.HYPHEN and any(mark & _SET_OFF for mark in marks[start:end])


def _inside_word(written: str, word: Word, rules: Rules) -> list[tuple[int, int, End]]:
    """The hyphenation points and joints of a common word that fits on a line: index, cost, kind."""
    found = [(at, rules.costs.joint, End.JOINED) for at in word.joints]
    if word.hyphens and not (rules.names and written.strip(".,;:!?()\"'").lower() in rules.names):
        found += [(at, rules.costs.hyphen, End.HYPHEN) for at in word.hyphens]
        found.sort()
    return found


def _inside_odd_word(written: str, cells: list[int], width: int, rules: Rules) -> list[tuple[int, int, End]]:
    """The same for a word that may have wide characters or soft hyphens, or be longer than a line."""
    costs = rules.costs
    found: dict[int, tuple[int, End]] = {}
    if width >= MARK_FROM:
        if SOFT_HYPHEN in written.strip(SOFT_HYPHEN):
            found |= {
                at: (costs.hyphen, End.HYPHEN) for at, char in enumerate(written, 1) if char == SOFT_HYPHEN
            }
        else:
            found |= {
                at: (cost, kind)
                for at, cost, kind in _inside_word(written, analyse(written, rules.language), rules)
            }
    found |= dict.fromkeys(_between_wide(written), (0, End.JOINED))
    if cells[-1] - cells[0] > width:
        for match in _SEPARATORS.finditer(written):
            found.setdefault(match.end(), (costs.separator, End.JOINED))
        found |= _cuts(found, cells, width, rules)
    return [(at, *found[at]) for at in sorted(found) if 0 < at < len(written)]


def _between_wide(written: str) -> list[int]:
    """Indices between two wide characters, or after a zero width space, at which a line may end."""
    if written.isascii():
        return []
    return [
        index
        for index, (left, right) in enumerate(pairwise(written), start=1)
        if left == ZERO_WIDTH_SPACE
        or (
            char_cells(left) == char_cells(right) == 2
            and right not in _NO_LINE_START
            and left not in _NO_LINE_END
        )
    ]


def _cuts(
    found: dict[int, tuple[int, End]], cells: list[int], width: int, rules: Rules
) -> dict[int, tuple[int, End]]:
    """Places at every cluster of the pieces that are still longer than a line."""
    kind = End.MARKED if width >= MARK_FROM else End.JOINED
    cuts: dict[int, tuple[int, End]] = {}
    for start, end in pairwise([0, *sorted(found), len(cells) - 1]):
        if cells[end] - cells[start] > width - 1:  # 1: a hyphen or a mark
            cuts |= {at: (rules.costs.cut, kind) for at in range(start + 1, end) if cells[at + 1] > cells[at]}
    return cuts
