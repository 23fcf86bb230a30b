"""Sessions at a prompt of the document's own: a sign that lines begin with again and again, with answers below them.

No mark of a list is one: what stands behind a prompt is for a program, and its answers stand at its own margin.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.code import prompted, typed
from fit.document.text.signs.measure import closed, prose
from fit.document.text.signs.rules import ruled_off

LEAST = 3
"""Times that something is typed at it, at least."""
SHORT = 8
"""Words of what is typed, at most, where an arrow leads to its answer."""
_SIGN = re.compile(
    r"(?P<sign>\](?=[A-Z]{2,}\b)|(?:[]?@]|[#%$]>|(?!(.)\2+\s)[]=>:?!~.*$)-]{2,4}|[A-Za-z][\w-]{1,11}(?:\.[\w.-]{1,9})?[>\]])(?=\s{1,4}\S))"
)
"""No bullet is one, nor what begins remarks, nor a sign that comes several times over: that is a rule, or a title has it."""
_SURE = ("#>", "%>", "$>")
"""Signs that nothing but a prompt has: no answer is needed to know one."""
_FOR_PROGRAMS = re.compile(r"[^\w\s,;:?!'\"-]|\w[(\[]|\d")
"""What words do not have."""
_END = re.compile(r"[.;]$")
_LABEL = re.compile(r"\S+:\s")
"""What a program says may read as text behind it, in a row of such lines."""


def find_own_sessions(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are such sessions, or parts of one."""
    prompts, answers, typed_alone = _signs(lines, taken)
    found: list[tuple[int, int]] = []
    index = floor = 0
    while (prompts or answers or typed_alone) and index < len(lines):
        start, end, text = index, index + 1, lines[index].text
        sign = _sign(text)
        answered = sign in answers and not lines[index].apart
        if taken[index] is None and (sign in prompts or text in prompts or answered):
            if answered:
                start = _typed_above(taken, index, floor)
            end = _end(lines, taken, start)
            found.append((_remarked(lines, start, floor), end))
            floor = end
        elif index in typed_alone:
            floor = end = typed_alone[index]
            found.append((index, end))
        index = max(end, index + 1)
    return found


def _remarked(lines: Sequence[Line], start: int, floor: int) -> int:
    """Where the remarks on what is typed begin that stand right above it, or lead to it with a colon over a blank line."""
    while start > floor and lines[start - 1].text.startswith("# "):
        if lines[start].apart and not lines[start - 1].text.endswith(":"):
            break
        start -= 1
    return start


def _typed_above(taken: Sequence[object], index: int, floor: int) -> int:
    """Where begins what was typed for an answer: right above it."""
    return index - (index > floor and taken[index - 1] is None)


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where a prompt and what comes of it end: at a blank line, or where text stands at the margin, in no bracket."""
    end = start + 1
    depth = 0
    while end < len(lines) and taken[end] is None and not lines[end].apart:
        line = lines[end]
        told = line.indent == lines[start].indent and depth <= 0 and prose(line.text)
        told = told and not (_LABEL.match(line.text) and _LABEL.match(lines[end - 1].text))
        if line.indent < lines[start].indent or told or ruled_off(line.text):
            break
        depth += line.text.count("(") - line.text.count(")")
        end += 1
    return end


def _sign(text: str) -> str:
    match = _SIGN.match(text)
    return match["sign"] if match is not None else ""


def _signs(lines: Sequence[Line], taken: Sequence[object]) -> tuple[set[str], set[str], dict[int, int]]:
    """The signs that are prompts, those that answers begin with, and where all between blank lines is typed at one sign."""
    places: dict[str, list[int]] = defaultdict(list)
    for index, line in enumerate(lines):
        if taken[index] is None and (sign := _sign(line.text)) and not prompted(line.text):
            places[sign].append(index)
    often = {sign: where for sign, where in places.items() if len(where) >= LEAST}
    prompts = {sign for sign, where in often.items() if _prompt(lines, where, sign)}
    answers = {sign for sign, where in often.items() if sign not in prompts and _answer(lines, where, sign)}
    alone = {
        index: end
        for sign, where in often.items()
        if sign not in prompts and sign[0].isalpha()
        for index in where
        if parted_above(lines, index) and (end := _typed_alone(lines, taken, index, sign))
    }
    return prompts, answers, alone


def _typed_alone(lines: Sequence[Line], taken: Sequence[object], start: int, sign: str) -> int:
    """The end of the lines between blank ones that all have something typed or a remark behind the same sign, some of each; or 0."""
    end = part_end(lines, start)
    if any(taken[start:end]) or any(_sign(line.text) != sign for line in lines[start:end]):
        return 0
    behind = [line.text[len(sign) :].lstrip() for line in lines[start:end]]
    others = [text for text in behind if text[0] != "#"]
    return end if 0 < len(others) < len(behind) and all(map(typed, others)) else 0


def _answer(lines: Sequence[Line], where: Sequence[int], sign: str) -> bool:
    """Whether lines with a sign mostly stand right below something for a program, deeper than that."""
    below = sum(
        index > 0
        and not lines[index].apart
        and lines[index].indent > lines[index - 1].indent
        and not closed(lines[index - 1].text)
        and len(lines[index - 1].text.split()) <= SHORT
        and _FOR_PROGRAMS.search(_END.sub("", lines[index - 1].text)) is not None
        for index in where
    )
    return 4 * below >= 3 * len(where) and 5 * _said(lines, where, sign) <= len(where)


def _said(lines: Sequence[Line], where: Sequence[int], sign: str) -> int:
    """How many of the lines have running text behind their sign."""
    return sum(prose(lines[index].text[len(sign) :].lstrip()) for index in where)


def _prompt(lines: Sequence[Line], where: Sequence[int], sign: str) -> bool:
    signed = answered = 0
    for index in where:
        text = lines[index].text[len(sign) :].lstrip()
        signed += sign[0].isalpha() or _FOR_PROGRAMS.search(_END.sub("", text)) is not None or typed(text)
        answered += _answered(lines, index, sign)
    return (
        5 * _said(lines, where, sign) <= len(where)
        and 2 * signed >= len(where)
        and (sign in _SURE or 3 * answered >= len(where))
    )


def _answered(lines: Sequence[Line], index: int, sign: str) -> bool:
    """Whether what came of it stands right below, at the margin of the prompt, and is no running text."""
    if parted_above(lines, index + 1):
        return False
    below = lines[index + 1]
    return below.indent == lines[index].indent and _sign(below.text) != sign and not prose(below.text)
