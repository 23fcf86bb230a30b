"""What was found of one entry. Plain values alone, so that it can be kept as JSON and come back the same."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Any, Final

from fit.shelf.facts import ProgramFacts

WILL_NOT_RUN: Final = "will not run"
"""The verdict of a program that the device's processor or memory cannot hold, whatever its score."""
NOT_MEASURED: Final = "not measured"


@dataclass(frozen=True, slots=True)
class DocumentFacts:
    """How a document stands on the small screen."""

    format: str
    words: int
    words_lost: int
    lines: int | None
    """Rows of the source on the screen as it is; None where nobody reads the source as it is."""
    too_wide: int | None
    """Lines of the source that are wider than the screen."""
    pages: int
    """After reflowing."""
    too_wide_after: int
    shortfalls: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class SessionFacts:
    """How a session was recorded."""

    command: str | None
    told: str | None
    """The size the program was told, as ``80x25``; None where it is not known."""
    is_small: bool
    """Whether that size fits the small screen: then the program was told to fit it."""
    ends_at_once: bool
    """Whether it is known that it ends before a second input."""
    goes_on: bool
    """Whether something was typed twice at least."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One row of the shelf."""

    name: str
    kind: str
    verdict: str = NOT_MEASURED
    reason: str = ""
    """One sentence: the numbers behind the verdict, or why there are none."""
    score: float | None = None
    """As it is, 0 to 100."""
    best: str | None = None
    """The best remedy; None where none helps or is needed."""
    best_score: float | None = None
    """With the best remedy; as it is where there is none."""
    keys_per_turn: float | None = None
    """Extra key presses a turn that the best remedy costs."""
    terminal: str | None = None
    """What it was decoded for, where that was found from its codes or given."""
    size: int | None = None
    """Bytes, of a program with the data files that belong to it."""
    blocks: int | None = None
    files: tuple[str, ...] = ()
    """Data files counted in."""
    obstacles: tuple[str, ...] = ()
    """What keeps it from running on the device at all."""
    program: ProgramFacts | None = None
    document: DocumentFacts | None = None
    session: SessionFacts | None = None
    failed: bool = False
    """Whether it could not be scored at all."""

    def plain(self) -> dict[str, Any]:
        """As JSON has it."""
        return asdict(self)


def from_plain(values: dict[str, Any]) -> Finding:
    """The same finding again. Raises TypeError or KeyError where the values are of another form."""
    program, document, session = values["program"], values["document"], values["session"]
    return Finding(
        **values
        | {
            "files": tuple(values["files"]),
            "obstacles": tuple(values["obstacles"]),
            "program": None if program is None else ProgramFacts(**program),
            "document": None if document is None else DocumentFacts(**document),
            "session": None if session is None else SessionFacts(**session),
        }
    )
