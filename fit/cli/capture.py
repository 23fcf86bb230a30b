"""``fit capture``: run a program of this computer in a pseudo-terminal and record the session."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from fit.cli import EXIT_INTERRUPTED
from fit.cli.outputs import check_output, write_recording
from fit.cli.streams import tell
from fit.errors import UsageError
from fit.report.numbers import count
from fit.screen.named import find_screen
from fit.session import EventKind, Session
from fit.source.capture import LONGEST_STEP, MOST_OUTPUT, Limits, Person, capture
from fit.source.keys import read_key_script
from fit.source.load import KEYS, load
from fit.source.pseudo_terminal import raw_mode
from fit.units import Size

UNATTENDED_SECONDS = 60.0
"""The default limit of a capture that nobody sits at."""


def command(
    out: Annotated[
        Path,
        typer.Argument(
            metavar="OUT", help="The session file to write; it holds all that is typed, passwords too."
        ),
    ],
    program: Annotated[
        list[str],
        typer.Argument(
            metavar="COMMAND",
            help="The program and its arguments, behind --; it runs for real, with your rights: what it deletes is gone.",
        ),
    ],
    tell: Annotated[
        str, typer.Option(help="The screen size the program is told: a name or COLUMNSxROWS.")
    ] = "desk",
    term: Annotated[str, typer.Option(help="The terminal the program is told (TERM).")] = "vt100",
    keys: Annotated[
        Path | None, typer.Option(help="A key script to type from instead of the keyboard.")
    ] = None,
    time_limit: Annotated[
        float | None, typer.Option(help="Seconds after which it ends; 60 unless somebody sits at it.")
    ] = None,
    output_limit: Annotated[int, typer.Option(help="Bytes of output after which it ends.")] = MOST_OUTPUT,
    step_limit: Annotated[
        float, typer.Option(help="Seconds a step of the key script may wait.")
    ] = LONGEST_STEP,
    replace: Annotated[bool, typer.Option("--replace", help="Replace OUT where it exists.")] = False,
) -> None:
    """Run a program in a terminal of the size it is told and record what it prints and what you type."""
    _refuse_missing_out(out)
    size = find_screen(tell).size
    if not term.strip():
        raise UsageError("--term is empty", hint="name a terminal of the terminal database, such as vt100")
    steps = None if keys is None else read_key_script(load(keys, empty=KEYS), str(keys))
    is_attended = steps is None and sys.stdin.isatty() and sys.stdout.isatty()
    if time_limit is None and not is_attended:
        time_limit = UNATTENDED_SECONDS
    limits = Limits(_above_0("--time-limit", time_limit), output_limit, step_limit)
    _above_0("--output-limit", output_limit)
    _above_0("--step-limit", step_limit)
    inputs = [keys] if keys is not None else []
    check_output(out, inputs, replace=replace)
    if is_attended:
        session = _attended(program, size, term, limits)
    else:
        session = capture(program, size=size, terminal=term, steps=steps, limits=limits)
    write_recording(out, session, inputs)
    _tell(out, session)
    if session.ending == "interrupted":
        raise typer.Exit(EXIT_INTERRUPTED)


def _attended(program: list[str], size: Size, term: str, limits: Limits) -> Session:
    """Record with a person at the keyboard."""
    columns, rows = os.get_terminal_size(sys.stdout.fileno())
    notes = [f"The program is told {size}. Everything you type is recorded, passwords too."]
    if columns < size.columns or rows < size.rows:
        notes.append(f"Your terminal is only {columns}x{rows}: make it larger to see what the program means.")
    elif columns > size.columns or rows > size.rows:
        notes.append(
            f"Your terminal has {columns}x{rows}: what the program means to wrap or to scroll at its edges may look "
            f"wrong on it, and is recorded right. Make it {size} to see what the program means."
        )
    for note in notes:
        tell(note)
    person = Person(sys.stdin.fileno(), sys.stdout.fileno())
    with raw_mode(person.keyboard):
        session = capture(program, size=size, terminal=term, person=person, limits=limits)
    if session.ending != "exited":
        sys.stdout.write("\x1b[!p\x1b[m\n")  # what the program had set is undone (DECSTR, SGR)
        sys.stdout.flush()
    return session


def _refuse_missing_out(out: Path) -> None:
    """Where OUT was left out the first word of the command would be taken for it."""
    given = sys.argv[1:]
    if "--" in given and str(out) not in map(_as_path, given[: given.index("--")]):
        raise UsageError("the file to record to is missing", hint="write fit capture OUT -- COMMAND")


def _as_path(text: str) -> str:
    return str(Path(text))


def _above_0(option: str, value: float | None) -> float | None:
    if value is not None and not value > 0:
        raise UsageError(f"{option} {value:g} leaves nothing to record", hint="give a number above 0")
    return value


def _tell(out: Path, session: Session) -> None:
    """Say what was recorded, and all that went otherwise than asked for."""
    inputs = sum(event.kind is EventKind.INPUT for event in session.events)
    status = "" if session.exit_status is None else f", exit status {session.exit_status}"
    told = f"{count(len(session.output), 'byte')}, {count(inputs, 'input')}, {session.ending}{status}"
    for line in (f"{out}: {told}", *session.remarks):
        tell(line)
