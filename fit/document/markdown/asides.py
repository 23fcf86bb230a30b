"""Asides of Markdown manuals: a line such as `!!! note`, and what stands four columns in under it.

They are no part of CommonMark, where what is set in is program text. The marks are those of the extensions of
Python-Markdown for admonitions, for such as open at a click (`???`), and for tabs (`=== "Lamp"`), from memory.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

_MARK: Final = re.compile(r"( *)(?:(?:!!!|\?\?\?\+?) +[\"\w]|===[+!]? +\")")
_FENCE: Final = re.compile(r" *(`{3,}|~{3,})")
_ITEM: Final = re.compile(r" *(?:[-*+]|[0-9]{1,9}[.)]) ")
_DEEPEST: Final = 10
"""Asides in one another."""
_STEP: Final = 4
"""Columns by which their text is set in."""


def as_quotations(text: str) -> str:
    """The text, line for line, with its asides as quotations."""
    if not re.search(rf"^{_MARK.pattern}", text, re.MULTILINE):
        return text
    return "\n".join(_quoted(text.split("\n"), _DEEPEST))


def _quoted(lines: Sequence[str], deepest: int) -> list[str]:
    found: list[str] = []
    fence = ""
    at = 0
    while at < len(lines):
        line = lines[at]
        found.append(line)
        at += 1
        opening = _FENCE.match(line)
        if opening is not None and (not fence or opening[1].startswith(fence)):
            fence = "" if fence else opening[1]
        mark = None if fence else _MARK.match(line)
        if mark is None or not deepest or not _stands_free(found, len(mark[1])):
            continue
        end = at + _length(lines[at:], len(mark[1]) + _STEP)
        while at < end and not lines[at].strip():
            found.append(lines[at])
            at += 1
        inside = [inner[len(mark[1]) + _STEP :] for inner in lines[at:end]]
        found += (f"{mark[1]}> {inner}" for inner in _quoted(inside, deepest - 1))
        at = end
    return found


def _stands_free(lines: Sequence[str], indent: int) -> bool:
    """Whether the last of the lines is set in as far as the item of a list around it, or not at all."""
    above = next((line for line in reversed(lines[:-1]) if line.strip() and _indent(line) < indent), "")
    return indent < _STEP or _ITEM.match(above) is not None


def _length(lines: Sequence[str], indent: int) -> int:
    """The lines that are set in so far, to the last that is not blank."""
    length = 0
    for number, line in enumerate(lines, 1):
        if line.strip():
            if _indent(line) < indent:
                break
            length = number
    return length


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
