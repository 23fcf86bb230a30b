"""Manual pages in the man macros to blocks, after man(7): each line to the function that takes it.

The title line and the fonts' sizes are furniture of the printed page. Another macro package (mdoc) is
recognised and refused.
"""

from __future__ import annotations

import re
from functools import partial

from fit.document.block_maker import joined
from fit.document.blocks import Document, Mark, Text
from fit.document.man.as_written import AS_WRITTEN, keep_as_written
from fit.document.man.fonts import ALTERNATING, FONTS, alternate, one_font
from fit.document.man.margins import MARGINS, margin
from fit.document.man.page import Page
from fit.document.man.paragraphs import (
    DISPLAYS,
    HEADINGS,
    PARAGRAPHS,
    TAGGED,
    display,
    heading,
    indented,
    paragraph,
    tagged,
    title,
)
from fit.document.man.references import REFERENCES, reference
from fit.document.man.requests import PASSED_OVER, REQUESTS, obey
from fit.document.man.roff_input import Input
from fit.document.man.roff_lines import request_of
from fit.document.man.roff_text import Line, Printer, split_arguments
from fit.document.man.table import TableReader
from fit.document.man.text_lines import text_line
from fit.document.preformatted import held
from fit.document.recognise import ONLY_ELSEWHERE
from fit.document.text.hyphens import Hyphens
from fit.errors import DocumentError


def read_man(source: str, name: str, encoding: str) -> Document:
    """Read a manual page.

    Raises `DocumentError` where it is written in the mdoc macros, or is no more than the name of another page.
    """
    if re.search(r"^\.[ \t]*Dd\b", source, re.MULTILINE) and not re.search(
        r"^\.[ \t]*TH\b", source, re.MULTILINE
    ):
        hint = "turn it into text first, with a program that formats manual pages"
        raise DocumentError(
            "is a manual page in the mdoc macros, which cannot be read yet", source=name, hint=hint
        )
    elsewhere = ONLY_ELSEWHERE.fullmatch(source)
    if elsewhere is not None:
        raise DocumentError(
            f"says only that the page stands in {elsewhere[1][:80]}", source=name, hint="give that file"
        )
    lines = Input(source)
    printer = Printer()
    printer.unknown = lambda char: lines.remark(f"special character '{char}' is not known")
    page = Page(lines, printer, Hyphens(source))
    while (line := lines.next_line()) is not None:
        _take(page, line)
    blocks = tuple(page.finished())
    remarks = tuple(f"{count} x {what}" for what, count in lines.remarks.items())
    return Document(source, blocks, "man", encoding, name, remarks)


def _take(page: Page, line: Line) -> None:
    """Take one line of the page."""
    name, rest = request_of(line)
    if name is None:
        text_line(page, line)
    elif name:
        _call(page, name, rest)


def _call(page: Page, name: str, rest: Line) -> None:
    """Take a line that calls a macro or a request."""
    if name in ALTERNATING:
        alternate(page, name, split_arguments(rest))
    elif name in FONTS:
        one_font(page, name, split_arguments(rest))
    elif name in HEADINGS:
        heading(page, name, split_arguments(rest))
    elif name in PARAGRAPHS:
        paragraph(page, name)
    elif name in TAGGED:
        tagged(page)
    elif name == "IP":
        indented(page, split_arguments(rest))
    elif name in MARGINS:
        # Set in by less than nothing: a step back, as writers of old pages have it.
        back = rest.chars.startswith("-")
        margin(page, "RE" if back else name)
    elif name in DISPLAYS:
        display(page, name)
    elif name in REQUESTS:
        obey(page, name, rest)
    elif name in REFERENCES:
        reference(page, name, split_arguments(rest))
    elif name == "TS":
        _table(page)
    elif name == "TH":
        title(page, split_arguments(rest))
    elif name in AS_WRITTEN:
        keep_as_written(page, name)
    elif name == "so":
        page.lines.remark(f"the file {rest.chars[:60]} that the page includes was not read")
    elif name not in PASSED_OVER and name.strip("."):
        page.lines.remark(f"the macro .{name[:20]} is not known and was passed over with its line")


def _table(page: Page) -> None:
    """A table: its rows to a reader of their own, which gives the lines of its cells back here."""
    page.break_pre()
    page.maker.close()
    for block in TableReader(page.lines, page.printer, partial(_cell_text, page)).read(page.maker.level):
        page.maker.add(block)


def _cell_text(page: Page, lines: list[Line], mark: int) -> Text:
    """The text of a cell, which is a small page of its own; ``mark`` is the font that its column gives it."""
    cell = Page(page.lines, page.printer)
    for line in lines:
        if mark and request_of(line)[0] is None:
            cell.font = mark
        _take(cell, line)
    texts = [
        text
        for block in cell.finished()
        for text in (
            joined([part for part in (block.label, block.text) if len(part)]),
            *(held(line, Mark.PROGRAM) if block.code else line for line in block.lines),
        )
        if len(text)
    ]
    return joined(texts, "\n")
