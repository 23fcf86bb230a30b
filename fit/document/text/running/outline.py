"""Headings that their number or letter alone shows: 4 alone between blank lines, between the headings 3 and 5.

Where most of the texts that are counted on and on are headings, the others are ones too, questions of a few lines say.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line, parted_above
from fit.document.text.make import flow_lines
from fit.document.text.running.placed import Placed
from fit.document.text.signs.markers import roman
from fit.document.text.signs.measure import closed, starts_small
from fit.document.text.titles.headings import LONGEST, loud

_NUMBER = re.compile(
    r"(?P<parts>(?:(?:[A-Z]{1,2}\d{0,3}|\d{1,3})\.)*)(?P<last>\d{1,3}|[A-Z](?=\.))(?P<dot>[.:]?) +(?=[\"'`(]?[A-Z])"
)
_LONE = re.compile(r"(?:\d{1,3}|[IVXLC]{1,6})\.?")
ASIDE = 3
"""Twice the cells by which the middles of two numbers may differ."""
MOST = 3
"""Headings that are counted on and on, at least, to show that most are."""
TALLEST = 3
"""Lines of a question that is a heading, at most."""
STEPS = 2
"""Numbers of several parts to the next heading of the sequence, at most: of more of them, a list may be left out."""
LOUD = 2
"""Lines of a heading in capitals, at most."""
WIDEST = 78
"""Characters of a heading with a number of several parts in its turn, at most: as many as a line has."""
LETTERED = "A"
"""What letters share instead of a point."""
Place = tuple[str, str, int]
"""What the numbers of one sequence share: the parts before the last one, or else the point behind it; the indent."""


def outlined(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks in order, with headings made of what stands in the sequence of the numbers of headings."""
    numbers = [_numbered(lines, one) for one in placed]
    placed = _counted_on(lines, _lone_numbers(lines, placed, hyphens), numbers, hyphens)
    following: dict[Place, int] = {}
    levels: dict[Place, Block] = {}
    after: list[int] = [0] * len(placed)
    for index in range(len(placed) - 1, -1, -1):
        place, number = numbers[index]
        if number:
            after[index] = following.get(place, 0)
            if placed[index].block.kind is Kind.HEADING:
                following[place] = number
                levels[place] = placed[index].block
    before: dict[Place, tuple[int, Block]] = {}
    titles: dict[Place, tuple[int, Block]] = {}
    result = list(placed)
    for index, (place, number) in enumerate(numbers):
        if not number:
            continue
        one = placed[index]
        last, sibling = before.get(place, (0, one.block))
        behind = last != number - 1  # a list of its own stood below the last title
        if behind:
            last, sibling = titles.get(place, (0, one.block))
        steps = after[index] - number if after[index] else 1
        near = steps == 1 or (0 < steps <= STEPS if place[0] and not behind else steps > 0)
        first = number == 1 and place[0] != "" and after[index] > 0
        if first and index and result[index - 1].block.kind is Kind.HEADING:
            sibling = levels[place]  # right below the title of its chapter
        in_turn = near and last == number - 1 and (last > 0 or first)
        if in_turn and sibling.kind is Kind.HEADING and _alone(lines, one):
            text = flow_lines(lines[one.start : one.end], hyphens)
            result[index] = replace(one, block=Block(Kind.HEADING, text, level=sibling.level))
        before[place] = (number, result[index].block)
        if result[index].block.kind is Kind.HEADING:
            titles[place] = before[place]
    return result


def _counted_on(
    lines: Sequence[Line], placed: Sequence[Placed], numbers: Sequence[tuple[Place, int]], hyphens: Hyphens
) -> list[Placed]:
    """The blocks, with headings made of the others of a sequence of which most are; single numbers may count steps."""
    runs: dict[Place, list[int]] = {}
    whole: list[list[int]] = []
    for index, (place, number) in enumerate(numbers):
        if number and place[0]:
            run = runs.get(place)
            if run is None or numbers[run[-1]][1] + 1 != number:
                runs[place] = run = []
                whole.append(run)
            run.append(index)
    result = list(placed)
    for run in whole:
        levels = [placed[index].block.level for index in run if placed[index].block.kind is Kind.HEADING]
        if len(levels) < max(MOST, len(run) / 2) or len(levels) == len(run):
            continue
        for index in run:
            one = placed[index]
            if one.block.kind is not Kind.HEADING and _apart(lines, one) and one.end - one.start <= TALLEST:
                text = flow_lines(lines[one.start : one.end], hyphens)
                result[index] = replace(one, block=Block(Kind.HEADING, text, level=levels[0]))
    return result


def _lone_numbers(lines: Sequence[Line], placed: Sequence[Placed], hyphens: Hyphens) -> list[Placed]:
    """The blocks, with headings made of numbers alone that count on, at one place, each over a paragraph: as tales are parted.

    No sentence is cut by one of them, as it would be by the numbers of pages.
    """
    result = list(placed)
    run: list[int] = []
    for index, one in enumerate([*placed, None]):
        match = _LONE.fullmatch(lines[one.start].text) if one and one.end - one.start == 1 else None
        if one and match is None:
            continue
        if one and run and _counts_on(lines[placed[run[-1]].start], lines[one.start]):
            run.append(index)
            continue
        if len(run) >= MOST and all(_over_paragraph(lines, placed, place) for place in run):
            for place in run:
                title = placed[place]
                text = flow_lines(lines[title.start : title.end], hyphens)
                result[place] = replace(title, block=Block(Kind.HEADING, text, level=2))
        run = [index]
    return result


def _counts_on(above: Line, below: Line) -> bool:
    """Whether a number alone is the next one, with the same signs, and has its left edge or its middle where that has it."""
    first, second = above.text.rstrip("."), below.text.rstrip(".")
    if above.text[len(first) :] != below.text[len(second) :] or first.isdigit() != second.isdigit():
        return False
    level = above.indent == below.indent or abs(above.indent + above.end - below.indent - below.end) <= ASIDE
    return level and _value(second) == _value(first) + 1


def _value(number: str) -> int:
    return int(number) if number.isdigit() else roman(number.lower())


def _over_paragraph(lines: Sequence[Line], placed: Sequence[Placed], index: int) -> bool:
    """Whether a block stands between blank lines below what has ended, over a paragraph that begins a sentence."""
    if index + 1 == len(placed) or not _apart(lines, placed[index]):
        return False
    below = placed[index + 1]
    begins = below.block.kind is Kind.PARAGRAPH and not starts_small(lines[below.start].text)
    return begins and (
        not index
        or placed[index - 1].block.kind is not Kind.PARAGRAPH
        or closed(lines[placed[index].start - 1].text)
    )


def _numbered(lines: Sequence[Line], one: Placed) -> tuple[Place, int]:
    """The sequence and the number that a block begins with; 0 without one."""
    line = lines[one.start]
    match = _NUMBER.match(line.text) if one.block.kind is not Kind.TABLE else None
    if match is None:
        return ("", "", 0), 0
    parts, last = match["parts"], match["last"]
    sign = "" if parts else match["dot"] if last.isdigit() else LETTERED
    return (parts, sign, line.indent), int(last) if last.isdigit() else ord(last) - ord("A") + 1


def _alone(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block is one line of text between blank lines, or between them and a page end; in capitals even two."""
    part = lines[one.start : one.end]
    tall = len(part) > 1 and not (len(part) <= LOUD and all(loud(line.text) for line in part))
    wide = WIDEST if "." in part[0].text.split(maxsplit=1)[0].rstrip(".") else LONGEST
    return not tall and _apart(lines, one) and len(part[0].text) <= wide


def _apart(lines: Sequence[Line], one: Placed) -> bool:
    """Whether a block stands between blank lines, or between them and a page end."""
    above = parted_above(lines, one.start)
    return above and parted_above(lines, one.end)
