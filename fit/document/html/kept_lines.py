"""Lines of HTML that stay lines: preformatted elements, and those that are the wrapped text of a whole page."""

from __future__ import annotations

from typing import Final

from fit.document.block_maker import LINE_BREAK, at_level
from fit.document.blocks import Block, Kind, Mark
from fit.document.html.forms import bracketed
from fit.document.html.page import KeptPart, Page
from fit.document.html.tree import Node
from fit.document.preformatted import held, preformatted
from fit.document.shown_text import read_shown
from fit.document.text.hyphens import Hyphens
from fit.document.wrapped_text import read_wrapped

WHOLE: Final = 0.6
"""The share of a page's text that makes preformatted lines of prose its body, and no example in it."""


def close_pre(page: Page, node: Node) -> None:
    """The element that keeps its lines ends: a block, or lines of the cell or the key it stands in."""
    assert page.pre is not None
    text, page.pre = page.pre.build(), None
    block = preformatted(text, level=page.maker.level, code=True)
    if block is None:
        return
    if node.tag == "textarea" and len(block.lines) == 1:
        bracketed(page, block.lines[0])
        return
    if page.in_key or page.in_cell is not None:
        for line in block.lines:
            page.target().add_text(held(line, Mark.PROGRAM))
            page.target().add_own(LINE_BREAK)
        return
    page.maker.add(block)
    if not page.tree.holds_code(node):
        page.kept_parts.append(KeptPart(len(page.maker.blocks) - 1, text, page.maker.level))


def read_bodies(page: Page, characters: int) -> None:
    """Read anew, as plain text, the kept lines that are the body of a document of so many characters, or no program text."""
    blocks = page.maker.blocks
    hyphens = Hyphens(page.source)
    for parts in reversed(_bodies(page.kept_parts, blocks)):
        # Manual pages turned into HTML have headings between the parts of their one preformatted body.
        whole = sum(len(part.text) for part in parts) >= WHOLE * characters
        read = read_wrapped([part.text for part in parts], hyphens) if whole else []
        for number, part in reversed([*enumerate(parts)]):
            blocks[part.at : part.at + 1] = (
                [at_level(block, part.level) for block in read[number]]
                if read
                else read_shown(blocks[part.at], part.text, hyphens)
            )


def _bodies(parts: list[KeptPart], blocks: list[Block]) -> list[list[KeptPart]]:
    """The parts in groups in which nothing but headings stands between one and the next."""
    groups: list[list[KeptPart]] = []
    for part in parts:
        between = blocks[groups[-1][-1].at + 1 : part.at] if groups else ()
        if not groups or any(block.kind is not Kind.HEADING for block in between):
            groups.append([])
        groups[-1].append(part)
    return groups
