"""Markdown to tokens: CommonMark with tables and strikethrough. The only door to markdown-it-py.

Where it departs from CommonMark 0.31: a tag (section 6.6) is what HTML knows by that name, or what shows that it
is markup by an attribute or by a partner that closes it. `<name>` in running text is a word between brackets, for
a reader who sees no page would never learn of it.
"""

from __future__ import annotations

import re
from typing import Any, Final

from markdown_it import MarkdownIt
from markdown_it.rules_block import StateBlock, html_block
from markdown_it.rules_inline import StateInline, html_inline
from markdown_it.token import Token

from fit.document.html.elements import ELEMENTS

__all__ = ["DEEPEST", "Token", "parse"]

DEEPEST: Final = 100
"""Lists and quotations in one another. The parser calls itself for each, and leaves out what lies deeper."""
_TAG: Final = re.compile(r"<(/?)([A-Za-z][A-Za-z0-9-]*)([^>]*)>?")


def parse(text: str) -> tuple[list[Token], list[tuple[str, int]]]:
    """The tokens of a text, and the addresses that definitions give, each with its line."""
    # Without joining, escapes and entities stay tokens of their own that tell how they were written.
    parser = MarkdownIt("commonmark", {"maxNesting": DEEPEST}).enable(["table", "strikethrough"])
    parser.disable("text_join")
    closed = {name.lower() for name in re.findall(r"</([A-Za-z][A-Za-z0-9-]*)\s*>", text)}
    opened = {name.lower() for name in re.findall(r"<([A-Za-z][A-Za-z0-9-]*)[\s>]", text)}
    names = ELEMENTS | (closed & opened)

    def block(state: StateBlock, first: int, last: int, silent: bool) -> bool:
        begin = state.bMarks[first] + state.tShift[first]
        return _markup(state.src, begin, names) and html_block(state, first, last, silent)

    def inline(state: StateInline, silent: bool) -> bool:
        return _markup(state.src, state.pos, names) and html_inline(state, silent)

    parser.block.ruler.at("html_block", block, {"alt": ["paragraph", "reference", "blockquote"]})
    parser.inline.ruler.at("html_inline", inline)
    environment: dict[str, Any] = {}
    tokens = parser.parse(text, environment)
    references = [(str(each["href"]), each["map"][0]) for each in environment.get("references", {}).values()]
    return tokens, references


def _markup(source: str, at: int, names: frozenset[str]) -> bool:
    """Whether what stands at a place is no tag, for the parser to judge, or one that is markup."""
    tag = _TAG.match(source, at)
    return tag is None or tag[2].lower() in names or "=" in tag[3]
