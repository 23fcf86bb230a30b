"""Frames that are open at their right: a corner with a stroke above the lines of a form, another one below them."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from fit.document.blocks import Block, Kind
from fit.document.text.line import Line
from fit.document.text.make import keep_lines

TALLEST = 60
"""Lines of a frame, at most."""
_TOP = re.compile("[\u250c\u250f\u2554\u256d][\u2500\u2501\u2550]{2,}")
_BOTTOM = re.compile("[\u2514\u2517\u255a\u2570][\u2500\u2501\u2550]{2,}")


def find_open_frames(
    lines: Sequence[Line], taken: Sequence[object], read: Callable[[Sequence[Line]], list[Block]]
) -> list[tuple[int, int, list[Block]]]:
    """The half-open runs of lines that are such frames, each with its blocks.

    Those are its tables with what stands between them, or its lines where it has no table or lines would be joined.
    """
    found: list[tuple[int, int, list[Block]]] = []
    end = 0
    for index, line in enumerate(lines):
        if index < end or not _TOP.fullmatch(line.text):
            continue
        bottom = _bottom(lines, taken, index)
        if bottom > index + 1:
            end = bottom + 1
            found.append((index, end, _blocks(lines[index:end], read)))
    return found


def _bottom(lines: Sequence[Line], taken: Sequence[object], top: int) -> int:
    """The lower edge of a frame; 0 where there is none below."""
    for index in range(top, min(len(lines), top + TALLEST)):
        line = lines[index]
        if taken[index] is not None or line.indent < lines[top].indent:
            return 0
        if _BOTTOM.fullmatch(line.text):
            return index if line.indent == lines[top].indent else 0
    return 0


def _blocks(lines: Sequence[Line], read: Callable[[Sequence[Line]], list[Block]]) -> list[Block]:
    blocks = [_named(block) for block in read(lines[1:-1])]
    tables = [block for block in blocks if block.kind is Kind.TABLE]
    joined = any(-1 in block.text.sources for block in blocks)
    if tables and not joined:
        return blocks
    return [Block(Kind.PREFORMATTED, lines=keep_lines(lines), note="open frame")]


def _named(block: Block) -> Block:
    """A block of a form: what reads as a title is the form's name and begins no section."""
    return replace(block, kind=Kind.PARAGRAPH, level=1) if block.kind is Kind.HEADING else block
