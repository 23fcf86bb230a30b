"""``fit check``: what the small screen loses of a session, why, and what would help."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Annotated

import typer

from fit.cli import EXIT_BELOW_BAR, EXIT_OK
from fit.cli.display import picture_style, progress_line, say, text_style
from fit.cli.streams import tell
from fit.errors import UsageError
from fit.looks import WORDS_PER_MINUTE, find_looks, with_line_speed
from fit.output import refuse_input, write_file
from fit.pipeline import DEFAULT_SMALL, measure, reflow_session, show_look
from fit.remedy.findings import Report
from fit.report.check_json import report_json
from fit.report.lines import line_list
from fit.report.look import look_page
from fit.report.page import page
from fit.report.summary import summary
from fit.report.turns import worst
from fit.source import read_session
from fit.source.load import STANDARD_INPUT

PASTE = (
    "Paste what the program printed, then press Enter and Ctrl-D.",
    "(To record a program instead: fit capture OUT -- COMMAND)",
)


def command(
    source: Annotated[
        str | None,
        typer.Argument(
            help="A recording, a session, or printed text; - or nothing: standard input, or a paste."
        ),
    ] = None,
    small: Annotated[
        str, typer.Option(help="The reader's screen: a name, a size, or a .toml file.")
    ] = DEFAULT_SMALL,
    big: Annotated[
        str | None, typer.Option(help="The screen it was written for; what the session says, else 80x25.")
    ] = None,
    small_session: Annotated[
        str | None, typer.Option(metavar="FILE", help="The same program, recorded at the small size.")
    ] = None,
    timing: Annotated[
        str | None, typer.Option(metavar="FILE", help="The timing file of a typescript.")
    ] = None,
    encoding: Annotated[
        str | None,
        typer.Option(help="utf-8, cp437, latin-1 or 7bit; found from the data where it is left out."),
    ] = None,
    big_terminal: Annotated[
        str | None, typer.Option(metavar="NAME", help="The terminal the program was set for.")
    ] = None,
    small_terminal: Annotated[
        str | None, typer.Option(metavar="NAME", help="The terminal that the reader's machine is.")
    ] = None,
    prompt: Annotated[
        list[str] | None,
        typer.Option(
            metavar="PATTERN",
            help="A look stands after each match, where no input was recorded; again for more.",
        ),
    ] = None,
    words_per_minute: Annotated[
        float, typer.Option(help="How fast the reader reads, where pauses are the looks.")
    ] = WORDS_PER_MINUTE,
    line_speed: Annotated[
        float | None,
        typer.Option(metavar="BITS", help="Bits a second of the line, where no times were recorded."),
    ] = None,
    kind: Annotated[
        str | None, typer.Option(help="raw, session, typescript or recording; found from the content.")
    ] = None,
    lf_new_line: Annotated[
        bool | None,
        typer.Option(
            "--lf-new-line/--lf-down",
            help="LF alone starts a new line, or only moves down; found from the data.",
        ),
    ] = None,
    join_cut: Annotated[
        bool | None,
        typer.Option(
            "--join-cut/--keep-cut",
            help="Join lines that a terminal had cut in two, or not; found from the data.",
        ),
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the report as JSON.")] = False,
    lines: Annotated[bool, typer.Option("--lines", help="List every damaged and lost line.")] = False,
    look: Annotated[int | None, typer.Option(metavar="N", help="Show both screens at a look.")] = None,
    reflow: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write the text at the small width, a form feed at each break."),
    ] = None,
    html: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write the report as one HTML page.")
    ] = None,
    fail_under: Annotated[
        float | None,
        typer.Option(metavar="SCORE", help="Exit with 1 where the score is below this, 0 to 100."),
    ] = None,
) -> None:
    """Read a session, measure it, print the report; the exit code is 0, or 1 below the bar."""
    _refuse_bad_bar(fail_under)
    if sum((as_json, lines, look is not None)) > 1:
        raise UsageError("--json, --lines and --look cannot be printed at once", hint="ask for one of them")
    inputs = [name for name in (source, timing, small_session) if name is not None and name != STANDARD_INPUT]
    _refuse_bad_targets(reflow, html, inputs)
    session = read_session(_source(source), timing=timing, kind=kind, bare_lf=lf_new_line, join=join_cut)
    if line_speed is not None:
        session = with_line_speed(session, line_speed)
    looks = find_looks(session, prompts=prompt or (), words_per_minute=words_per_minute)
    with progress_line(len(session.output)) as progress:
        report = measure(
            session,
            big,
            small,
            big_terminal=big_terminal,
            small_terminal=small_terminal,
            encoding=encoding,
            looks=looks,
            small_session=None if small_session is None else read_session(small_session),
            progress=progress,
        )
    printed = _printed(report, as_json=as_json, lines=lines, look=look)
    _write(report, reflow, html, inputs)
    say(printed)
    raise typer.Exit(exit_code(report, fail_under))


def exit_code(report: Report, bar: float | None) -> int:
    """0, or 1 where the score is below the bar or could not be measured against it."""
    score = report.figures.score
    return EXIT_OK if bar is None or (score is not None and score >= bar) else EXIT_BELOW_BAR


def _write(report: Report, reflow: Path | None, html: Path | None, inputs: list[str]) -> None:
    """The files that were asked for."""
    if reflow is not None:
        write_file(reflow, _encoded(reflow_session(report)), inputs=inputs)
    if html is not None:
        views = {turn.look: show_look(report, turn.look) for turn in worst(report)}
        write_file(html, _encoded(page(report, views)), inputs=inputs)


def _printed(report: Report, *, as_json: bool, lines: bool, look: int | None) -> Iterable[str]:
    """What goes to standard output."""
    if as_json:
        return report_json(report)
    if lines:
        return line_list(report, text_style())
    if look is not None:
        return [look_page(report, show_look(report, look), picture_style())]
    return [summary(report, text_style())]


def _source(source: str | None) -> str:
    """The source that was named, else standard input; asks for a paste where that is a terminal."""
    name = STANDARD_INPUT if source is None else source
    if name == STANDARD_INPUT and sys.stdin.isatty():
        for sentence in PASTE:
            tell(sentence)
    return name


def _refuse_bad_bar(bar: float | None) -> None:
    if bar is not None and not 0 <= bar <= 100:
        raise UsageError(f"--fail-under {bar:g} is no score", hint="give a number from 0 to 100")


def _refuse_bad_targets(reflow: Path | None, html: Path | None, inputs: list[str]) -> None:
    """Before the work is done: a result must not go over an input, nor over another result."""
    for path in (reflow, html):
        if path is not None:
            refuse_input(path, inputs)
    if reflow is not None and html is not None and reflow.absolute() == html.absolute():
        raise UsageError("--reflow and --html name the same file", hint="name two")


def _encoded(text: str) -> bytes:
    return text.encode("utf-8", "backslashreplace")
