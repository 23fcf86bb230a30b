"""How an 8-bit program was played, and what is told of it: as text and as JSON."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Final

from fit.machine import Run
from fit.report.advice import MASTER_COPY
from fit.report.ink import Ink
from fit.report.numbers import count
from fit.report.plain import printable
from fit.report.style import Style
from fit.session import Session
from fit.shelf.facts import ProgramFacts
from fit.shelf.facts_text import facts_text

FORM: Final = "fit-run"
VERSION: Final = 1
_OF_FOUND_KEYS: Final = "These are the facts of all runs. The session is the run with most lines"
_SHORTENED: Final = (
    "answers that only brought lines seen before are left out of it, as a person would not give them"
)


@dataclass(frozen=True, slots=True)
class Played:
    """How a program was played, and what came of it."""

    how: str
    runs: tuple[Run, ...]
    """Of these, the best is recorded."""
    best: Run
    lines: int
    """Different lines, numbers aside but in tables."""
    is_found: bool = False
    """Whether its keys were found."""
    running: frozenset[int] | None = None
    """Where in the output they typed while the program ran; None where the recorded run tells."""


def played_text(
    played: Played,
    facts: ProgramFacts,
    session: Session,
    style: Style,
    written: list[str],
    kept: list[Path] | None,
    next_step: str,
) -> str:
    """The whole text, ended by a new line.

    ``written`` says what was written, ``kept`` which changed files; None where nobody asked for them.
    """
    size = f"{count(facts.size, 'byte')}, {count(facts.blocks, 'block')} of 2,048 bytes"
    lines = style.heading(f"{printable(session.command or session.name)}: {size}")
    lines += style.text(
        f"Played with {played.how}; {count(len(session.output), 'byte')} printed, "
        f"{count(played.lines, 'different line')}.",
        "",
    )
    lines += ["", *facts_text(facts, style), ""]
    for remark in facts.remarks:
        lines += style.text(printable(remark), "")
    if played.is_found:
        shorter = f"; {_SHORTENED}" if session.events != played.best.session.events else ""
        lines += style.text(f"{_OF_FOUND_KEYS}{shorter}.", "")
    for note in written:
        lines.append(style.paint(f"{note[:1].upper()}{note[1:]}.", Ink.BOLD))
    lines += style.text(_of_changed_files(kept), "") if played.best.changed or kept is not None else []
    if facts.deleted or facts.emptied or facts.renamed:
        lines += style.text("In your folders nothing was deleted, emptied or renamed.", "")
    lines += style.text(f"{printable(next_step)} What was not explored is not known. {MASTER_COPY}", "")
    return "\n".join(lines) + "\n"


def _of_changed_files(kept: list[Path] | None) -> str:
    """What became of the files that the recorded run left changed."""
    if kept is None:
        return "Files it left changed are gone; --keep DIR writes them."
    if not kept:
        return "Nothing was kept: at its end there was no file that it had made, changed or renamed."
    return f"Kept: {', '.join(map(str, kept))}."


def played_json(played: Played, facts: ProgramFacts, session: Session, kept: list[Path] | None) -> str:
    """The same for programs."""
    values = {
        "form": FORM,
        "version": VERSION,
        "command": session.command,
        "played": played.how,
        "runs": len(played.runs),
        "lines": played.lines,
        "printed": len(session.output),
        **asdict(facts),
        "kept": [str(path) for path in kept or []],
        "advice": MASTER_COPY,
    }
    return json.dumps(values, indent=1) + "\n"
