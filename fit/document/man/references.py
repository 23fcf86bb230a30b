"""Macros of man(7) for links, references to other pages, and the options of a synopsis."""

from __future__ import annotations

from typing import Final

from fit.document.blocks import Mark
from fit.document.man.page import Page
from fit.document.man.roff_text import Line, own_line
from fit.document.man.text_lines import output

REFERENCES: Final = frozenset(("UR", "MT", "UE", "ME", "MR", "SY", "YS", "OP"))


def reference(page: Page, name: str, arguments: list[Line]) -> None:
    """Print what such a macro prints: an address behind its text, a page with its section, an option in brackets."""
    first = arguments[0] if arguments else own_line("")
    if name in ("UR", "MT"):
        page.address = first
    elif name in ("UE", "ME") and page.address is not None:
        address, page.address = page.address, None
        parts = [(own_line("<"), 0), (address, 0), (own_line(">"), 0), *((part, 0) for part in arguments)]
        output(page, parts if address.chars else [(part, 0) for part in arguments])
    elif name == "MR":
        parts = [(own_line("("), 0), (arguments[1], 0), (own_line(")"), 0)] if len(arguments) > 1 else []
        output(page, [(first, Mark.BOLD), *parts, *((part, 0) for part in arguments[2:])])
    elif name == "SY":
        page.break_line()
        output(page, [(first, Mark.BOLD)])
    elif name == "YS":
        page.break_line()
    elif name == "OP" and arguments:
        inside = [(first, Mark.BOLD), *((part, Mark.UNDERLINE) for part in arguments[1:2])]
        parts = [part for item in inside for part in ((own_line(" "), 0), item)][1:]
        output(page, [(own_line("["), 0), *parts, (own_line("]"), 0)])
