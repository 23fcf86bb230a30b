"""Footnotes of Markdown, which CommonMark does not know: paragraphs that begin with a mark such as `[^1]:`."""

from __future__ import annotations

import re
from typing import Final

from fit.document.blocks import Block, Kind, Text
from fit.document.characters import cut, fold, split_lines
from fit.document.markdown.state import State

_FOOTNOTE: Final = re.compile(r"\s*\[\^[^\]\s]{1,40}\]:")
STARTS_ANEW: Final = re.compile(
    r"\s*(?:\[\^[^\]\s]{1,40}\]:|[\u2022\u2023\u2043\u25aa\u25ab\u25cf\u25e6][ ])"
)
"""Lines that go on by the standard, but are footnotes or items to a reader."""


def take_footnotes(state: State) -> None:
    """Make notes of the paragraphs just closed that begin as a footnote does."""
    blocks = state.maker.blocks
    while state.checked < len(blocks):
        block = blocks[state.checked]
        mark = _FOOTNOTE.match(block.text.chars) if block.kind is Kind.PARAGRAPH else None
        if mark is not None:
            label, text = cut(block.text, 0, mark.end()), cut(block.text, mark.end(), len(block.text))
            blocks[state.checked] = Block(Kind.NOTE, fold(text), fold(label), block.level)
        state.checked += 1


def goes_on_with_note(state: State, text: Text) -> bool:
    """Whether lines that are set in follow a footnote: they are its paragraphs then, a level deeper."""
    maker = state.maker
    if not maker.blocks or maker.blocks[-1].kind is not Kind.NOTE:
        return False
    maker.level += 1
    for line in split_lines(text):
        if line.chars.strip():
            maker.text.add_text(line)
            maker.text.add_own("\n")
        else:
            maker.close()
    maker.close()
    maker.level -= 1
    return True
