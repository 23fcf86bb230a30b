r"""The input side of roff: comments, continued lines, macros, strings, registers and conditions.

After roff(7). What comes out are lines with every ``\*``, ``\n`` and ``\$`` put in, where a request that
this module knows has been obeyed. `Input.push` puts lines back in front of what is to come.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from fit.document.characters import TextBuilder
from fit.document.man.roff_characters import special_character
from fit.document.man.roff_number import CHARACTER, evaluate
from fit.document.man.roff_text import Line, Printer, join_lines, own_line, read_escape, split_arguments
from fit.document.numerals import written

MOST_CALLS: Final = 50_000
"""Calls of macros and turns of loops in one document; more mean that a macro calls itself, or a loop has no end."""
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
_COMMENT: Final = re.compile(r"(?<!\\)((?:\\\\)*)\\[\"#]")
_EXPANDS: Final = re.compile(r"\\[*n$w]")
_EXPANDED: Final = frozenset("*n$w")
_DEFINES: Final = frozenset(("de", "de1", "am", "am1", "dei", "ami", "ig"))
_BRANCHES: Final = frozenset(("if", "ie", "el"))
_KEPT: Final = frozenset(("TH", "SH", "SS"))
"""Macros that a page may not change: what makes headings of them would go."""
_CONTROL: Final = ".'"


class Input:
    """The lines of a document, and what requests have defined."""

    def __init__(self, source: str) -> None:
        self._later: list[Line] = []
        self._source = iter(_source_lines(source))
        self.strings = {name: own_line(value) for name, value in _STRINGS.items()}
        self.macros: dict[str, list[Line]] = {}
        self.registers = dict(_REGISTERS)
        self._renamed: dict[str, str] = {}
        """Macros of the package under other names that the page gave them."""
        self._escape = "\\"
        """The escape character; empty where the page has turned escapes off."""
        self._steps: dict[str, int] = {}
        """For each register the step of ``\\n+``."""
        self._styles: dict[str, str] = {}
        """For each register how its number is written, ``1`` where it is not said."""
        self._arguments: list[list[Line]] = []
        self._else: list[bool] = []
        self._diversion: list[Line] | None = None
        """The lines that are not printed now, but by a macro of this name."""
        self._diverted = ""
        self._unexpanded = own_line("")
        """The line being obeyed, as it stood before anything was put in."""
        self._calls = 0
        self._put_in = 0
        self._open: list[str] = []
        """What is being put in, each inside the one before."""
        self.remarks: dict[str, int] = {}
        """What was not understood, with how often."""

    def push(self, lines: list[Line]) -> None:
        """Put lines in front of what is to come."""
        self._later.extend(reversed(lines))

    def remark(self, what: str) -> None:
        """Count something that was not understood."""
        self.remarks[what] = self.remarks.get(what, 0) + 1

    def next_raw(self) -> Line | None:
        """The next line as it stands; None at the end."""
        if self._later:
            return self._later.pop()
        return next(self._source, None)

    def next_line(self) -> Line | None:
        """The next line that prints or calls a macro of the page, with everything put in; None at the end."""
        while (raw := self.next_raw()) is not None:
            if raw is _END_OF_MACRO:
                self._arguments.pop()
                continue
            line = self._without_comment(self._with_escapes(raw))
            if line is None:
                continue
            self._unexpanded = self._joined(line)
            line = self.expand(self._unexpanded)
            if ("\\}" in line.chars or "\\{" in line.chars) and request_of(line)[0] not in _BRANCHES:
                stripped = _without_braces(line)
                if not stripped.chars.strip(_CONTROL + " \t"):
                    continue
                line = stripped
            name, rest = request_of(line)
            if name is None:
                if self._diverts(line):
                    continue
                return line
            if name in self.macros and name not in _KEPT:
                self._call(name, rest, line.sources[0])
                continue
            if name in self._renamed:
                name = self._renamed[name]
                line = join_lines([own_line(f".{name} "), rest])
            if not self._obey(name, rest) and not self._diverts(line):
                return line
        if self._diversion is not None:  # one that does not end is printed after all
            kept, self._diversion = self._diversion, None
            self.push(kept)
            return self.next_line()
        return None

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

    # Lines

    def _joined(self, line: Line) -> Line:
        """A line that ends in a backslash goes on in the next one."""
        parts = [line]
        while _is_continued(parts[-1].chars):
            parts[-1] = parts[-1].part(0, -1)
            following = self.next_raw()
            if following is None:
                break
            parts.append(following)
        return parts[0] if len(parts) == 1 else join_lines(parts)

    def _with_escapes(self, line: Line) -> Line:
        """The line with a backslash before each escape, whatever the page has put in its place."""
        if self._escape == "\\":
            return line
        parts: list[Line] = []
        for index, char in enumerate(line.chars):
            if char == self._escape:
                parts.append(own_line("\\", line.sources[index]))
            elif char == "\\":
                parts.append(own_line("\\e", line.sources[index]))
            else:
                parts.append(line.part(index, index + 1))
        return join_lines(parts)

    def _without_comment(self, line: Line) -> Line | None:
        if "\\" not in line.chars:
            return line
        found = _COMMENT.search(line.chars)
        if found is None:
            return line
        kept = line.part(0, found.end(1))
        if not kept.chars.strip(_CONTROL + " \t") and (found.start() == 0 or kept.chars[:1] in _CONTROL):
            return None
        return kept.part(0, len(kept.chars.rstrip())) if kept.chars[:1] in _CONTROL else kept

    def _copied(self, line: Line) -> Line:
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

    def _value(self, letter: str, name: str, source: int) -> Line:
        """What an escape puts in; nothing, with a remark, where there is no end to it."""
        opened = letter + name
        if self._put_in > MOST_CHARACTERS or opened in self._open or len(self._open) == _DEEPEST:
            self.remark("a string or argument was left out: it calls itself, or others without end")
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
            return str(len(self._arguments[-1]) if self._arguments else 0)
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
        arguments = self._arguments[-1] if self._arguments else []
        if name in ("*", "@"):
            spaced = [part for argument in arguments for part in (own_line(" "), _unquoting(argument))]
            return join_lines(spaced[1:])
        index = int(name) if name.isdecimal() and len(name) < 4 else 0
        return _unquoting(arguments[index - 1]) if 0 < index <= len(arguments) else own_line("")

    # Requests

    def _obey(self, name: str, rest: Line) -> bool:
        """Obey a request of the input side; False where it belongs to the page."""
        if name in _DEFINES:
            self._define(name, rest)
        elif name in ("if", "ie"):
            self._condition(name, rest)
        elif name == "while":
            self._loop(rest)
        elif name == "shift" and self._arguments:
            number = int(rest.chars) if rest.chars.isdecimal() else 1
            del self._arguments[-1][:number]
        elif name == "return" and self._arguments:
            while self._later[-1] is not _END_OF_MACRO:
                self._later.pop()
        elif name == "el":
            self._branch(rest, not self._else.pop() if self._else else False)
        elif name in ("ds", "as", "ds1", "as1"):
            self._define_string(name, rest)
        elif name == "nr":
            self._set_register(rest)
        elif name == "af":
            register, _, style = rest.chars.partition(" ")
            self._styles[register] = style.strip() or "1"
        elif name in ("eo", "ec"):
            self._escape = "" if name == "eo" else rest.chars.strip()[:1] or "\\"
        elif name in ("do", "nop"):
            prefix = own_line(".") if name == "do" else own_line("")
            self.push([join_lines([prefix, rest])])
        elif name in ("di", "da"):
            self._divert(rest.chars.strip(), again=name == "da")
        elif name in ("rm", "rr", "rn", "als", "als1", "aln"):
            self._rename(name, split_arguments(rest))
        else:
            return False
        return True

    def _call(self, name: str, rest: Line, place: int) -> None:
        """Put in the lines of a macro; what they print of themselves stands where it is called."""
        self._calls += 1
        if self._calls > MOST_CALLS:
            self.remark("a macro was not called: it calls itself, or others without end")
            return
        self._arguments.append(split_arguments(rest))
        # A diversion is text of the document, which has its places.
        body = (
            line if max(line.sources, default=0) >= 0 else own_line(line.chars, place)
            for line in self.macros[name]
        )
        self.push([*body, _END_OF_MACRO])

    def _define(self, kind: str, rest: Line) -> None:
        arguments = [argument.chars for argument in split_arguments(rest)]
        name = arguments[0] if arguments and kind != "ig" else ""
        # `.ig` takes the word that ends it first, the others second.
        end = next(iter(arguments[0 if kind == "ig" else 1 :]), ".")
        body: list[Line] = []
        while (line := self.next_raw()) is not None:
            if line is _END_OF_MACRO:
                self.push([line])
                break
            word = line.chars[1:].strip() if line.chars[:1] in _CONTROL and line.chars else None
            if word is not None and word.split(" ")[0] == end:
                break
            body.append(own_line((self._copied(line) if self._escape == "\\" else line).chars))
        else:
            self._took_the_rest(f".{kind} {name}".rstrip(), len(body))
        if kind == "ig":
            return
        self.macros[name] = [*self.macros.get(name, []), *body] if kind.startswith("am") else body

    def _divert(self, name: str, *, again: bool) -> None:
        """Keep the lines to come for when the page calls them by name; without a name, end that."""
        if self._diversion is not None:
            self.macros[self._diverted], self._diversion = self._diversion, None
        if name:
            self._diverted, self._diversion = name, list(self.macros.get(name, [])) if again else []

    def _diverts(self, line: Line) -> bool:
        """Whether a line is kept for later, which it then is."""
        if self._diversion is not None:
            self._diversion.append(line)
        return self._diversion is not None

    def _define_string(self, kind: str, rest: Line) -> None:
        name, _, _ = rest.chars.partition(" ")
        value = rest.part(len(name))
        value = value.part(len(value.chars) - len(value.chars.lstrip(" ")))
        if value.chars.startswith('"'):
            value = value.part(1)
        value = self._copied(value)
        if kind.startswith("as") and name in self.strings:
            value = join_lines([self.strings[name], value])
        self.strings[name] = value

    def _set_register(self, rest: Line) -> None:
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

    def _rename(self, kind: str, arguments: list[Line]) -> None:
        names = [argument.chars for argument in arguments]
        if kind in ("rm", "rr"):
            for name in names:
                (self.registers if kind == "rr" else self.macros).pop(name, None)
                if kind == "rm":
                    self.strings.pop(name, None)
        elif kind in ("als", "als1", "rn") and len(names) > 1:
            new, old = names[:2] if kind != "rn" else (names[1], names[0])
            if old in self.macros:
                self.macros[new] = self.macros[old]
            else:
                self.macros.pop(new, None)
                self._renamed[new] = self._renamed.get(old, old)
            if kind == "rn":
                self.macros.pop(old, None)

    # Conditions

    def _condition(self, name: str, rest: Line) -> None:
        holds, after = self._test(rest)
        if name == "ie":
            self._else.append(holds)
        self._branch(after, holds)

    def _branch(self, rest: Line, taken: bool) -> None:
        rest = rest.part(len(rest.chars) - len(rest.chars.lstrip(" \t")))
        if taken:
            if rest.chars:
                self.push([rest])
            return
        depth, lines = _braces(rest.chars), 0
        while depth > 0:
            line = self.next_raw()
            if line is None:
                self._took_the_rest("a condition that does not hold", lines)
                break
            if line is _END_OF_MACRO:
                self.push([line])
                break
            depth += _braces(line.chars)
            lines += 1

    def _took_the_rest(self, what: str, lines: int) -> None:
        """Say that something has no end, where it took lines with it that may have been text."""
        if lines:
            self.remark(f"{what[:40]} has no end: what follows it is not shown (lines: {lines})")

    def _loop(self, rest: Line) -> None:
        """``.while``: its lines are read once more in front of the loop, as long as the condition holds."""
        loop = [self._unexpanded]
        depth = _braces(self._unexpanded.chars)
        while depth > 0 and (line := self.next_raw()) is not None:
            if line is _END_OF_MACRO:
                self.push([line])
                break
            loop.append(line)
            depth += _braces(line.chars)
        holds, after = self._test(rest)
        self._calls += 1
        if holds and self._calls > MOST_CALLS:
            self.remark("a loop was left that has no end")
        elif holds:
            self.push([after.part(len(after.chars) - len(after.chars.lstrip(" \t"))), *loop[1:], *loop])

    def _test(self, rest: Line) -> tuple[bool, Line]:
        """Whether a condition holds, and what stands after it."""
        chars = rest.chars.lstrip(" \t")
        at = len(rest.chars) - len(chars)
        negate = False
        while chars.startswith("!"):
            negate = not negate
            chars, at = chars[1:].lstrip(" "), at + len(chars) - len(chars[1:].lstrip(" "))
        holds, used = self._plain_test(chars)
        return holds != negate, rest.part(at + used)

    def _plain_test(self, chars: str) -> tuple[bool, int]:
        if not chars:
            return False, 0
        letter = chars[0]
        if letter in "ntoev" and not chars[1:2].isalnum():
            return letter in "no", 1
        if letter in "drcmFS" and (found := re.match(r".\s*(\S+)", chars)) is not None:
            name = found[1]
            known = {
                "d": name in self.macros or name in self.strings,
                "r": name in self.registers,
                "c": len(name) == 1 or special_character(read_escape(name, 0).argument) is not None,
            }
            return known.get(letter, False), found.end()
        if letter in "0123456789(+-":
            end = _end_of_number(chars)
            return evaluate(chars[:end]) > 0, end
        parts = chars[1:].split(letter, 2)
        if len(parts) < 3:
            return False, len(chars)
        return parts[0] == parts[1], len(parts[0]) + len(parts[1]) + 3


_END_OF_MACRO: Final = own_line("\x00")
"""Stands behind a macro's lines; compared by identity."""


def request_of(line: Line) -> tuple[str | None, Line]:
    """The name of the request or macro a line calls, None where it is text, and the rest of the line."""
    chars = line.chars
    if not chars or chars[0] not in _CONTROL:
        return None, line
    at = 1
    while at < len(chars) and chars[at] in " \t":
        at += 1
    start = at
    while at < len(chars) and chars[at] not in " \t\\":
        at += 1
    name = chars[start:at]
    if not name and chars.startswith("\\", at):
        return "\\", line.part(at)
    while at < len(chars) and chars[at] in " \t":
        at += 1
    return name, line.part(at)


def _source_lines(source: str) -> Iterator[Line]:
    at = 0
    while at < len(source):
        end = source.find("\n", at)
        end = len(source) if end < 0 else end
        stop = end - (end > at and source[end - 1] == "\r")
        yield Line(source[at:stop], range(at, stop))
        at = end + 1


def _is_continued(chars: str) -> bool:
    return chars.endswith("\\") and (len(chars) - len(chars.rstrip("\\"))) % 2 == 1


def _unquoting(argument: Line) -> Line:
    """An argument where it is put in: a quote in it is a character, and ends no argument of another macro."""
    if '"' not in argument.chars:
        return argument
    characters = (argument.part(at, at + 1) for at in range(len(argument.chars)))
    return join_lines(
        [own_line("\\(dq", char.sources[0]) if char.chars == '"' else char for char in characters]
    )


def _without_braces(line: Line) -> Line:
    parts = []
    at = 0
    for found in re.finditer(r"(?<!\\)\\[{}]", line.chars):
        parts.append(line.part(at, found.start()))
        at = found.end()
    parts.append(line.part(at))
    return join_lines(parts)


def _braces(chars: str) -> int:
    """Braces that open less those that close, comments left out."""
    comment = _COMMENT.search(chars)
    plain = (chars if comment is None else chars[: comment.start()]).replace("\\\\", "")
    return plain.count("\\{") - plain.count("\\}")


def _end_of_number(chars: str) -> int:
    """The end of an expression: the first blank outside of parentheses."""
    depth = 0
    for index, char in enumerate(chars):
        depth += (char == "(") - (char == ")")
        if char in " \t\\" and depth <= 0:
            return index
    return len(chars)
