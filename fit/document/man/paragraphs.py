"""Macros of man(7) for titles, headings, paragraphs, items and displays."""

from __future__ import annotations

from typing import Final

from fit.document.blocks import Block, Kind, Mark
from fit.document.characters import TextBuilder
from fit.document.man.page import Page
from fit.document.man.roff_text import Line
from fit.document.man.text_lines import output, spaced

HEADINGS: Final = frozenset(("SH", "SS"))
PARAGRAPHS: Final = frozenset(("PP", "LP", "P", "HP"))
TAGGED: Final = frozenset(("TP", "TQ"))
DISPLAYS: Final = {
    **dict.fromkeys(("nf", "EX", "Vb"), True),
    **dict.fromkeys(("fi", "EE", "Ve"), False),
}
"""What turns filling off and on, and whether it begins a display."""


def title(page: Page, arguments: list[Line]) -> None:
    """The title line: furniture of the printed page."""
    builder = TextBuilder()
    for index, argument in enumerate(arguments):
        if index:
            builder.add_own(" ")
        page.printer.print(argument, builder)
    if len(builder):
        page.maker.add(Block(Kind.FURNITURE, lines=(builder.build(),), note="title line of the page"))


def heading(page: Page, name: str, arguments: list[Line]) -> None:
    """A heading, of the arguments or of the next line."""
    page.fill_lines()
    page.end_items()
    page.waiting = name
    page.printer.set_font("R")
    if arguments:
        output(page, spaced(arguments, Mark.NONE))


def paragraph(page: Page, name: str) -> None:
    """A paragraph begins; among lines that stay, no more than a blank one."""
    if page.pre is not None and not page.item_open:
        page.pre.add_own("\n")
        return
    page.end_item()
    page.hanging = name == "HP"


def tagged(page: Page) -> None:
    """An item begins, whose label is the next line."""
    page.end_item()
    page.waiting = "TP"


def indented(page: Page, arguments: list[Line]) -> None:
    """An item begins, whose label is the first argument, or one without a label."""
    page.end_item()
    if arguments and arguments[0].chars.strip():
        page.waiting = "TP"
        output(page, [(arguments[0], Mark.NONE)])
    elif not page.waiting:
        page.item_open = True
        page.maker.level += 1


def display(page: Page, name: str) -> None:
    """Lines that stay lines begin or end."""
    if DISPLAYS[name]:
        page.keep_lines(code=name != "nf")
    else:
        page.fill_lines()
