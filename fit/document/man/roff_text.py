"""Lines of roff and their escapes: characters with their places, fonts, special characters.

After "Escape Sequences" of roff(7) and groff(7). An escape that draws or moves prints nothing here; one
that is not known prints its character, as roff does.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

from fit.document.blocks import Mark
from fit.document.characters import NO_BREAK_SPACE, ZERO_WIDTH_SPACE, TextBuilder
from fit.document.man.roff_characters import special_character
from fit.document.man.roff_number import CHARACTER, evaluate


class Line(NamedTuple):
    """A line of input, or a part of one: characters, and the place of each in the document."""

    chars: str
    sources: Sequence[int]

    def part(self, start: int, end: int | None = None) -> Line:
        """The characters ``start <= i < end``."""
        return Line(self.chars[start:end], self.sources[start:end])


def own_line(chars: str, source: int = -1) -> Line:
    """A line that is not in the document; all its characters have one place."""
    return Line(chars, (source,) * len(chars))


def join_lines(parts: Sequence[Line]) -> Line:
    """The parts one after the other."""
    return Line("".join(part.chars for part in parts), [source for part in parts for source in part.sources])


_SIGNED: Final = re.compile(r"\((..)|\[([^\]]*)\]|'([^']*)'|([+-]?)(\(..|\[[^\]]*\]|[0-9])")
_QUOTED: Final = "ABDHLNRSXZbhlovwx"
"""Escapes whose argument stands between two equal characters."""
_OPENING: Final = frozenset(_QUOTED)
_DEEPEST: Final = 5
"""Arguments inside arguments."""
LONGEST_ARGUMENT: Final = 500
"""Characters of an argument in which others are looked for."""
_NAMED: Final = "fFgkmMnVY*$"
"""Escapes whose argument is one character, two after a parenthesis, or any number in brackets."""
_NOTHING: Final = "&)/,|^:%!?{}pcdrut"
"""Escapes that print nothing; `\\%`, `\\c` and `\\t` are dealt with before."""
_FONTS: Final = {
    "B": Mark.BOLD, "I": Mark.UNDERLINE, "3": Mark.BOLD, "2": Mark.UNDERLINE, "BI": Mark.BOLD | Mark.UNDERLINE,
    "4": Mark.BOLD | Mark.UNDERLINE, "C": Mark.CODE, "CW": Mark.CODE, "CR": Mark.CODE, "CB": Mark.CODE | Mark.BOLD,
    "CI": Mark.CODE | Mark.UNDERLINE, "L": Mark.CODE, "S": Mark.UNDERLINE,
}  # fmt: skip


class Escape(NamedTuple):
    """An escape sequence: its letter, its argument, and the index after it."""

    letter: str
    argument: str
    end: int


def read_escape(chars: str, at: int) -> Escape:
    """The escape whose backslash stands at ``at``."""
    letter = chars[at + 1 : at + 2]
    at += 2
    if letter == "(":
        return Escape(letter, chars[at : at + 2], at + 2)
    if letter == "[":
        end = chars.find("]", at)
        return Escape("(", chars[at:end], end + 1) if end >= 0 else Escape("[", "", at)
    if letter == "s":
        found = _SIGNED.match(chars, at)
        if found is None:
            return Escape(letter, "", at)
        # A size above 10 and below 40 may be written with two bare digits.
        two = found[5] in ("1", "2", "3") and not found[4] and chars[at + 1 : at + 2].isdecimal()
        return Escape(letter, found.group(), found.end() + two)
    if letter and letter in _QUOTED:
        end = _closing(chars, at)
        return Escape(letter, chars[at + 1 : end], end + 1) if end >= 0 else Escape(letter, "", at)
    if letter == "C":
        end = chars.find("'", at + 1)
        return Escape("(", chars[at + 1 : end], end + 1) if end >= 0 else Escape(letter, "", at)
    if letter == "z":
        return Escape(letter, "", at)
    if letter and letter in _NAMED:
        return _read_name(letter, chars, at)
    return Escape(letter, "", at)


def _closing(chars: str, at: int) -> int:
    """Where the quote at ``at`` closes; -1 where it does not. Arguments of escapes inside may hold the same quote."""
    quotes = [chars[at : at + 1]]
    index = at + 1
    while index < min(len(chars), at + LONGEST_ARGUMENT):
        char = chars[index]
        if char == quotes[-1]:
            quotes.pop()
            if not quotes:
                return index
        elif char == "\\":
            index += 1
            if len(quotes) < _DEEPEST and chars[index : index + 1] in _OPENING:
                index += 1
                quotes.append(chars[index : index + 1])
        index += 1
    return chars.find(quotes[0], at + 1) if quotes[0] else -1


def _read_name(letter: str, chars: str, at: int) -> Escape:
    sign = chars[at : at + 1] if letter in "nk" and chars[at : at + 1] in ("+", "-") else ""
    at += len(sign)
    if chars.startswith("(", at):
        return Escape(letter, sign + chars[at + 1 : at + 3], at + 3)
    if chars.startswith("[", at):
        end = chars.find("]", at)
        return Escape(letter, sign + chars[at + 1 : end], end + 1) if end >= 0 else Escape(letter, "", at + 1)
    return Escape(letter, sign + chars[at : at + 1], at + 1)


@dataclass(slots=True)
class Printer:
    """Prints lines into a text: resolves escapes, keeps the font from line to line."""

    font: int = 0
    previous: int = 0
    translated: dict[str, str] | None = None
    """Characters that a request has told to print as others."""
    unknown: Callable[[str], None] = lambda _: None
    """Told of a special character that has no meaning here."""

    def set_font(self, name: str) -> None:
        """Change the font; ``P`` and the empty name go back to the one before."""
        if name in ("P", ""):
            self.font, self.previous = self.previous, self.font
        else:
            self.previous, self.font = self.font, _FONTS.get(name, 0)

    def print(self, line: Line, out: TextBuilder, mark: int = 0) -> bool:
        """Add a line to a text, each character marked by the font and ``mark``.

        Returns whether the line asked that the next one follow without a blank.
        """
        if "\\" not in line.chars:
            out.add(self._translate(line.chars), line.sources, self.font | mark)
            return False
        goes_on = whole = False
        back = 0
        for start, end, escape in _pieces(line.chars):
            if escape is None:
                over = min(back, len(line.chars[start:end]) - len(line.chars[start:end].lstrip(" ")))
                if over:  # blanks over what stands there leave nothing, but a line may end at them
                    out.add_own(ZERO_WIDTH_SPACE)
                back = 0
                begin = start + over
                chars = line.chars[begin:end]
                if not whole or " " in chars:
                    whole = False
                held = Mark.NO_BREAK if whole else 0
                out.add(self._translate(chars), line.sources[begin:end], self.font | mark | held)
                continue
            if escape.letter == "%":
                whole = True
            goes_on = escape.letter == "c"
            printed = self._escape(escape)
            if back and printed == NO_BREAK_SPACE:
                printed, back = "", back - 1
            back = max(back, _moved_back(escape)) if not printed else 0
            out.add(printed, (line.sources[start],) * len(printed), self.font | mark)
        return goes_on

    def _translate(self, chars: str) -> str:
        if not self.translated or chars.isspace():
            return chars
        return "".join(self.translated.get(char, char) for char in chars)

    def _escape(self, escape: Escape) -> str:
        """What an escape prints."""
        letter, argument = escape.letter, escape.argument
        if letter == "f":
            self.set_font(argument)
            return ""
        if letter == "(":
            return self._special(argument)
        if letter in (" ", "~", "0"):
            return NO_BREAK_SPACE
        if letter in ("e", "\\"):
            return "\\"
        if letter == "t":
            return "\t"
        if letter == "N":
            return chr(int(argument)) if argument.isdecimal() and 31 < int(argument) < 0x110000 else ""
        if letter == "o":
            return argument[:1]
        if letter == "h":
            return " " if argument and not argument.startswith("-") and argument.strip("0.") else ""
        if letter == "Z":
            return ""
        if letter in _NOTHING or letter in _NAMED or letter in _QUOTED or letter in ("s", "z", "a", ""):
            return ""
        return {"'": "\u00b4", "`": "`", "-": "-", "_": "_", ".": "."}.get(letter, letter)

    def _special(self, name: str) -> str:
        char = special_character(name)
        if char is None:
            self.unknown(name)
            return ""
        return (self.translated or {}).get(char, char)


def _moved_back(escape: Escape) -> int:
    """The cells by which a movement goes to the left, over what was printed before."""
    argument = escape.argument
    if escape.letter != "h" or not argument.startswith("-"):
        return 0
    return -evaluate(argument + "m" * argument[-1].isdecimal()) // CHARACTER


def _pieces(chars: str) -> Iterator[tuple[int, int, Escape | None]]:
    """Cut a line into runs without escapes, and escapes."""
    at = 0
    while at < len(chars):
        found = chars.find("\\", at)
        if found < 0:
            found = len(chars)
        if found > at:
            yield at, found, None
        if found < len(chars):
            escape = read_escape(chars, found)
            yield found, escape.end, escape
            at = escape.end
        else:
            at = found


def split_arguments(line: Line) -> list[Line]:
    """The arguments of a macro: parted by blanks; quotes hold blanks, two quotes in them are one.

    They are read in copy mode: a doubled backslash becomes one.
    """
    arguments: list[Line] = []
    line = _halved(line)
    chars, at = line.chars, 0
    while True:
        while at < len(chars) and chars[at] in " \t":
            at += 1
        if at >= len(chars):
            return arguments
        if chars[at] == '"':
            argument, at = _quoted_argument(line, at + 1)
        else:
            start = at
            while at < len(chars) and chars[at] != " ":
                at = read_escape(chars, at).end if chars[at] == "\\" else at + 1
            argument = line.part(start, at)
        arguments.append(argument)


def _halved(line: Line) -> Line:
    if "\\\\" not in line.chars:
        return line
    parts, at = [], 0
    while (found := line.chars.find("\\\\", at)) >= 0:
        parts.append(line.part(at, found + 1))
        at = found + 2
    return join_lines([*parts, line.part(at)])


def _quoted_argument(line: Line, at: int) -> tuple[Line, int]:
    parts: list[Line] = []
    chars = line.chars
    while True:
        end = chars.find('"', at)
        if end < 0:
            parts.append(line.part(at))
            at = len(chars)
            break
        if chars.startswith('""', end):
            parts.append(line.part(at, end + 1))
            at = end + 2
            continue
        parts.append(line.part(at, end))
        at = end + 1
        break
    return (parts[0] if len(parts) == 1 else join_lines(parts)), at
