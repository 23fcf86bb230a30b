"""Blocks of what the rooms claim: lines that are kept, and what stands beside them or between them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import cut
from fit.document.text.columns.gutters import GUTTER
from fit.document.text.line import Line
from fit.document.text.make import EMPTY, concat, fold, keep_lines, space
from fit.document.text.running.classify import LONGEST_RULE
from fit.document.text.running.games import Turn
from fit.document.text.signs.fenced import without_bullet
from fit.document.text.signs.rules import ruled_off

Reader = Callable[[Sequence[Line]], list[Block]]
"""Gives the blocks of lines that are a part of the body."""


def program_text(lines: Sequence[Line], part: str) -> Block:
    """Lines that are kept as program text; ``part`` says what of it they are."""
    return Block(Kind.PREFORMATTED, lines=keep_lines(lines), code=True, note=f"{part} of program text")


def between_marks(lines: Sequence[Line]) -> Block:
    """Program text with the marks around it; a bullet stands before the first one."""
    block = program_text(lines, "between its marks")
    first, *inner, last = block.lines
    return replace(block, lines=(_shortened(first), *inner, _shortened(last)))


def between_rules(lines: Sequence[Line]) -> Block:
    """Program text with the rules around it, of which the first may have lines above it that say what it is."""
    block = program_text(lines, "between its rules")
    rule = block.lines[-1]
    return replace(
        block, lines=tuple(_shortened(line) if line.chars == rule.chars else line for line in block.lines)
    )


def _shortened(line: Text) -> Text:
    """A rule no longer than the smallest screens are wide; other marks as they are."""
    rule = without_bullet(line.chars.lstrip(" "))
    longest = len(line) - len(rule) + LONGEST_RULE
    short = ruled_off(rule) and not any(map(str.isalnum, line.chars[longest:]))
    return cut(line, 0, min(longest, len(line))) if short else line


def drawing(lines: Sequence[Line], note: str = "drawing") -> Block:
    """Lines that are kept as a picture."""
    return Block(Kind.PICTURE, lines=keep_lines(lines), note=note)


def text_and_drawing(lines: Sequence[Line], column: int, part: Reader) -> list[Block]:
    """The text left of a column, and then the drawing that begins at it."""
    text = [replace(line.cut(0, column), crossing=line.crossing) for line in lines]
    drawn = [line.cut(column, line.end) for line in lines]
    rows = [index for index, line in enumerate(drawn) if line.cells]
    blocks = part([line for line in text if line.cells])
    return [*blocks, drawing(drawn[rows[0] : rows[-1] + 1])]


def drawing_and_text(lines: Sequence[Line], column: int, part: Reader) -> list[Block]:
    """The drawing left of a column, whole where it is wider, and then the text that begins there.

    Where a row has no text, a paragraph ends.
    """
    wide = [bool(line.cells[column - GUTTER : column].strip(" ")) for line in lines]
    parted = [line.end if over else column for line, over in zip(lines, wide, strict=True)]
    drawn = [line.cut(0, at) for line, at in zip(lines, parted, strict=True)]
    rows = [index for index, line in enumerate(drawn) if line.cells]
    text: list[Line] = []
    gap = 0
    for line, at in zip(lines, parted, strict=True):
        right = replace(line.cut(at, line.end), crossing=line.crossing)
        gap = max(gap, line.gap)
        if right.cells:
            text.append(replace(right, gap=gap))
        gap = 0 if right.cells else 1
    return [drawing(drawn[rows[0] : rows[-1] + 1]), *part(text)]


def turns_as_blocks(
    lines: Sequence[Line], game: Sequence[Turn], part: Callable[[Sequence[Line]], list[Block]]
) -> list[Block]:
    """The turns of a game: what keeps its lines, and the answers below it that flow."""
    blocks: list[Block] = []
    kept: list[Line] = []
    for start, flows, end in game:
        kept += lines[start:flows]
        if flows < end:
            answer = [
                replace(block, kind=Kind.PARAGRAPH, level=0) if block.kind is Kind.HEADING else block
                for block in part(lines[flows:end])
            ]
            left = min(block.level for block in answer)  # the answer stands where the kept lines do
            answer = [replace(block, level=block.level - left) for block in answer]
            blocks += [program_text(kept, "turn of a game"), *answer] if kept else answer
            kept = []
    return [*blocks, program_text(kept, "turn of a game")] if kept else blocks


def key_beside_program(lines: Sequence[Line], column: int) -> list[Block]:
    """A key and the program text that begins beside it, at a column."""
    first, rest = lines[0], lines[1:]
    key = fold(first.piece(first.indent, column))
    margin = min(column, *(line.indent for line in rest))
    beside = concat([*[space()] * (column - margin), first.piece(column, first.end)])
    below = [EMPTY] * min(rest[0].gap, 2)
    kept = [line.piece(margin, line.end) for line in rest]
    for line, text in zip(rest, kept, strict=True):
        below.extend([*[EMPTY] * (min(line.gap, 2) if line is not rest[0] else 0), text])
    note = "example of program text"
    return [
        Block(Kind.ITEM, label=key),
        Block(Kind.PREFORMATTED, lines=(beside, *below), level=1, code=True, note=note),
    ]
