"""The front matter of a Markdown document: fields between two lines of dashes, for programs that make pages of it."""

from __future__ import annotations

import re
from typing import Final

from fit.document.blocks import Block, Kind
from fit.document.characters import TextBuilder
from fit.document.preformatted import preformatted

_FRONT: Final = re.compile(r"\A---[ \t]*\n(?:[^\n]*\n)*?(?:---|\.\.\.)[ \t]*(?:\n|\Z)")
_FIELD: Final = re.compile(r"^[A-Za-z][\w -]*:", re.MULTILINE)


def front_matter(source: str) -> tuple[Block | None, str]:
    """The front matter as furniture, None without one, and the text after it, its lines numbered as before."""
    found = _FRONT.match(source)
    if found is None or not _FIELD.search(found.group()):
        return None, source
    builder = TextBuilder()
    builder.add_run(found.group().rstrip("\n"), 0)
    block = preformatted(builder.build(), level=0, code=False)
    lines = block.lines if block is not None else ()
    text = "\n" * found.group().count("\n") + source[found.end() :]
    return Block(Kind.FURNITURE, lines=lines, note="front matter"), text
