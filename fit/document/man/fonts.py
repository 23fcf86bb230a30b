"""Font macros of man(7): one font, or two that take turns, for the arguments or the next line."""

from __future__ import annotations

from typing import Final

from fit.document.blocks import Mark
from fit.document.man.page import Page
from fit.document.man.roff_text import Line
from fit.document.man.text_lines import output, spaced

FONTS: Final = {"B": Mark.BOLD, "I": Mark.UNDERLINE, "R": Mark.NONE, "SM": Mark.NONE, "SB": Mark.BOLD}
ALTERNATING: Final = {
    first + second: (marks[0], marks[1])
    for first, second, *marks in (
        ("B", "I", Mark.BOLD, Mark.UNDERLINE),
        ("B", "R", Mark.BOLD, Mark.NONE),
        ("I", "B", Mark.UNDERLINE, Mark.BOLD),
        ("I", "R", Mark.UNDERLINE, Mark.NONE),
        ("R", "B", Mark.NONE, Mark.BOLD),
        ("R", "I", Mark.NONE, Mark.UNDERLINE),
    )
}


def one_font(page: Page, name: str, arguments: list[Line]) -> None:
    """All arguments in one font, or the next line."""
    if not arguments:
        page.font = FONTS[name]
        return
    output(page, spaced(arguments, FONTS[name]))


def alternate(page: Page, name: str, arguments: list[Line]) -> None:
    """The arguments without blanks between them, in two fonts that take turns."""
    marks = ALTERNATING[name]
    output(page, [(argument, marks[index % 2]) for index, argument in enumerate(arguments)])
