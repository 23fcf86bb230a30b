"""What a session says for and against a dialect: control bytes explained, and places that make no sense."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Final

from fit.dialect.meanings import LINE_GRAPHICS
from fit.dialect.operation import Operation
from fit.units import Size

LAYOUT: Final = frozenset(b"\a\b\t\n\r\0\x7f")
"""Control characters that every terminal understands, and fill: they are evidence for none."""
_LINES: Final = frozenset("┘┐┌└┼─├┤┴┬│")
_SPECIAL: Final = {ord(name): glyph for name, glyph in LINE_GRAPHICS.items() if "`" <= name <= "~"}
_OTHER_FEEDS: Final = b"\v\f"
_RELATIVE: Final = frozenset({"cursor_up", "cursor_down", "cursor_forward", "cursor_back", "reverse_index"})
_ON: Final = frozenset(range(1, 9))
_NO_TEXT: Final = frozenset({
    "bell", "select_graphic_rendition", "set_title", "set_icon_name", "shift_in", "shift_out", "define_charset"
})  # fmt: skip
_MODE_EVENTS: Final = frozenset({"set_mode", "reset_mode"})


@dataclass(frozen=True, slots=True)
class Evidence:
    """Counts over one session under one dialect."""

    explained: int
    """Bytes of sequences that were understood, layout controls left out."""
    unexplained: int
    """Bytes of sequences that were not."""
    outside: int
    """Moves to a row or column that the screen lacks."""
    moves: int
    """Cursor addresses."""
    letters: int
    """Characters drawn as text."""
    lines: int
    """Line drawing characters among them."""
    cookies: int
    """Attributes that took a cell."""
    joined: int
    """Attributes with a letter close on both sides, as where the attribute itself is the blank between words."""
    spaced: int
    """Attributes with a letter on one side and a blank on the other."""
    begun: int
    """Attributes switched on."""
    ended: int
    """Attributes switched off."""
    idle: int
    """What no program does: a relative move with an absolute one next, a line feed spelled VT or FF, text where
    the cursor happens to stand after all the screen was erased."""

    @property
    def share(self) -> float:
        """The part of the control bytes that is explained, 0 to 1; 1 where there are none."""
        total = self.explained + self.unexplained
        return self.explained / total if total else 1.0

    @property
    def weight(self) -> int:
        """For ranking: what is explained, less what is not or makes no sense."""
        return self.explained - 3 * self.unexplained - 6 * self.outside

    @property
    def sense(self) -> int:
        """For ranking where the weight is equal: line drawing that comes out, blanks between words, no idle moves.

        Where attributes are ended that were never begun, a program spares those that take a cell, as curses does.
        """
        spared = self.ended if not self.begun else 0
        takes_cells = self.joined - self.spaced + 2 * spared
        return self.lines - self.idle + (takes_cells if self.cookies else -takes_cells)


def gather(operations: Iterable[Operation], output: bytes, size: Size) -> Evidence:
    """Weigh the operations that ``output`` was decoded to.

    What is neither text nor layout nor unknown was understood, whether it had an effect or not.
    """
    drawn = unexplained = outside = moves = letters = lines = idle = 0
    before = ""
    erased_anywhere = is_home = False
    operations = list(in_line_drawing(operations))
    for first, end, event, arguments, _ in operations:
        if event == "draw" and output[first] >= 0x20:
            drawn += end - first
            idle += erased_anywhere
            letters += len(arguments[0])
            lines += 0 if arguments[0].isascii() else sum(char in _LINES for char in arguments[0])
        elif event == "status_text":
            drawn += len(arguments[0])
        elif event == "debug":
            unexplained += len(arguments[0])
        elif event == "cursor_position" and len(arguments) == 2:
            moves += 1
            outside += arguments[0] > size.rows or arguments[1] > size.columns
            idle += before in _RELATIVE
        elif event == "linefeed":
            idle += output[first] in _OTHER_FEEDS
        if event != "select_graphic_rendition":
            erased_anywhere = (
                bool(letters) and not is_home and (event, arguments) == ("erase_in_display", (2,))
            )
            is_home = (event, _spelled(event, arguments)) == _HOME
        before = event
    layout = len(output) - len(output.translate(None, bytes(LAYOUT)))
    explained = max(0, len(output) - drawn - unexplained - layout)
    around = _around_attributes(operations, output)
    return Evidence(explained, unexplained, outside, moves, letters, lines, *around, idle)


def _around_attributes(operations: list[Operation], output: bytes) -> tuple[int, int, int, int, int]:
    """``(cookies, joined, spaced, begun, ended)``: what stands on both sides of attributes in the midst of text."""
    cookies = joined = spaced = begun = ended = 0
    before = ""
    is_between = False
    for first, _, event, arguments, _ in operations:
        if event == "draw" and output[first] < 0x20:
            cookies += 1
        elif event == "draw" and arguments[0]:
            after = arguments[0][0]
            if before and is_between:
                joined += before.isalnum() and after.isalnum()
                spaced += (before == " ") != (after == " ")
            before, is_between = arguments[0][-1], False
        elif event == "select_graphic_rendition":
            is_between = True
            is_on = any(code in _ON for code in arguments)
            begun, ended = begun + is_on, ended + (not is_on)
        else:
            before = ""
    return cookies, joined, spaced, begun, ended


def in_line_drawing(operations: Iterable[Operation]) -> Iterator[Operation]:
    """Text that `Ecma48` leaves to the screen's character sets, as it is shown: G0 and G1, the DEC special set."""
    sets, active = ["B", "B"], 0
    for operation in operations:
        start, end, event, arguments, private = operation
        if event == "define_charset" and arguments[1:] in (("(",), (")",)):
            sets[arguments[1] == ")"] = arguments[0]
        elif event in ("shift_in", "shift_out"):
            active = int(event == "shift_out")
        elif event == "draw" and sets[active] == "0":
            yield (start, end, event, (arguments[0].translate(_SPECIAL), arguments[1]), private)
            continue
        yield operation


def same_text(operations: Iterable[Operation]) -> tuple[tuple[object, ...], ...]:
    """Operations as far as they decide what stands where: two dialects that agree in these show the same text.

    Attributes, colours, the cursor's looks and the bell are left out; runs of text are joined; what has several
    spellings (home and erase, a new line, a move by one) has one.
    """
    kept: list[tuple[object, ...]] = []
    for _, _, event, arguments, private in in_line_drawing(operations):
        if event in _NO_TEXT or (event in _MODE_EVENTS and (private or arguments != (4,))):
            continue
        if event == "draw" and kept and kept[-1][0] == "draw":
            kept[-1] = ("draw", f"{kept[-1][1]}{arguments[0]}")
            continue
        kept += _SPELLED.get(event) or [(event, _spelled(event, arguments))]
        if set(kept[-2:]) in _CLEARS:
            kept[-2:] = [("clear",)]
    return tuple(kept)


def _spelled(event: str, arguments: tuple[Any, ...]) -> object:
    if event == "draw":
        return arguments[0]
    if event.startswith("erase_in"):
        return arguments or (0,)
    given = tuple(argument or 1 for argument in arguments) if event != "debug" else arguments
    return (*given, 1, 1)[:2] if event == "cursor_position" else given or (1,)


_HOME: Final = ("cursor_position", (1, 1))
_CLEARS: Final = tuple({_HOME, ("erase_in_display", (how,))} for how in (0, 2))
_SPELLED: Final[dict[str, list[tuple[object, ...]]]] = {
    "next_line": [("carriage_return", (1,)), ("linefeed", (1,))],
    "index": [("linefeed", (1,))],
    "backspace": [("cursor_back", (1,))],
    "save_cursor_position": [("save_cursor", (1,))],
    "restore_cursor_position": [("restore_cursor", (1,))],
}


_HEAD: Final = re.compile(
    rb"(?:\x1b\[|\x9b)[<=>?]?([0-9;]*)[ -/]*[@-~]|~[\0-\x1f]|[\x01-\x06\x0b\x0c\x0e-\x1f\x9b][\0-\xff]?"
)
_DIGITS: Final = re.compile(rb"[0-9]+")


def heads(output: bytes) -> Counter[bytes]:
    """How often each kind of control sequence occurs, layout left out.

    A kind is a control sequence of ECMA-48 without its numbers, else a control character with the byte after
    it (``~`` counts as one before a control character).
    """
    return Counter(_DIGITS.sub(b"#", found[0]) for found in _HEAD.finditer(output))
