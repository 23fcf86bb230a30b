"""How a description of a terminal is written: what ``fit terminals --notation`` says."""

from __future__ import annotations

from typing import Final

from fit.report.plain import wrap

EXAMPLE: Final = """\
about = "console of the tide station"
unknown = "swallow"  # or "print"

[flags]
am = true            # wraps at the edge

[numbers]
cols = 64
lines = 16

[sequences]
cup = "ESC Y row+32 column+32"
clear = "FF"
home = "^A"
el = "ESC K"         # to the line end
ed = "ESC J"         # to the screen end
cuu1 = "ESC A"       # up
cuf1 = "ESC C"       # right
smso = "ESC p"       # reverse on
rmso = "ESC q"       # and off
"""
"""A description in twenty lines, none wider than 40 columns."""

_TEXT: Final = """\
A sequence is written as manuals print it, its words separated by blanks:
- a control character by its name (ESC, SP, DEL), as ^L, or a byte in hexadecimal (0x9B);
- a parameter: row, column, count, top, bottom or char, counted from 0 (a count from 1), with a number added \
or taken away (row+32), sent as one byte; with <31 the number is added only to values below 31; with :d it is \
sent as decimal digits, with :d2 and :d3 as so many digits;
- anything else stands for itself (Y, [, [?7h).
Rows may name their source: el = ["ESC K", "its handbook, page 12"]. The names of the rows are those of \
terminfo(5); [more] is for codes that have no name of their own, each with the name of what it does: "ESC )" = "dim"; it takes no cell. Name the file wherever a terminal is asked for, such as: fit terminals tide.toml
"""


def notation_lines(width: int) -> list[str]:
    """The example and what its words mean."""
    lines = ["A terminal of your own, tide.toml:", "", *EXAMPLE.splitlines(), ""]
    for paragraph in _TEXT.splitlines():
        lines += wrap(paragraph, width, later="  " if paragraph.startswith("-") else "")
    return lines
