"""Commands set in from the text, or settings, with comments: a `#` that starts a line says that all are for a program."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import typed
from fit.document.text.signs.measure import closed, prose

DEEPER = 2
"""Cells by which they stand in from the text above, at least."""
_COMMENT = re.compile(r"#{1,2} +\S")
_SETTING = re.compile(r"[a-z][\w.-]*(?:: *| +=? *|=)\S+")
_SIGNS = re.compile(r"[$%^=_/\\<>|\[\]{}*]|\w[-\u2010]\w")
"""What commands have, and few words."""


def find_commented(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines, with no blank line between, that are such commands."""
    found: list[tuple[int, int]] = []
    floor = 0
    for index, line in enumerate(lines):
        if index < floor or line.text[:1] != "#" or _COMMENT.match(line.text) is None:
            continue
        start, end = index, index + 1
        while start > floor and not lines[start].apart and lines[start - 1].indent >= line.indent:
            start -= 1
        while end < len(lines) and not lines[end].apart and lines[end].indent >= line.indent:
            end += 1
        floor = end
        if any(taken[place] is not None for place in range(start, end)) or not start:
            continue
        if _under_text(lines[start - 1], line) and _commands(lines[start:end]):
            found.append((start, end))
        elif (index == start or prose(lines[index - 1].text)) and _settings(lines[index:end]):
            found.append((index, end))
    return found


def _under_text(above: Line, line: Line) -> bool:
    """Whether a line stands in from running text above it."""
    said = (prose(above.text) or closed(above.text)) and not typed(above.text)
    return said and line.indent >= above.indent + DEEPER


def _settings(part: Sequence[Line]) -> bool:
    """Whether settings of one form, a value of one word behind each, stand with comments over them, several of both."""
    comments = [index for index, line in enumerate(part) if _COMMENT.match(line.text)]
    others = [line.text for line in part if not line.text.startswith("#")]
    several = len(comments) > 1 and len(others) > 1 and comments[-1] + 1 < len(part)
    return several and len({line.indent for line in part}) == 1 and all(map(_SETTING.fullmatch, others))


def _commands(part: Sequence[Line]) -> bool:
    """Whether the lines that are no comments are commands: one with a sign, and no more of them read as text than comments go on.

    Where most lines look like program text by themselves they need no comment for it.
    """
    comments = sum(_COMMENT.match(line.text) is not None for line in part)
    others = [line.text for line in part if not line.text.startswith("#")]
    said = sum(prose(text) or closed(text) for text in others)
    signed = any(_SIGNS.search(text) and not prose(text) and not closed(text) for text in others)
    known = 2 * sum(typed(line.text) for line in part) > len(part)
    return signed and said <= comments and not (known and not said)
