"""Numbers in the margin of the paragraphs of standards and handbooks: `12      lamp := lit;`.

Such a number is a label of what stands beside it, whatever that is. The lines are read as if it were blank: a program
stays one piece, a rule of a grammar keeps its lines, a bullet is a bullet. Then each number goes back before its text.
"""

from __future__ import annotations

import re
from array import array
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import cut
from fit.document.text.line import Line, Resolved
from fit.document.text.make import concat, fold, space
from fit.document.text.running.placed import Placed

MANY = 12
"""Numbers of a document that has them in its margin, at least."""
SHARE = 0.5
"""Share of what stands between blank lines that has one, at least."""
ELSEWHERE = 0.1
"""Share of the texts beside them, at least, that begin deeper than the others: a list has one column."""
SKIPPED = 3
"""Numbers that may be missing between two: their paragraphs were deleted."""
_NUMBER = re.compile(r"(\d{1,3})((?:\.(?:\d{1,2}|[a-z]))*)(/\d{1,2})?[a-z]?( +)(?=\S)")
Numbers = dict[int, Text]
"""By line the number that stood in its margin."""


def part_numbers(lines: Sequence[Line]) -> tuple[list[Line], Numbers]:
    """The lines without the numbers in their margin, and these; all lines as they were where there are none."""
    columns = _numbered(lines)
    if not columns:
        return list(lines), {}
    margin = lines[next(iter(columns))].indent
    usual = Counter(
        column
        for index, column in columns.items()
        if index + 1 < len(lines) and not lines[index + 1].apart and lines[index + 1].indent == margin
    )
    if not _varied(columns, usual):
        return list(lines), {}
    ordinary = usual.most_common(1)[0][0] if usual else 0
    parted = list(lines)
    numbers: Numbers = {}
    for index, column in columns.items():
        line = lines[index]
        single = index + 1 == len(lines) or lines[index + 1].apart
        length = len(line.text.split(None, 1)[0])
        at_margin = single and column <= max(ordinary, margin + length + 1)
        numbers[index] = line.piece(margin, margin + length)
        parted[index] = _without(line, column, margin if at_margin else column)
    return parted, numbers


def _numbered(lines: Sequence[Line]) -> dict[int, int]:
    """The lines that have a number in the margin, which counts the paragraphs, each with the column of its text."""
    first = [(index, match) for index, line in enumerate(lines) if (match := _first_number(line))]
    if len(first) < MANY:
        return {}
    starts = sum(line.apart or not index for index, line in enumerate(lines))
    margin = min(line.indent for line in lines)
    found: dict[int, int] = {}
    last: tuple[int, ...] = ()
    for index, match in first:
        value = _value(match)
        follows = last < value and value[0] - (last or (0,))[0] <= SKIPPED
        if lines[index].indent == margin and (value[0] <= 1 or follows):
            found[index] = margin + match.end()
            last = value
    return found if len(found) >= max(MANY, SHARE * starts) else {}


def _first_number(line: Line) -> re.Match[str] | None:
    """The number at the start of a line below a blank one. One blank parts a long number from its text, no short one."""
    if not line.text[:1].isdigit() or not (line.apart or not line.gap):
        return None
    match = _NUMBER.match(line.text)
    if match is None or (len(match[4]) == 1 and not match[3] and len(match[1]) < 3):
        return None
    return match


def _value(match: re.Match[str]) -> tuple[int, ...]:
    deeper = (int(part) if part.isdigit() else ord(part) - 96 for part in match[2].split(".")[1:])
    return (int(match[1]), *deeper)


def _varied(columns: dict[int, int], usual: Counter[int]) -> bool:
    """Whether some of the texts begin deeper than those that go on at the margin, or than most."""
    most = max(usual, default=0) or Counter(columns.values()).most_common(1)[0][0]
    return sum(column > most for column in columns.values()) >= ELSEWHERE * len(columns)


def _without(line: Line, column: int, place: int) -> Line:
    """The line from ``column`` on, set at ``place``, with blanks before it that stand nowhere in the document."""
    text = line.piece(column, line.end)
    starts = line.resolved.starts if line.resolved else range(line.end + 1)
    blanks = Text(" " * place, array("q", [-1]) * place, bytes(place))
    whole = concat([blanks, text])
    cells = [*range(place), *(start - starts[column] + place for start in starts[column : line.end + 1])]
    resolved = Resolved(whole.chars, whole.sources, whole.marks, cells)
    return Line(
        " " * place + line.cells[column:],
        line.offset,
        resolved,
        gap=line.gap,
        page=line.page,
        crossing=line.crossing,
        ending=line.ending,
    )


def with_numbers(lines: Sequence[Line], placed: Sequence[Placed], numbers: Numbers) -> list[Placed]:
    """The blocks with the numbers of their lines before them, a block with a number in its middle parted there."""
    left = sorted(numbers)
    done: list[Placed] = []
    waiting = list(reversed(placed))
    while waiting:
        one = waiting.pop()
        while left and left[0] < one.start:
            done.append(Placed(_alone(numbers[left[0]], one.block.level), left[0], one.start))
            left.pop(0)
        if left and left[0] < one.end:
            text = lines[left[0]]
            begins = text.piece(text.indent, text.end).sources[0]
            parts = _labelled(one.block, begins, numbers[left[0]])
            if parts:
                left.pop(0)
                done.extend(Placed(block, one.start, one.end) for block in parts[:-1])
                waiting.append(Placed(parts[-1], one.start, one.end))
                continue
        done.append(one)
    return done + [Placed(_alone(numbers[index], 0), index, index + 1) for index in left]


def _alone(number: Text, level: int) -> Block:
    return Block(Kind.ITEM, label=number, level=level)


def _labelled(block: Block, begins: int, number: Text) -> list[Block]:
    """The blocks that a block is with a number before the character at ``begins``; none where it does not have that."""
    if begins in block.label.sources[:1]:
        return [replace(block, label=concat([number, space(), block.label]))]
    if begins in block.text.sources:
        place = block.text.sources.index(begins)
        before, after = fold(cut(block.text, 0, place)), cut(block.text, place, len(block.text))
        if block.kind is Kind.HEADING and not before.chars:
            return [replace(block, text=concat([number, space(), after]))]
        numbered = Block(Kind.ITEM, after, number, level=block.level)
        return [replace(block, text=before), numbered] if before.chars or block.label.chars else [numbered]
    for place, text in enumerate(block.lines):
        if begins in text.sources:
            above = _alone(number, max(0, block.level - 1))
            whole = replace(block, lines=block.lines[place:], level=max(1, block.level))
            parts = [above, whole]
            return [replace(block, lines=_filled(block.lines[:place])), *parts] if place else parts
    for place, row in enumerate(block.rows):
        for column, cell in enumerate(row):
            if begins in cell.sources:
                at = cell.sources.index(begins)
                told = concat([cut(cell, 0, at), number, space(), cut(cell, at, len(cell))])
                cells = (*row[:column], told, *row[column + 1 :])
                rows = (*block.rows[:place], cells, *block.rows[place + 1 :])
                return [replace(block, rows=rows, lines=())]
    return []


def _filled(lines: Sequence[Text]) -> tuple[Text, ...]:
    """The lines without the blank ones at their end."""
    end = len(lines)
    while end and not lines[end - 1].chars:
        end -= 1
    return tuple(lines[:end])
