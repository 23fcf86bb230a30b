"""One program: played with found keys, its best run measured, its needs told."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from fit.machine import PLAY_LIMITS, Setting, blocks_on_disk, load_program, play
from fit.pipeline import measure
from fit.shelf.entry import PROGRAM_SUFFIX, Entry
from fit.shelf.facts import ProgramFacts, program_facts
from fit.shelf.finding import Finding
from fit.shelf.settings import ShelfSettings
from fit.shelf.shorten import representative
from fit.shelf.verdict import from_report, with_obstacles


def score_program(entry: Entry, settings: ShelfSettings) -> Finding:
    """Play, measure and judge a program. Raises FitError where it is none or an option is wrong."""
    program = load_program(entry.path)
    played = play(program, Setting(limits=PLAY_LIMITS), seed=settings.seed, budget=settings.budget)
    facts = program_facts(program, played.runs, settings.terminal)
    run = representative(program, played.best, facts.terminal)
    session = replace(run.session, dialect=facts.terminal)
    report = measure(session, settings.big, settings.small, small_terminal=settings.small_terminal)
    data = _data_files(entry.path, facts)
    sizes = [path.stat().st_size for path in data]
    finding = Finding(
        entry.name,
        entry.kind.value,
        terminal=facts.terminal,
        size=facts.size + sum(sizes),
        blocks=facts.blocks + sum(map(blocks_on_disk, sizes)),
        files=tuple(path.name for path in data),
        program=facts,
    )
    return with_obstacles(from_report(finding, report), facts, settings)


def _data_files(program: Path, facts: ProgramFacts) -> list[Path]:
    """The files that belong to a program: those it opened on its disk, and those that share its name.

    What it opened because its player happened to type the name of a file belongs to it, too: nobody can tell.
    """
    opened = {name.partition(":")[2] for name in facts.opened if name.startswith("A:")}
    return [
        path
        for path in sorted(program.parent.iterdir())
        if path.is_file()
        and path.suffix.lower() != PROGRAM_SUFFIX
        and (path.name.upper() in opened or _shares_name(path, program))
    ]


def _shares_name(path: Path, program: Path) -> bool:
    return path.stem.upper() == program.stem.upper()
