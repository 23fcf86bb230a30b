"""Parameterised strings of terminfo(5), section "Parameterized Strings", evaluated.

The standard library's ``curses.tparm`` is the reference; it is not used here, because ``curses`` loads
one terminal a process (`curses.setupterm` does nothing the second time) and is missing on some systems.
As in ncurses a parameter that comes out as the NUL character is sent as 80h. Strings as parameters
(``%s``, ``%l``) occur in printer and key sequences only and are not evaluated.
"""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TypeAlias

_PADDING = re.compile(rb"\$<[0-9.]+[*/]*>")
_PIECE = re.compile(
    rb"""%p(?P<parameter>[1-9]) | %\{(?P<number>-?\d+)\} | %'(?P<quoted>.)'
       | %(?P<form>:?[-+\#\ ]*\d*(?:\.\d+)?[doxX]) | %P(?P<store>[A-Za-z]) | %g(?P<recall>[A-Za-z])
       | %(?P<other>.) | (?P<literal>[^%]+)""",
    re.DOTALL | re.VERBOSE,
)
_BINARY: dict[str, Callable[[int, int], int]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    "&": operator.and_,
    "|": operator.or_,
    "^": operator.xor,
    "=": lambda a, b: int(a == b),
    "<": lambda a, b: int(a < b),
    ">": lambda a, b: int(a > b),
    "A": lambda a, b: int(bool(a) and bool(b)),
    "O": lambda a, b: int(bool(a) or bool(b)),
    "/": lambda a, b: int(a / b) if b else 0,
    "m": lambda a, b: a - b * int(a / b) if b else 0,
}
_UNARY: dict[str, Callable[[int], int]] = {"!": lambda a: int(not a), "~": operator.invert}


def strip_padding(text: bytes) -> bytes:
    """Take out ``$<5>`` and its like: delays that a program waits, not bytes that it sends."""
    return _PADDING.sub(b"", text)


def parts_at_padding(text: bytes) -> tuple[bytes, ...]:
    """What stands between the delays of a string; one part where none stands in its midst or a choice spans one."""
    parts = tuple(filter(None, _PADDING.split(text)))
    if any(part.count(b"%?") != part.count(b"%;") or b"%p" in part for part in parts[1:]):
        return (strip_padding(text),)
    return parts


@dataclass(frozen=True)
class TerminfoExpression:
    """One parameterised string, padding stripped."""

    text: bytes

    def expand(self, *parameters: int) -> bytes:
        """The bytes for these parameters; those left out are 0."""
        return _expand(self.text, parameters)


@lru_cache(maxsize=1 << 16)
def _expand(text: bytes, parameters: tuple[int, ...]) -> bytes:
    steps, takes_parameters = _parse(text)
    state = _State([*parameters, *[0] * (9 - len(parameters))])
    if not takes_parameters:
        # As in termcap: conversions without a %p take the parameters in order, counted from one where it says so.
        if b"%i" in text:
            _count_from_one(state)
        state.stack.extend(reversed(state.parameters))
    for step in steps:
        step(state)
    return bytes(state.output)


@dataclass
class _State:
    """The stack machine of terminfo(5) during one expansion."""

    parameters: list[int]
    stack: list[int] = field(default_factory=list)
    variables: dict[str, int] = field(default_factory=dict)
    output: bytearray = field(default_factory=bytearray)
    counts_from_one: bool = False

    def pop(self) -> int:
        return self.stack.pop() if self.stack else 0


_Step: TypeAlias = Callable[[_State], None]


@lru_cache(maxsize=4096)
def _parse(text: bytes) -> tuple[list[_Step], bool]:
    pieces = list(_PIECE.finditer(text))
    steps, _ = _sequence(iter(pieces), frozenset())
    return steps, any(piece["parameter"] for piece in pieces)


def _sequence(pieces: Iterator[re.Match[bytes]], ends: frozenset[str]) -> tuple[list[_Step], str]:
    """The steps up to one of the operators ``ends``, and which one it was (empty at the end of the text)."""
    steps: list[_Step] = []
    for piece in pieces:
        other = piece["other"].decode("latin-1") if piece["other"] else ""
        if other in ends:
            return steps, other
        steps.append(_choice(pieces) if other == "?" else _step(piece, other))
    return steps, ""


def _choice(pieces: Iterator[re.Match[bytes]]) -> _Step:
    """``%? condition %t then %e condition %t then %e else %;``."""
    branches: list[tuple[list[_Step], list[_Step]]] = []
    otherwise: list[_Step] = []
    end = "?"
    while end not in (";", ""):
        condition, end = _sequence(pieces, frozenset("te;"))
        if end != "t":
            otherwise = condition
            continue
        then, end = _sequence(pieces, frozenset("e;"))
        branches.append((condition, then))

    def choose(state: _State) -> None:
        for condition, then in branches:
            for step in condition:
                step(state)
            if state.pop():
                chosen = then
                break
        else:
            chosen = otherwise
        for step in chosen:
            step(state)

    return choose


def _step(piece: re.Match[bytes], other: str) -> _Step:
    if piece["literal"]:
        literal = piece["literal"]
        return lambda state: state.output.extend(literal)
    if piece["parameter"]:
        index = int(piece["parameter"]) - 1
        return lambda state: state.stack.append(state.parameters[index])
    if piece["number"] or piece["quoted"]:
        number = int(piece["number"]) if piece["number"] else piece["quoted"][0]
        return lambda state: state.stack.append(number)
    if piece["form"]:
        form = "%" + piece["form"].decode("ascii").removeprefix(":")
        mask = -1 if form[-1] == "d" else 0xFFFFFFFF  # as C prints negative numbers
        return lambda state: state.output.extend((form % (state.pop() & mask)).encode("ascii"))
    if piece["store"]:
        stored = piece["store"].decode("ascii")
        return lambda state: state.variables.__setitem__(stored, state.pop())
    if piece["recall"]:
        recalled = piece["recall"].decode("ascii")
        return lambda state: state.stack.append(state.variables.get(recalled, 0))
    return _operator(other)


def _operator(name: str) -> _Step:
    if name in _BINARY:
        binary = _BINARY[name]

        def apply(state: _State) -> None:
            second = state.pop()
            state.stack.append(binary(state.pop(), second))

        return apply
    if name in _UNARY:
        unary = _UNARY[name]
        return lambda state: state.stack.append(unary(state.pop()))
    if name == "i":
        return _count_from_one
    if name == "c":
        return lambda state: state.output.append((state.pop() or 0x80) & 0xFF)
    if name == "%":
        return lambda state: state.output.extend(b"%")
    return lambda _state: None  # ncurses passes over operators it does not know


def _count_from_one(state: _State) -> None:
    if not state.counts_from_one:
        state.counts_from_one = True
        state.parameters[0] += 1
        state.parameters[1] += 1
