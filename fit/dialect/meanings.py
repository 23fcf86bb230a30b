"""What each capability of terminfo(5) does, as terminal operations.

The order matters: where a terminal has the same bytes for two capabilities, the first one counts (a reverse
line feed does what a cursor up does and more, so ``ri`` stands before ``cuu1``; where it is an insert line, that
is what it does on every row).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, TypeAlias

from fit.units import LARGEST_SIDE

Effect: TypeAlias = tuple[str, tuple[Any, ...], bool]
"""Event, arguments, private; see `fit.dialect.operation`."""
Effects: TypeAlias = tuple[Effect, ...]

GRAPHICS: Final = "line drawing on or off"
"""Effects of the dialect's own, never handed on: (on)."""
COOKIE: Final = "magic cookie"
"""An attribute that takes a cell: ()."""
STATUS: Final = "status text begins"
REPEAT: Final = "character and count"
"""(character code, count)."""


def _one(event: str, *arguments: Any, private: bool = False) -> Effects:
    return ((event, arguments, private),)


def attributes(*codes: int) -> Effects:
    """Select graphic rendition; the codes are those of ECMA-48, 8.3.117."""
    return _one("select_graphic_rendition", *codes)


HOME: Final = _one("cursor_position", 1, 1)
CONTROLS: Final[dict[bytes, Effects]] = {
    b"\a": _one("bell"),
    b"\b": _one("backspace"),
    b"\t": _one("tab"),
    b"\n": _one("linefeed"),
    b"\r": _one("carriage_return"),
}
"""What these control characters do where a description does not say otherwise (ECMA-48, 8.3)."""

FIXED: Final[dict[str, Effects]] = {
    "clear": HOME + _one("erase_in_display", 2),
    "home": HOME,
    "nel": _one("next_line"),
    "il1": _one("insert_lines", 1),
    "dl1": _one("delete_lines", 1),
    "ri": _one("reverse_index"),
    "ind": _one("index"),
    "cuu1": _one("cursor_up", 1),
    "cud1": _one("cursor_down", 1),
    "cuf1": _one("cursor_forward", 1),
    "cub1": _one("cursor_back", 1),
    "cr": _one("carriage_return"),
    "ht": _one("tab"),
    "cbt": _one("backward_tab", 1),
    # The terminal's last row is that of the screen it is shown on; a move down stops there.
    "ll": _one("cursor_down1", LARGEST_SIDE),
    "ed": _one("erase_in_display", 0),
    "el": _one("erase_in_line", 0),
    "el1": _one("erase_in_line", 1),
    "ich1": _one("insert_characters", 1),
    "dch1": _one("delete_characters", 1),
    "smir": _one("set_mode", 4),
    "rmir": _one("reset_mode", 4),
    "smam": _one("set_mode", 7, private=True),
    "rmam": _one("reset_mode", 7, private=True),
    "civis": _one("reset_mode", 25, private=True),
    "cvvis": _one("set_mode", 25, private=True),
    "cnorm": _one("set_mode", 25, private=True),
    "sc": _one("save_cursor"),
    "rc": _one("restore_cursor"),
    "hts": _one("set_tab_stop"),
    "tbc": _one("clear_tab_stop", 3),
    "bel": _one("bell"),
}

ATTRIBUTES: Final[dict[str, Effects]] = {
    "smso": attributes(7),
    "rev": attributes(7),
    "bold": attributes(1),
    "dim": attributes(2),
    "smul": attributes(4),
    "blink": attributes(5),
    "invis": attributes(8),
    "sitm": attributes(3),
    "smacs": _one(GRAPHICS, True),
}
"""Sequences that switch something on; each may cost a cell (``xmc``)."""

ENDINGS: Final[dict[str, Effects]] = {
    "rmacs": _one(GRAPHICS, False),
    "sgr0": attributes(0),
    "rmso": attributes(27),
    "rmul": attributes(24),
    "ritm": attributes(23),
    "op": attributes(39, 49),
}
"""Sequences that switch something off. One sequence often ends several: then it does all of it."""

EFFECTS: Final[dict[str, Effects]] = {
    **FIXED,
    **ATTRIBUTES,
    **ENDINGS,
    "ed1": _one("erase_in_display", 1),
    "el2": _one("erase_in_line", 2),
}
"""Everything that a sequence without parameters can do; terminfo(5) has no name for the last two, which erase the
screen up to the cursor, and the whole line."""

NO_EFFECT: Final = ("is1", "is2", "is3", "rs1", "rs2", "rs3", "ip", "enacs", "smkx", "rmkx", "smm", "rmm", "smcup", "rmcup",
                    "flash", "dsl", "prot", "ff", "mc4", "mc5", "smdc", "rmdc")  # fmt: skip
"""Known, with nothing to see on the grid beyond what the parts of the sequence do. Printer output (mc5) is
shown like any other: whether the screen shows it too is the terminal's choice (mc5i), and losing it is worse."""


def _move(event: str) -> Callable[..., Effects]:
    return lambda count: _one(event, count)


def _times(event: str) -> Callable[..., Effects]:
    return lambda count: _one(event) * count


def _colour(base: int) -> Callable[..., Effects]:
    def choose(number: int) -> Effects:
        if number < 8:
            return attributes(base + number)
        return attributes(base + 60 + number - 8) if number < 16 else attributes(base + 8, 5, number)

    return choose


def repeat_last(count: int) -> Effects:
    """The character just printed, until there are ``count`` of it."""
    return _one("repeat", count - 1) if count > 1 else ()


_BLUE_FIRST: Final = (0, 4, 2, 6, 1, 5, 3, 7)
"""``setf`` and ``setb`` count the colours with blue as bit 0, ECMA-48 with red."""

PARAMETERISED: Final[dict[str, Callable[..., Effects]]] = {
    "cup": lambda row, column: _one("cursor_position", row + 1, column + 1),
    "hpa": lambda column: _one("cursor_to_column", column + 1),
    "vpa": lambda row: _one("cursor_to_line", row + 1),
    "csr": lambda top, bottom: _one("set_margins", top + 1, bottom + 1),
    "cuu": _move("cursor_up"),
    "cud": _move("cursor_down"),
    "cuf": _move("cursor_forward"),
    "cub": _move("cursor_back"),
    "il": _move("insert_lines"),
    "dl": _move("delete_lines"),
    "ich": _move("insert_characters"),
    "dch": _move("delete_characters"),
    "ech": _move("erase_characters"),
    "indn": _times("index"),
    "rin": _times("reverse_index"),
    "rep": lambda code, count: _one(REPEAT, code, count),
    "setaf": _colour(30),
    "setab": _colour(40),
    "setf": lambda number: _colour(30)(_BLUE_FIRST[number]),
    "setb": lambda number: _colour(40)(_BLUE_FIRST[number]),
    "tsl": lambda *_: _one(STATUS),
}

LINE_GRAPHICS: Final = dict(zip(
    "}.,+-hI0`afgjklmnopqrstuvwxy{z|~i",
    "£↓←→↑▒☃█◆▒°±┘┐┌└┼⎺⎻─⎼⎽├┤┴┬│≤π≥≠·␋",
    strict=True,
))  # fmt: skip
"""The characters of ``acsc``: terminfo(5), section "Line Graphics", and what they look like."""
_LINES_PROPER: Final = "jklmnqtuvwx"


def line_drawing(acsc: bytes) -> dict[int, str]:
    """The glyph of each byte; where a terminal has one byte for several, that of the line proper."""
    pairs = [
        (chr(name), byte)
        for name, byte in zip(acsc[::2], acsc[1::2], strict=False)
        if chr(name) in LINE_GRAPHICS
    ]
    ordered = sorted(pairs, key=lambda pair: pair[0] in _LINES_PROPER)
    return {byte: LINE_GRAPHICS[name] for name, byte in ordered}
