"""Lines that stay lines: tabs made blanks, and pictures told from program text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final, NamedTuple

from fit.document.blocks import Block, Kind, Mark, Text
from fit.document.characters import NO_BREAK_SPACE, TextBuilder, cut, hold_together, split_lines, strip_end

TAB: Final = 8
"""Columns from one tab stop to the next, as terminals have them."""

_GAP: Final = re.compile(r"^ +| {2,}")
_BOX: Final = re.compile(r"[\u2500-\u259f]")
_RULE: Final = re.compile(r"[+|][-=_]{2,}[+|]|[-=_]{3,}[+]|^\s*[+'`.]-{3,}[+'`.]\s*$")
_SIDE: Final = re.compile(r"[|].*[|]|^\s*[|/\\](?:\s|$)|\s[|/\\]\s*$")


class Stop(NamedTuple):
    """A tab stop."""

    column: int
    side: str = "L"
    """What of the text behind the tab stands there: its left side, its right one (R), or its centre (C)."""


def preformatted(text: Text, *, level: int, code: bool) -> Block | None:
    """The block of a text whose lines stay: a picture where its columns belong together; None where it is blank."""
    lines = [strip_end(untabbed(line)) for line in split_lines(hold_together(text))]
    while lines and not len(lines[0]):
        del lines[0]
    while lines and not len(lines[-1]):
        del lines[-1]
    if not lines:
        return None
    if is_picture([line.chars for line in lines]):
        return Block(Kind.PICTURE, level=level, lines=tuple(lines))
    return Block(Kind.PREFORMATTED, level=level, lines=tuple(lines), code=code)


def held(line: Text, mark: int = Mark.NONE) -> Text:
    """The line, for a cell: with no-break spaces for the blanks at its beginning and in its gaps, which flowing text
    would fold; ``mark`` is added to each of its characters.
    """
    chars = _GAP.sub(lambda found: NO_BREAK_SPACE * len(found[0]), line.chars)
    return Text(chars, line.sources, bytes(own | mark for own in line.marks))


def is_picture(lines: Sequence[str]) -> bool:
    """Whether lines are a drawing: box-drawing characters, or rules with sides under them."""
    if sum(bool(_BOX.search(line)) for line in lines) >= 2:
        return True
    rules = sum(bool(_RULE.search(line)) for line in lines)
    sides = sum(bool(_SIDE.search(line)) for line in lines)
    return rules >= 2 and sides >= 1 and 2 * (rules + sides) >= len(lines)


def untabbed(line: Text, stops: Sequence[Stop] = ()) -> Text:
    """The line with blanks for its tabs, up to the next of ``stops``; behind the last of them as terminals have them.

    A tab parts words even where a text that ends at its stop leaves it no room.
    """
    if "\t" not in line.chars:
        return line
    builder = TextBuilder()
    begin = 0
    while (tab := line.chars.find("\t", begin)) >= 0:
        builder.add_text(cut(line, begin, tab))
        at, begin = len(builder), tab + 1
        stop = next((stop for stop in stops if stop.column > at), Stop(at + TAB - at % TAB))
        before = 0
        if stop.side != "L":
            field = len(line.chars[begin:].partition("\t")[0].rstrip())
            before = field if stop.side == "R" else field // 2
        width = max(1, stop.column - before - at)
        builder.add(" " * width, (line.sources[tab],) * width, line.marks[tab])
    builder.add_text(cut(line, begin, len(line)))
    return builder.build()
