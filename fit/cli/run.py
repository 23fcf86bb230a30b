"""``fit run``: an 8-bit program in a sandbox, played by a person, a key script, or with found keys."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Annotated, Final

import typer

from fit.cli.display import say, text_style
from fit.cli.live_screen import LiveScreen
from fit.cli.numbers import above_0, address
from fit.cli.outputs import check_output, write_recording
from fit.cli.played import Played, played_json, played_text
from fit.dialect.encoding import LATIN_1
from fit.dialect.registry import find_dialect
from fit.errors import UsageError
from fit.machine import (
    PLAY_LIMITS,
    Budget,
    ChangedFile,
    Host,
    Limits,
    Processor,
    Program,
    Run,
    ScriptKeys,
    Setting,
    keep_changed,
    load_program,
    play,
    run_program,
    script_of,
)
from fit.machine.keeping import check_keeping
from fit.machine.live import LIVE_LIMITS, joined_inputs, play_live
from fit.machine.play import lines_seen
from fit.machine.script import typed_while_running
from fit.output import write_file
from fit.pipeline import DEFAULT_BIG
from fit.report.numbers import count, sentence
from fit.report.plain import printable
from fit.screen.named import find_screen
from fit.session import Session
from fit.shelf.facts import program_facts, terminal_of
from fit.shelf.shorten import representative
from fit.shelf.terminal import find_terminal
from fit.source.keys import read_key_script
from fit.source.load import KEYS, load
from fit.source.pseudo_terminal import forget_typed
from fit.terminal_choice import rules_of

DEFAULT_TERMINAL: Final = "vt100"
"""What a person sees it as, where no other is named: most programs print no codes at all."""
_TRIAL: Final = Budget(steps=8, seconds=2.0)
"""How long a program is tried before a person plays it, to see which codes it prints."""
_TRIAL_TICKS: Final = 100_000_000
"""The same for each way of playing one that waits for nothing: some tenths of a second here."""
_LONGEST_REPETITION: Final = 10.0
"""Seconds for typing a person's keys once more."""
_DOUBT: Final = (
    "Its terminal was found from its codes, but not clearly; --big-terminal names another ('fit terminals' lists the "
    "evidence)."
)
SANDBOX: Final = (
    "The program runs in a sandbox: it sees folders as disks and changes nothing in them; what it writes is gone at "
    "the end, unless --keep names a folder for it."
)


def command(
    program: Annotated[
        Path,
        typer.Argument(
            metavar="PROGRAM",
            help="A .COM program for the 8-bit operating system. It runs in a sandbox: it sees folders as disks and "
            "cannot change them, reach other files or the network, or run for ever. It may still print anything.",
        ),
    ],
    arguments: Annotated[
        list[str] | None,
        typer.Argument(metavar="ARGS", help="Its command line; behind -- where one begins with -."),
    ] = None,
    output: Annotated[
        Path | None,
        typer.Option(
            "--output", "-o", metavar="FILE", help="Record the session, all that is typed included."
        ),
    ] = None,
    keys: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Type from a key script, a step at each wait.")
    ] = None,
    save_keys: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write what was typed as a key script.")
    ] = None,
    find_keys: Annotated[
        bool, typer.Option("--find-keys", help="Let keys be found, also where a person could type.")
    ] = False,
    seed: Annotated[int, typer.Option(help="Another number finds other keys.")] = 1,
    steps: Annotated[int, typer.Option(help="Answers that each of the two ways of finding may give.")] = 300,
    seconds: Annotated[
        float | None, typer.Option(help="Seconds after which it ends; the result may then not repeat.")
    ] = None,
    terminal: Annotated[
        str | None, typer.Option(metavar="NAME", help="The terminal that the program is set for.")
    ] = None,
    drive: Annotated[
        list[str] | None,
        typer.Option(
            metavar="A=DIR", help="A folder as a drive; A is the program's own folder. Again for more."
        ),
    ] = None,
    keep: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Write the files that it changed below this folder.")
    ] = None,
    top: Annotated[
        str | None, typer.Option(metavar="HEX", help="Where memory for programs ends, such as C000.")
    ] = None,
    processor: Annotated[str, typer.Option(help="8080 or z80.")] = "z80",
    tick_limit: Annotated[
        int | None,
        typer.Option(
            help="Clock ticks after which it ends, silent or not, looked at every 100,000 and where it waits; 4,000,000 were a second."
        ),
    ] = None,
    output_limit: Annotated[int | None, typer.Option(help="Bytes of output after which it ends.")] = None,
    wait_limit: Annotated[int | None, typer.Option(help="Waits for a key after which it ends.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print what was found as JSON.")] = False,
    overwrite: Annotated[bool, typer.Option("--replace", help="Replace files that exist.")] = False,
) -> None:
    """Run an 8-bit program, record it, and say what it did and needs.

    In a terminal you play it yourself; else, or with --find-keys, keys are found for it.
    """
    if keys is not None and find_keys:
        raise UsageError("--keys and --find-keys exclude each other", hint="leave one of them out")
    inputs = [program, *([keys] if keys is not None else [])]
    for path in (output, save_keys):
        if path is not None:
            check_output(path, inputs, replace=overwrite)
    if output is not None and save_keys is not None and output.absolute() == save_keys.absolute():
        raise UsageError("--output and --save-keys name the same file", hint="name two")
    if terminal is not None:
        find_dialect(terminal)
    loaded = load_program(program)
    given = Limits(tick_limit, None, output_limit, wait_limit)
    limited = _limited(given, seconds)
    setting = Setting(
        processor=_processor(processor),
        drives=_drives(loaded, drive or []),
        arguments=" ".join(arguments or []),
        top=address("--top", top),
    )
    if keep is not None:
        check_keeping(keep, (setting.drives or {}).values(), replace=overwrite)
    if keys is not None:
        played = _scripted(loaded, replace(setting, limits=limited(Limits(), True)), keys, terminal)
    elif find_keys or not (sys.stdin.isatty() and sys.stdout.isatty()):
        budget = Budget(steps=int(above_0("--steps", steps)), seconds=seconds)
        played = _found(loaded, replace(setting, limits=limited(PLAY_LIMITS, False)), seed, budget)
    else:
        played = _live(loaded, replace(setting, limits=limited(LIVE_LIMITS, True)), terminal)
    # What was played is written before it is judged: judging takes a while, and may be interrupted.
    found = terminal_of(played.runs, terminal)
    recorded = representative(loaded, played.best, found.name) if played.is_found else played.best
    session = replace(recorded.session, dialect=found.name)
    if not found.is_clear:
        session = replace(session, remarks=(*session.remarks, _DOUBT))
    running = typed_while_running(recorded) if played.running is None else played.running
    written = _write(session, running, output, save_keys, inputs)
    kept = _keep(played.best, keep, setting, replace=overwrite)
    _tell("; ".join([*written, "processor and memory are being judged"]))
    again = None if played.is_found or keys is not None else _typed_again(loaded, played.best, running)
    facts = program_facts(loaded, played.runs, found, repeatable=again)
    if as_json:
        say([played_json(played, facts, session, kept)])
    else:
        say([played_text(played, facts, session, text_style(), written, kept, _next_step(program, output))])


def _limited(given: Limits, seconds: float | None) -> Callable[[Limits, bool], Limits]:
    """A function that puts the limits the user gave in the place of others."""
    for option, value in (
        ("--seconds", seconds),
        ("--tick-limit", given.ticks),
        ("--output-limit", given.output),
        ("--wait-limit", given.waits),
    ):
        above_0(option, 1 if value is None else value)

    def limited(usual: Limits, is_timed: bool) -> Limits:
        return replace(
            usual,
            ticks=usual.ticks if given.ticks is None else given.ticks,
            # Who lets a program compute for long means it, whether or not it prints meanwhile.
            silent_ticks=usual.silent_ticks if given.ticks is None else given.ticks,
            output=usual.output if given.output is None else given.output,
            waits=usual.waits if given.waits is None else given.waits,
            seconds=seconds if is_timed else None,
        )

    return limited


def _processor(name: str) -> Processor:
    try:
        return Processor(name.lower())
    except ValueError:
        raise UsageError(f"no processor is named '{name[:40]}'", hint="give 8080 or z80") from None


def _drives(program: Program, given: Sequence[str]) -> dict[str, Path]:
    """Folders by drive letter: the program's own is A unless the user says otherwise."""
    drives: dict[str, Path] = {}
    for text in given:
        letter, equals, folder = text.partition("=")
        letter = letter.removesuffix(":").upper()
        if not equals or not folder:
            raise UsageError(f"--drive {text[:40]} names no folder", hint="write such as --drive B=texts")
        if letter in drives:
            raise UsageError(f"drive {letter} was given twice", hint="leave one of them out")
        drives[letter] = Path(folder)
    own = {} if program.folder is None else {"A": program.folder}
    return own | drives


# Three ways of playing


def _scripted(program: Program, setting: Setting, keys: Path, terminal: str | None) -> Played:
    steps = read_key_script(load(keys, empty=KEYS), str(keys))
    script = ScriptKeys(steps, terminal)
    run = run_program(program, script, setting)
    how = f"keys from {keys}, {script.told}" if script.told else f"keys from {keys}"
    return Played(how, (run,), run, len(lines_seen(run.session)))


def _found(program: Program, setting: Setting, seed: int, budget: Budget) -> Played:
    found = play(program, setting, seed=seed, budget=budget)
    told = count(len(found.runs), "run")
    how = f"found keys, seed {found.seed}: {count(found.steps, 'answer')}, {told} worth keeping"
    return Played(how, found.runs, found.best, found.lines, is_found=True)


def _live(program: Program, setting: Setting, terminal: str | None) -> Played:
    host = Host(program, setting)
    if not terminal:
        _tell("it is tried for a moment, to see which codes it prints")
    shown_as, reason = (terminal, "as you say") if terminal else _terminal_by_trial(program, setting)
    screen = LiveScreen(
        find_dialect(shown_as, LATIN_1),
        shown_as,
        sys.stdin.fileno(),
        sys.stdout.fileno(),
        rules_of(shown_as, find_screen(DEFAULT_BIG)),
    )
    notes = (
        f"{SANDBOX} Everything you type is recorded. Ctrl-\\ ends it. "
        f"It is shown as on the terminal {shown_as}, {reason}; --terminal names another. {screen.clipped()}"
    )
    print("\n".join(text_style().text(notes.rstrip(), "")), file=sys.stderr)
    forget_typed(sys.stdin.fileno())  # what was typed before Enter is asked for is no answer
    print("Press Enter to start it.", file=sys.stderr, flush=True)
    sys.stdin.readline()
    with screen.opened():
        run = play_live(host, screen)
    running = typed_while_running(run, by_hand=True)
    run = replace(run, session=joined_inputs(run))
    lines = len(lines_seen(run.session))
    return Played("keys of a person", (run,), run, lines, running=running)


def _typed_again(program: Program, run: Run, running: frozenset[int]) -> Run:
    """A person's run, which was timed by them, with the same keys as a script, at the same places where that works."""
    setting = replace(run.setting, limits=Limits(seconds=_LONGEST_REPETITION))
    typed = [keys for _, keys in run.schedule if keys]
    if typed and running:
        script = script_of(run.session, running).encode()
        again = run_program(program, ScriptKeys(read_key_script(script, "what was typed")), setting)
        if again.session.output == run.session.output:
            return again
    return run_program(program, typed, setting)


def _terminal_by_trial(program: Program, setting: Setting) -> tuple[str, str]:
    """The terminal whose codes the program prints when it is tried for a moment, and why."""
    limits = replace(PLAY_LIMITS, ticks=_TRIAL_TICKS, silent_ticks=_TRIAL_TICKS)
    trial = play(program, replace(setting, limits=limits), budget=_TRIAL)
    found = find_terminal(trial.best.session.output)
    if found.name is None:
        return DEFAULT_TERMINAL, "since its codes, if it prints any, tell no other"
    doubt = "" if found.is_clear else ", though not clearly"
    return found.name, f"whose codes it printed when it was tried for a moment{doubt}"


# What is written


def _write(
    session: Session, running: frozenset[int], output: Path | None, save_keys: Path | None, inputs: list[Path]
) -> list[str]:
    """Write what was asked for, and say so. ``running``: where keys were typed though it did not wait."""
    told = []
    if output is not None:
        write_recording(output, session, inputs)
        told.append(f"session written to {output}")
    if save_keys is not None:
        write_file(save_keys, script_of(session, running).encode(), inputs=inputs)
        told.append(f"key script written to {save_keys}")
    return told


def _tell(what: str) -> None:
    """Say what takes time, to a person who would sit before an empty screen meanwhile."""
    if sys.stderr.isatty():
        lines = text_style().text(sentence(printable(what)), "")
        print("\n".join(lines), file=sys.stderr, flush=True)


def _next_step(program: Path, output: Path | None) -> str:
    """How to learn what this report does not say."""
    if output is None:
        return f"How it reads on the small screen: fit score {program} tells, or -o FILE and then fit check FILE."
    return f"How it reads on the small screen: fit check {output} tells."


def _keep(run: Run, folder: Path | None, setting: Setting, *, replace: bool) -> list[Path] | None:
    """The files that were kept; None where nobody asked for it."""
    if folder is None:
        return None
    files: Sequence[ChangedFile] = run.changed_files()
    return keep_changed(files, folder, (setting.drives or {}).values(), replace=replace)
