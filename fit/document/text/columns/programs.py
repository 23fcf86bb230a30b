"""Program text that stands between blank lines, or set in below text, wherever its left margin is.

It is judged as a whole, before anything else claims lines of it: a reader sees a run of lines most of which are program
text, and takes the label, the remark, the sign at the start of a line and the gap in its middle for parts of it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.signs.code import code
from fit.document.text.signs.forms import form_end, value_end
from fit.document.text.signs.measure import prose
from fit.document.text.signs.program import DOUBTFUL, belongs, heads, kind, mostly_items, opens, program, said
from fit.document.text.signs.routines import routines_end
from fit.document.text.signs.rules import ruled_off

DEEPER = 2
"""Cells by which it stands in from text right above it, at least."""
MOST_BLANK = 2
"""Blank lines between two parts of it, at most."""
_KEY = re.compile(r"[A-Z][a-z]+(?: [a-z]+)?: {2,}(?=\S)")
"""A word that program text begins beside."""
_PLAIN = re.compile(r"[A-Za-z][a-z]+(?: [a-z]+)*[,:]?")
_LEAD = re.compile(r"[A-Z][a-z]+(?: [a-z]+)*:")
"""Words over it."""
_REMARK = re.compile(r"\S {2,}(%{1,2}|#{1,2}|;{1,2}|//|--) \S")
"""The sign before a remark."""


def find_programs(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int]]:
    """The half-open runs of lines that are program text, with those above and below that blank lines part from them."""
    found: list[tuple[int, int]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        if taken[index] is None and _may_stand(lines, index):
            last = 0 if _told(lines, index) else _part_end(lines, taken, index)
            if last > end:
                floor = found[-1][1] if found else 0
                start = _above(lines, taken, index, floor)
                end = _below(lines, taken, start, last)
                found.append((start, end))
            elif last := routines_end(lines, taken, index):
                found.append((index, last))  # its parameters may be explained below it
                end = last
        index = end
    return found


def join_parts(lines: Sequence[Line], found: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """Runs of program text, those taken for one that share lines or that a blank line or two alone part."""
    joined: list[tuple[int, int]] = []
    for start, end in sorted(found):
        last = joined[-1][1] if joined else 0
        if joined and (start < last or (start == last and _level(lines, joined[-1][0], start, end))):
            joined[-1] = (joined[-1][0], max(end, last))
        else:
            joined.append((start, end))
    return joined


def _level(lines: Sequence[Line], first: int, start: int, end: int) -> bool:
    """Whether program text goes on behind a blank line or two: at the margin above it or deeper, or surely."""
    line = lines[start]
    if line.gap > MOST_BLANK or line.crossing:
        return False
    margin = min(one.indent for one in lines[first:start])
    sure = kind(line.text) not in DOUBTFUL or heads(lines, start)
    return sure or min(one.indent for one in lines[start:end]) >= margin


def find_led_programs(lines: Sequence[Line], taken: Sequence[object]) -> list[tuple[int, int, int]]:
    """Program text that begins beside a word with a colon: the half-open run of lines, and its first column."""
    found: list[tuple[int, int, int]] = []
    index = 0
    while index < len(lines):
        end = index + 1
        text = lines[index].text
        key = _KEY.match(text) if ":" in text and taken[index] is None else None
        if key is not None and end < len(lines) and lines[end].indent > lines[index].indent:
            last = _under_key(lines, taken, index)
            column = lines[index].indent + key.end()
            first = replace(lines[index], cells=lines[index].cells[column:].rjust(lines[index].end))
            if last > end and _apart(lines, end, last) and program([first, *lines[end:last]]):
                end = _below(lines, taken, end, last)
                found.append((index, end, column))
        index = end
    return found


def _under_key(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where the lines end that stand deeper than a key, with no blank line between, and are no running text."""
    end = start + 1
    while end < len(lines) and taken[end] is None and not lines[end].apart:
        if lines[end].indent <= lines[start].indent or said(lines[end].text):
            break
        end += 1
    return end


def _may_stand(lines: Sequence[Line], index: int) -> bool:
    """Whether program text can begin at a place: below a blank line, set in from text right above, or led to at a page top."""
    line = lines[index]
    return index == 0 or (line.apart and not line.crossing) or _may_follow(lines[index - 1], line)


def _told(lines: Sequence[Line], index: int) -> bool:
    """Whether a line is words or a rule, with which no program text begins."""
    text = lines[index].text
    return (said(text) and not heads(lines, index)) or ruled_off(text) or _LEAD.fullmatch(text) is not None


def _may_follow(above: Line, line: Line) -> bool:
    """Whether program text can begin with a line right below another one, or on the page after it."""
    if line.crossing:
        return above.text.endswith(":") or not prose(above.text)
    if line.indent < above.indent + DEEPER or code(above.text):
        return False
    return above.text.endswith(":") or (prose(above.text) and kind(line.text) not in DOUBTFUL)


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Where the lines end that no blank line parts and that are no running text, but perhaps a remark."""
    least = lines[start].indent if start and not lines[start].apart else 0
    inside = opens(lines[start].text, False)
    end = start + 1
    while end < len(lines) and taken[end] is None and not lines[end].apart:
        text = lines[end].text
        if lines[end].indent < least or (said(text) and not (inside or heads(lines, end))) or ruled_off(text):
            break
        if _PLAIN.fullmatch(text) and _left_below(lines, start, end):
            break
        inside = opens(text, inside)
        end += 1
    return end


def _left_below(lines: Sequence[Line], start: int, index: int) -> bool:
    """Whether a line stands left of the lines above it and is the last one before a blank line: text again."""
    last = parted_above(lines, index + 1)
    return last and lines[index].indent < min(line.indent for line in lines[start:index])


def _part_end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """The end of the program text that begins with a line, up to a blank line or the end of its form; 0 for none."""
    end = form_end(lines, taken, start) or value_end(lines, taken, start)
    if end > start + 1:
        return end
    end = _end(lines, taken, start)
    return end if end > start + 1 and _apart(lines, start, end) and program(lines[start:end]) else 0


def _apart(lines: Sequence[Line], start: int, end: int) -> bool:
    """Whether what stands below lines does not belong to them: it is parted by a blank line, or left of them all."""
    if parted_above(lines, end):
        return True
    return lines[end].indent < min(line.indent for line in lines[start:end])


def _above(lines: Sequence[Line], taken: Sequence[object], start: int, floor: int) -> int:
    """Where the parts begin that stand above, one blank line from the next."""
    least = lines[start].indent
    while start > floor and lines[start].gap == 1 and not lines[start].crossing:
        first = start - 1
        while first > floor and not lines[first].apart:
            first -= 1
        free = all(taken[index] is None for index in range(first, start))
        if (
            not free
            or min(line.indent for line in lines[first:start]) < least
            or not belongs(lines[first:start])
        ):
            break
        start = first
    return start


def _below(lines: Sequence[Line], taken: Sequence[object], start: int, end: int) -> int:
    """Where the parts end that stand below."""
    least = min(line.indent for line in lines[start:end])
    while (
        end < len(lines) and taken[end] is None and lines[end].gap <= MOST_BLANK and not lines[end].crossing
    ):
        form = last = form_end(lines, taken, end)
        if not form:
            last = part_end(lines, end)
        part = lines[end:last]
        apart = parted_above(lines, last)
        free = all(taken[index] is None for index in range(end, last))
        if not apart or not free or min(line.indent for line in part) < least:
            break
        if not (form or belongs(part) or _remarked(lines[start:end], part) or _last(lines, start, end, last)):
            break
        end = last
    return end


def _remarked(above: Sequence[Line], part: Sequence[Line]) -> bool:
    """Whether each line has a remark behind the sign that several lines of the program text above have before theirs."""
    signs = {_remark_sign(line.text) for line in part}
    return len(signs) == 1 and "" not in signs and sum(_remark_sign(line.text) in signs for line in above) > 1


def _remark_sign(text: str) -> str:
    match = _REMARK.search(text)
    return match[1] if match is not None else ""


def _last(lines: Sequence[Line], start: int, end: int, last: int) -> bool:
    """Whether lines with signs, none of them said, stand at the column of program text that is set in, and text goes on to their left."""
    part = lines[end:last]
    least = min(line.indent for line in lines[start:end])
    if not start or last == len(lines) or part[0].gap > 1:
        return False
    if (
        max(lines[start - 1].indent, lines[last].indent) + DEEPER > least
        or min(line.indent for line in part) > least
    ):
        return False
    texts = [line.text for line in part]
    if any(prose(text) or "  " in text for text in texts):
        return False
    return not mostly_items(part)
