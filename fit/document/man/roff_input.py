r"""The input side of roff: comments, continued lines, macros, strings, registers and conditions.

After roff(7). What comes out are lines with every ``\*``, ``\n`` and ``\$`` put in, where a request that
this module knows has been obeyed. `Input.push` puts lines back in front of what is to come.
"""

from __future__ import annotations

from typing import Final

from fit.document.man.roff_conditions import test
from fit.document.man.roff_lines import (
    CONTROL,
    END_OF_MACRO,
    braces,
    is_continued,
    request_of,
    source_lines,
    without_braces,
    without_comment,
)
from fit.document.man.roff_text import Line, join_lines, own_line, split_arguments
from fit.document.man.roff_values import Values

MOST_CALLS: Final = 50_000
"""Calls of macros and turns of loops in one document; more mean that a macro calls itself, or a loop has no end."""

_DEFINES: Final = frozenset(("de", "de1", "am", "am1", "dei", "ami", "ig"))
_BRANCHES: Final = frozenset(("if", "ie", "el"))
_KEPT: Final = frozenset(("TH", "SH", "SS"))
"""Macros that a page may not change: what makes headings of them would go."""


class Input:
    """The lines of a document, and what requests have defined."""

    def __init__(self, source: str) -> None:
        self._later: list[Line] = []
        self._source = iter(source_lines(source))
        self._values = Values(self.remark)
        self.macros: dict[str, list[Line]] = {}
        self._renamed: dict[str, str] = {}
        """Macros of the package under other names that the page gave them."""
        self._escape = "\\"
        """The escape character; empty where the page has turned escapes off."""
        self._else: list[bool] = []
        self._diversion: list[Line] | None = None
        """The lines that are not printed now, but by a macro of this name."""
        self._diverted = ""
        self._unexpanded = own_line("")
        """The line being obeyed, as it stood before anything was put in."""
        self._calls = 0
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
            if raw is END_OF_MACRO:
                self._values.arguments.pop()
                continue
            line = without_comment(self._with_escapes(raw))
            if line is None:
                continue
            self._unexpanded = self._joined(line)
            line = self._values.expand(self._unexpanded)
            if ("\\}" in line.chars or "\\{" in line.chars) and request_of(line)[0] not in _BRANCHES:
                stripped = without_braces(line)
                if not stripped.chars.strip(CONTROL + " \t"):
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

    # Lines

    def _joined(self, line: Line) -> Line:
        """A line that ends in a backslash goes on in the next one."""
        parts = [line]
        while is_continued(parts[-1].chars):
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

    # Requests

    def _obey(self, name: str, rest: Line) -> bool:
        """Obey a request of the input side; False where it belongs to the page."""
        if name in _DEFINES:
            self._define(name, rest)
        elif name in ("if", "ie"):
            self._condition(name, rest)
        elif name == "while":
            self._loop(rest)
        elif name == "shift" and self._values.arguments:
            number = int(rest.chars) if rest.chars.isdecimal() else 1
            del self._values.arguments[-1][:number]
        elif name == "return" and self._values.arguments:
            while self._later[-1] is not END_OF_MACRO:
                self._later.pop()
        elif name == "el":
            self._branch(rest, not self._else.pop() if self._else else False)
        elif name in ("ds", "as", "ds1", "as1"):
            self._values.define_string(name, rest)
        elif name == "nr":
            self._values.set_register(rest)
        elif name == "af":
            self._values.set_style(rest)
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
        self._values.arguments.append(split_arguments(rest))
        # A diversion is text of the document, which has its places.
        body = (
            line if max(line.sources, default=0) >= 0 else own_line(line.chars, place)
            for line in self.macros[name]
        )
        self.push([*body, END_OF_MACRO])

    def _define(self, kind: str, rest: Line) -> None:
        arguments = [argument.chars for argument in split_arguments(rest)]
        name = arguments[0] if arguments and kind != "ig" else ""
        # `.ig` takes the word that ends it first, the others second.
        end = next(iter(arguments[0 if kind == "ig" else 1 :]), ".")
        body: list[Line] = []
        while (line := self.next_raw()) is not None:
            if line is END_OF_MACRO:
                self.push([line])
                break
            word = line.chars[1:].strip() if line.chars[:1] in CONTROL and line.chars else None
            if word is not None and word.split(" ")[0] == end:
                break
            body.append(own_line((self._values.copied(line) if self._escape == "\\" else line).chars))
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

    def _rename(self, kind: str, arguments: list[Line]) -> None:
        names = [argument.chars for argument in arguments]
        if kind in ("rm", "rr"):
            for name in names:
                (self._values.registers if kind == "rr" else self.macros).pop(name, None)
                if kind == "rm":
                    self._values.strings.pop(name, None)
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
        holds, after = test(rest, {*self.macros, *self._values.strings}, self._values.registers)
        if name == "ie":
            self._else.append(holds)
        self._branch(after, holds)

    def _branch(self, rest: Line, taken: bool) -> None:
        rest = rest.part(len(rest.chars) - len(rest.chars.lstrip(" \t")))
        if taken:
            if rest.chars:
                self.push([rest])
            return
        depth, lines = braces(rest.chars), 0
        while depth > 0:
            line = self.next_raw()
            if line is None:
                self._took_the_rest("a condition that does not hold", lines)
                break
            if line is END_OF_MACRO:
                self.push([line])
                break
            depth += braces(line.chars)
            lines += 1

    def _took_the_rest(self, what: str, lines: int) -> None:
        """Say that something has no end, where it took lines with it that may have been text."""
        if lines:
            self.remark(f"{what[:40]} has no end: what follows it is not shown (lines: {lines})")

    def _loop(self, rest: Line) -> None:
        """``.while``: its lines are read once more in front of the loop, as long as the condition holds."""
        loop = [self._unexpanded]
        depth = braces(self._unexpanded.chars)
        while depth > 0 and (line := self.next_raw()) is not None:
            if line is END_OF_MACRO:
                self.push([line])
                break
            loop.append(line)
            depth += braces(line.chars)
        holds, after = test(rest, {*self.macros, *self._values.strings}, self._values.registers)
        self._calls += 1
        if holds and self._calls > MOST_CALLS:
            self.remark("a loop was left that has no end")
        elif holds:
            self.push([after.part(len(after.chars) - len(after.chars.lstrip(" \t"))), *loop[1:], *loop])
