"""Lines with a bar at the left of each: an aside of running text, or what a box that is open at its right shows."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line, parted_above, without_blanks
from fit.document.text.make import keep_lines
from fit.document.text.signs.code import code
from fit.document.text.signs.measure import prose
from fit.document.text.signs.strokes import strength
from fit.document.text.tables.bars import BARS

_EDGE = re.compile("[+|.'`\u250c\u2514\u256d\u2570\u251c]?[-=\u2500\u2501\u2550]{3,}\\+?")
_NAMED = re.compile("[+.,\u250c\u256d][-=\u2500\u2501\u2550]+[^-=].*[-=\u2500\u2501\u2550]")
"""An upper edge with a name in it."""
_LEFT = frozenset(BARS)
LEAST = 2
"""Lines with a bar, at least."""
_FLOWING = {Kind.PARAGRAPH, Kind.ITEM, Kind.HEADING}
_OPENING = frozenset("\"'([_*\u201c\u2018")
"""What words may stand behind at the start of a line."""


def find_left_bars(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that have such a bar, rules of a box above and below with them, each with its blocks."""
    found: list[tuple[int, int, list[Block]]] = []
    single: list[int] = []
    index = 0
    while index < len(lines):
        if taken[index] is not None or lines[index].text[:1] not in _LEFT:
            index += 1
            continue
        end = _end(lines, taken, index)
        boxed = _boxed(lines, taken, index, end)
        if boxed and not _EDGE.fullmatch(lines[index - 1].text):
            kept = keep_lines(lines[index - 1 : end + 1])
            found.append((index - 1, end + 1, [Block(Kind.PREFORMATTED, lines=kept, note="box with a name")]))
        elif boxed or (parted_above(lines, index) and parted_above(lines, end)):
            single += [index] if end == index + 1 else []
            blocks = _blocks(lines[index:end], read, boxed=boxed)
            found += [(index - boxed, end + boxed, blocks)] if blocks else []
        index = end
    texts = {lines[start].indent for start, _, blocks in found if blocks[0].kind is not Kind.PREFORMATTED}
    for index in single:
        inner = _behind(lines[index : index + 1])
        if lines[index].indent in texts and inner and prose(inner[0].text):
            found.append((index, index + 1, _set_in(read(inner))))
    return found


def _behind(lines: Sequence[Line]) -> list[Line]:
    """What stands behind the bars; where nothing does, a blank line."""
    return without_blanks(line.cut(line.indent + 1, line.end) for line in lines)


def _set_in(blocks: Sequence[Block]) -> list[Block]:
    """Text one level deeper, as its bar sets it off; what reads as a title is a word over it and begins no section."""
    return [
        replace(block, kind=Kind.PARAGRAPH, level=1)
        if block.kind is Kind.HEADING
        else replace(block, level=block.level + 1, note="text behind a bar")
        for block in blocks
    ]


def _end(lines: Sequence[Line], taken: Sequence[object], start: int) -> int:
    """Behind the last line that has its bar where the first one has it, with no blank line on the way."""
    bar, indent = lines[start].text[0], lines[start].indent
    end = start + 1
    while end < len(lines) and taken[end] is None and not (lines[end].gap and not lines[end].crossing):
        if lines[end].indent != indent or lines[end].text[:1] != bar:
            break
        end += 1
    return end


def _boxed(lines: Sequence[Line], taken: Sequence[object], start: int, end: int) -> bool:
    """Whether rules that begin where the bars stand close lines above and below, with no blank line between."""
    if end - start < LEAST or parted_above(lines, start) or parted_above(lines, end):
        return False
    if taken[start - 1] is not None or taken[end] is not None:
        return False
    upper, lower = lines[start - 1], lines[end]
    if upper.indent != lines[start].indent or lower.indent != upper.indent:
        return False
    return bool(_EDGE.fullmatch(lower.text) and (_EDGE.fullmatch(upper.text) or _NAMED.fullmatch(upper.text)))


def _blocks(
    lines: Sequence[Line], read: Callable[[Sequence[Line]], list[Block]], *, boxed: bool
) -> list[Block]:
    """The text behind the bars, set in as they set it off; or the lines of what flows nowhere, without the box around them.

    A bar that no box closes may be a sign of the lines, and stays. Nothing where lines are a table or a drawing.
    """
    inner = _behind(lines)
    others = sum(not _LEFT.isdisjoint(line.cells) for line in inner)
    if (
        len(lines) < LEAST
        or not inner
        or 2 * others >= len(inner)
        or any(strength(line.text) > 1 for line in inner)
    ):
        return []
    edges = lines[0].text[1:].strip(" ") and lines[-1].text[1:].strip(" ")
    if not boxed and not (edges and all(line.indent for line in inner)):
        return []
    shown = any(code(line.text) for line in inner)
    deeper = any(below.indent > above.indent and not below.gap for above, below in pairwise(inner))
    words = all(line.text[:1].isalnum() or line.text[:1] in _OPENING or prose(line.text) for line in inner)
    told = words and not shown and 2 * sum(prose(line.text) for line in inner) >= len(inner)
    blocks = read(inner) if told else []
    listed = any(block.kind is Kind.ITEM for block in blocks)
    flows = 0 < len(blocks) < len(inner) and all(block.kind in _FLOWING for block in blocks)
    if flows and (listed or not deeper):
        return _set_in(blocks)
    if not boxed:
        return [Block(Kind.PREFORMATTED, lines=keep_lines(lines), note="lines behind a bar")]
    return [Block(Kind.PREFORMATTED, lines=keep_lines(inner), code=shown, note="box open at its right")]
