"""Heads of routines with the parameters that they take in brackets, each with its type: `tide_t get_tide( int day )`.

The type of what a routine gives may stand on a line of its own over its name, and parameters may go on in lines below.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line, parted_above

LONGEST_LIST = 12
"""Lines of a list of parameters, at most."""
_TYPE = re.compile(r"(?:const )?(?:[A-Za-z]\w*_\w*|(?:unsigned |struct )?[a-z]+)(?: ?\*+)?")
"""The type of what a routine gives, alone on its line."""
_HEAD = re.compile(r"(?:(?:[A-Za-z_]\w*[ *&]+)+(?:[A-Za-z_]\w*|\(\*\w+\)) ?|\w*_\w* ?)\(\s*")
"""The type and the name of a routine, or a name alone, and the bracket."""
_TYPED = re.compile(r"(?:[A-Za-z_]\w*(?: +|[ *&]*[*&] ?))+[A-Za-z_]\w*(?:\[\w*\])*|void|\.\.\.")
"""A parameter with its type."""
_DECLARED = re.compile(r"[A-Za-z]\w*(?:, \w+)* +: +(?:in +out +|in +|out +)?[A-Za-z][\w.]*(?: +:= +\S+)?")
"""Parameters with their type behind a colon."""
_DECLARES = re.compile(r"(?:procedure|function) +[A-Za-z]\w* *\(\s*")
_GIVES = re.compile(r"\)(?:\s+return [\w.]+)?[;,]?")


def routines_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the heads of routines that begin with a line, one right below the other; 0 where none begins.

    One that is all on one line is none where text goes on right below it.
    """
    end = start
    while end < len(lines) and (end == start or not lines[end].apart):
        last = _routine_end(lines, taken, end)
        if not last:
            break
        end = last
    return end if end > start + 1 or (end > start and parted_above(lines, end)) else 0


def _routine_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the head of a routine that begins with a line; 0 where none does."""
    place = start
    typed = "(" not in lines[start].text
    if typed:
        if start + 1 == len(lines) or lines[start + 1].apart or _TYPE.fullmatch(lines[start].text) is None:
            return 0
        place += 1
    head = lines[place]
    begins = _DECLARES if head.text.startswith(("procedure ", "function ")) else _HEAD
    name = begins.match(head.text)
    if name is None or head.indent != lines[start].indent or (not typed and " " not in name[0].rstrip(" (")):
        return 0
    end = _brackets_end(lines, place)
    listed = " ".join(line.text for line in lines[place:end])[name.end() :]
    closed, rest = listed.rsplit(")", 1) if ")" in listed else (listed, "-")
    free = all(one is None for one in taken[place:end])
    if not end or not free or _GIVES.fullmatch(f"){rest}") is None:
        return 0
    declares = begins is _DECLARES
    parts = [part.strip() for part in closed.split(";" if declares else ",")]
    one = _DECLARED if declares else _TYPED
    whole = lines[start].text if typed else name[0]
    named = "_" in whole + closed or any(char in closed for char in "*&")
    signed = declares or named or (rest == ";" and whole[0].islower())
    return end if signed and all(one.fullmatch(part) for part in parts) else 0


def behind_bracket(lines: Sequence[Line], start: int) -> int:
    """The end of the lines right behind the bracket that a line leaves open at a comma, up to that where it closes; 0 for none."""
    line = lines[start]
    column = line.cells.rfind("(") + 1 if line.text.endswith(",") else 0
    end = _brackets_end(lines, start) if column else 0
    return end if end > start + 1 and all(below.indent == column for below in lines[start + 1 : end]) else 0


def inside_brackets(lines: Sequence[Line], first: int, index: int) -> bool:
    """Whether a line stands behind such a bracket of a line from ``first`` on."""
    near = range(max(first, index - LONGEST_LIST), index)
    return any(behind_bracket(lines, start) > index for start in near)


def _brackets_end(lines: Sequence[Line], start: int) -> int:
    """The end of the lines from one with an open bracket to that where it closes, those between deeper; 0 for none."""
    depth = 0
    for index in range(start, min(start + LONGEST_LIST, len(lines))):
        line = lines[index]
        below = index > start
        if below and (line.apart or line.indent < lines[start].indent):
            return 0
        depth += line.text.count("(") - line.text.count(")")
        if depth <= 0:
            return index + 1
        if not line.text.endswith((",", ";", "(")) and not line.text[-1].isalpha():
            return 0
    return 0
