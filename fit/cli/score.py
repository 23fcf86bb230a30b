"""``fit score``: a shelf of programs, sessions and documents, ranked before anything is loaded."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from fit.cli import EXIT_BELOW_BAR, EXIT_OK
from fit.cli.display import say, text_style
from fit.cli.numbers import above_0, address
from fit.cli.streams import PLAIN_WIDTH, complain
from fit.dialect.registry import find_dialect
from fit.errors import SourceError, UsageError
from fit.machine import Processor
from fit.pipeline import DEFAULT_SMALL
from fit.report.bars import bar
from fit.report.plain import clip_start, pad, printable
from fit.screen.named import find_screen
from fit.shelf.cache import Cache, default_folder
from fit.shelf.data import shelf_csv, shelf_json
from fit.shelf.entry import find_entries
from fit.shelf.notes import named
from fit.shelf.order import COLUMNS, sorted_findings
from fit.shelf.run import Told, score_shelf
from fit.shelf.settings import STEPS, ShelfSettings
from fit.shelf.table import shelf_table

LINE_SPEED = 9600
"""Bits a second (common practice, no source)."""
_BAR_CELLS = 20
_NAME_CELLS = 24


def command(
    paths: Annotated[
        list[Path],
        typer.Argument(
            metavar="PATH...",
            help="Programs (.COM), sessions, documents, and folders of them; in a folder with programs "
            "the other files are their data.",
        ),
    ],
    small: Annotated[
        str, typer.Option(help="The reader's screen: a name, a size, or a .toml file.")
    ] = DEFAULT_SMALL,
    big: Annotated[
        str | None, typer.Option(help="The screen they were written for; what a session says, else 80x25.")
    ] = None,
    terminal: Annotated[
        str | None,
        typer.Option(metavar="NAME", help="The terminal all are set for; found from their codes."),
    ] = None,
    small_terminal: Annotated[
        str | None, typer.Option(metavar="NAME", help="The terminal that the reader's machine is.")
    ] = None,
    processor: Annotated[str, typer.Option(help="The device's processor: 8080 or z80.")] = "8080",
    top: Annotated[
        str | None, typer.Option(metavar="HEX", help="Where the device's memory for programs ends.")
    ] = None,
    line_speed: Annotated[
        int, typer.Option(metavar="BITS", help="Bits a second of the line to the device.")
    ] = LINE_SPEED,
    sort: Annotated[
        str, typer.Option(metavar="COLUMN", help=f"What to sort by: {', '.join(COLUMNS)}.")
    ] = "score",
    steps: Annotated[int, typer.Option(help="Answers that each way of playing a program may give.")] = STEPS,
    seconds: Annotated[
        float | None,
        typer.Option(help="Seconds that playing a program may take; then results may not repeat."),
    ] = None,
    seed: Annotated[int, typer.Option(help="Another number plays with other keys.")] = 1,
    jobs: Annotated[
        int | None, typer.Option(help="Processes at work at once; as many as there are cores.")
    ] = None,
    cache: Annotated[Path | None, typer.Option(metavar="DIR", help="Where to keep results.")] = None,
    no_cache: Annotated[bool, typer.Option("--no-cache", help="Keep none, and use none.")] = False,
    as_json: Annotated[bool, typer.Option("--json", help="Print JSON.")] = False,
    as_csv: Annotated[bool, typer.Option("--csv", help="Print CSV.")] = False,
) -> None:
    """Score each entry, print a table; the exit code is 0, or 1 where something could not be scored.

    Programs are run in a sandbox: they see their folder as a disk, and change nothing on this computer.
    """
    if as_json and as_csv:
        raise UsageError("--json and --csv cannot be printed at once", hint="ask for one of them")
    if cache is not None and no_cache:
        raise UsageError("--cache and --no-cache exclude each other", hint="leave one of them out")
    settings = ShelfSettings(
        small=small,
        big=big,
        terminal=terminal,
        small_terminal=small_terminal,
        processor=_processor(processor),
        top=address("--top", top),
        steps=int(above_0("--steps", steps)),
        seconds=None if seconds is None else above_0("--seconds", seconds),
        seed=seed,
    )
    _refuse_unknown(settings)
    above_0("--line-speed", line_speed)
    above_0("--jobs", 1 if jobs is None else jobs)
    sorted_findings([], sort)
    shelf = find_entries(paths)
    if not shelf.entries:
        hint = "programs are named .COM; a file that is named itself is taken whatever its name"
        raise SourceError(
            "there is no program, session or document in it",
            source=", ".join(map(str, paths)),
            hint=f"unpack {named([path.name for path in shelf.packed])} first" if shelf.packed else hint,
        )
    kept = Cache(None if no_cache else cache or default_folder(), settings)
    findings = score_shelf(shelf.entries, settings, kept, jobs=jobs, told=_progress(len(shelf.entries)))
    if kept.trouble:
        complain(kept.trouble)
    findings = sorted_findings(findings, sort, line_speed)
    passed, packed = list(map(str, shelf.passed_over)), list(map(str, shelf.packed))
    if as_json:
        say([shelf_json(findings, settings, line_speed=line_speed, passed_over=passed, packed=packed)])
    elif as_csv:
        say([shelf_csv(findings, line_speed=line_speed)])
    else:
        table = shelf_table(
            findings, text_style(), line_speed=line_speed, passed_over=len(passed), packed=packed
        )
        say([table])
    raise typer.Exit(EXIT_BELOW_BAR if any(finding.failed for finding in findings) else EXIT_OK)


def _processor(name: str) -> Processor:
    try:
        return Processor(name.lower())
    except ValueError:
        raise UsageError(f"no processor is named '{name[:40]}'", hint="give 8080 or z80") from None


def _refuse_unknown(settings: ShelfSettings) -> None:
    """Say now, once, what every entry would fail for."""
    find_screen(settings.small)
    if settings.big is not None:
        find_screen(settings.big)
    for name in (settings.terminal, settings.small_terminal):
        if name is not None:
            find_dialect(name)


def _progress(total: int) -> Told | None:
    """A bar on standard error, where that is a terminal."""
    if not sys.stderr.isatty():
        return None

    def told(done: int, name: str) -> None:
        drawn = bar(done / total, _BAR_CELLS)
        last = pad(clip_start(printable(Path(name).name), _NAME_CELLS), _NAME_CELLS)
        end = "\r\x1b[K" if done == total else ""
        line = f"{drawn} {done}/{total} "
        room = max(0, (os.get_terminal_size(sys.stderr.fileno()).columns or PLAIN_WIDTH) - 1 - len(line))
        print(f"\r{line}{last[:room]}{end}", end="", file=sys.stderr, flush=True)

    return told
