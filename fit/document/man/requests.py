"""Requests of roff that move or change what a page prints, and the names of those that change nothing here."""

from __future__ import annotations

from typing import Final

from fit.document.characters import TextBuilder
from fit.document.man.page import Page
from fit.document.man.roff_number import CHARACTER, evaluate
from fit.document.man.roff_tabs import tab_stops
from fit.document.man.roff_text import Line, Printer, own_line

REQUESTS: Final = frozenset(("br", "ti", "bp", "sp", "Sp", "ce", "in", "ft", "tr", "ta", "DT"))
PASSED_OVER: Final = frozenset(
    [
        *("PD", "UC", "AT", "ad", "na", "hy", "nh", "ne", "ns", "rs", "ps", "vs", "ss", "cs", "ll", "lt", "pl"),
        *("po", "fam", "fp", "nx", "rd", "tm", "tm1", "ab", "warn", "hw", "hym", "hcode", "mk", "rt", "nm", "nn"),
        *("lf", "ev", "it", "itc", "em", "wh", "ch", "dt", "ul", "cu", "lg", "uf", "bd", "ls", "sv", "os", "pc"),
        *("tl", "tc", "lc", "c2", "cc", "hc", "fc", "return", "break", "close", "open", "write", "ftr"),
        *("hla", "hlm", "hpf", "color", "defcolor", "gcolor", "fcolor", "char", "rchar", "fchar", "schar", "hcode", "\\"),
        *("BT", "PT", "LINKSTYLE", "special", "fspecial", "nop", "minss", "mso", "output", "pso", "psbb", "kern", "hys", "ff"),
    ]
)  # fmt: skip
"""Requests and macros that print nothing on a small screen."""
_DEEPEST: Final = 20
"""Cells by which a line is set in."""


def obey(page: Page, name: str, rest: Line) -> None:
    """Obey one of `REQUESTS`."""
    chars = rest.chars.strip()
    if name == "ft":
        page.printer.set_font(chars)
    elif name == "tr":
        _translate(page.printer, rest.chars)
    elif name in ("ta", "DT"):
        page.stops = tab_stops(chars)
    elif name in ("sp", "Sp", "bp"):
        page.space()
    elif name == "in":
        page.indent(1 if chars.startswith("+") else -page.indents)
    elif name == "ti":
        page.break_line()
        cells = evaluate(chars + "m" * chars[-1:].isdecimal()) / CHARACTER
        page.set_in = min(_DEEPEST, round(cells)) if chars.startswith("+") else 0
    elif name == "ce":
        page.break_line()
        page.centred = int(chars) if chars.isdecimal() and len(chars) < 6 else 1
    else:
        page.break_line()


def _translate(printer: Printer, chars: str) -> None:
    """``.tr`` gives pairs of characters; one alone prints as a blank."""
    builder = TextBuilder()
    Printer().print(own_line(chars), builder)
    pairs = builder.build().chars
    table = dict(printer.translated or {})
    for index in range(0, len(pairs), 2):
        table[pairs[index]] = pairs[index + 1] if index + 1 < len(pairs) else " "
    printer.translated = {char: to for char, to in table.items() if char != to}
