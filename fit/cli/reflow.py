"""``fit reflow``: a document to pages that fit the small screen."""

from __future__ import annotations

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Annotated, Final

import typer

from fit.cli import EXIT_BELOW_BAR, EXIT_OK
from fit.cli.display import say, text_style
from fit.cli.streams import complain, tell
from fit.document import LARGEST, read_document, read_document_bytes
from fit.document.blocks import Document
from fit.errors import UsageError
from fit.layout.settings import LayoutSettings
from fit.output import refuse_input, write_file
from fit.report.device_file import FORM_FEED, FileForm, device_files, part_names
from fit.report.numbers import count
from fit.report.pages_html import pages_html
from fit.report.reflow_json import reflow_json
from fit.report.reflow_summary import outcome, reflow_summary
from fit.report.reflowed import Reflowed, reflow_document
from fit.screen.named import find_screen
from fit.units import LARGEST_SIDE

STANDARD_INPUT: Final = "-"
LINE_ENDS: Final = {"crlf": "\r\n", "lf": "\n", "cr": "\r"}
PAGE_BREAKS: Final = {"form-feed": FORM_FEED, "none": ""}
LONG: Final = 500_000
"""Characters of a document from which on a terminal is told what goes on."""
SELDOM: Final = 100_000
"""Objects made from one search for garbage to the next."""


def command(
    document: Annotated[
        str,
        typer.Argument(
            help="A text, Markdown, HTML, manual page or old word-processor file; - is standard input."
        ),
    ],
    small: Annotated[
        str, typer.Option(help="The reader's screen: a name, a size, or a .toml file.")
    ] = "pocket",
    rows: Annotated[
        int | None, typer.Option(help="Rows of the screen, where they differ from what --small says.")
    ] = None,
    prompt_row: Annotated[
        bool,
        typer.Option("--prompt-row/--no-prompt-row", help="Leave the last row to the prompt of the device."),
    ] = True,
    output: Annotated[
        Path | None,
        typer.Option(
            "--output", "-o", metavar="FILE", help="Write the pages to a file, and print the report."
        ),
    ] = None,
    check: Annotated[bool, typer.Option("--check", help="Write no pages; print the report.")] = False,
    as_json: Annotated[
        bool, typer.Option("--json", help="Print blocks, lines, pages and figures as JSON.")
    ] = False,
    html: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write a preview: the pages as small screens.")
    ] = None,
    format_: Annotated[
        str | None,
        typer.Option("--format", help="text, wordproc, markdown, html or man; found from the content."),
    ] = None,
    encoding: Annotated[
        str | None,
        typer.Option(help="utf-8, ascii, cp437, latin-1, cp1252 or utf-16; found from the content."),
    ] = None,
    language: Annotated[
        str, typer.Option(help="Whose hyphenation and spelling to use, such as en_GB or de.")
    ] = "en_US",
    hyphens: Annotated[
        bool, typer.Option("--hyphens/--no-hyphens", help="Hyphenate at line ends, or never.")
    ] = True,
    keep_characters: Annotated[
        bool, typer.Option("--keep-characters", help="Write UTF-8, for a device that has more than 7 bits.")
    ] = False,
    line_end: Annotated[str, typer.Option(help="crlf, lf or cr.")] = "crlf",
    page_break: Annotated[
        str, typer.Option(metavar="WHAT", help="Between pages: form-feed, none, or a line of your own.")
    ] = "form-feed",
    pad: Annotated[
        bool, typer.Option("--pad", help="Fill the last record of 128 bytes up with 1Ah.")
    ] = False,
    part_size: Annotated[
        int | None,
        typer.Option(
            metavar="BYTES",
            help="Write numbered parts of at most so many bytes, cut at page ends, over files of those names.",
        ),
    ] = None,
    contents: Annotated[bool, typer.Option("--contents", help="Begin with a contents page.")] = False,
    page_numbers: Annotated[
        bool, typer.Option("--page-numbers", help="End each page with its number.")
    ] = False,
    panel_labels: Annotated[
        bool, typer.Option("--panel-labels", help="Number the panels of a picture that was cut.")
    ] = False,
    overlap: Annotated[
        int, typer.Option(metavar="COLUMNS", help="Columns that each panel repeats of the one before.")
    ] = 0,
) -> None:
    """Read a document, lay it out, write its pages; the exit code is 0, or 1 where something did not come through."""
    screen = find_screen(small)
    screen_rows = _rows(rows, screen.size.rows)
    settings = LayoutSettings(
        width=screen.size.columns,
        page_rows=max(1, screen_rows - prompt_row),
        language=language,
        hyphenate=hyphens,
        contents=contents,
        page_numbers=page_numbers,
        panel_labels=panel_labels,
        overlap=overlap,
    )
    form = _form(line_end, page_break, pad=pad, part_size=part_size, keep_characters=keep_characters)
    _refuse_together(output, check=check, part_size=part_size)
    inputs = [] if document == STANDARD_INPUT else [document]
    _refuse_inputs(output, html, inputs)
    if output is not None and output == html:
        raise UsageError(f"-o and --html both name {output}", hint="name two files")
    # What a document becomes lives to the end: looking for garbage in it a hundred times finds none.
    gc.set_threshold(SELDOM)
    read = _read(document, format_, encoding)
    if inputs:
        inputs.append(read.name)  # another file than was given, where that only names it
        _refuse_inputs(output, html, inputs)
    result = _reflow(read, settings, form, keep_characters=keep_characters)
    files = [] if check else device_files(result.layout, form)
    written = _write(output, files, inputs) if output is not None else []
    if html is not None:
        write_file(html, pages_html(result, screen_rows).encode("utf-8", "backslashreplace"), inputs=inputs)
    _print(result, files, written, check=check, as_json=as_json, to_file=output is not None)
    raise typer.Exit(EXIT_BELOW_BAR if result.shortfalls else EXIT_OK)


def _rows(given: int | None, of_screen: int) -> int:
    if given is not None and not 1 <= given <= LARGEST_SIDE:
        raise UsageError(
            f"--rows {given} is no height of a screen", hint=f"give a number from 1 to {LARGEST_SIDE}"
        )
    return of_screen if given is None else given


def _form(
    line_end: str, page_break: str, *, pad: bool, part_size: int | None, keep_characters: bool
) -> FileForm:
    """The form of the file, as the options ask for it."""
    if line_end not in LINE_ENDS:
        raise UsageError(f"--line-end {line_end} is unknown", hint=f"give one of {', '.join(LINE_ENDS)}")
    if part_size is not None and part_size < 1:
        raise UsageError(f"--part-size {part_size} holds nothing", hint="give the most bytes a part may have")
    encoding = "utf-8" if keep_characters else "ascii"
    mark = PAGE_BREAKS.get(page_break, page_break)
    try:
        mark.encode(encoding)
    except UnicodeEncodeError:
        raise UsageError(
            "--page-break has characters beyond 7 bits",
            hint="use others, or --keep-characters for a device that has them",
        ) from None
    return FileForm(LINE_ENDS[line_end], mark, pad, part_size, encoding)


def _refuse_together(output: Path | None, *, check: bool, part_size: int | None) -> None:
    if check and output is not None:
        raise UsageError("--check writes no pages, so -o has nothing to write", hint="leave out one of them")
    if part_size is not None and output is None and not check:
        raise UsageError("--part-size makes several files", hint="name them with -o, such as -o manual.txt")


def _refuse_inputs(output: Path | None, html: Path | None, inputs: list[str]) -> None:
    for path in (output, html):
        if path is not None:
            refuse_input(path, inputs)


def _read(name: str, format_: str | None, encoding: str | None) -> Document:
    if name != STANDARD_INPUT:
        size = Path(name).stat().st_size if Path(name).is_file() else 0
        with _telling(f"reading {count(size, 'byte')} ...", size):
            return read_document(name, format_, encoding)
    if sys.stdin.isatty():
        tell("Paste the document, then press Enter and Ctrl-D.")
    data = sys.stdin.buffer.read(LARGEST + 1)
    with _telling(f"reading {count(len(data), 'byte')} ...", len(data)):
        return read_document_bytes(data, "standard input", format_, encoding)


def _reflow(
    document: Document, settings: LayoutSettings, form: FileForm, *, keep_characters: bool
) -> Reflowed:
    size = len(document.source)
    with _telling(f"laying out {count(size, 'character')} ...", size):
        return reflow_document(document, settings, seven_bits=not keep_characters, page_break=form.page_break)


@contextmanager
def _telling(what: str, size: int) -> Iterator[None]:
    """Tell a person at a terminal what takes its time; the line goes when it is done."""
    if size < LONG or not sys.stderr.isatty():
        yield
        return
    print(what, end="", file=sys.stderr, flush=True)
    try:
        yield
    finally:
        print(f"\r{' ' * len(what)}\r", end="", file=sys.stderr, flush=True)


def _write(output: Path, files: list[bytes], inputs: list[str]) -> list[Path]:
    """Write the file, or its parts; their paths."""
    names = [output.name] if len(files) == 1 else part_names(output.name, len(files))
    paths = [output.with_name(name) for name in names]
    for path in paths:
        refuse_input(path, inputs)
    for path, data in zip(paths, files, strict=True):
        write_file(path, data, inputs=inputs)
    return paths


def _print(
    result: Reflowed, files: list[bytes], written: list[Path], *, check: bool, as_json: bool, to_file: bool
) -> None:
    """Standard output: JSON, the report, or the pages; with the pages, their outcome on standard error.

    Where nobody looks at standard error, only a result that is not as it should be is told there.
    """
    if as_json:
        say(reflow_json(result))
        return
    if check or to_file:
        say([reflow_summary(result, text_style())])
        if written:
            say([f"Written: {', '.join(map(str, written))}\n"])
        return
    for data in files:
        sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()
    if result.shortfalls or sys.stderr.isatty():
        complain(outcome(result))
