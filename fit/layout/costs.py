"""How lines may end, what each way costs, and what holds for all words of a document.

Costs are in squared cells, like the slack they are weighed against.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum


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

    hyphen: int = 14
    joint: int = 4
    """After a hyphen or dash that the word has anyway: a reader may take it for one put in."""
    short_last: int = 30
    """A last line of less than a sixth of the width."""
    last_hyphen: int = 20
    """A hyphen put in before the last line."""
    many_hyphens: int = 2_000
    """More hyphens in a row than allowed."""
    tie: int = 3_000
    """Parting what belongs together. More than any slack at 40 columns, so that only need does it."""
    apart: int = 170
    """After / in a path, after _ in a name longer than half a line: thirteen cells that would be left empty are as bad."""
    separator: int = 170
    """After . _ or - in a word longer than a line."""
    cut: int = 10_000
    overfull: int = 1_000_000
    """A line that is too wide, where a single cluster is wider than the screen."""
    count_last: bool = False
    """Whether the slack of the last line counts; for comparisons with the literature."""


@dataclass(frozen=True, slots=True)
class Rules:
    """What holds for all words of a document."""

    language: str
    """Empty where nothing is to be hyphenated."""
    names: frozenset[str] = frozenset()
    """Words that are never hyphenated: what the document's program texts, keys and words set off call things."""
    mark: str = "\\"
    costs: Costs = Costs()
