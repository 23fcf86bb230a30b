"""``fit terminals``: the terminals that can be decoded, one of them, or the one a session was written for."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Final

import typer

from fit.cli.display import say
from fit.cli.streams import columns
from fit.dialect.description_file import packed_names, read_packed
from fit.dialect.encoding import ENCODINGS, choose_encoding
from fit.dialect.recognise import recognise
from fit.dialect.registry import find_description, terminal_names
from fit.dialect.traits import traits_of
from fit.errors import UsageError
from fit.report.notation_help import notation_lines
from fit.report.plain import wrap
from fit.report.terminals import description_lines, list_lines, name_lines, recognition_lines
from fit.source import read_session

_WIDEST: Final = 100


def command(
    what: Annotated[
        str,
        typer.Argument(
            metavar="NAME|SESSION",
            help="A terminal's name or .toml file to describe it; a session, or - for standard input, to find its terminal.",
        ),
    ] = "",
    every: Annotated[
        bool, typer.Option("--all", help="List every name, those of the terminal database too.")
    ] = False,
    notation: Annotated[
        bool, typer.Option("--notation", help="Say how to describe a terminal that is not listed.")
    ] = False,
    encoding: Annotated[
        str, typer.Option(metavar="NAME", help=f"Read the session in this encoding: {', '.join(ENCODINGS)}.")
    ] = "",
) -> None:
    """List terminals, describe one, or find the terminal a session was written for."""
    if encoding and encoding not in ENCODINGS:
        raise UsageError(f"no encoding is named '{encoding[:40]}'", hint=f"known are {', '.join(ENCODINGS)}")
    width = min(_WIDEST, columns())
    lines = notation_lines(width) if notation else _lines(what, width, encoding, every=every)
    say(f"{line}\n" for line in lines)


def _lines(what: str, width: int, encoding: str, *, every: bool) -> list[str]:
    if not what:
        return _list(width, every=every)
    if _is_session(what):
        session = read_session(what)
        chosen = encoding or session.encoding or choose_encoding(session.output).name
        return recognition_lines(recognise(session.output, chosen, session.size), session, width)
    return description_lines(traits_of(find_description(what)), width)


def _is_session(what: str) -> bool:
    """A name wins over a file of the same name; ``./name`` is always the file."""
    if what == "-":
        return True
    return not what.endswith(".toml") and what not in terminal_names() and Path(what).exists()


def _list(width: int, *, every: bool) -> list[str]:
    names = terminal_names()
    if every:
        return name_lines(names, width)
    lines = list_lines([traits_of(read_packed(name)) for name in packed_names()], width)
    more = len(set(names) - set(packed_names()))
    note = (
        f"The terminal database of this computer has {more} more names; --all lists them."
        if more
        else "This computer has no terminal database; a .toml file can describe further ones."
    )
    return [*lines, "", *wrap(note, width)]
