"""Sessions at a prompt of the document's own: a sign that lines begin with again and again, with answers below them.

No mark of a list is one: what stands behind a prompt is for a program, and its answers stand at its own margin.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.code import prompted, typed
from fit.document.text.signs.measure import prose
from fit.document.text.signs.pictures import ruled_off

LEAST = 3
"""Times that something is typed at it, at least."""
_SIGN = re.compile(
    r"(?P<sign>\](?=[A-Z]{2,}\b)|(?:[]?@]|(?!(.)\2+\s)[]=>:?!~.*@&%$#)-]{2,4}|[A-Za-z][\w-]{1,11}[>\]])(?=\s{1,4}\S))"
)
"""No bullet is one, nor a sign that comes several times over: that is a rule, or a title has it."""
_FOR_PROGRAMS = re.compile(r"[^\w\s,;:?!'\"-]|\w[(\[]|\d")
"""What words do not have."""
_END = re.compile(r"[.;]$")


def find_own_sessions(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such sessions, or parts of one."""
    prompts = _prompts(lines, taken)
    found: list[tuple[int, int]] = []
    index = 0
    while prompts and index < len(lines):
        end = index + 1
        if taken[index] is None and not prompts.isdisjoint((_sign(lines[index].text), lines[index].text)):
            end = _end(lines, taken, index)
            found.append((index, end))
        index = end
    return found


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where a prompt and what comes of it end: at a blank line, or where text stands at the margin, in no bracket."""
    end = start + 1
    depth = 0
    while end < len(lines) and taken[end] is None and not lines[end].apart:
        line = lines[end]
        told = line.indent == lines[start].indent and depth <= 0 and prose(line.text)
        if line.indent < lines[start].indent or told or ruled_off(line.text):
            break
        depth += line.text.count("(") - line.text.count(")")
        end += 1
    return end


def _sign(text: str) -> str:
    match = _SIGN.match(text)
    return match["sign"] if match is not None else ""


def _prompts(lines: Sequence[Line], taken: Sequence[object]) -> set[str]:
    """The signs that are prompts: mostly with something for a program behind them, and often with an answer below."""
    places: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        if taken[index] is None and (sign := _sign(line.text)) and not prompted(line.text):
            places[sign].append(index)
    return {sign for sign, where in places.items() if len(where) >= LEAST and _prompt(lines, where, sign)}


def _prompt(lines: Sequence[Line], where: Sequence[int], sign: str) -> bool:
    said = signed = answered = 0
    for index in where:
        text = lines[index].text[len(sign) :].lstrip()
        said += prose(text)
        signed += (
            sign[0].isalpha()
            or text.isupper()
            or _FOR_PROGRAMS.search(_END.sub("", text)) is not None
            or typed(text)
        )
        answered += _answered(lines, index, sign)
    return 5 * said <= len(where) and 2 * signed >= len(where) and 3 * answered >= len(where)


def _answered(lines: Sequence[Line], index: int, sign: str) -> bool:
    """Whether what came of it stands right below, at the margin of the prompt, and is no running text."""
    if index + 1 == len(lines) or lines[index + 1].apart:
        return False
    below = lines[index + 1]
    return below.indent == lines[index].indent and _sign(below.text) != sign and not prose(below.text)
