"""Kept lines that are no program and no verse but a plain text, wrapped by hand: whole manuals stand in one such part."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from fit.document.blocks import Block, Text
from fit.document.characters import split_lines
from fit.document.text import read_body
from fit.document.text.hyphens import Hyphens
from fit.document.text.line import Line
from fit.document.text.lines.overstrike import resolve
from fit.document.text.signs.measure import prose

LEAST_LINES: Final = 12
"""Lines of prose below which lines that stay lines do no harm."""
PROSE_SHARE: Final = 0.5
"""Of the lines that are not blank, the share that must read as prose."""


def read_wrapped(parts: Sequence[Text], hyphens: Hyphens) -> list[tuple[Block, ...]]:
    """For each part of a plain text inside another document its blocks; nothing where its lines should stay as they are."""
    lines = [line for text in parts for line in text.chars.split("\n") if line.strip()]
    running = sum(prose(line.strip()) for line in lines)
    if running < LEAST_LINES or running < PROSE_SHARE * len(lines):
        return []
    return [read_body([plain_line(line) for line in split_lines(text)], hyphens) for text in parts]


def plain_line(text: Text) -> Line:
    """A line of a plain text inside another document."""
    end = len(text.chars.rstrip())
    chars, places = text.chars[:end], text.sources[:end]
    if chars.isascii() and chars.isprintable() and end and places[-1] - places[0] == end - 1:
        return Line(chars, places[0])
    return resolve(chars, places, Counter())
