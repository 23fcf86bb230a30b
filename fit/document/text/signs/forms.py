"""Forms in brackets, one within the other, as Lisp writes them, and values in brackets.

Each ends where its brackets close.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose

TALLEST = 60
"""Lines of a form, at most."""
_STRING = re.compile(r"\"(?:[^\"\\]|\\.)*\"|;.*")
_FORM = re.compile(r"\([a-z*!?<>=+-]+[\w*!?<>=+-]*(?:\s|\)|$)")

_VALUE = re.compile(r"[A-Za-z_][\w.-]* ?:?= ?[(\[{]")
"""A name that is set to something in brackets."""
_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")


def form_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the form that begins with a line, a bracket before its first name; 0 where none does."""
    if lines[start].text[:1] != "(" or not _FORM.match(lines[start].text) or prose(lines[start].text):
        return 0
    depth = opened = deepest = said = 0
    for index in range(start, min(start + TALLEST, len(lines))):
        line = lines[index]
        below = index > start
        if taken[index] is not None or (below and (line.crossing or line.gap > 1)):
            return 0
        said += prose(line.text) and not code(line.text)
        for char in _STRING.sub("", line.text):
            if char == "(":
                depth += 1
                opened += 1
                deepest = max(deepest, depth)
            elif char == ")":
                depth -= 1
        if depth <= 0 or (below and line.indent <= lines[start].indent):
            count = index + 1 - start
            nested = 2 * opened > count
            return index + 1 if depth == 0 and line.text.endswith(")") and nested and 2 * said < count else 0
    return 0


def value_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the value in brackets that a name is set to on a line and those set deeper below it; 0 where none is."""
    if "=" not in lines[start].text or _VALUE.match(lines[start].text) is None:
        return 0
    depth = 0
    for index in range(start, min(start + TALLEST, len(lines))):
        line = lines[index]
        below = index > start
        if taken[index] is not None or (below and line.indent <= lines[start].indent):
            return 0
        bare = _QUOTED.sub("", line.text)
        depth += sum(map(bare.count, "([{")) - sum(map(bare.count, ")]}"))
        if depth <= 0:
            closes = below and depth == 0 and line.text.endswith((")", "]", "}", ";"))
            return index + 1 if closes and (index + 1 == len(lines) or lines[index + 1].apart) else 0
    return 0
