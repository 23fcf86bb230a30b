"""Conditions of roff: whether one holds, and where it ends. After "Conditional Requests" of roff(7), on a terminal."""

from __future__ import annotations

import re
from collections.abc import Container

from fit.document.man.roff_characters import special_character
from fit.document.man.roff_number import evaluate
from fit.document.man.roff_text import Line, read_escape


def test(rest: Line, texts: Container[str], registers: Container[str]) -> tuple[bool, Line]:
    """Whether a condition holds, and what stands after it.

    ``texts`` and ``registers`` are the names of the macros and strings, and of the registers, that are known.
    """
    chars = rest.chars.lstrip(" \t")
    at = len(rest.chars) - len(chars)
    negate = False
    while chars.startswith("!"):
        negate = not negate
        chars, at = chars[1:].lstrip(" "), at + len(chars) - len(chars[1:].lstrip(" "))
    holds, used = _plain_test(chars, texts, registers)
    return holds != negate, rest.part(at + used)


def _plain_test(chars: str, texts: Container[str], registers: Container[str]) -> tuple[bool, int]:
    if not chars:
        return False, 0
    letter = chars[0]
    if letter in "ntoev" and not chars[1:2].isalnum():
        return letter in "no", 1
    if letter in "drcmFS" and (found := re.match(r".\s*(\S+)", chars)) is not None:
        name = found[1]
        known = {
            "d": name in texts,
            "r": name in registers,
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


def _end_of_number(chars: str) -> int:
    """The end of an expression: the first blank outside of parentheses."""
    depth = 0
    for index, char in enumerate(chars):
        depth += (char == "(") - (char == ")")
        if char in " \t\\" and depth <= 0:
            return index
    return len(chars)
