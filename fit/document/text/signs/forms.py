"""Forms in brackets, one within the other, as Lisp writes them: each ends where its brackets close."""

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
            nested = 2 * opened > count and (deepest > 1 or count == 1)
            return index + 1 if depth == 0 and line.text.endswith(")") and nested and 2 * said < count else 0
    return 0
