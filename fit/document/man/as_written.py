"""Equations and pictures of manual pages, the input of eqn(1) and pic(1): their lines stay as they are."""

from __future__ import annotations

import re
from typing import Final

from fit.document.characters import TextBuilder
from fit.document.man.page import Page
from fit.document.man.roff_lines import request_of
from fit.document.preformatted import preformatted

AS_WRITTEN: Final = {"EQ": "EN", "PS": "PE"}
"""The macros that begin them, and those that end them."""
_SET_UP: Final = re.compile(r"\s*(?:delim|[nt]?define|undef|gsize|gfont|set)\b")
"""Lines of equations that only prepare others."""


def keep_as_written(page: Page, name: str) -> None:
    """Take the lines up to the end of what ``name`` has begun."""
    end = AS_WRITTEN[name]
    builder = TextBuilder()
    while (line := page.lines.next_raw()) is not None and request_of(line)[0] not in (end, "SH"):
        if not _SET_UP.match(line.chars):
            builder.add(line.chars + "\n", [*line.sources, -1])
    if builder.blank:
        return
    page.lines.remark(f"the lines between .{name} and .{end} stand as written")
    page.maker.close()
    block = preformatted(builder.build(), level=page.maker.level, code=True)
    if block is not None:
        page.maker.add(block)
