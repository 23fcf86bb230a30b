"""Rules of a grammar, with remarks behind a `;` up to the end of a line or with `::=`: such a rule keeps its lines, all of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fit.document.text.line import Line
from fit.document.text.signs.measure import prose

_RULE = re.compile(r"<?[A-Za-z][\w-]*>? *=/? +[^\s=]")
"""A name and what it stands for."""
_STANDS_FOR = re.compile(r"<?[A-Za-z][\w -]*>?\s+::=(?:\s|$)")
"""A name, and the sign before what it stands for."""
LEAST = 3
"""Rules with their signs at one column, at least."""
BESIDE = 4
"""Cells right of the sign in which the bar of another meaning stands, at most."""
_SIGNS = re.compile(r"[\"/*%\[(]|\d\*|\w-\w")
"""What a grammar has, and few words."""


def find_grammars(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines, with no blank line between, that are rules of a grammar.

    Some have such remarks, and the others stand right above or below these; those with `::=` show themselves.
    """
    found: list[tuple[int, int]] = []
    floor = 0
    for index, line in enumerate(lines):
        if index >= floor and "::=" in line.text and _STANDS_FOR.match(line.text):
            start, end = _around(lines, index, floor)
            whole = _stand_for(lines, taken, start, end)
            last = _one_below_other(lines, taken, index)
            if last > end:
                start, end, whole = (start if whole else index), last, True
            if whole:
                found.append((start, end))
            floor = end
            continue
        if index < floor or line.text[:1] != ";":
            continue
        start, end = _around(lines, index, floor)
        if _rules(lines, taken, start, end):
            above = [(start, end)]
            while start > floor and _rules(lines, taken, *(part := _around(lines, start - 1, floor))):
                above.append(part)
                start = part[0]
            found += reversed(above)
            while end < len(lines) and _rules(lines, taken, *(part := _around(lines, end, end))):
                found.append(part)
                end = part[1]
        floor = end
    return found


def _around(lines: Sequence[Line], index: int, floor: int) -> tuple[int, int]:
    """The lines about one with no blank line between, as a half-open run."""
    start, end = index, index + 1
    while start > floor and not lines[start].apart:
        start -= 1
    while end < len(lines) and not lines[end].apart:
        end += 1
    return start, end


def _rules(lines: Sequence[Line], taken: Sequence[object], start: int, end: int) -> bool:
    """Whether free lines are rules of a grammar."""
    return all(taken[place] is None for place in range(start, end)) and _grammar(lines[start:end])


def _stand_for(lines: Sequence[Line], taken: Sequence[object], start: int, end: int) -> bool:
    """Whether free lines are names at one column, each with `::=` behind it, and all else stands deeper."""
    part, margin = lines[start:end], lines[start].indent
    return all(taken[place] is None for place in range(start, end)) and all(
        (_STANDS_FOR.match(line.text) is not None) if line.indent == margin else line.indent > margin
        for line in part
    )


def _one_below_other(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the rules from a line on that have `::=` at one column, a blank line between them perhaps; 0 for none.

    What else each stands for begins with a bar below the sign; a line that is right below one has the rest of it.
    """
    sign = lines[start].cells.find("::=")
    rules = 1
    end = last = start + 1
    while end < len(lines) and taken[end] is None and lines[end].gap <= 1 and not lines[end].crossing:
        line = lines[end]
        if line.cells[sign : sign + 3] == "::=" and _STANDS_FOR.match(line.text):
            rules += 1
            last = end + 1
        elif line.text[0] == "|" and sign <= line.indent <= sign + BESIDE:
            last = end + 1
        elif last < end or line.gap or line.indent > sign:
            break
        end += 1
    if last < end and not prose(lines[last].text):
        last += 1
    return last if rules >= LEAST else 0


def _grammar(part: Sequence[Line]) -> bool:
    """Whether lines are a rule or more at one column, all else set deeper below the first one, and remarks at the start of lines."""
    rules = [line for line in part if _RULE.match(line.text)]
    first = next((line for line in part if line.text[:1] != ";"), None)
    if not rules or first is not rules[0]:
        return False
    margin = rules[0].indent
    others = [line for line in part if line.text[:1] != ";" and not _RULE.match(line.text)]
    named = all(line.indent == margin for line in rules) and all(line.indent > margin for line in others)
    words = [line.text.partition("=")[2].split(";")[0] for line in rules]
    return named and all(len(text.split()) == 1 or _SIGNS.search(text) for text in words)
