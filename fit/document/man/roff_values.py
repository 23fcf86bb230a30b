"""What roff puts into lines: strings, registers, arguments of macros, widths of texts."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from fit.document.characters import TextBuilder
from fit.document.man.roff_number import CHARACTER, evaluate
from fit.document.man.roff_text import Line, Printer, join_lines, own_line, read_escape, split_arguments
from fit.document.numerals import written

MOST_CHARACTERS: Final = 1_000_000
"""That strings, registers and arguments put into one document; more mean that they double each other."""
_DEEPEST: Final = 50
"""Strings and widths inside each other; as many nest only where there is no end to it."""
_LEAST_COST: Final = 10
"""Characters for which each of them counts at least, so that many empty ones end too."""

_STRINGS: Final = {
    "R": "\\(rg", "Tm": "\\(tm", "lq": "\\(lq", "rq": "\\(rq", "S": "", "Aq": "\\(aq", "Am": "&", "Ba": "|",
    ".T": "utf8", "Ge": "\\(>=", "Gt": ">", "Le": "\\(<=", "Lt": "<", "Ne": "\\(!=", "Pm": "\\(+-", "q": "\\(dq",
}  # fmt: skip
_REGISTERS: Final = {".g": 1, ".x": 1, ".y": 23, ".H": 24, ".V": 40, "mo": 1, "dy": 1, "yr": 0}
"""Of a terminal: ``.H`` and ``.V`` are the steps it can make to the right and down."""
_EXPANDS: Final = re.compile(r"\\[*n$w]")
_EXPANDED: Final = frozenset("*n$w")


class Values:
    """The strings and registers of a document, and the arguments of the macros that are open."""

    def __init__(self, remark: Callable[[str], None]) -> None:
        self._remark = remark
        self.strings = {name: own_line(value) for name, value in _STRINGS.items()}
        self.registers = dict(_REGISTERS)
        self.arguments: list[list[Line]] = []
        """For each open macro its arguments."""
        self._steps: dict[str, int] = {}
        """For each register the step of ``\\n+``."""
        self._styles: dict[str, str] = {}
        """For each register how its number is written, ``1`` where it is not said."""
        self._put_in = 0
        self._open: list[str] = []
        """What is being put in, each inside the one before."""

    def expand(self, line: Line) -> Line:
        """Put in strings, registers, arguments and widths, also inside the arguments of other escapes."""
        if _EXPANDS.search(line.chars) is None:
            return line
        parts: list[Line] = []
        at = 0
        chars = line.chars
        while (found := chars.find("\\", at)) >= 0:
            letter = chars[found + 1 : found + 2]
            if letter in _EXPANDED:
                escape = read_escape(chars, found)
                parts.append(line.part(at, found))
                parts.append(self._value(letter, escape.argument, line.sources[found]))
                at = escape.end
            else:
                parts.append(line.part(at, found + 2))
                at = found + 2
        parts.append(line.part(at))
        return join_lines(parts)

    def copied(self, line: Line) -> Line:
        """A line as a definition keeps it: what a doubled backslash holds back waits for the call."""
        if "\\" not in line.chars:
            return line
        parts: list[Line] = []
        at = 0
        while (found := line.chars.find("\\", at)) >= 0:
            escape = read_escape(line.chars, found)
            if escape.letter == "\\":
                parts.append(line.part(at, found + 1))
                at = found + 2
            elif escape.letter in ("*", "n"):
                parts += (
                    line.part(at, found),
                    self._value(escape.letter, escape.argument, line.sources[found]),
                )
                at = escape.end
            else:
                parts.append(line.part(at, found + 2))
                at = found + 2
        return join_lines([*parts, line.part(at)])

    def define_string(self, kind: str, rest: Line) -> None:
        """``.ds`` and its like."""
        name, _, _ = rest.chars.partition(" ")
        value = rest.part(len(name))
        value = value.part(len(value.chars) - len(value.chars.lstrip(" ")))
        if value.chars.startswith('"'):
            value = value.part(1)
        value = self.copied(value)
        if kind.startswith("as") and name in self.strings:
            value = join_lines([self.strings[name], value])
        self.strings[name] = value

    def set_register(self, rest: Line) -> None:
        """``.nr``."""
        arguments = split_arguments(rest)
        if len(arguments) < 2:
            return
        name, value = arguments[0].chars, arguments[1].chars
        number = evaluate(value)
        if value[:1] in ("+", "-"):
            number += self.registers.get(name, 0)
        self.registers[name] = number
        if len(arguments) > 2:
            self._steps[name] = evaluate(arguments[2].chars)

    def set_style(self, rest: Line) -> None:
        """``.af``: how the number of a register is written."""
        register, _, style = rest.chars.partition(" ")
        self._styles[register] = style.strip() or "1"

    def _value(self, letter: str, name: str, source: int) -> Line:
        """What an escape puts in; nothing, with a remark, where there is no end to it."""
        opened = letter + name
        if self._put_in > MOST_CHARACTERS or opened in self._open or len(self._open) == _DEEPEST:
            self._remark("a string or argument was left out: it calls itself, or others without end")
            return own_line("")
        self._open.append(opened)
        value = self._argument(name) if letter == "$" else own_line(self._chars(letter, name), source)
        self._open.pop()
        self._put_in += max(_LEAST_COST, len(value.chars))
        return value

    def _chars(self, letter: str, name: str) -> str:
        """What a string, a register or a width prints; it stands where it is used.

        The places of a string's definition would stand in several places of the page.
        """
        if letter == "*":
            value = self.strings.get(name.split(" ", maxsplit=1)[0])
            return "" if value is None else self.expand(value).chars
        if letter == "w":
            return str(self._width(name))
        if name == ".$":
            return str(len(self.arguments[-1]) if self.arguments else 0)
        return self._number(name) if name else ""

    def _width(self, chars: str) -> int:
        """The width of a text in basic units."""
        printed = TextBuilder()
        Printer().print(self.expand(own_line(chars)), printed)
        return CHARACTER * len(printed)

    def _number(self, name: str) -> str:
        """The value of a register, a step further where a sign stands before its name."""
        sign, name = (name[0], name[1:]) if name[0] in "+-" else ("", name)
        if sign:
            step = self._steps.get(name, 0)
            self.registers[name] = self.registers.get(name, 0) + (step if sign == "+" else -step)
        number, style = self.registers.get(name, 0), self._styles.get(name, "1")
        return written(number, style) if style.isalpha() else str(number).zfill(len(style))

    def _argument(self, name: str) -> Line:
        arguments = self.arguments[-1] if self.arguments else []
        if name in ("*", "@"):
            spaced = [part for argument in arguments for part in (own_line(" "), _unquoting(argument))]
            return join_lines(spaced[1:])
        index = int(name) if name.isdecimal() and len(name) < 4 else 0
        return _unquoting(arguments[index - 1]) if 0 < index <= len(arguments) else own_line("")


def _unquoting(argument: Line) -> Line:
    """An argument where it is put in: a quote in it is a character, and ends no argument of another macro."""
    if '"' not in argument.chars:
        return argument
    characters = (argument.part(at, at + 1) for at in range(len(argument.chars)))
    return join_lines(
        [own_line("\\(dq", char.sources[0]) if char.chars == '"' else char for char in characters]
    )
