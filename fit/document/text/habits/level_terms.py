"""Commands that stand right over what they do, at the same indent: a run of such entries between blank lines.

Alone the first line looks like a title, like program text, or like one of two lines that stay. That entry after entry begins
with the form of a command, over a sentence that was not wrapped from it, shows what it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, part_end, parted_above
from fit.document.text.make import flow_lines, fold
from fit.document.text.running.placed import Placed
from fit.document.text.running.terms import ROOM
from fit.document.text.signs.code import typed
from fit.document.text.signs.joins import shortfall
from fit.document.text.signs.markers import find_marker
from fit.document.text.signs.measure import Measure, closed, hangs, prose

LEAST = 4
"""Entries of a run, at least."""
ODD = 3
"""Entries of a run for one of which the first line is the form of a command, at most."""
LONGEST = 66
"""Characters of such a line, at most."""
WORDS = 3
"""Words of what a command does, at least."""
_FORM = re.compile(r"[A-Za-z:/.]\S*(?: .*)? (?:<[^<> ]+>|\[[^\[\]]+\])(?: .*)?")
"""A name, and what is put in place of words in brackets."""


@dataclass(slots=True)
class _Entry:
    """The blocks ``first <= i < last`` of the lines between two blank lines."""

    first: int
    last: int
    level: int = 0


def with_level_terms(
    lines: Sequence[Line], placed: Sequence[Placed], measure: Measure, hyphens: Hyphens
) -> list[Placed]:
    """The blocks in order, those of such runs made items, the command as their label."""
    found: dict[int, _Entry] = {}
    for run in _runs(lines, placed, measure):
        forms = sum(_FORM.fullmatch(lines[placed[entry.first].start].text) is not None for entry in run)
        blocks = [placed[entry.first].block for entry in run]
        kinds = {block.kind for block in blocks}
        if len(run) >= LEAST and ODD * forms >= len(run) and len(kinds) > 1:
            level = max(block.level for block in blocks if block.kind is not Kind.HEADING)
            found.update((entry.first, replace(entry, level=level)) for entry in run)
    if not found:
        return list(placed)
    result: list[Placed] = []
    number = 0
    while number < len(placed):
        entry = found.get(number)
        if entry is None:
            result.append(placed[number])
            number += 1
        else:
            result.append(_item(lines, placed, entry, hyphens))
            number = entry.last
    return result


def _runs(lines: Sequence[Line], placed: Sequence[Placed], measure: Measure) -> list[list[_Entry]]:
    """The entries that follow each other at one indent, up to what stands at it and is none."""
    runs: list[list[_Entry]] = []
    indent = -1
    number = 0
    while number < len(placed):
        entry = _entry(lines, placed, number, measure)
        if entry is None:
            indent = -1
        elif lines[placed[number].start].indent == indent:
            runs[-1].append(entry)
        else:
            runs.append([entry])
            indent = lines[placed[number].start].indent
        number = entry.last if entry is not None else number + 1
    return runs


def _entry(lines: Sequence[Line], placed: Sequence[Placed], number: int, measure: Measure) -> _Entry | None:
    """The entry that a block begins: a line alone over what is said of it, all at one indent."""
    start = placed[number].start
    line = lines[start]
    if start + 1 == len(lines) or len(line.text) > LONGEST or prose(line.text):
        return None
    text = lines[start + 1]
    if text.apart or not parted_above(lines, start):
        return None
    if text.indent != line.indent or not text.text[:1].isupper() or len(text.text.split()) < WORDS:
        return None
    if closed(line.text) or hangs(line.text):
        return None
    if shortfall(line, text, measure.right(start)) < ROOM or typed(text.text) or find_marker(line.text):
        return None
    end = part_end(lines, start)
    if any(other.indent != line.indent for other in lines[start:end]):
        return None
    if any(typed(other.text) for other in lines[start + 1 : end]):
        return None
    last = number
    while last < len(placed) and placed[last].end <= end:
        if placed[last].block.kind not in {Kind.PARAGRAPH, Kind.HEADING, Kind.PREFORMATTED}:
            return None
        last += 1
    whole = last > number and placed[last - 1].end == end
    return _Entry(number, last) if whole and _said(lines, start + 1, end, measure) else None


def _said(lines: Sequence[Line], start: int, end: int, measure: Measure) -> bool:
    """Whether lines are one running text: all of them but the last are full."""
    return all(
        shortfall(lines[index], lines[index + 1], measure.right(start)) < ROOM
        for index in range(start, end - 1)
    )


def _item(lines: Sequence[Line], placed: Sequence[Placed], entry: _Entry, hyphens: Hyphens) -> Placed:
    start, end = placed[entry.first].start, placed[entry.last - 1].end
    line = lines[start]
    label = fold(line.piece(line.indent, line.end))
    text = flow_lines(lines[start + 1 : end], hyphens)
    return Placed(Block(Kind.ITEM, text, label=label, level=entry.level), start, end)
