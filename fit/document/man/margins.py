"""Margins of a page, ``.RS`` and ``.RE``: parts set in, and the key in the line above one that it explains."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from fit.document.blocks import Kind, Mark, Text
from fit.document.characters import cut
from fit.document.man.page import Page
from fit.document.man.text_lines import ENDS, SENTENCE
from fit.document.text.signs.measure import hangs, prose

MARGINS: Final = frozenset(("RS", "RE"))
_STOPS: Final = re.compile(ENDS)
_LONGEST_KEY: Final = 60
"""Characters of a line that can be a key."""
_LONGEST_OPTIONS: Final = 200
"""The same for options, which may have many names."""


def margin(page: Page, name: str) -> None:
    """A part that is set in begins or ends."""
    page.break_pre()
    page.maker.close()
    if name == "RS":
        _hang_key(page)
    page.written = 0
    if name == "RS":
        page.indents = 0
        page.margins.append((page.item_open, page.maker.level))
        page.maker.level += not page.item_open
        page.item_open = False
    elif page.margins:
        page.end_item()
        page.item_open, page.maker.level = page.margins.pop()


def _hang_key(page: Page) -> None:
    """A short line right before an indented part, bold or no sentence, is the key that the part explains.

    So is a longer one that is a paragraph of its own and begins set off, or is no sentence.
    """
    if page.spaced or page.pre is not None or not page.maker.blocks:
        return
    last = page.maker.blocks[-1]
    if last.kind is not Kind.PARAGRAPH or last.level != page.maker.level:
        return
    begin = last.text.chars.rfind("\n") + 1
    key = cut(last.text, begin, len(last.text))
    if (page.written == 1 and _names(key)) or _is_key(key):
        above = [replace(last, text=cut(last.text, 0, begin - 1))] if begin else []
        page.maker.blocks[-1:] = above
        page.maker.hang(key)


def _names(text: Text) -> bool:
    """Whether a line that is a paragraph names something, rather than leads in a sentence to what follows."""
    chars = text.chars
    if len(text) > _LONGEST_OPTIONS or _STOPS.search(chars) or hangs(chars):
        return False
    return bool(text.marks[0]) or not prose(chars) or (any(text.marks) and len(text) <= _LONGEST_KEY)


def _is_key(text: Text) -> bool:
    """Whether a short line is mostly bold, or no sentence."""
    if len(text) > (_LONGEST_OPTIONS if text.chars.startswith("-") else _LONGEST_KEY):
        return False
    bold = sum(mark & Mark.BOLD > 0 for mark in text.marks)
    if text.marks[0] & Mark.BOLD and 2 * bold >= len(text):
        return True
    return SENTENCE.search(text.chars) is None and not prose(text.chars)
